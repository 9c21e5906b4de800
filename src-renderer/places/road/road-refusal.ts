import { RUN_SPEED_MAX, roadProblem } from '../../../shared-math/ride/index.ts';
import { profileOf, type RoadChoice } from './road-choice.ts';

/** Why a road cannot be driven over so, as a sentence without its full stop; undefined if it can. */
export function roadRefusal(
  choice: RoadChoice,
  tyreRadius: number,
  length: (mm: number) => string,
): string | undefined {
  if (!(choice.speed > 0 && choice.speed <= RUN_SPEED_MAX))
    return 'a speed is more than 0 and at most 300 km/h';
  const profile = profileOf(choice);
  const problem = profile && roadProblem(profile, tyreRadius);
  if (!problem) return undefined;
  // The mathematics speak mm; the reader gets the figures in the unit that stands in the field.
  return problem.reason
    .replace(
      /goes from ([-\d.]+) to ([-\d.]+) mm, found ([-\d.e+]+)$/,
      (_, least, most, found) =>
        `goes from ${length(Number(least))} to ${length(Number(most))}, found ${length(Number(found))}`,
    )
    .replaceAll(/([\d.]+) mm/g, (_, mm) => length(Number(mm)));
}
