import { unproject, VIEW_AXES, type View } from '../../../../shared-math/drawing/index.ts';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import {
  type LayoutDocument,
  type Obstacle,
  type ObstacleRole,
  type Photo,
  type Rail,
  usualObstacle,
  usualRail,
} from '../../../../shared-math/layout/index.ts';
import type { PhotoPlane, PhotoSpot } from '../../../../shared-math/trace/index.ts';
import { beforeOf } from '../../../../shared-math/trace/index.ts';

// Rails and obstacles, from spots clicked on a photo. A photo gives two of their three directions: the third is
// that of the thing as it stands, or of a usual one, until it is typed or traced from another side.

/** What an outline becomes. */
export type Outlined = 'rail' | ObstacleRole;

/** A rail or an obstacle that is there already and is traced again, or nothing for a new one. */
export type Existing = number | undefined;

type Axis = 0 | 1 | 2;

const alongView = (view: View): Axis => VIEW_AXES[view].toward.axis;

/** What a new one would be, before it is traced; or the one that is there. */
export function bodyToTrace(document: LayoutDocument, what: Outlined, existing: Existing): Rail | Obstacle {
  if (what === 'rail') return document.rails[existing ?? -1] ?? usualRail(document);
  return document.obstacles[existing ?? -1] ?? usualObstacle(document, what);
}

const middle = (a: number, b: number) => (a + b) / 2;

/** Where a body's middle stands along a view: how deep it lies in the photo. mm. */
export function bodyDepth(body: Rail | Obstacle, view: View): number {
  const axis = alongView(view);
  if ('path' in body) return body.path.reduce((sum, point) => sum + point[axis], 0) / body.path.length;
  return body.kind === 'box' ? body.centre[axis] : middle(body.from[axis], body.to[axis]);
}

/** The depth of a rail that is there at a place along the car: its own there, not its middle's. */
export function depthAlong(body: Rail | Obstacle, view: View): ((place: Point) => number) | undefined {
  const axis = alongView(view);
  if (!('path' in body) || axis === 0) return undefined;
  const path = frontFirst(body.path);
  return ([x]) => along(path, x, axis);
}

/**
 * Where spots lie at a depth, or each at that of its own place; undefined if one of them lies beyond the photo's
 * horizon. The place found at the middle's depth is near enough to tell its own.
 */
export function placedSpots(
  photo: Photo,
  plane: PhotoPlane,
  spots: readonly PhotoSpot[],
  depth: number,
  own?: (place: Point) => number,
): Point[] | undefined {
  const placed = (spot: PhotoSpot, at: number): Point | undefined => {
    const keep: [number, number, number] = [0, 0, 0];
    keep[alongView(photo.view)] = at;
    const place = plane.placeBefore(spot, beforeOf(photo, at));
    return place && unproject(photo.view, place, keep);
  };
  const points: Point[] = [];
  for (const spot of spots) {
    const first = placed(spot, depth);
    const place = first && own ? placed(spot, own(first)) : first;
    if (!place) return undefined;
    points.push(rounded(place));
  }
  return points;
}

/** mm to a tenth: no photo knows more. */
const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
const rounded = (point: Point): Point => [tenth(point[0]), tenth(point[1]), tenth(point[2])];

/** A coordinate of a line at a place along the car; beyond its ends that of the nearer end. Points run backward in x. */
function along(path: readonly Point[], x: number, axis: Axis): number {
  const first = path[0] as Point;
  const last = path[path.length - 1] as Point;
  if (x >= first[0]) return first[axis];
  for (let i = 1; i < path.length; i += 1) {
    const [a, b] = [path[i - 1] as Point, path[i] as Point];
    if (x < b[0] || a[0] === b[0]) continue;
    return a[axis] + ((x - a[0]) / (b[0] - a[0])) * (b[axis] - a[axis]);
  }
  return last[axis];
}

const frontFirst = (points: readonly Point[]) => [...points].sort((a, b) => b[0] - a[0]);

/**
 * A rail along the traced points, from the front backward; its section stays. Traced again from another side it keeps what that
 * side does not show, and its own kinks beside the new ones.
 */
export function tracedRail(rail: Rail, points: readonly Point[], view: View, isNew: boolean): Rail {
  const traced = frontFirst(points);
  const axis = alongView(view);
  if (isNew || axis === 0) return { ...rail, path: traced };
  const kept = frontFirst(rail.path);
  const [front, back] = [traced[0] as Point, traced[traced.length - 1] as Point];
  const shown: Axis = axis === 1 ? 2 : 1;
  // Kinks that only the other side shows; those near a traced one are the same.
  const others = kept.filter(
    ([x]) => x < front[0] && x > back[0] && traced.every((point) => Math.abs(point[0] - x) > 15),
  );
  const path = frontFirst([...traced, ...others]).map((point): Point => {
    const at: [number, number, number] = [point[0], 0, 0];
    at[axis] = along(kept, point[0], axis);
    at[shown] = along(traced, point[0], shown);
    return rounded(at);
  });
  return { ...rail, path };
}

/** A box about the traced outline, or a tube from its first point to its last; what the view does not show stays. */
export function tracedObstacle(
  obstacle: Obstacle,
  points: readonly Point[],
  view: View,
  isNew: boolean,
): Obstacle {
  const axis = alongView(view);
  if (obstacle.kind !== 'box') {
    const [from, to] = [points[0] as Point, points[points.length - 1] as Point];
    const end = (traced: Point, was: Point): Point => {
      const at: [number, number, number] = [...traced];
      if (!isNew) at[axis] = was[axis];
      return at;
    };
    return { ...obstacle, from: end(from, obstacle.from), to: end(to, obstacle.to) };
  }
  const centre: [number, number, number] = [...obstacle.centre];
  const size: [number, number, number] = [...obstacle.size];
  for (const shown of [0, 1, 2] as const) {
    if (shown === axis) {
      if (isNew) centre[axis] = tenth((points[0] as Point)[axis]);
      continue;
    }
    const values = points.map((point) => point[shown]);
    const [least, most] = [Math.min(...values), Math.max(...values)];
    centre[shown] = tenth(middle(least, most));
    size[shown] = tenth(most - least);
  }
  // Seen from its sides an outline is a box along the car: a turn would make it another.
  const { turn: _, ...straight } = obstacle;
  return { ...straight, centre, size };
}

/** Spots that an outline needs at the least. */
export const SPOTS_LEAST = 2;

/** The document with what was traced in it, and where it stands there. */
export function withOutlined(
  document: LayoutDocument,
  what: Outlined,
  existing: Existing,
  points: readonly Point[],
  view: View,
): { document: LayoutDocument; id: string; name: string } {
  const isNew = existing === undefined;
  const body = bodyToTrace(document, what, existing);
  if ('path' in body) {
    const rail = tracedRail(body, points, view, isNew);
    const at = existing ?? document.rails.length;
    const rails = isNew ? [...document.rails, rail] : document.rails.with(at, rail);
    return { document: { ...document, rails }, id: `rails.${at}`, name: rail.name };
  }
  const obstacle = tracedObstacle(body, points, view, isNew);
  const at = existing ?? document.obstacles.length;
  const obstacles = isNew ? [...document.obstacles, obstacle] : document.obstacles.with(at, obstacle);
  return { document: { ...document, obstacles }, id: `obstacles.${at}`, name: obstacle.name };
}
