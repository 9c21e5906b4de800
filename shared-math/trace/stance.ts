import type { ViewPoint } from '../drawing/index.ts';
import type { Photo } from '../layout/index.ts';
import type { Radians } from '../units/index.ts';
import type { PhotoPlane } from './photo-plane.ts';

/** How a camera stood to what its photo was put to scale by. */
export interface Stance {
  /** mm from the plane, square to it. */
  readonly distance: number;
  /** Between the line of sight to what the scale rests on and the square to the plane. */
  readonly offSquare: Radians;
  /** The middle of what the scale rests on, mm of the view. */
  readonly middle: ViewPoint;
  /** mm by which the camera stood to the photographer's right of that, and above it; below 0 left and below. */
  readonly right: number;
  readonly above: number;
}

/** The middle of what a photo's scale rests on, mm of the view; undefined beyond its horizon. */
export function middleOfScale(photo: Photo, plane: PhotoPlane): ViewPoint | undefined {
  const { straighten, scale, size } = photo;
  const spots =
    straighten?.points.map(({ at }) => at) ??
    (scale ? [scale.from, scale.to] : ([[size[0] / 2, size[1] / 2]] as const));
  const places = spots.map((spot) => plane.toPlace(spot));
  const [sx, sy] = [0, 1].map((axis) =>
    places.reduce((sum, place) => sum + (place?.[axis as 0 | 1] ?? Number.NaN), 0),
  ) as [number, number];
  const middle: ViewPoint = [sx / places.length, sy / places.length];
  return Number.isFinite(middle[0] + middle[1]) ? middle : undefined;
}

/** How a photo's camera stood; undefined while its place is not known. */
export function stanceOf(photo: Photo, plane: PhotoPlane): Stance | undefined {
  const { camera } = plane;
  const middle = middleOfScale(photo, plane);
  if (!camera || !middle) return undefined;
  const [dx, dy] = [camera.foot[0] - middle[0], camera.foot[1] - middle[1]];
  return {
    distance: camera.distance,
    offSquare: Math.atan2(Math.hypot(dx, dy), camera.distance) as Radians,
    middle,
    right: photo.flipped ? -dx : dx,
    above: -dy,
  };
}
