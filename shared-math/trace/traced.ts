import type { Hardpoint, Photo } from '../layout/index.ts';
import { planeOf, spotOf } from './planes.ts';

/** px between a mark and where its hardpoint is seen, below which the point is taken to stand where it was traced. */
const SAME_SPOT = 3;

/**
 * Whether a hardpoint was traced on one of the photos and has not been moved since: that photo still shows it where it
 * was marked. A point that was moved is the builder's plan, and no tape on the car can speak of it.
 */
export function standsAsTraced(photos: readonly Photo[], point: Hardpoint): boolean {
  return photos.some((photo) => {
    const mark = photo.marks.find((each) => each.point === point.id || each.point === point.twin);
    const plane = mark && planeOf(photo);
    const spot = plane?.ok ? spotOf(photo, plane.value, point.at) : undefined;
    return (
      mark !== undefined &&
      spot !== undefined &&
      Math.hypot(spot[0] - mark.at[0], spot[1] - mark.at[1]) <= SAME_SPOT
    );
  });
}
