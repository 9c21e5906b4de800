import type { Photo } from '../../../../shared-math/layout/index.ts';
import type { PhotoSpot } from '../../../../shared-math/trace/index.ts';
import type { PictureSize } from './photo-pictures.svelte.ts';

// A photo whose picture is exchanged for another: what was specified about the old one stays where it still holds.

/** The picture that comes in its place. */
export interface OtherPicture extends Pick<Photo, 'hash' | 'name' | 'size'> {
  /** Of a PDF, from 1. */
  readonly page: number;
}

/** px for px alike; the same shape in other px; or another shape, on which no mark of the old one means anything. */
export type Fit = 'same' | 'scaled' | 'other';

/**
 * How one size fits another. Whoever reduces a picture rounds each side to whole px, so that of one shape the products of
 * crossed sides differ by both sides' sum at most.
 */
export function fitOf([width, height]: PictureSize, [newWidth, newHeight]: PictureSize): Fit {
  if (width === newWidth && height === newHeight) return 'same';
  const crossed = Math.abs(width * newHeight - newWidth * height);
  return crossed <= Math.min(width + height, newWidth + newHeight) ? 'scaled' : 'other';
}

/** Shares by which places go right and down. */
type Shares = readonly [number, number];

type Scaled = { readonly [Key in keyof Photo]-?: (value: NonNullable<Photo[Key]>, by: Shares) => Photo[Key] };

const spot = ([x, y]: PhotoSpot, [right, down]: Shares): PhotoSpot => [x * right, y * down];
const ends = <Line extends { from: PhotoSpot; to: PhotoSpot }>(line: Line, by: Shares): Line => ({
  ...line,
  from: spot(line.from, by),
  to: spot(line.to, by),
});
const clicked = <Click extends { at: PhotoSpot }>(click: Click, by: Shares): Click => ({
  ...click,
  at: spot(click.at, by),
});
const asIs = <Value>(value: Value): Value => value;

/** What each thing that is specified about a photo is on the same picture in other px; whoever adds one decides it here. */
const SCALED: Scaled = {
  view: asIs,
  hash: asIs,
  name: asIs,
  page: asIs,
  size: asIs,
  opacity: asIs,
  shown: asIs,
  front: asIs,
  flipped: asIs,
  crop: ([left, top, right, bottom], by) =>
    [...spot([left, top], by), ...spot([right, bottom], by)] as unknown as NonNullable<Photo['crop']>,
  lens: ({ line }, by) => ({ line: line.map((each) => spot(each, by)) }),
  straighten: ({ points }, by) => ({ points: points.map((each) => clicked(each, by)) }),
  scale: ends,
  level: ends,
  levelCheck: ends,
  anchor: clicked,
  depth: asIs,
  distance: asIs,
  distanceSure: asIs,
  distanceDoubt: asIs,
  focal: ({ px, share }, by) => ({ px: px * Math.max(...by), share }),
  marks: (marks, by) => marks.map((each) => clicked(each, by)),
  notes: (notes, by) => notes.map((each) => ends(each, by)),
  lengths: asIs,
};

/** The photo with another picture, and all that was specified about it: in the new px where those are others. */
export function withMarksKept(photo: Photo, { hash, name, page, size }: OtherPicture): Photo {
  const by: Shares = [size[0] / photo.size[0], size[1] / photo.size[1]];
  const entries = Object.entries(photo).map(([key, value]) => {
    const scaled = SCALED[key as keyof Photo] as (value: unknown, by: Shares) => unknown;
    return [key, value === undefined ? value : scaled(value, by)];
  });
  return paged({ ...(Object.fromEntries(entries) as Photo), hash, name, size }, page);
}

/** The photo with another picture, of which nothing is known yet; what the tape says of the car stays. */
export function withoutMarks(photo: Photo, { hash, name, page, size }: OtherPicture): Photo {
  const { view, opacity, shown, front, flipped, lengths } = photo;
  return paged(
    {
      view,
      hash,
      name,
      size,
      opacity,
      shown,
      ...(front === undefined ? {} : { front }),
      ...(flipped === undefined ? {} : { flipped }),
      marks: [],
      notes: [],
      lengths,
    },
    page,
  );
}

function paged({ page: _, ...photo }: Photo, page: number): Photo {
  return page === 1 ? photo : { ...photo, page };
}

/** Whether anything was marked on a photo or specified for its calibration. */
export function isMarkedOn(photo: Photo): boolean {
  const { crop, lens, straighten, scale, level, levelCheck, anchor, depth, distance, marks, notes } = photo;
  const set = [crop, lens, straighten, scale, level, levelCheck, anchor, depth, distance];
  return marks.length > 0 || notes.length > 0 || set.some((each) => each !== undefined);
}
