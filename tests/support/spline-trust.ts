import { countTeeth, rimThrough, type SplineGap, TRUSTED_FROM } from '../../shared-math/splines/index.ts';
import { SCENE_KINDS, type SceneKind, type SplineScene, splineScene } from './spline-scenes.ts';

// How far a count from a photo can be trusted: counted over photos drawn by lot, as a user would count them.

/** What became of one photo. */
export interface TrustRow {
  readonly seed: number;
  readonly kind: SceneKind;
  readonly teeth: number;
  readonly tiltDegrees: number;
  readonly count: number | undefined;
  readonly clear: boolean;
  /** Blanks called that are not there. */
  readonly falseBlanks: number;
  /** Of the one that is there: called by its kind, called a place that cannot be read, or passed over. */
  readonly blank: 'called' | 'unread' | 'passed' | undefined;
  readonly unread: number;
}

/** Teeth from the blank that is there. */
function away(scene: SplineScene, gap: SplineGap): number {
  const turn = 2 * Math.PI;
  const off = ((((gap.angle - (scene.blankAt ?? 0)) % turn) + turn) % turn) / turn;
  return Math.min(off, 1 - off) * scene.teeth;
}

export function trustRow(scene: SplineScene): TrustRow {
  const { seed, kind, teeth } = scene;
  const rim = rimThrough(scene.centre, scene.rim);
  const outcome = rim ? countTeeth(scene.image, rim) : undefined;
  const found = outcome?.ok ? outcome.value : undefined;
  const gaps = found?.gaps ?? [];
  const there = scene.blankAt !== undefined;
  const own = there ? gaps.find((gap) => away(scene, gap) < 0.75) : undefined;
  const called = gaps.filter((gap) => gap.kind !== 'unread');
  const right = kind === 'missing' ? 'missing-tooth' : 'filled-space';
  return {
    seed,
    kind,
    teeth,
    tiltDegrees: (scene.tilt * 180) / Math.PI,
    count: found?.count,
    clear: (found?.confidence ?? 0) >= TRUSTED_FROM,
    falseBlanks: called.filter((gap) => gap !== own || gap.kind !== right).length,
    blank: there ? (own ? (own.kind === 'unread' ? 'unread' : 'called') : 'passed') : undefined,
    unread: gaps.length - called.length,
  };
}

/** Rates over photos of every kind in turn. */
export interface TrustRates {
  readonly photos: number;
  readonly clear: number;
  readonly rightOfClear: number;
  /** Photos on which a blank is called that is not there. */
  readonly withFalseBlanks: number;
  readonly blanks: number;
  readonly blanksCalled: number;
  readonly blanksUnread: number;
  readonly wrong: readonly TrustRow[];
}

export function trustRates(rows: readonly TrustRow[]): TrustRates {
  const clear = rows.filter((row) => row.clear);
  const count = (which: (row: TrustRow) => boolean) => rows.filter(which).length;
  return {
    photos: rows.length,
    clear: clear.length,
    rightOfClear: clear.filter((row) => row.count === row.teeth).length,
    withFalseBlanks: count((row) => row.falseBlanks > 0),
    blanks: count((row) => row.blank !== undefined),
    blanksCalled: count((row) => row.blank === 'called'),
    blanksUnread: count((row) => row.blank === 'unread'),
    wrong: rows.filter((row) => (row.clear && row.count !== row.teeth) || row.falseBlanks > 0),
  };
}

/** The rows of so many photos from a seed on, the kinds in turn, one after another. */
export function* trustRows(from: number, photos: number): Generator<TrustRow> {
  for (let i = 0; i < photos; i += 1)
    yield trustRow(splineScene(from + i, SCENE_KINDS[i % SCENE_KINDS.length] as SceneKind));
}
