import type { Point } from '../geometry/points.ts';
import { toRadians } from '../units/index.ts';
import type { Hardpoint } from './hardpoint.ts';
import { moveHardpoint } from './move-hardpoint.ts';
import type { LayoutDocument, Obstacle, Rail } from './schema.ts';
import { withValue } from './values.ts';

// Rails and obstacles as things with points to take hold of. A body is spoken of by its place in the document, `rails.0`
// or `obstacles.2`, and its points by theirs: `rails.0.path.1`, `obstacles.2.centre`. Those of a box's corners, of a
// tube's middle and of its wall stand for no value of their own: moving them changes the values that they follow from.

/** A rail or an obstacle of a document. */
export type CarBody =
  | { readonly id: string; readonly list: 'rails'; readonly index: number; readonly rail: Rail }
  | { readonly id: string; readonly list: 'obstacles'; readonly index: number; readonly obstacle: Obstacle };

const BODY = /^(rails|obstacles)\.(\d+)(?:\.(.+))?$/;

/** The body that an id speaks of, be it the body's own or that of one of its points; undefined if there is none. */
export function bodyAt(document: LayoutDocument, id: string): CarBody | undefined {
  const match = BODY.exec(id);
  if (!match) return undefined;
  const index = Number(match[2]);
  if (match[1] === 'rails') {
    const rail = document.rails[index];
    return rail && { id: `rails.${index}`, list: 'rails', index, rail };
  }
  const obstacle = document.obstacles[index];
  return obstacle && { id: `obstacles.${index}`, list: 'obstacles', index, obstacle };
}

/** All bodies, rails first, in the order of the document. */
export function carBodies(document: LayoutDocument): CarBody[] {
  return [
    ...document.rails.map((rail, index): CarBody => ({ id: `rails.${index}`, list: 'rails', index, rail })),
    ...document.obstacles.map(
      (obstacle, index): CarBody => ({ id: `obstacles.${index}`, list: 'obstacles', index, obstacle }),
    ),
  ];
}

/** What a builder calls it. */
export function bodyName(body: CarBody): string {
  if (body.list === 'obstacles') return body.obstacle.name;
  return body.rail.name.trim() || `Rail ${body.index + 1}`;
}

/** The ids by which the drawing and the clearances know a body: itself, and its mirror image where it has one. */
export function partsOfBody(body: CarBody): string[] {
  const id = `${body.list === 'rails' ? 'rail' : 'obstacle'}-${body.index}`;
  const twin = body.list === 'rails' ? body.rail.mirrored : body.obstacle.mirrored;
  return twin ? [id, `${id}-mirrored`] : [id];
}

/** The body that the drawing or the clearances know by this id; nothing for other parts of the car. */
export function bodyOfPart(partId: string): string | undefined {
  const match = /^(rail|obstacle)-(\d+)(-mirrored)?$/.exec(partId);
  return match ? `${match[1]}s.${match[2]}` : undefined;
}

type BoxObstacle = Extract<Obstacle, { kind: 'box' }>;
type TubeObstacle = Exclude<Obstacle, { kind: 'box' }>;

/** A vector of the box's own axes in the car's, or the other way about. */
function turned(vector: Point, degrees: number): Point {
  const c = Math.cos(toRadians(degrees));
  const s = Math.sin(toRadians(degrees));
  return [c * vector[0] - s * vector[1], s * vector[0] + c * vector[1], vector[2]];
}

const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Point, by: number): Point => [a[0] * by, a[1] * by, a[2] * by];

/** A corner of a box: the one ahead, to the left and on top (`way` 1), or the one opposite (-1). */
function cornerOf(box: BoxObstacle, way: 1 | -1): Point {
  const half: Point = [(way * box.size[0]) / 2, (way * box.size[1]) / 2, (way * box.size[2]) / 2];
  return plus(box.centre, turned(half, box.turn ?? 0));
}

/** Square to a tube, length 1: upward, or ahead for one that stands. */
function acrossTube({ from, to }: TubeObstacle): Point {
  const along = minus(to, from);
  const length = Math.hypot(...along);
  if (length === 0) return [0, 0, 1];
  const u = times(along, 1 / length);
  const way: Point = Math.abs(u[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const share = way[0] * u[0] + way[1] * u[1] + way[2] * u[2];
  const across = minus(way, times(u, share));
  return times(across, 1 / Math.hypot(...across));
}

/** The points of one body, at ride height, mm, vehicle axes; of a mirrored one those of the side that is written down. */
export function bodyPoints(body: CarBody): Hardpoint[] {
  const name = bodyName(body);
  const point = (key: string, words: string, at: Point): Hardpoint => ({
    id: `${body.id}.${key}`,
    name: `${name}, ${words}`,
    carrier: 'frame',
    at,
  });
  if (body.list === 'rails') return body.rail.path.map((at, i) => point(`path.${i}`, `point ${i + 1}`, at));
  const { obstacle } = body;
  if (obstacle.kind === 'box')
    return [
      point('centre', 'middle', obstacle.centre),
      point('cornerAhead', 'front upper corner', cornerOf(obstacle, 1)),
      point('cornerBehind', 'rear lower corner', cornerOf(obstacle, -1)),
    ];
  const centre = middle(obstacle.from, obstacle.to);
  return [
    point('middle', 'middle', centre),
    point('from', 'one end', obstacle.from),
    point('to', 'other end', obstacle.to),
    point('wall', 'wall', plus(centre, times(acrossTube(obstacle), obstacle.radius))),
  ];
}

/** The point by which a whole obstacle is moved. */
export function holdOf(body: CarBody): Hardpoint | undefined {
  return body.list === 'obstacles' ? bodyPoints(body)[0] : undefined;
}

/** mm. Sizes that follow from where a corner was dragged are kept as precisely as any tape measure has them. */
const tidy = (value: number) => Math.round(value * 1000) / 1000 + 0;
const tidied = (point: Point): Point => [tidy(point[0]), tidy(point[1]), tidy(point[2])];

function boxMoved(box: BoxObstacle, key: string, to: Point): BoxObstacle {
  if (key === 'centre') return { ...box, centre: to };
  const way = key === 'cornerAhead' ? 1 : -1;
  // The corner opposite stays where it is.
  const opposite = cornerOf(box, way === 1 ? -1 : 1);
  const size = tidied(times(turned(minus(to, opposite), -(box.turn ?? 0)), way));
  return { ...box, centre: tidied(middle(to, opposite)), size: [size[0], size[1], size[2]] };
}

function tubeMoved(tube: TubeObstacle, key: string, to: Point): TubeObstacle {
  if (key === 'from' || key === 'to') return { ...tube, [key]: to };
  const centre = middle(tube.from, tube.to);
  const by = minus(to, centre);
  if (key === 'middle') return { ...tube, from: tidied(plus(tube.from, by)), to: tidied(plus(tube.to, by)) };
  const along = minus(tube.to, tube.from);
  const length = Math.hypot(...along) || 1;
  const share = (by[0] * along[0] + by[1] * along[1] + by[2] * along[2]) / length ** 2;
  return { ...tube, radius: tidy(Math.hypot(...minus(by, times(along, share)))) };
}

/**
 * A copy of the document with one point moved, be it a hardpoint, a rail's or an obstacle's. A corner of a box takes the
 * opposite corner as fixed; the wall of a tube sets its radius. The result is not validated: a corner dragged past the
 * opposite one makes a size that is refused.
 */
export function movePoint(document: LayoutDocument, id: string, to: Point): LayoutDocument {
  const body = bodyAt(document, id);
  if (!body) return moveHardpoint(document, id, to);
  if (body.list === 'rails') return withValue(document, id, to);
  const key = id.split('.')[2] as string;
  const { obstacle } = body;
  const moved = obstacle.kind === 'box' ? boxMoved(obstacle, key, to) : tubeMoved(obstacle, key, to);
  return withValue(document, body.id, moved);
}
