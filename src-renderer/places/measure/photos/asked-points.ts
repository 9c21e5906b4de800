import {
  type Hardpoint,
  hardpoints,
  type LayoutDocument,
  originOf,
  type Photo,
} from '../../../../shared-math/layout/index.ts';
import { isAnchor } from '../../../../shared-math/trace/index.ts';

// Which points a photo is asked for, and which are known without it.

/** Whether a point need not be clicked on a photo: it places the photo, or a tape has it. */
export function isGiven(document: LayoutDocument, photo: Photo, point: Hardpoint): boolean {
  return isAnchor(photo, { point }) || originOf(document, point) === 'tape';
}

/** Whether a click on a point does not move it, but says how the camera stood: a tape has it, or a photo is placed by it. */
export function isKnown(document: LayoutDocument, point: Hardpoint): boolean {
  if (originOf(document, point) === 'tape') return true;
  const pair = hardpoints(document).filter(({ id }) => id === point.id || id === point.twin);
  return document.photos.some((photo) => pair.some((each) => isAnchor(photo, { point: each })));
}

/**
 * The points of the other side that a photo may show besides: of mirrored pairs from above and ahead the right one, from the side
 * the far wheel. They tell how the camera stood better than anything.
 */
export function otherSideOf(photo: Photo | undefined, points: readonly Hardpoint[]): Hardpoint[] {
  if (photo?.view === 'side' && photo.flipped) return [];
  return points.filter(
    ({ id, twin }) =>
      twin !== undefined &&
      id.split('.')[1] === 'right' &&
      (photo?.view !== 'side' || id.endsWith('.wheelCentre')),
  );
}
