import { unproject, VIEW_AXES, type View, type ViewPoint } from '../drawing/index.ts';
import type { Point } from '../geometry/points.ts';
import { add, cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Photo } from '../layout/index.ts';
import { CAMERA_UNKNOWNS, SEEN_SIZE, see } from './camera-model.ts';
import { distorted, type Lens } from './lens.ts';
import { cameraStart, knownPlaces, wayOf } from './photo-camera.ts';
import type { FlatPlace, PhotoSpot } from './photo-places.ts';

/** Where a photo could be taken from, by the same person with the same camera as another one. */
export interface Standpoint {
  readonly like: Photo;
  readonly view: View;
  /** Where in the view's plane the camera stands, and what it looks at; mm. */
  readonly from: ViewPoint;
  readonly toward: ViewPoint;
  /** mm from the rectangle. */
  readonly distance: number;
}

/** A point as it is called and where it stands. */
interface Named {
  readonly id: string;
  readonly at: Point;
}

/** mm along the view: beside the left wheel, on the floor, before the tyres. */
const USUAL_PLANE: Record<View, number> = { side: 860, top: 0, front: 420 };

/** From the car to a camera (right, down, ahead) that looks at a point, upright in its view; by rows. */
function lookingAt(at: Point, target: Point, down: Point): Float64Array {
  const ahead = unit(subtract(target, at));
  const below = unit(subtract(down, scaled(ahead, dot(down, ahead))));
  return Float64Array.of(...cross(below, ahead), ...below, ...ahead);
}

/** px: a straight edge of the world along the upper border of a picture, as its lens bends it. */
export function edgeAcross(lens: Lens): PhotoSpot[] {
  const [width, height] = lens.size;
  return [0.06, 0.25, 0.5, 0.75, 0.94].map((share) => distorted(lens, [share * width, 0.08 * height]));
}

/**
 * A photo as it would come out and be put to scale: taken from a standpoint with the focal length of another photo, a
 * rectangle of the same sides before it, everything given that was given of the other one, and the points that come
 * within the picture clicked. Undefined if the other's camera is not known.
 */
export function takenFrom(
  { like, view, from, toward, distance }: Standpoint,
  points: readonly Named[],
): Photo | undefined {
  const start = cameraStart(like);
  if (!start) return undefined;
  const { axis } = VIEW_AXES[view].toward;
  const same = view === like.view;
  const plane = same ? start.rectangle.middle[axis] : USUAL_PLANE[view];
  const side = same && like.flipped ? -1 : 1;
  const inView = (place: ViewPoint, depth: number): Point => {
    const keep: [number, number, number] = [0, 0, 0];
    keep[axis] = depth;
    return unproject(view, place, keep);
  };
  const at = inView(from, plane + side * distance);
  const target = inView(toward, plane);
  const [right, down] = same
    ? [start.rectangle.right, start.rectangle.down]
    : [wayOf(view, 'right'), wayOf(view, 'down')];
  const size = like.size;
  const values = new Float64Array(CAMERA_UNKNOWNS);
  values.set([Math.log(start.focal), 0, 0, 0, ...at, start.plane.lens.k, 0]);
  const frame = { turn: lookingAt(at, target, wayOf(view, 'down')), size };
  const seen = new Float64Array(SEEN_SIZE);
  const shown = (point: Point): PhotoSpot | undefined =>
    see(values, 0, frame, Float64Array.from(point), 0, seen)
      ? [seen[0] as number, seen[1] as number]
      : undefined;
  const middle = same ? start.rectangle.middle : target;
  const corners = start.rectangle.places.flatMap(([x, y], i) => {
    const spot = shown(add(add(middle, scaled(right, x)), scaled(down, y)));
    const place = knownPlaces(like)[i]?.place;
    return spot && place ? [{ at: spot, place: place as FlatPlace }] : [];
  });
  const [first, last] = [corners[0], corners.at(-1)];
  if (!first || !last || corners.length < start.rectangle.places.length) return undefined;
  const anchor = like.anchor && shown(like.anchor.stands);
  const [w, h] = size;
  const given = <Key extends 'depth' | 'distance'>(key: Key, value: number) =>
    like[key] === undefined ? {} : { [key]: value };
  return {
    ...(like.flipped && same ? { flipped: true } : {}),
    ...(like.focal ? { focal: like.focal } : {}),
    ...(like.lens ? { lens: { line: edgeAcross(start.plane.lens) } } : {}),
    view,
    hash: like.hash,
    name: like.name,
    size,
    opacity: 1,
    shown: false,
    ...(like.straighten
      ? { straighten: { points: corners } }
      : { scale: { ...(like.scale as NonNullable<Photo['scale']>), from: first.at, to: last.at } }),
    ...(anchor && like.anchor ? { anchor: { ...like.anchor, at: anchor } } : {}),
    ...given('depth', plane),
    ...given('distance', distance),
    marks: points.flatMap(({ id, at: point }) => {
      const spot = shown(point);
      const inside = spot && spot[0] >= 0 && spot[1] >= 0 && spot[0] <= w && spot[1] <= h;
      return inside && id !== like.anchor?.point ? [{ point: id, at: spot }] : [];
    }),
    notes: [],
    lengths: [],
  };
}
