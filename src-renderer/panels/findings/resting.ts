import type { Hardpoint } from '../../../shared-math/layout/index.ts';
import { isOtherOfPair } from '../../../shared-math/layout/index.ts';

/** Whether a point is one of those that decide how the car steers itself: kingpins, balls, what locates the axle, box. */
function decides({ id }: Hardpoint): boolean {
  return /^(axle|location|steering)\./.test(id) && !id.endsWith('.wheelCentre');
}

/**
 * Tells of findings whether they rest on guesses: the point that one is about was guessed, or half or more of the points
 * that decide the steering were. Such a verdict says nothing of the car yet, and waits.
 */
export function restsOnGuesses(
  points: readonly Hardpoint[],
  guessed: ReadonlySet<string>,
): (part: string) => boolean {
  const deciding = points.filter((point) => decides(point) && !isOtherOfPair(point));
  const count = deciding.filter(({ id }) => guessed.has(id)).length;
  const mostly = 2 * count >= deciding.length;
  return (part) => mostly || guessed.has(part);
}
