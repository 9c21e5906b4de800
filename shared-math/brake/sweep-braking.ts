import {
  createState,
  type FrontEnd,
  type PoseStatus,
  prepareWoundUp,
  solveFrontEnd,
} from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';
import { type BrakedAxle, brakedAxle, GRIP_RANGE, JUDGED_GRIP } from './braked.ts';
import { type BrakingCar, brakingCar } from './braking-car.ts';

/** The pose at which braking is looked at: mm, rad. */
export interface BrakingAt {
  readonly heave: number;
  readonly roll: Radians;
  readonly handwheel: Radians;
}

const STRAIGHT: BrakingAt = { heave: 0, roll: 0 as Radians, handwheel: 0 as Radians };

/** One grip: what it does to the axle, and both wheels; angles (rad) mean something only at status `ok`. */
export interface BrakingRow extends BrakedAxle {
  readonly grip: number;
  readonly status: PoseStatus;
  readonly leftCaster: number;
  readonly rightCaster: number;
  readonly leftSteer: number;
  readonly rightSteer: number;
  /** Mean steer less that of the same pose with the brakes off. */
  readonly brakeSteer: number;
}

/** Steps of 0.1 from the least grip to the most. */
export const BRAKING_ROWS = 7;

/** Grips from the least usual to the most. */
export const usualGrips = (): Float64Array =>
  evenly(GRIP_RANGE[0], GRIP_RANGE[1], BRAKING_ROWS).map((grip) => Number(grip.toFixed(6)));

/**
 * Caster and steer over grip, the frame held at one heave and roll and the handwheel held: what the axle's wind-up alone
 * does, both wheels posed and steered by the same solver as any pose. The front's dip is a matter of its heave.
 * Outcomes: a status for each grip; where the unbraked pose is out of reach, so is every grip.
 */
export function sweepBraking(
  frontEnd: FrontEnd,
  car: BrakingCar,
  grips: ArrayLike<number> = usualGrips(),
  at: BrakingAt = STRAIGHT,
): BrakingRow[] {
  const state = createState();
  const pose = (of: FrontEnd) => solveFrontEnd(of, at.heave, at.roll, at.handwheel, state);
  const unbraked = pose(frontEnd);
  const from = unbraked === 'ok' ? state.meanSteer : 0;
  return Array.from(grips, (grip) => {
    const braked = brakedAxle(car, grip);
    const status = unbraked === 'ok' ? pose(prepareWoundUp(frontEnd, braked.windUp)) : unbraked;
    const ok = status === 'ok';
    return {
      ...braked,
      grip,
      status,
      leftCaster: ok ? state.left.caster : 0,
      rightCaster: ok ? state.right.caster : 0,
      leftSteer: ok ? state.left.steer : 0,
      rightSteer: ok ? state.right.steer : 0,
      brakeSteer: ok ? state.meanSteer - from : 0,
    };
  });
}

/** The lesser caster of the two wheels, rad. */
export const leastCaster = (row: BrakingRow): number => Math.min(row.leftCaster, row.rightCaster);

/** A hard stop held against the brakes off, at ride height and straight ahead. */
export interface JudgedBraking {
  readonly car: BrakingCar;
  readonly off: BrakingRow;
  readonly hard: BrakingRow;
}

/** Braking at the grip that it is judged at; undefined where the layout's masses cannot be, or it does not reach. */
export function judgeBraking(frontEnd: FrontEnd): JudgedBraking | undefined {
  const car = brakingCar(frontEnd.layout);
  if (!car.ok) return undefined;
  const [off, hard] = sweepBraking(frontEnd, car.value, [0, JUDGED_GRIP]) as [BrakingRow, BrakingRow];
  return off.status === 'ok' && hard.status === 'ok' ? { car: car.value, off, hard } : undefined;
}
