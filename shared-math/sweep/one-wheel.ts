import type { Layout } from '../layout/index.ts';
import { createState, type FrontEnd, type PoseStatus, poseAxle, steerAxle } from '../linkage/index.ts';
import { type Radians, toRadians } from '../units/index.ts';
import { rideSteer } from './grid.ts';

/** The poses of the travel in which either wheel may stand anywhere in its own bump and droop. mm, rad. */
export interface WheelTravel {
  readonly bump: number;
  readonly droop: number;
  /** Half the distance across of the wheel centres as drawn. */
  readonly halfTrack: number;
  /** Sine of the most that the axle rolls. */
  readonly sine: number;
}

/** The wheel travel of a layout; roll ends where one wheel is at the end of its bump and the other of its droop. */
export function wheelTravel(layout: Layout): WheelTravel {
  const { bump, rebound: droop, roll } = layout.travel;
  const { left, right } = layout.axle;
  const track = Math.abs(left.wheelCentre[1] - right.wheelCentre[1]);
  return {
    bump,
    droop,
    halfTrack: track / 2,
    sine: Math.min(Math.sin(toRadians(roll)), (bump + droop) / track),
  };
}

/** The least and the most heave (mm) at which both wheels keep to their travel, at a sine of roll. */
export function heaveEnds(travel: WheelTravel, sine: number): { readonly from: number; readonly to: number } {
  const apart = travel.halfTrack * Math.abs(sine);
  const [from, to] = [apart - travel.droop, travel.bump - apart];
  // At the tip of the travel both ends are one; rounding may cross them.
  return from <= to ? { from, to } : { from: (from + to) / 2, to: (from + to) / 2 };
}

/** The largest |bump steer| with each wheel anywhere in its own travel, and the pose in which it is met. */
export type OneWheel =
  | {
      readonly status: 'ok';
      readonly worst: number;
      /** The same with its sign: above 0 the fronts of the wheels go left. */
      readonly steer: number;
      readonly heave: number;
      readonly roll: number;
    }
  | { readonly status: Exclude<PoseStatus, 'ok'>; readonly heave: number; readonly roll: number };

/** Places looked at along the heave that is left at a roll, and rolls to each side. */
const ALONG = 9;
const ROLLS = 4;
/** A place on the grid is closed in on from where it has this share of the best: what lies between nodes adds less. */
const NEAR_BEST = 0.8;
/** Share of a grid's step at which closing in ends: |bump steer| is flat at its largest, or is largest at an edge. */
const STEP_END = 1 / 64;

/** Steps to the eight neighbours, in u and in s: a ridge that runs askew is climbed by its diagonals. */
const WAYS = [-1, 0, 1].flatMap((u) => [-1, 0, 1].map((s) => [u, s] as const)).filter(([u, s]) => u || s);

/**
 * Largest |bump steer| over every heave and roll at which each wheel stays within its own bump and droop, the handwheel
 * (rad) held: one wheel over a kerb, both, or the car leaning over a hump.
 * With s the sine of roll, the wheels stand at heave ± s · halfTrack; s goes as far as the layout's roll and the heave at
 * s between `heaveEnds`. Places (u, s), u the share of that heave, fill a rectangle, so that the travel's edges, where
 * the largest mostly is, are edges of the search: a grid, then from each of its tops a walk to the better neighbour in
 * steps that halve when none is better.
 * Frame:    vehicle. Units: mm, rad. Shapes: one figure and its pose; some 150 to 250 poses are solved.
 * Outcomes: ok; out-of-reach or no-pose, with where, if any place of the travel that was looked at is so.
 * Source:   own derivation; bump steer as in design section 6.
 * Checked:  tests/unit/one-wheel.test.ts (a fine grid of its own, the plain car and all kinds of axle).
 */
export function worstOneWheel(frontEnd: FrontEnd, handwheel: Radians = 0): OneWheel {
  const state = createState();
  const ride = rideSteer(frontEnd, handwheel, state);
  if (ride.status !== 'ok') return { status: ride.status, heave: 0, roll: 0 };
  const travel = wheelTravel(frontEnd.layout);
  let failed: OneWheel | undefined;
  const heaveAt = (u: number, sine: number): number => {
    const { from, to } = heaveEnds(travel, sine);
    return from + u * (to - from);
  };
  let steer = 0;
  const steerAt = (u: number, sine: number): number => {
    const heave = heaveAt(u, sine);
    const roll = Math.asin(sine) as Radians;
    const status = poseAxle(frontEnd, heave, roll, state) ? steerAxle(frontEnd, handwheel, state) : 'no-pose';
    steer = state.meanSteer - ride.meanSteer;
    if (status === 'ok') return Math.abs(steer);
    failed ??= { status, heave, roll };
    return -1;
  };

  const rows = travel.sine > 0 ? 2 * ROLLS + 1 : 1;
  const grid = new Float64Array(ALONG * rows);
  const sineOf = (row: number) => (rows === 1 ? 0 : (travel.sine * (row - ROLLS)) / ROLLS);
  let best = -1;
  for (let row = 0; row < rows; row += 1)
    for (let k = 0; k < ALONG; k += 1) {
      // To and fro, so that each pose starts from its neighbour.
      const column = row % 2 === 0 ? k : ALONG - 1 - k;
      const value = steerAt(column / (ALONG - 1), sineOf(row));
      if (failed) return failed;
      grid[row * ALONG + column] = value;
      best = Math.max(best, value);
    }

  let found = { worst: -1, u: 0, sine: 0 };
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < ALONG; column += 1) {
      const value = grid[row * ALONG + column] as number;
      if (value < NEAR_BEST * best || !isTop(grid, rows, row, column)) continue;
      const top = { worst: value, u: column / (ALONG - 1), sine: sineOf(row) };
      let [du, ds] = [1 / (ALONG - 1), travel.sine / ROLLS];
      const last = du * STEP_END;
      while (du > last) {
        const { u, sine } = top;
        for (const [stepU, stepS] of WAYS) {
          const nextU = Math.min(1, Math.max(0, u + stepU * du));
          const nextS = Math.min(travel.sine, Math.max(-travel.sine, sine + stepS * ds));
          if (nextU === u && nextS === sine) continue;
          const next = steerAt(nextU, nextS);
          if (failed) return failed;
          if (next > top.worst) Object.assign(top, { worst: next, u: nextU, sine: nextS });
        }
        if (top.u === u && top.sine === sine) {
          du /= 2;
          ds /= 2;
        }
      }
      if (top.worst > found.worst) found = top;
    }
  steerAt(found.u, found.sine);
  if (failed) return failed;
  return {
    status: 'ok',
    worst: found.worst,
    steer,
    heave: heaveAt(found.u, found.sine),
    roll: Math.asin(found.sine),
  };
}

/** Share by which rounding may set places apart that are one: all of a row where the travel comes to a tip. */
const ROUNDING = 1e-9;

/** Whether no neighbour of a node is larger, the eight of them as far as there are. */
function isTop(grid: Float64Array, rows: number, row: number, column: number): boolean {
  const value = (grid[row * ALONG + column] as number) * (1 + ROUNDING);
  for (let r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r += 1)
    for (let c = Math.max(0, column - 1); c <= Math.min(ALONG - 1, column + 1); c += 1)
      if ((grid[r * ALONG + c] as number) > value) return false;
  return true;
}

/** How far each wheel stands above ride height in a pose, mm: heave and what roll adds, as the wheel travel has it. */
export function wheelPlaces(
  layout: Layout,
  pose: { readonly heave: number; readonly roll: number },
): { readonly left: number; readonly right: number } {
  const apart = wheelTravel(layout).halfTrack * Math.sin(pose.roll);
  return { left: pose.heave + apart, right: pose.heave - apart };
}

/**
 * The poses of a travel on an even grid of roll and of the heave that is left at it, edges and corners included: `along`
 * heaves at each of 2 · `rolls` + 1 rolls, so fine that the largest figure on them is the largest of all to a per cent.
 * mm, rad.
 */
export function wheelPoses(
  travel: WheelTravel,
  along = 17,
  rolls = 6,
): { readonly heave: number; readonly roll: number }[] {
  const rows = travel.sine > 0 ? 2 * rolls + 1 : 1;
  return Array.from({ length: rows * along }, (_, i) => {
    const row = Math.floor(i / along);
    // To and fro, so that each pose starts from its neighbour.
    const column = row % 2 === 0 ? i % along : along - 1 - (i % along);
    const sine = rows === 1 ? 0 : (travel.sine * (row - rolls)) / rolls;
    const { from, to } = heaveEnds(travel, sine);
    return { heave: from + ((to - from) * column) / (along - 1), roll: Math.asin(sine) };
  });
}
