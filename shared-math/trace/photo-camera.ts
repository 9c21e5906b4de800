import { unproject, VIEW_AXES, type View, type ViewPoint } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { cross } from '../geometry/vectors.ts';
import type { Photo } from '../layout/index.ts';
import { facing, standing } from './camera-place.ts';
import type { FlatPlace, UnbentSpot } from './photo-places.ts';
import type { PhotoPlane } from './photo-plane.ts';
import { depthOf, planeOf } from './planes.ts';
import type { Rectangle } from './rectangle-pose.ts';

/** A photo's camera and rectangle as the photo's own calibration has them: where an adjustment begins. */
export interface CameraStart {
  readonly plane: PhotoPlane;
  /** px. */
  readonly focal: number;
  /** From the car's axes to the camera's (right, down, ahead), by rows. */
  readonly turn: Float64Array;
  readonly at: Point;
  readonly rectangle: Rectangle & {
    readonly middle: Point;
    /** rad; how far it is turned in its plane, right toward down. */
    readonly turned: number;
    /** The middle's place in the rectangle's own mm. */
    readonly origin: FlatPlace;
  };
}

/** A way of the sheet as a unit vector of the car. */
export function wayOf(view: View, way: 'right' | 'down' | 'toward'): Point {
  const { axis, sign } = VIEW_AXES[view][way];
  const vector: [number, number, number] = [0, 0, 0];
  vector[axis] = sign;
  return vector;
}

const STARTS = new WeakMap<Photo, { readonly start: CameraStart | undefined }>();

/** Undefined for a photo whose camera is not known: it is not to scale, or neither distance nor focal length is given. */
export function cameraStart(photo: Photo): CameraStart | undefined {
  const known = STARTS.get(photo);
  if (known) return known.start;
  const start = started(photo);
  STARTS.set(photo, { start });
  return start;
}

function started(photo: Photo): CameraStart | undefined {
  const prepared = planeOf(photo);
  if (!prepared.ok || !prepared.value.camera || !(photo.straighten || photo.scale)) return undefined;
  const plane = prepared.value;
  const known = knownPlaces(photo);
  const seen = known.map(({ at }) => plane.toPlace(at));
  const first = seen[0];
  if (!first || seen.some((place) => !place)) return undefined;
  const { view } = photo;
  const focal = prepared.value.camera.focal;
  const middle: UnbentSpot = [photo.size[0] / 2, photo.size[1] / 2];
  const stance = standing(facing(plane.matrix, first), middle, focal);
  const [right, down] = [wayOf(view, 'right'), wayOf(view, 'down')];
  const ways = [right, down, cross(right, down)] as const;
  const turn = new Float64Array(9);
  for (let i = 0; i < 3; i += 1)
    for (let k = 0; k < 3; k += 1)
      for (let j = 0; j < 3; j += 1)
        turn[3 * i + k] =
          (turn[3 * i + k] as number) +
          (stance.turn[3 * i + j] as number) * ((ways[j] as Point)[k] as number);
  const depth = depthOf(photo);
  const stood = inCar(view, [stance.at[0], stance.at[1]], depth - stance.at[2]);
  return { plane, focal, turn, at: stood, rectangle: rectangleOf(photo, known, seen as ViewPoint[], depth) };
}

function inCar(view: View, place: ViewPoint, depth: number): Point {
  const keep: [number, number, number] = [0, 0, 0];
  keep[VIEW_AXES[view].toward.axis] = depth;
  return unproject(view, place, keep);
}

/** The rectangle's points and their places in it; without one, both ends of the scale. */
export function knownPlaces({ straighten, scale }: Photo) {
  if (straighten) return straighten.points;
  if (!scale) return [];
  return [
    { at: scale.from, place: [0, 0] as FlatPlace },
    { at: scale.to, place: [scale.distance, 0] as FlatPlace },
  ];
}

/** How places in the rectangle lie in the view: moved, turned and, where a scale besides the sides is given, stretched. */
function rectangleOf(
  photo: Photo,
  known: readonly { readonly place: FlatPlace }[],
  seen: readonly ViewPoint[],
  depth: number,
): CameraStart['rectangle'] {
  const mean = (list: readonly (readonly [number, number])[]) =>
    [0, 1].map((axis) => list.reduce((sum, each) => sum + (each[axis] as number), 0) / list.length) as [
      number,
      number,
    ];
  const origin = mean(known.map(({ place }) => place));
  const centre = mean(seen);
  const mirrored = photo.flipped ? -1 : 1;
  let [along, across, square] = [0, 0, 0];
  for (const [i, { place }] of known.entries()) {
    const [px, py] = [place[0] - origin[0], place[1] - origin[1]];
    const [[x, y]] = [seen[i] as ViewPoint];
    const [vx, vy] = [mirrored * (x - centre[0]), y - centre[1]];
    along += px * vx + py * vy;
    across += px * vy - py * vx;
    square += px * px + py * py;
  }
  const stretch = photo.straighten && photo.scale ? Math.hypot(along, across) / square : 1;
  const [rx, ry, rz] = wayOf(photo.view, 'right');
  return {
    right: [mirrored * rx, mirrored * ry, mirrored * rz],
    down: wayOf(photo.view, 'down'),
    places: known.map(
      ({ place }): FlatPlace => [stretch * (place[0] - origin[0]), stretch * (place[1] - origin[1])],
    ),
    middle: inCar(photo.view, centre, depth),
    turned: Math.atan2(across, along),
    origin,
  };
}
