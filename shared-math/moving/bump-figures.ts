import { wheelTravel } from '../sweep/index.ts';
import type { LengthUnit, Radians } from '../units/index.ts';
import { type HandPose, type MovedCar, RIDE_HEIGHT } from './moved-car.ts';

/** The bump that a customer can picture, mm: two inches, or fifty millimetres. */
const BUMP: Readonly<Record<LengthUnit, number>> = { in: 50.8, mm: 50 };

/** A bump of a round height, mm, as far as the layout's travel has it. */
export function roundBump({ layout }: Pick<MovedCar, 'layout'>, unit: LengthUnit): number {
  return Math.min(BUMP[unit], layout.travel.bump);
}

/** What a car does in a pose, and which pose that is. `steer` is the bump steer, rad; undefined if a link does not reach. */
export interface BumpFigure {
  readonly pose: HandPose;
  readonly steer: Radians | undefined;
}

function figureAt(car: MovedCar, pose: HandPose): BumpFigure {
  const before = car.pose;
  const steer = car.put(pose) === undefined ? car.wheels.bumpSteer : undefined;
  car.put(before);
  return { pose, steer };
}

/** Both wheels on the bump, the handwheel straight ahead. mm. */
export function bothWheels(car: MovedCar, bump: number): BumpFigure {
  return figureAt(car, { ...RIDE_HEIGHT, heave: bump });
}

/**
 * One wheel on the bump (mm) and the other at ride height, whichever side does more: heave is half of it, and roll the angle
 * whose sine is its share of the distance across the wheel centres. Less of a bump where the layout's roll ends sooner.
 */
export function oneWheel(car: MovedCar, bump: number): BumpFigure {
  const { halfTrack, sine } = wheelTravel(car.layout);
  const tilt = Math.min(bump / (2 * halfTrack), sine);
  const [left, right] = [1, -1].map((side) =>
    figureAt(car, { ...RIDE_HEIGHT, heave: tilt * halfTrack, roll: side * Math.asin(tilt) }),
  ) as [BumpFigure, BumpFigure];
  if (left.steer === undefined || right.steer === undefined) return left.steer === undefined ? left : right;
  return Math.abs(right.steer) > Math.abs(left.steer) ? right : left;
}
