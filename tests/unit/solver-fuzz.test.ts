import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { findAim, holdTravel } from '../../shared-math/aim/index.ts';
import { analyse, findings, withClearances } from '../../shared-math/findings/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { type Carrier, type Layout, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { POSE_ROCKER } from '../../shared-math/pose/index.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { sweepRow } from '../../src-main/output/tables/travel.ts';
import { DEGREE } from '../support/close.ts';
import { randomLayout } from '../support/random-layouts.ts';
import {
  isJoined,
  type RawPose,
  rawPlace,
  rawResiduals,
  softRows,
  toRawPose,
} from '../support/raw-equations.ts';

/** How many random layouts of each sort; `TOEBOARD_FUZZ` asks for more. */
const COUNT = Number(process.env['TOEBOARD_FUZZ'] ?? 60);

const SORTS = [
  ['cars that somebody might build', 25],
  ['cars drawn wrong', 180],
  ['nonsense', 900],
] as const;

type Side = 'left' | 'right';

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function carried(frontEnd: FrontEnd, state: FrontEndState, carrier: Carrier, at: Point): Point {
  const out = new Float64Array(3);
  carryPoint(frontEnd, state, carrier, at, out);
  return [out[0]!, out[1]!, out[2]!];
}

function rawPoseOf(state: FrontEndState): RawPose {
  const { x, y, yaw, pitch, twist } = state.axle;
  return {
    x,
    y,
    yaw,
    left: pitch + twist / 2,
    right: pitch - twist / 2,
    rocker: state.work.pose[POSE_ROCKER]!,
  };
}

function sumOf(layout: Layout, heave: number, roll: number, pose: RawPose): number {
  return rawResiduals(layout, heave, roll, pose).reduce((sum, value) => sum + value * value, 0);
}

/** The pose is where the plain sum of squares is least: no small step from it, in any unknown, brings it down. */
function expectLeast(layout: Layout, heave: number, roll: number, pose: RawPose, what: string): void {
  const joined = isJoined(layout);
  const at = joined
    ? [pose.x, pose.y, pose.yaw * 1000, pose.left * 1000]
    : [pose.x, pose.y, pose.yaw * 1000, pose.left * 1000, pose.right * 1000];
  if (layout.lateral.kind === 'watt') at.push((pose.rocker ?? 0) * 1000);
  const here = sumOf(layout, heave, roll, pose);
  for (let i = 0; i < at.length; i += 1)
    for (const step of [1e-3, -1e-3]) {
      const beside = sumOf(layout, heave, roll, toRawPose(joined, at.with(i, at[i]! + step)));
      expect(beside, `${what}: a step of ${step} in unknown ${i}`).toBeGreaterThan(here - 1e-7 * (1 + here));
    }
}

/** Every length and every rigid body of a solved row, by positions alone. */
function expectClosed(
  frontEnd: FrontEnd,
  state: FrontEndState,
  heave: number,
  roll: number,
  what: string,
): void {
  const { layout } = frontEnd;
  const { axle, steering } = layout;
  const pose = rawPoseOf(state);
  const at = (side: Side, point: Point) => rawPlace(layout, heave, roll, pose, side, point);
  const same = (a: Point, b: Point, drawnA: Point, drawnB: Point, of: string) =>
    expect(Math.abs(apart(a, b) - apart(drawnA, drawnB)), `${what}: ${of}`).toBeLessThan(1e-6);
  const balls: Record<string, Point> = {};
  for (const side of ['left', 'right'] as const) {
    const { kingpinTop, kingpinBottom, tieRodBall, wheelCentre } = axle[side];
    const driven = side === steering.dragLinkTo ? [steering.dragLinkBall] : [];
    for (const [k, point] of [tieRodBall, wheelCentre, ...driven].entries()) {
      // A point of the spindle keeps its distances from the kingpin's ends, wherever the axle has taken those.
      const now = carried(frontEnd, state, `spindle-${side}`, point);
      same(now, at(side, kingpinTop), point, kingpinTop, `${side} spindle`);
      same(now, at(side, kingpinBottom), point, kingpinBottom, `${side} spindle`);
      balls[`${side}${k}`] = now;
    }
  }
  same(balls['left0']!, balls['right0']!, axle.left.tieRodBall, axle.right.tieRodBall, 'tie rod');
  const pitman = carried(frontEnd, state, 'pitman', steering.box.pitmanBall);
  same(
    balls[`${steering.dragLinkTo}2`]!,
    pitman,
    steering.dragLinkBall,
    steering.box.pitmanBall,
    'drag link',
  );
  same(pitman, steering.box.sectorCentre, steering.box.pitmanBall, steering.box.sectorCentre, 'pitman arm');
}

/** Distances that a ball on its spindle can have from a point: by 3,600 places round the kingpin. */
function reachOf(
  layout: Layout,
  side: Side,
  ball: Point,
  heave: number,
  roll: number,
  pose: RawPose,
  to: Point,
) {
  const { kingpinTop: top, kingpinBottom: bottom } = layout.axle[side];
  const long = apart(top, bottom);
  const u = [0, 1, 2].map((i) => (top[i]! - bottom[i]!) / long) as unknown as Point;
  const d = [0, 1, 2].map((i) => ball[i]! - bottom[i]!) as unknown as Point;
  const dot = u[0] * d[0] + u[1] * d[1] + u[2] * d[2];
  const flat = [0, 1, 2].map((i) => d[i]! - dot * u[i]!) as unknown as Point;
  const onward: Point = [u[1] * d[2] - u[2] * d[1], u[2] * d[0] - u[0] * d[2], u[0] * d[1] - u[1] * d[0]];
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (let k = 0; k < 3600; k += 1) {
    const turn = (k * Math.PI) / 1800;
    const drawn = [0, 1, 2].map(
      (i) => bottom[i]! + dot * u[i]! + flat[i]! * Math.cos(turn) + onward[i]! * Math.sin(turn),
    ) as unknown as Point;
    const far = apart(rawPlace(layout, heave, roll, pose, side, drawn), to);
    least = Math.min(least, far);
    most = Math.max(most, far);
  }
  return { least, most };
}

/** Singular values of the plain residuals' Jacobian at a pose, what only guides left out (angles at one metre), least over largest. */
function rankOf(layout: Layout, heave: number, roll: number, pose: RawPose): number {
  const joined = isJoined(layout);
  const at = [pose.x, pose.y, pose.yaw * 1000, pose.left * 1000, pose.right * 1000].slice(0, joined ? 4 : 5);
  if (layout.lateral.kind === 'watt') at.push((pose.rocker ?? 0) * 1000);
  const columns = at.map((value, i) => {
    const [further, back] = [1e-3, -1e-3].map((step) =>
      rawResiduals(layout, heave, roll, toRawPose(joined, at.with(i, value + step))).filter(
        (_, k) => !softRows(layout).guiding.includes(k),
      ),
    );
    return further!.map((entry, k) => (entry - back![k]!) / 2e-3);
  });
  const values = new SingularValueDecomposition(new Matrix(columns).transpose()).diagonal;
  return Math.min(...values) / Math.max(...values);
}

/**
 * How well the links hold the axle at the last pose that there is on the way from ride height to one that there is not,
 * found by halving. At ride height itself that is the drawing.
 */
function rankAtTheEnd(frontEnd: FrontEnd, heave: number, roll: number): number {
  const at = (share: number) => {
    const state = createState();
    const status = solveFrontEnd(frontEnd, share * heave, share * roll, 0, state);
    return status === 'no-pose' ? undefined : rawPoseOf(state);
  };
  const drawn: RawPose = { x: 0, y: 0, yaw: 0, left: 0, right: 0 };
  let [low, high] = [0, 1];
  for (let k = 0; k < 40; k += 1) {
    const middle = (low + high) / 2;
    if (at(middle)) low = middle;
    else high = middle;
  }
  return rankOf(frontEnd.layout, low * heave, low * roll, at(low) ?? drawn);
}

/** Every number inside a value, however deep, typed arrays included. */
function* numbersIn(value: unknown, path = ''): Generator<[string, number]> {
  if (typeof value === 'number') yield [path, value];
  else if (ArrayBuffer.isView(value))
    for (const [i, entry] of (value as Float64Array).entries()) yield [`${path}[${i}]`, entry];
  else if (Array.isArray(value))
    for (const [i, entry] of value.entries()) yield* numbersIn(entry, `${path}[${i}]`);
  else if (typeof value === 'object' && value !== null)
    for (const [key, entry] of Object.entries(value)) yield* numbersIn(entry, `${path}.${key}`);
}

describe.each(SORTS)('%s', (_sort, spread) => {
  const cases = Array.from({ length: COUNT }, (_, k) => 1000 * spread + k).flatMap((seed) => {
    const document = randomLayout(seed, spread);
    return document ? [{ seed, document }] : [];
  });

  test('some of them are layouts', () => {
    expect(cases.length).toBeGreaterThan(COUNT / 12);
  });

  test('every row is right, or says why not', () => {
    const tally = { ok: 0, 'out-of-reach': 0, 'no-pose': 0 };
    for (const { seed, document } of cases) {
      const layout = resolveLayout(document);
      const frontEnd = prepareFrontEnd(layout);
      const state = createState();
      const random = seededRandom(seed);
      for (let k = 0; k < 6; k += 1) {
        const heave = k === 0 ? 0 : 200 * (random() - 0.5);
        const roll = (k === 0 ? 0 : 12 * (random() - 0.5)) * DEGREE;
        const handwheel = (k === 0 ? 0 : 900 * (random() - 0.5)) * DEGREE;
        const what = `seed ${seed}, heave ${heave}, roll ${roll}, handwheel ${handwheel}`;
        const status = solveFrontEnd(frontEnd, heave, roll, handwheel, state);
        tally[status] += 1;
        for (const [path, value] of numbersIn(
          sweepRow({ at: { heave, roll, handwheel }, status, state, bump: 0 }),
        ))
          expect(Number.isFinite(value), `${what}: ${path} is ${value}`).toBe(true);
        if (status === 'no-pose') {
          if (state.failure === 'axle-free')
            expect(rankAtTheEnd(frontEnd, heave, roll), what).toBeLessThan(0.01);
          continue;
        }
        const pose = rawPoseOf(state);
        expectLeast(layout, heave, roll, pose, what);
        if (status === 'ok') expectClosed(frontEnd, state, heave, roll, what);
        else if (state.failure === 'drag-link') {
          const { dragLinkTo, dragLinkBall, box } = layout.steering;
          const pitman = carried(frontEnd, state, 'pitman', box.pitmanBall);
          const reach = reachOf(layout, dragLinkTo, dragLinkBall, heave, roll, pose, pitman);
          const length = apart(dragLinkBall, box.pitmanBall);
          // Between the sampled places the reach is at most a few thousandths further.
          expect(
            length < reach.least + 0.01 || length > reach.most - 0.01,
            `${what}: the drag link would reach`,
          ).toBe(true);
        }
      }
    }
    expect(tally.ok).toBeGreaterThan(0);
    if (spread > 500) expect(tally['out-of-reach'] + tally['no-pose']).toBeGreaterThan(0);
  });

  test('nothing that is worked out from them holds a number that is none', () => {
    for (const { seed, document } of cases.slice(0, Math.max(12, COUNT / 5))) {
      const layout = resolveLayout(document);
      const frontEnd = prepareFrontEnd(layout);
      const turn = sweepTurn(frontEnd, 0, 0, 61);
      const aim = findAim(frontEnd, holdTravel(frontEnd));
      const analysis = withClearances(analyse(layout));
      const told = findings(analysis, { unit: 'in', fraction: 16 });
      const { heaveSummary } = analysis;
      for (const [name, value] of Object.entries({ aim, told, heaveSummary }))
        for (const [path, number] of numbersIn(value))
          expect(Number.isFinite(number), `seed ${seed}: ${name}${path} is ${number}`).toBe(true);
      for (const [path, number] of numbersIn(turn))
        expect(Number.isNaN(number), `seed ${seed}: turn${path}`).toBe(false);
      for (const { sentence } of told) expect(sentence, `seed ${seed}`).not.toMatch(/NaN|Infinity|undefined/);
    }
  });
});
