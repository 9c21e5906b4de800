import type { Layout } from '../layout/index.ts';
import { toRadians } from '../units/index.ts';

/**
 * The wheel angles at which all wheels roll about one centre on the rear axle's line:
 * cot(outer) - cot(inner) = kingpin track / wheelbase (ISO 8855, Ackermann condition for a beam axle).
 * Angles in rad, positive sizes; lengths in one unit.
 */

/** The outer wheel's ideal angle for an inner one. 0 for 0. */
export function idealOuter(inner: number, kingpinTrack: number, wheelbase: number): number {
  // The cotangent of 0 is infinite, and its reciprocal 0 again.
  return Math.atan(1 / (1 / Math.tan(inner) + kingpinTrack / wheelbase));
}

/** The inner wheel's ideal angle for an outer one. 0 for 0. */
export function idealInner(outer: number, kingpinTrack: number, wheelbase: number): number {
  if (outer === 0) return 0;
  return Math.atan2(1, 1 / Math.tan(outer) - kingpinTrack / wheelbase);
}

/** Between the kingpins' lines at the height of the wheel centres, mm. */
export function kingpinTrack(layout: Layout): number {
  const at = (side: 'left' | 'right') => {
    const { kingpinTop: top, kingpinBottom: bottom, wheelCentre } = layout.axle[side];
    const share = (wheelCentre[2] - bottom[2]) / (top[2] - bottom[2]);
    return bottom[1] + share * (top[1] - bottom[1]);
  };
  return at('left') - at('right');
}

/** rad. Below this inner angle a percentage of Ackermann divides rounding by next to nothing. */
const PERCENT_FROM = toRadians(5);

/** Two wheel angles held against the Ackermann ideal. rad. */
export interface Ackermann {
  /** How far the inner and the outer wheel are turned from where static toe has them straight ahead; positive sizes. */
  readonly inner: number;
  readonly outer: number;
  /** What the outer wheel should be turned for the inner one, from its own straight ahead; a positive size. */
  readonly ideal: number;
  /** The outer wheel's steer that it would then have, static toe put back, signed as the wheels are. */
  readonly idealOuter: number;
  /** How much further the outer wheel turns than that; positive: too far. */
  readonly error: number;
  /** 100 (inner - outer) / (inner - ideal outer) at equal inner angle; undefined if the wheels are nearly straight. */
  readonly percent: number | undefined;
}

/** What the Ackermann relation needs of a car: lengths in one unit, static toe-in of each wheel in rad. */
export interface AckermannCar {
  readonly track: number;
  readonly wheelbase: number;
  readonly toeLeft: number;
  readonly toeRight: number;
}

/** A layout's kingpin track, wheelbase and static toe, for `ackermannOf`. */
export function ackermannCar(layout: Layout): AckermannCar {
  const { left, right } = layout.axle;
  return {
    track: kingpinTrack(layout),
    wheelbase: layout.car.wheelbase,
    toeLeft: toRadians(left.toeIn),
    toeRight: toRadians(right.toeIn),
  };
}

/**
 * How a left and a right wheel's steer (rad) stand to the Ackermann ideal, static toe taken out: each wheel is counted
 * from where it stands straight ahead, so that toe-in is no error of the turn.
 * Source:   the relation as in `idealOuter`.
 */
export function ackermannOf(left: number, right: number, car: AckermannCar): Ackermann {
  // Toe-in points the left wheel right (steer negative) and the right wheel left.
  const turnedLeft = left + car.toeLeft;
  const turnedRight = right - car.toeRight;
  const toLeft = turnedLeft + turnedRight > 0;
  const side = toLeft ? 1 : -1;
  const inner = side * (toLeft ? turnedLeft : turnedRight);
  const outer = side * (toLeft ? turnedRight : turnedLeft);
  const ideal = idealOuter(inner, car.track, car.wheelbase);
  return {
    inner,
    outer,
    ideal,
    idealOuter: side * ideal + (toLeft ? car.toeRight : -car.toeLeft),
    error: outer - ideal,
    percent: inner > PERCENT_FROM ? (100 * (inner - outer)) / (inner - ideal) : undefined,
  };
}
