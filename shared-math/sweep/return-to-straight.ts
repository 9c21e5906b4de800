import type { Point } from '../geometry/points.ts';
import { cross, dot, subtract, unit } from '../geometry/vectors.ts';
import { SIDES, type Side } from '../layout/index.ts';
import {
  carriedTo,
  createState,
  type FrontEnd,
  type FrontEndState,
  kingpinDirection,
  poseAxle,
  spindleRates,
  steerAxle,
} from '../linkage/index.ts';
import { type Radians, toRadians } from '../units/index.ts';
import type { TurnSweep } from './turn.ts';

/**
 * The side force of both front tyres, as a share of what they carry, that the return to straight is shown for: a bend
 * taken briskly; common practice, no published source.
 */
export const SIDE_FORCE_SHARE = 0.2;

/** What tyres do about one kingpin in a pose, for each newton at the contact: levers in mm. */
export interface KingpinLevers {
  /** Of a side force toward the inside of the turn: above 0 it turns the wheel back to straight. The trail, square to the kingpin. */
  readonly trail: number;
  /** Of a force that brakes the wheel: above 0 it turns the front of the wheel outward. The scrub, square to the kingpin. */
  readonly scrub: number;
  /** Of the wheel's load: above 0 it turns the wheel back to straight. */
  readonly load: number;
}

/** The wheel's spin axis in a pose, pointing left, from its two angles. */
function spinAxis(steer: number, tiltUp: number): Point {
  const level = Math.cos(tiltUp);
  return [-Math.sin(steer) * level, Math.cos(steer) * level, Math.sin(tiltUp)];
}

/**
 * Where a tyre touches the ground: the lowest point of its disc, a radius from the wheel's centre down its plane. With the
 * spin axis s, forward is s × z, level, and down is s × forward. The radius is that which brings it to the ground as drawn.
 */
export function contactOf(frontEnd: FrontEnd, state: FrontEndState, side: Side): Point {
  const wheel = state[side];
  const axis = spinAxis(wheel.steer, side === 'left' ? -wheel.camber : wheel.camber);
  const down = cross(axis, unit(cross(axis, [0, 0, 1])));
  const drawn = frontEnd.layout.axle[side];
  const radius = drawn.wheelCentre[2] / Math.cos(toRadians(drawn.camber));
  const centre = carriedTo(frontEnd, state, `spindle-${side}`, drawn.wheelCentre);
  return [centre[0] + radius * down[0], centre[1] + radius * down[1], centre[2] + radius * down[2]];
}

/**
 * Levers about one kingpin in a solved pose. A force F at the contact c turns the spindle about its kingpin, through k
 * along u, by the moment u · ((c - k) × F), above 0 to the left. Side forces stand square to the wheel's heading, level;
 * braking ones against it; the load straight up.
 * Frame:    vehicle. Units: mm. `toLeft`: the turn is to the left.
 * Source:   own derivation; the moment of a force about an axis, any text on statics.
 * Checked:  tests/reference/return-to-straight.test.ts (virtual work by differences of carried points and of the lift).
 */
export function kingpinLevers(
  frontEnd: FrontEnd,
  state: FrontEndState,
  side: Side,
  toLeft: boolean,
): KingpinLevers {
  const u = kingpinDirection(frontEnd, state, side);
  const foot = carriedTo(frontEnd, state, `axle-${side}`, frontEnd.layout.axle[side].kingpinBottom);
  const arm = subtract(contactOf(frontEnd, state, side), foot);
  const { steer } = state[side];
  const leftward: Point = [-Math.sin(steer), Math.cos(steer), 0];
  const backward: Point = [-Math.cos(steer), -Math.sin(steer), 0];
  const about = (force: Point) => dot(u, cross(arm, force)) + 0;
  return {
    // Above 0 turns to the left, away from straight in a turn to the left; to the right both force and turn are the other way.
    trail: -about(leftward),
    scrub: (side === 'left' ? 1 : -1) * about(backward),
    load: about([0, 0, 1]) * (toLeft ? -1 : 1),
  };
}

/** How the wheels come back to straight, over the turn from right lock to left lock; rows as the turn's own. */
export interface ReturnToStraight {
  readonly handwheel: Float64Array;
  /** mm: levers of a side force about each kingpin, above 0 back to straight, and of a braking force, above 0 outward. */
  readonly leftTrail: Float64Array;
  readonly rightTrail: Float64Array;
  readonly leftScrub: Float64Array;
  readonly rightScrub: Float64Array;
  /**
   * N·mm at the handwheel, above 0 back to straight, without friction: of the side force, half on each wheel; of the car's
   * weight on its inclined kingpins, half on each; and of both.
   */
  readonly bySideForce: Float64Array;
  readonly byWeight: Float64Array;
  readonly both: Float64Array;
}

/** How far from straight the wheels still come back by themselves, rad of handwheel; null: from all the way to that lock. */
export interface ReturnEnds {
  readonly bySideForce: number | null;
  readonly byWeight: number | null;
  readonly both: number | null;
}

/** The same in one pose: levers in mm, moments at the handwheel in N·mm. */
export interface ReturnInPose {
  readonly left: KingpinLevers;
  readonly right: KingpinLevers;
  readonly bySideForce: number;
  readonly byWeight: number;
}

/**
 * Moments at the handwheel in a solved pose; `straightRatio` as the turn has it, for its sign alone. By virtual work a moment M about a kingpin that turns by dθ for dh of the
 * handwheel asks for M dθ/dh at it; both sides add up. The side force's is as large straight ahead as just beside it, as it
 * stands for a turn to either side; the weight's is nothing straight ahead where both sides are alike.
 */
export function returnInPose(frontEnd: FrontEnd, state: FrontEndState, straightRatio: number): ReturnInPose {
  // A box mounted the wrong way round steers right where its handwheel is turned left.
  const sense = straightRatio < 0 ? -1 : 1;
  const { handwheel } = state;
  const toLeft = handwheel * sense >= 0;
  const rates = spindleRates(frontEnd, state);
  const load = frontEnd.layout.car.frontAxleLoad / 2;
  const [left, right] = SIDES.map((side) => kingpinLevers(frontEnd, state, side, toLeft)) as [
    KingpinLevers,
    KingpinLevers,
  ];
  const leftRate = sense * rates.left;
  const rightRate = sense * rates.right;
  return {
    left,
    right,
    bySideForce: SIDE_FORCE_SHARE * load * (left.trail * leftRate + right.trail * rightRate),
    byWeight: handwheel === 0 ? 0 : load * (left.load * leftRate + right.load * rightRate),
  };
}

/**
 * The moment that brings the wheels back to straight, over a turn at its heave (mm) and roll (rad).
 * Units:    mm, N, N·mm, rad. Shapes: columns as long as the turn's.
 * Outcomes: undefined if there is no turn, or its axle has no pose.
 * Left out: the tyres' own trail, which helps at small angles and is gone where they slide; friction of kingpins and box;
 *           assistance; what a real bend takes off the inner wheel's load.
 * Source:   own derivation, as in `kingpinLevers` and above.
 * Checked:  tests/reference/return-to-straight.test.ts.
 */
export function returnToStraight(
  frontEnd: FrontEnd,
  turn: TurnSweep,
  heave: number,
  roll: Radians,
): ReturnToStraight | undefined {
  if (turn.status !== 'ok' || turn.count < 2 || !Number.isFinite(turn.straightRatio)) return undefined;
  const state = createState();
  if (!poseAxle(frontEnd, heave, roll, state)) return undefined;
  const column = () => new Float64Array(turn.count);
  const found = {
    handwheel: turn.handwheel,
    leftTrail: column(),
    rightTrail: column(),
    leftScrub: column(),
    rightScrub: column(),
    bySideForce: column(),
    byWeight: column(),
    both: column(),
  };
  for (let i = 0; i < turn.count; i += 1) {
    if (steerAxle(frontEnd, turn.handwheel[i] as number, state) !== 'ok') return undefined;
    const row = returnInPose(frontEnd, state, turn.straightRatio);
    found.leftTrail[i] = row.left.trail;
    found.rightTrail[i] = row.right.trail;
    found.leftScrub[i] = row.left.scrub;
    found.rightScrub[i] = row.right.scrub;
    found.bySideForce[i] = row.bySideForce;
    found.byWeight[i] = row.byWeight;
    found.both[i] = row.bySideForce + row.byWeight;
  }
  return found;
}

/** rad of handwheel to which the end of the return is closed in. */
const CLOSED_IN = 1e-6;

/**
 * How far from straight the wheels come back by themselves, to the left and to the right; undefined if there is no turn.
 * The first of the turn's rows on the way to a lock at which a moment no longer brings them back is closed in on by halving.
 */
export function returnEnds(
  frontEnd: FrontEnd,
  turn: TurnSweep,
  heave: number,
  roll: Radians,
  back: ReturnToStraight | undefined = returnToStraight(frontEnd, turn, heave, roll),
): Readonly<Record<Side, ReturnEnds>> | undefined {
  if (!back) return undefined;
  const state = createState();
  if (!poseAxle(frontEnd, heave, roll, state)) return undefined;
  const { handwheel } = back;
  const end = (side: Side, column: Float64Array, of: (row: ReturnInPose) => number): number | null => {
    const moment = (at: number) =>
      steerAxle(frontEnd, at, state) === 'ok'
        ? of(returnInPose(frontEnd, state, turn.straightRatio))
        : Number.NEGATIVE_INFINITY;
    let inside = 0;
    for (let step = 0; step < handwheel.length; step += 1) {
      // Rows run from the right lock to the left.
      const row = side === 'left' ? step : handwheel.length - 1 - step;
      let outside = handwheel[row] as number;
      if (side === 'left' ? outside <= 0 : outside >= 0) continue;
      if ((column[row] as number) > 0) {
        inside = outside;
        continue;
      }
      while (Math.abs(outside - inside) > CLOSED_IN) {
        const middle = (inside + outside) / 2;
        if (moment(middle) > 0) inside = middle;
        else outside = middle;
      }
      return inside < CLOSED_IN && inside > -CLOSED_IN ? 0 : inside;
    }
    return null;
  };
  const to = (side: Side): ReturnEnds => ({
    bySideForce: end(side, back.bySideForce, (row) => row.bySideForce),
    byWeight: end(side, back.byWeight, (row) => row.byWeight),
    both: end(side, back.both, (row) => row.bySideForce + row.byWeight),
  });
  return { left: to('left'), right: to('right') };
}
