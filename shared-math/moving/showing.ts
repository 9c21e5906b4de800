import type { LengthStyle } from '../units/index.ts';
import { FAILURE_WORDS } from '../words/index.ts';
import type { MovedCar } from './moved-car.ts';
import {
  anglesWords,
  byThemselves,
  doingWords,
  isMoved,
  isTurned,
  standingWords,
  steerWords,
} from './moving-words.ts';

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
function shortly(car: MovedCar): string {
  if (!car.standing) return FAILURE_WORDS[car.failure];
  const own = steerWords(car.wheels.bumpSteer);
  if (!isTurned(car.pose)) return own ?? byThemselves(0);
  const moved = isMoved(car.pose) ? `; ${own === undefined ? byThemselves(0) : `by themselves ${own}`}` : '';
  return `${anglesWords(car)}${moved}`;
}

/** What the shown cars do in their pose: one sentence, or where the wheels stand and of each car its name and its figures. */
export function doingOf(
  cars: readonly ShownCar[],
  style: LengthStyle,
): { readonly first: string; readonly each: readonly { readonly name: string; readonly words: string }[] } {
  const [first] = cars;
  if (!first) return { first: '', each: [] };
  if (cars.length === 1) return { first: doingWords(first.car, style), each: [] };
  const { pose } = first.car;
  return {
    first: `${standingWords(first.car, pose, style)}${isTurned(pose) ? ', left and right wheel' : ''}:`,
    each: cars.map(({ name, car }) => ({ name, words: `${shortly(car)}.` })),
  };
}

/** The same as lines. */
export function doingLines(cars: readonly ShownCar[], style: LengthStyle): readonly string[] {
  if (cars.length === 0) return [];
  const { first, each } = doingOf(cars, style);
  return [first, ...each.map(({ name, words }) => `${name}: ${words}`)];
}
