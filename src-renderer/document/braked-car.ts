import {
  type BrakingCar,
  type BrakingRow,
  brakingCar,
  GRIP_RANGE,
  prepareBraked,
  sweepBraking,
} from '../../shared-math/brake/index.ts';
import { type Refusal, refusalLine } from '../../shared-math/layout/index.ts';
import type { FrontEnd } from '../../shared-math/linkage/index.ts';
import type { Outcome } from '../../shared-math/outcome.ts';
import { evenly } from '../../shared-math/sweep/index.ts';
import { formatDecimal, type Radians, toRadians } from '../../shared-math/units/index.ts';

/** How hard the car can be braked on the board: from brakes off to the best grip of a dry road. */
export const BRAKING_LIMITS = [0, GRIP_RANGE[1]] as const;

/** The last grip that each front end was braked at: a slider asks for one and the same pose many times. */
const last = new WeakMap<FrontEnd, { readonly grip: number; readonly braked: FrontEnd }>();
const cars = new WeakMap<FrontEnd, Outcome<BrakingCar, Refusal>>();

/** What a front end brakes with, worked out once. */
export function brakingCarOf(frontEnd: FrontEnd): Outcome<BrakingCar, Refusal> {
  const known = cars.get(frontEnd);
  if (known) return known;
  const car = brakingCar(frontEnd.layout);
  cars.set(frontEnd, car);
  return car;
}

/** The front end as it stands with the brakes on at a grip; itself with them off, and where nothing lets it wind up. */
export function brakedOf(frontEnd: FrontEnd, grip: number): FrontEnd {
  if (grip === 0) return frontEnd;
  const known = last.get(frontEnd);
  if (known?.grip === grip) return known.braked;
  const car = brakingCarOf(frontEnd);
  const braked = car.ok ? prepareBraked(frontEnd, car.value, grip) : frontEnd;
  last.set(frontEnd, { grip, braked });
  return braked;
}

/** Poses over the braking, brakes off included. */
const SWEEP_COUNT = 31;

/** Braking from off to the most at ride height, the handwheel held (rad); none where the layout's masses cannot be. */
export function brakingSweepOf(frontEnd: FrontEnd, handwheel: Radians): readonly BrakingRow[] {
  const car = brakingCarOf(frontEnd);
  if (!car.ok) return [];
  const grips = evenly(BRAKING_LIMITS[0], BRAKING_LIMITS[1], SWEEP_COUNT);
  return sweepBraking(frontEnd, car.value, grips, { heave: 0, roll: toRadians(0), handwheel });
}

/** How hard the car brakes: "0.45 g". */
export const brakingWords = (grip: number): string => `${formatDecimal(grip, 2)} g`;

/** Why braking moves nothing, where it does not; empty otherwise. */
export function brakingNote(frontEnd: FrontEnd): string {
  const car = brakingCarOf(frontEnd);
  if (!car.ok) return `Not braked: ${refusalLine(car.failure)}.`;
  return car.value.by === 'links'
    ? 'Its links hold this axle: it does not wind up under braking, so nothing moves.'
    : '';
}
