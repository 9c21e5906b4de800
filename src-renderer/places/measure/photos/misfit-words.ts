import { capitalised } from '../../../../shared-math/capitalised.ts';
import type { Photo } from '../../../../shared-math/layout/index.ts';
import { type Observed, planeOf } from '../../../../shared-math/trace/index.ts';

/** How lengths are read by whoever reads them. */
export interface LengthWords {
  length(mm: number): string;
}

/** The largest of what was observed together, without its sign; two numbers of a click as how far off it is. */
export function farthest(residuals: readonly number[]): number {
  return residuals.length === 2 ? Math.hypot(...residuals) : Math.max(0, ...residuals.map(Math.abs));
}

/** px with as many figures as a hand can click. */
export function pixelWords(px: number): string {
  return `${px < 9.95 ? px.toFixed(1) : Math.round(px)} px`;
}

/** How far what was observed lies from what all the others say: px of the photo, and mm of its plane. */
export function missWords(
  observed: Observed,
  off: number,
  photos: readonly Photo[],
  words: LengthWords,
): string {
  const { kind } = observed;
  if (kind === 'distance' || kind === 'length' || kind === 'depth' || kind === 'stands')
    return `All the others together say ${words.length(off)} otherwise.`;
  const photo = photos[observed.photo];
  const plane = photo && planeOf(photo);
  const there = plane?.ok ? `, ${words.length(off * plane.value.mmPerPixel)} on the car` : '';
  return `All the others together say ${pixelWords(off)} beside it${there}.`;
}

/** What of a photo does not fit, by what a builder calls it; `point` names a hardpoint. */
export function observedWords(
  observed: Observed,
  photos: readonly Photo[],
  point: (id: string) => string,
): string {
  const photo = `“${photos[observed.photo]?.name ?? ''}”`;
  switch (observed.kind) {
    case 'mark':
      return `The click on the ${point(observed.point)} in ${photo}`;
    case 'depth':
      return `The depth typed for the ${point(observed.point)} in ${photo}`;
    case 'anchor':
      return `The click on the ${point(observed.point)} that places ${photo}`;
    case 'stands':
      return `Where the drawing has the ${point(observed.point)}, which ${photo} rests on`;
    case 'corner':
      return photos[observed.photo]?.straighten
        ? `Corner ${observed.at + 1} of the rectangle in ${photo}`
        : `The ${observed.at === 0 ? 'first' : 'second'} end of the scale in ${photo}`;
    case 'lens':
      return `The straight edge in ${photo}`;
    case 'level':
      return `The level line in ${photo}`;
    case 'distance':
      return `The camera’s distance in ${photo}`;
    case 'length':
      return `${capitalised(point(observed.from))} to ${point(observed.to)} by the tape, beside ${photo}`;
  }
}
