import { type FrontEnd, prepareWoundUp } from '../linkage/index.ts';
import type { WindUp } from '../pose/index.ts';
import { type BrakeLoads, brakeLoads } from './brake-loads.ts';
import type { BrakingCar } from './braking-car.ts';

/** Shares of load: the grip of tyres on a wet road up to the best of dry ones; common practice, no published source. */
export const GRIP_RANGE = [0.3, 0.9] as const;

/** The grip of a hard stop on a dry road, at which braking is judged; common practice, no published source. */
export const JUDGED_GRIP = 0.7;

/** What a grip comes to at the axle: loads in N, the moment of both sides in N·mm, the angles in rad. */
export interface BrakedAxle extends BrakeLoads {
  readonly moment: number;
  readonly windUp: WindUp;
}

/**
 * The moment that braking puts on the axle, and how far it winds up. The moment of a side is half of the brake force times
 * its lever; the angle is that over its stiffness (`windUpStiffness`): beam theory for small angles, taken on for large ones.
 * No grip, no wind-up.
 */
export function brakedAxle(car: BrakingCar, grip: number): BrakedAxle {
  const loads = brakeLoads(car, grip);
  const force = loads.brakeForce / 2;
  return {
    ...loads,
    moment: force * (car.lever.left + car.lever.right),
    windUp: {
      left: (force * car.lever.left) / car.stiffness.left,
      right: (force * car.lever.right) / car.stiffness.right,
    },
  };
}

/** The front end with its axle wound up by braking at a grip: posed and steered as any other. */
export function prepareBraked(frontEnd: FrontEnd, car: BrakingCar, grip: number): FrontEnd {
  return prepareWoundUp(frontEnd, brakedAxle(car, grip).windUp);
}
