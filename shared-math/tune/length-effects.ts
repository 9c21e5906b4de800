import type { Point } from '../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import { type AxleSide, type Lateral, type Layout, lateralBars } from '../layout/index.ts';
import { createState, type FrontEnd, prepareFrontEnd, solveFrontEnd } from '../linkage/index.ts';
import { lockAngles, sweepTurn } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';

/**
 * What a length that is off by a little does at ride height, with the box in its middle and everything else as drawn:
 * sizes, the larger of long and short. An effect that there is none of is left out. rad; `ratio` as a share.
 */
export interface LengthEffect {
  /** How far both wheels steer by themselves: what the handwheel stands off straight by. */
  readonly steer?: Radians;
  /** Change of the total toe-in. */
  readonly toe?: Radians;
  /** Change of the caster of that side. */
  readonly caster?: Radians;
  /** How far the axle stands out of square. */
  readonly square?: Radians;
  /** How much further or less the outer wheel turns at lock. */
  readonly lock?: Radians;
  /** Change of the overall ratio, a share of it. */
  readonly ratio?: number;
}

/** Mean steer and total toe-in at ride height; undefined if it is not reached. */
function straight(frontEnd: FrontEnd): { steer: number; toe: number } | undefined {
  const state = createState();
  return solveFrontEnd(frontEnd, 0, 0, 0, state) === 'ok'
    ? { steer: state.meanSteer, toe: state.totalToeIn }
    : undefined;
}

/** The larger change of steer and toe that two front ends make against the one that is drawn. */
function change(drawn: FrontEnd, others: readonly FrontEnd[]): LengthEffect | undefined {
  const base = straight(drawn);
  let [steer, toe] = [0, 0];
  for (const other of others) {
    const found = straight(other);
    if (!base || !found) return undefined;
    steer = Math.max(steer, Math.abs(found.steer - base.steer));
    toe = Math.max(toe, Math.abs(found.toe - base.toe));
  }
  return { steer: steer as Radians, toe: toe as Radians };
}

const BOTH = [1, -1] as const;

/** The drag link made too long or too short by `step`. Undefined if ride height is not reached then. */
export function dragLinkEffect(frontEnd: FrontEnd, step: number): LengthEffect | undefined {
  return change(
    frontEnd,
    BOTH.map((way) => ({ ...frontEnd, dragLinkLength: frontEnd.dragLinkLength + way * step })),
  );
}

/** The tie rod made too long or too short by `step`. Undefined if ride height is not reached then. */
export function tieRodEffect(frontEnd: FrontEnd, step: number): LengthEffect | undefined {
  return change(
    frontEnd,
    BOTH.map((way) => ({ ...frontEnd, tieRodLength: frontEnd.tieRodLength + way * step })),
  );
}

/** A layout whose steering box stands `by` mm from where it is drawn. */
function withBoxMoved(layout: Layout, by: Point): Layout {
  const { box } = layout.steering;
  return {
    ...layout,
    steering: {
      ...layout.steering,
      box: { ...box, sectorCentre: add(box.sectorCentre, by), pitmanBall: add(box.pitmanBall, by) },
    },
  } as Layout;
}

/**
 * How much of a bar's error moves the axle: all of a lateral bar's; of a rocker's bar what the lever leaves at the bolt while the
 * other bar holds the rocker's other end, for the bar of which that is more.
 */
function rockerShare(lateral: Lateral): number {
  if (lateral.kind !== 'watt') return 1;
  const arm = (end: Point) => Math.hypot(end[1] - lateral.pivot[1], end[2] - lateral.pivot[2]);
  const arms = [arm(lateral.upper.rocker), arm(lateral.lower.rocker)];
  return Math.max(...arms) / (arms[0]! + arms[1]!);
}

/**
 * The lateral bar made too long or too short by `step`: the axle stands to one side by what lies across of it, the drag
 * link stays as long as it is. Seen from the axle, the box stands to the other side.
 * Undefined if there is no bar, or ride height is not reached then.
 */
export function lateralBarEffect(frontEnd: FrontEnd, step: number): LengthEffect | undefined {
  const { lateral } = frontEnd.layout;
  const [bar] = lateralBars(lateral);
  if (!bar) return undefined;
  const along = unit(subtract(bar.to.at, bar.from.at));
  // A bar that lies askew moves the axle across by more than its own error.
  const across = Math.abs(along[1]) < 0.1 ? Number.NaN : (rockerShare(lateral) * step) / along[1];
  if (Number.isNaN(across)) return undefined;
  return change(
    frontEnd,
    BOTH.map((way) => ({
      ...prepareFrontEnd(withBoxMoved(frontEnd.layout, [0, way * across, 0])),
      dragLinkLength: frontEnd.dragLinkLength,
    })),
  );
}

/** One bar of four made too long or too short by `step`: its half of the axle turns about the other bar's end. */
export function fourBarEffect({ location }: Layout, step: number): LengthEffect | undefined {
  if (location.kind !== 'four-bar') return undefined;
  const { upper, lower } = location.left;
  const along = unit(subtract(upper.axle, upper.frame));
  const apart = subtract(upper.axle, lower.axle);
  // Square to the bar: how far the two ends stand apart.
  const lever = norm(subtract(apart, scaled(along, dot(apart, along))));
  return lever > 0 ? { caster: Math.atan(step / lever) as Radians } : undefined;
}

/** The rod or both bars of one side made longer by `step` than those of the other: the axle stands out of square. */
export function oneSideEffect({ location }: Layout, step: number): LengthEffect | undefined {
  const across = (left: Point, right: Point) => Math.abs(left[1] - right[1]);
  switch (location.kind) {
    case 'hairpins':
    case 'split-rods': {
      const apart = across(location.left.framePivot, location.right.framePivot);
      return apart > 0 ? { square: Math.atan(step / apart) as Radians } : undefined;
    }
    case 'quarter-elliptic': {
      const apart = across(location.left.rod.axle, location.right.rod.axle);
      return apart > 0 ? { square: Math.atan(step / apart) as Radians } : undefined;
    }
    case 'four-bar': {
      const apart = across(location.left.lower.axle, location.right.lower.axle);
      return apart > 0 ? { square: Math.atan(step / apart) as Radians } : undefined;
    }
    case 'parallel-leaf': {
      const apart = across(location.left.seat, location.right.seat);
      return apart > 0 ? { square: Math.atan(step / apart) as Radians } : undefined;
    }
    // One ball: nothing of it sets the axle square but how it is built.
    case 'wishbone':
      return undefined;
  }
}

/** An arm made too long or too short by `step`, its link set anew: what it does to the overall ratio, as a share. */
export function armEffect(length: number, step: number): LengthEffect {
  return { ratio: step / length };
}

/**
 * Both tie rod arms' balls off by `step`, along the arm or square to it as seen along the kingpin, the tie rod set to the toe
 * that is drawn: how far that turns the outer wheel at lock, at the most. Undefined if it does not steer then.
 */
export function tieRodArmEffect(layout: Layout, step: number): LengthEffect | undefined {
  const outerAt = (along: number, aside: number): number | undefined => {
    const moved = (side: AxleSide, way: 1 | -1): AxleSide => {
      const axis = unit(subtract(side.kingpinTop, side.kingpinBottom));
      const arm = subtract(side.tieRodBall, side.kingpinBottom);
      const reach = unit(subtract(arm, scaled(axis, dot(arm, axis))));
      const square = cross(axis, reach);
      const by = add(scaled(reach, along), scaled(square, way * aside));
      return { ...side, tieRodBall: add(side.tieRodBall, by) as AxleSide['tieRodBall'] };
    };
    const { axle } = layout;
    // Mirrored, so that both arms lean in or out alike.
    const other = { ...layout, axle: { ...axle, left: moved(axle.left, 1), right: moved(axle.right, -1) } };
    const turn = sweepTurn(prepareFrontEnd(other), 0, 0, 2);
    return turn.status === 'ok' && turn.count > 1 ? lockAngles(other, turn.left).outer : undefined;
  };
  const drawn = outerAt(0, 0);
  let lock = 0;
  for (const [along, aside] of [
    [step, 0],
    [-step, 0],
    [0, step],
    [0, -step],
  ] as const) {
    const outer = outerAt(along, aside);
    if (outer === undefined || drawn === undefined) return undefined;
    lock = Math.max(lock, Math.abs(outer - drawn));
  }
  return { lock: lock as Radians };
}
