import { project, VIEW_AXES, type View } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import type { Photo } from '../layout/index.ts';
import type { Outcome } from '../outcome.ts';
import type { PhotoSpot } from './photo-places.ts';
import { type LooseStart, type PhotoPlane, preparePhoto, type TraceFailure } from './photo-plane.ts';

/** Where an uncalibrated photo lies: about the front end, as wide as such photos mostly are. mm. */
export const LOOSE: Record<View, LooseStart> = {
  side: { middle: [500, -480], width: 3000 },
  top: { middle: [500, 0], width: 3000 },
  front: { middle: [0, -450], width: 2400 },
};

/** Where the plane of a photo stands along its view: as given, else where its known point stands. */
export function depthOf(photo: Photo): number {
  return photo.depth ?? photo.anchor?.stands[VIEW_AXES[photo.view].toward.axis] ?? 0;
}

/** Photos of a document do not change, so what follows from one is worked out once. */
const PREPARED = new WeakMap<Photo, Outcome<PhotoPlane, TraceFailure>>();

export function planeOf(photo: Photo): Outcome<PhotoPlane, TraceFailure> {
  const known = PREPARED.get(photo);
  if (known) return known;
  const plane = prepared(photo);
  PREPARED.set(photo, plane);
  return plane;
}

function prepared(photo: Photo): Outcome<PhotoPlane, TraceFailure> {
  const { view, size, flipped, lens, straighten, scale, level, anchor, distance } = photo;
  const before = anchor ? anchor.stands[VIEW_AXES[view].toward.axis] - depthOf(photo) : 0;
  return preparePhoto(
    {
      size,
      flipped,
      lens,
      straighten,
      scale,
      level,
      distance,
      anchor: anchor && { at: anchor.at, place: project(view, anchor.stands), before },
    },
    LOOSE[view],
  );
}

/** Where a photo shows a point of the car; the way back of tracing it. */
export function spotOf(photo: Photo, plane: PhotoPlane, at: Point): PhotoSpot | undefined {
  const [x, y] = project(photo.view, at);
  const { camera } = plane;
  if (!camera) return plane.toPhoto([x, y]);
  const share = (at[VIEW_AXES[photo.view].toward.axis] - depthOf(photo)) / camera.distance;
  return plane.toPhoto([
    (x - camera.foot[0] * share) / (1 - share),
    (y - camera.foot[1] * share) / (1 - share),
  ]);
}
