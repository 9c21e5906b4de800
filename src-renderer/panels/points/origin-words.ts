import type { AdjustedPoint, AxisName } from '../../../shared-math/adjust/index.ts';
import type { Origin } from '../../../shared-math/layout/index.ts';

const WORDS: Readonly<Record<Origin, string>> = {
  guess: 'Guessed: nobody measured or planned it yet.',
  plan: 'Planned here.',
  tape: 'Measured on the car',
  photo: 'Traced from a photo.',
};

const WAYS = ['back', 'out', 'up'] as const;

/** Where a point's place comes from, in words; of a measured one how far off it may be, back, out and up. */
export function originWords(
  origin: Origin,
  known: AdjustedPoint | undefined,
  length: (mm: number) => string,
): string {
  const measured = origin === 'tape' || origin === 'photo';
  if (!measured || !known || known.doubt.every((each) => each === 0)) return ended(WORDS[origin]);
  if (known.free.length === 3 || (origin === 'tape' && known.free.length > 0)) return ended(WORDS[origin]);
  const doubts = known.doubt.map((doubt, axis) =>
    known.free.includes(AXES[axis] as AxisName)
      ? `${WAYS[axis]} not known`
      : `${length(doubt)} ${WAYS[axis]}`,
  );
  return `${WORDS[origin].replace(/\.$/, '')}: ± ${doubts.join(', ')}.`;
}

const AXES: readonly AxisName[] = ['x', 'y', 'z'];
const ended = (words: string): string => (words.endsWith('.') ? words : `${words}.`);
