import type { AdjustedPoint } from '../../../shared-math/adjust/index.ts';
import type { Origin } from '../../../shared-math/layout/index.ts';

const WORDS: Readonly<Record<Origin, string>> = {
  guess: 'Guessed: nobody measured or planned it yet.',
  plan: 'Planned here.',
  tape: 'Measured on the car',
  photo: 'Traced from a photo.',
};

/** Where a point's place comes from, in words; of a taped one how far off it may be, back, out and up. */
export function originWords(
  origin: Origin,
  known: AdjustedPoint | undefined,
  length: (mm: number) => string,
): string {
  if (origin !== 'tape') return WORDS[origin];
  if (!known || known.free.length > 0 || known.doubt.every((each) => each === 0)) return `${WORDS.tape}.`;
  const [x, y, z] = known.doubt;
  return `${WORDS.tape}: ± ${length(x)} back, ${length(y)} out, ${length(z)} up.`;
}
