import type { Radians } from '../units/index.ts';
import { type Chain, lag } from './chain.ts';

/** How a chain turns: the figures of the one joint that moves just as the whole chain does. */
export interface ShaftMotion {
  /** The least and greatest of output turn over input turn. */
  readonly min: number;
  readonly max: number;
  /** Peak to peak of output minus input over a turn, rad. */
  readonly swing: Radians;
  /** Angle of a single joint alone that fluctuates as much, rad. */
  readonly equivalentAngle: Radians;
  /** Where the column yoke's ears stand, from the first reference, when the output turns slowest; it does twice a turn. */
  readonly slowest: Radians;
}

/**
 * The motion of a whole chain in closed form.
 *
 * A single joint takes the tangent of an angle to cos b times it, and clockings and bends only add to angles: on the
 * direction (cos, sin) of the ears each is a 2 × 2 matrix, diag(1, cos b) or a rotation. Their product is again a
 * rotation, a diagonal and a rotation (its singular values s1, s2), so the whole chain moves as one joint with
 * cos b = s2 / s1 at some angle to the ears. Its ratio runs from s2/s1 to s1/s2 and it lags at most
 * asin((s1 - s2) / (s1 + s2)), either way.
 * Frame:    that of the chain; turns are right-hand about the axes from handwheel to box.
 * Units:    rad; `clocks` one for each intermediate shaft.
 * Outcomes: none; a chain that turns has a motion.
 * Source:   own derivation; the single joint as in Mechanical Engineer's Data Handbook, sec. 2.4.3.
 * Checked:  tests/reference/cardan-joint.test.ts, tests/reference/shaft-chain.test.ts.
 */
export function motionOf(chain: Chain, clocks: ArrayLike<number>): ShaftMotion {
  // [a b; c d], from the column's ears to the box's.
  let a = 1;
  let b = 0;
  let c = 0;
  let d = 1;
  // Angle added since the last diagonal.
  let turn = 0;
  for (let i = 0; i < chain.count; i += 1) {
    const cosine = chain.cosines[i] as number;
    const bend = chain.bends[i] as number;
    if (cosine < 1) {
      const back = turn - bend;
      const cos = Math.cos(back);
      const sin = Math.sin(back);
      [a, c] = [cos * a - sin * c, (sin * a + cos * c) * cosine];
      [b, d] = [cos * b - sin * d, (sin * b + cos * d) * cosine];
      turn = bend;
    }
    turn += chain.quarter[i] as number;
    if (i < chain.count - 1) turn += clocks[i] as number;
  }
  // Sum and difference of the singular values, neither from a difference of large numbers.
  const sum = Math.hypot(a + d, c - b);
  const difference = Math.hypot(a - d, c + b);
  const min = (sum - difference) / (sum + difference);
  return {
    min,
    max: 1 / min,
    swing: 2 * Math.asin(Math.min(difference / sum, 1)),
    equivalentAngle: Math.atan2(2 * Math.sqrt(sum * difference), sum - difference),
    slowest: (Math.atan2(c + b, a - d) - Math.atan2(c - b, a + d)) / 2,
  };
}

/**
 * The turn of the box's input for a turn of the column: 0 at 0, right-hand about the axes from handwheel to box.
 * Allocates nothing. Units: rad; `columnYoke` is where the column yoke's ears stand at input 0, from the first
 * reference: what is built in when the first joint is fixed on the column, and shifts the whole curve.
 */
export function outputOf(motion: ShaftMotion, columnYoke: Radians, input: Radians): Radians {
  const start = columnYoke - motion.slowest;
  return input - lag(motion.min, start + input) + lag(motion.min, start);
}

/**
 * The handwheel angle that the box sees for one at the rim, for the steering's solver: both counter-clockwise for the
 * driver, which is left-hand about axes that point away from him. Allocates nothing. Units: rad.
 */
export function boxHandwheel(motion: ShaftMotion, columnYoke: Radians, handwheel: Radians): Radians {
  return -outputOf(motion, columnYoke, -handwheel);
}

/** Output turn over input turn at a turn of the column. Units and `columnYoke` as for `outputOf`. */
export function ratioOf(motion: ShaftMotion, columnYoke: Radians, input: Radians): number {
  const angle = columnYoke - motion.slowest + input;
  const c = Math.cos(angle);
  const s = Math.sin(angle) * motion.min;
  return motion.min / (c * c + s * s);
}

/**
 * Where to set the column yoke's ears so that left and right turns are alike: the output is then slowest (or, a
 * quarter turn on, quickest) straight ahead. rad from the first reference, in (-π/2, π/2].
 */
export function evenColumnYoke(motion: ShaftMotion, straightAhead: 'slowest' | 'quickest'): Radians {
  return halfTurn(motion.slowest + (straightAhead === 'slowest' ? 0 : Math.PI / 2));
}

/** An angle of ears, which are the same after half a turn, in (-π/2, π/2]. A hair's breadth above -π/2 is π/2. */
export function halfTurn(angle: number): Radians {
  const rest = angle - Math.PI * Math.round(angle / Math.PI);
  return rest <= -Math.PI / 2 + 1e-12 ? Math.PI / 2 : rest + 0;
}
