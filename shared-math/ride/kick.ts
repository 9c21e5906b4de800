import { type FrontEnd, type FrontEndState, steerAxle } from '../linkage/index.ts';
import type { Radians } from '../units/index.ts';

/** rad of mean steer: the wheels are straight. */
const STRAIGHT = 1e-9;
const TRIES = 20;
/** rad of handwheel by which the first slope is felt. */
const FELT = 1e-3;

/** What `straightHandwheel` answers where no handwheel angle holds the wheels straight. */
export const NO_HANDWHEEL = Number.POSITIVE_INFINITY;

/**
 * The handwheel angle (rad) at which the posed axle's mean steer is `wanted`: how the handwheel would move if the road
 * held the wheels straight while the axle travels. Found by the secant from `start`; the state is left at that angle.
 * Needs `poseAxle` of the same front end just before. It is a movement and no force: tyres that give, friction in the
 * box and the driver's hands are not in it.
 * Outcomes: the angle; NO_HANDWHEEL where a link cannot reach, or an arm is at its dead centre.
 */
export function straightHandwheel(
  frontEnd: FrontEnd,
  state: FrontEndState,
  wanted: Radians,
  start: Radians,
): number {
  let before = start + FELT;
  if (steerAxle(frontEnd, before, state) !== 'ok') return NO_HANDWHEEL;
  let missBefore = state.meanSteer - wanted;
  let now: number = start;
  for (let i = 0; i < TRIES; i += 1) {
    if (steerAxle(frontEnd, now, state) !== 'ok') return NO_HANDWHEEL;
    const miss = state.meanSteer - wanted;
    if (Math.abs(miss) < STRAIGHT) return now;
    const slope = (miss - missBefore) / (now - before);
    before = now;
    missBefore = miss;
    now -= miss / slope;
    if (!Number.isFinite(now)) return NO_HANDWHEEL;
  }
  return NO_HANDWHEEL;
}
