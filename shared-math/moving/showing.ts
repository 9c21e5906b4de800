import type { LengthStyle } from '../units/index.ts';
import { FAILURE_WORDS } from '../words/index.ts';
import type { MovedCar } from './moved-car.ts';
import { byThemselves, doingWords, standingWords, steerWords } from './moving-words.ts';

// Which of two cars a page shows, and what it then says.

/** One car of the two, or the first drawn in full with the second pale behind it. */
export type Shown = 'first' | 'second' | 'both';

/** A car that is shown, by its place among the page's cars: the one that it is said and drawn of first comes first. */
export interface ShownCar {
  readonly at: 0 | 1;
  readonly name: string;
  readonly car: MovedCar;
}

/** The cars of `cars` that are shown. */
export function shownCars(cars: readonly ShownCar[], shown: Shown): readonly ShownCar[] {
  if (shown === 'both' || cars.length < 2) return cars;
  return cars.filter(({ at }) => at === (shown === 'first' ? 0 : 1));
}

/** What one of two cars does, short. */
function lineOf(car: MovedCar): string {
  if (!car.standing) return FAILURE_WORDS[car.failure];
  return steerWords(car.wheels.bumpSteer) ?? byThemselves(0);
}

/** What the shown cars do in their pose: one sentence, or where the wheels stand and then a line for each car. */
export function doingLines(cars: readonly ShownCar[], style: LengthStyle): readonly string[] {
  const [first] = cars;
  if (!first) return [];
  if (cars.length === 1) return [doingWords(first.car, style)];
  return [
    `${standingWords(first.car, first.car.pose, style)}:`,
    ...cars.map(({ name, car }) => `${name}: ${lineOf(car)}.`),
  ];
}
