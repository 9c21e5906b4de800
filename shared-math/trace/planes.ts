import { type Eye, project, seenFrom, VIEW_AXES, type View } from '../drawing/index.ts';
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

/** 1 where the camera stood on the side that the view looks from, -1 on the other. */
export function cameraSide({ flipped }: Photo): 1 | -1 {
  return flipped ? -1 : 1;
}

/** mm by which a coordinate along the photo's view stands nearer to its camera than its plane. */
export function beforeOf(photo: Photo, coordinate: number): number {
  // Taken from the other side, what the view has nearer to its eye was farther from the camera.
  return cameraSide(photo) * (coordinate - depthOf(photo));
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
  const { view, size, flipped, lens, straighten, scale, level, anchor, distance, focal } = photo;
  const before = anchor ? beforeOf(photo, anchor.stands[VIEW_AXES[view].toward.axis]) : 0;
  return preparePhoto(
    {
      size,
      flipped,
      lens,
      straighten,
      scale,
      level,
      distance,
      focal: focal?.px,
      anchor: anchor && { at: anchor.at, place: project(view, anchor.stands), before },
    },
    LOOSE[view],
  );
}

/** Where the photo's camera stood, as an eye that looks at the photo's plane; undefined while that is not known. */
export function eyeOf(photo: Photo, { camera }: PhotoPlane): Eye | undefined {
  if (!camera) return undefined;
  return { foot: camera.foot, distance: cameraSide(photo) * camera.distance, depth: depthOf(photo) };
}

/**
 * Where a photo shows a point of the car, px, its lens included; the way back of tracing it. Where the camera's place is not
 * known, as if the point stood in the photo's plane. Undefined at the camera and behind it.
 */
export function spotOf(photo: Photo, plane: PhotoPlane, at: Point): PhotoSpot | undefined {
  const eye = eyeOf(photo, plane);
  const place = eye ? seenFrom(eye, photo.view, at) : project(photo.view, at);
  return place && plane.toPhoto(place);
}
