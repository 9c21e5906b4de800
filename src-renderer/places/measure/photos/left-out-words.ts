import type { Photo } from '../../../../shared-math/layout/index.ts';
import {
  type LeftOut,
  type PhotoPlane,
  type Reached,
  withLevelOff,
  withoutDistance,
  withPlaneOff,
} from '../../../../shared-math/trace/index.ts';
import { type Degrees, formatSpan, MM_PER_INCH, toRadians } from '../../../../shared-math/units/index.ts';

/** What the sentences need of the reader. */
export interface Reader {
  readonly unit: 'in' | 'mm';
  length(mm: number): string;
}

/** Figures of a per cent below this have a decimal. */
const FINE_BELOW = 2;

function percent(share: number): string {
  const value = Math.abs(share) * 100;
  return `${value < FINE_BELOW ? value.toFixed(1) : value.toFixed(0)} %`;
}

/** Something small that somebody may be off by, in the reader's unit: an inch, or a centimetre. */
const SMALL_STEP = { in: { mm: MM_PER_INCH, words: 'inch' }, mm: { mm: 10, words: 'centimetre' } } as const;

const lower = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);

function withoutDistanceWords(
  { behind, share, off, distance, by, doubt }: LeftOut,
  name: string,
  reader: Reader,
): string {
  const stands = `${reader.length(Math.abs(behind))} ${behind < 0 ? 'before' : 'behind'} the plane`;
  const far = formatSpan(distance, reader.unit);
  if (by === 'file')
    return (
      `How far the camera stood is not given: about ${far} by the photo’s own file. ` +
      `If that is ${percent(doubt)} out, the ${lower(name)}, ${stands}, is ${reader.length(off)} off.`
    );
  return (
    'How far the camera stood is not given. ' +
    `With a phone’s usual lens (26 mm on film, common practice, no published source) it was about ${far}, and then the ${lower(name)}, ` +
    `${stands}, comes out ${percent(share)} too ${share < 0 ? 'large' : 'small'}: ${reader.length(off)} off.`
  );
}

/**
 * What is taken for granted about a photo that is to scale, and what that costs: one sentence or two for each of the
 * camera's distance, where the plane stands, and its level. Empty if all is given.
 */
export function leftOutWords(
  photo: Photo,
  plane: PhotoPlane,
  points: readonly (Reached & { readonly name: string })[],
  reader: Reader,
): string[] {
  const name = ({ point }: LeftOut) => points.find(({ id }) => id === point)?.name ?? point;
  const words: string[] = [];
  const distance = withoutDistance(photo, plane, points);
  if (distance) words.push(withoutDistanceWords(distance, name(distance), reader));
  if (photo.depth === undefined) {
    const step = SMALL_STEP[reader.unit];
    const off = withPlaneOff(photo, plane, points, step.mm);
    words.push(
      `Where the plane stands is not given. ${
        off
          ? `Each ${step.words} that it stands elsewhere puts the ${lower(name(off))} off by ${reader.length(off.off)}.`
          : 'What stands behind it, and by how much, is a guess until then.'
      }`,
    );
  }
  if (photo.straighten && !photo.level && !photo.levelCheck) {
    const off = withLevelOff(photo, points, toRadians(1 as Degrees));
    const stands = photo.view === 'top' ? 'lies square to the car' : 'stands level';
    if (off) {
      const named = points.find(({ id }) => id === off.point)?.name ?? off.point;
      words.push(
        `That the rectangle ${stands} is taken for granted. Each degree that it does not puts the ${lower(named)} off by ${reader.length(off.off)}: check the level.`,
      );
    }
  }
  return words;
}
