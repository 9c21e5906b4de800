import { clamp } from '../clamp.ts';
import type { Point } from '../geometry/points.ts';
import { add, dot, midpoint, norm, scaled, subtract } from '../geometry/vectors.ts';
import { createSection, goldenSection } from '../solve/golden-section.ts';
import { createStretch, stretchToBlock } from './stretch-to-block.ts';

interface TubeObstacle<Kind> {
  readonly kind: Kind;
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
  /** Room wanted beyond the usual, as beside an exhaust. */
  readonly extra?: number;
}

interface BoxObstacle {
  readonly kind: 'box';
  readonly name: string;
  readonly centre: Point;
  readonly halfSizes: Point;
  /** Unit and square to each other; the vehicle's axes where absent. */
  readonly axes?: readonly [Point, Point, Point];
  readonly extra?: number;
}

/** A convex body that a shaft has to pass, vehicle axes, mm: a tube with round or flat ends, or a box with its own axes. */
export type RouteObstacle = TubeObstacle<'capsule'> | TubeObstacle<'cylinder'> | BoxObstacle;

/** How near a stretch of a shaft's middle line comes to what is nearest to it. */
export interface Nearest {
  /** mm from the middle line to the surface, below 0 inside; `extra` room that is wanted there is taken off. */
  readonly distance: number;
  readonly name: string;
}

/**
 * Asks how near the straight line between two points comes to anything; at one and the same point, that point. Where nothing
 * comes nearer than `within`, mm, any distance from there on may be answered, and no name.
 */
export type ClearanceOf = (from: Point, to: Point, within?: number) => Nearest;

/**
 * Least distance of two stretches of straight line, mm: the nearest points of the two lines, each clamped to its
 * stretch and the other found again from it, which is exact for two stretches.
 */
export function betweenSegments(a: Point, b: Point, c: Point, d: Point): number {
  const [u, v, w] = [subtract(b, a), subtract(d, c), subtract(a, c)];
  const [uu, vv, uv] = [dot(u, u), dot(v, v), dot(u, v)];
  const [uw, vw] = [dot(u, w), dot(v, w)];
  const determinant = uu * vv - uv * uv;
  // Parallel lines, or a stretch of no length: any point of the first does, the second follows.
  let s = determinant > 1e-12 * uu * vv ? clamp((uv * vw - vv * uw) / determinant, 0, 1) : 0;
  let t = vv > 0 ? (uv * s + vw) / vv : 0;
  // Past an end, or a point for the second: the first is found again from there.
  if (t < 0 || t > 1 || vv === 0) {
    t = clamp(t, 0, 1);
    s = uu > 0 ? clamp((uv * t - uw) / uu, 0, 1) : 0;
  }
  return norm(add(w, subtract(scaled(u, s), scaled(v, t))));
}

/** How far a stretch from p to p + u stays beyond ±half along one axis. */
function beyond(half: number, p: number, u: number): number {
  return Math.max(Math.min(p, p + u) - half, -half - Math.max(p, p + u), 0);
}

/** Signed distance from a flat-ended cylinder's surface of a place so far along from its middle and out from its axis. */
function fromCylinder(halfLength: number, radius: number, along: number, out: number): number {
  const x = Math.abs(along) - halfLength;
  const y = out - radius;
  if (x <= 0 && y <= 0) return Math.max(x, y);
  const [ox, oy] = [Math.max(x, 0), Math.max(y, 0)];
  return Math.sqrt(ox * ox + oy * oy);
}

/** Share of the stretch to which the nearest place on it is closed in. */
const ALONG_END = 1e-7;
const section = createSection();
const stretch = createStretch();

/**
 * Least signed distance from a stretch of line to an obstacle's surface, mm. For a box and a round-ended tube in closed form;
 * the signed distance to a flat-ended tube is convex along a line, so the golden section finds the least. Where it is certain
 * to be `within` or more, any number from there on may be answered.
 */
export function segmentToObstacle(
  obstacle: RouteObstacle,
  a: Point,
  b: Point,
  within = Number.POSITIVE_INFINITY,
): number {
  if (obstacle.kind === 'box') return segmentToBox(obstacle, a, b, within);
  const round = betweenSegments(a, b, obstacle.from, obstacle.to) - obstacle.radius;
  // A flat-ended tube lies within the round-ended one, so it is at least as far.
  return obstacle.kind === 'capsule' || round >= within ? round : segmentToCylinder(obstacle, a, b);
}

function segmentToBox({ axes, centre, halfSizes }: BoxObstacle, a: Point, b: Point, within: number): number {
  const { half, from, by } = stretch;
  let block = 0;
  for (let i = 0; i < 3; i += 1) {
    const axis = axes?.[i];
    const p = axis
      ? axis[0] * (a[0] - centre[0]) + axis[1] * (a[1] - centre[1]) + axis[2] * (a[2] - centre[2])
      : (a[i] as number) - (centre[i] as number);
    const u = axis
      ? axis[0] * (b[0] - a[0]) + axis[1] * (b[1] - a[1]) + axis[2] * (b[2] - a[2])
      : (b[i] as number) - (a[i] as number);
    const h = halfSizes[i] as number;
    // The block about the stretch, in the box's axes, is no farther than the stretch.
    const gap = beyond(h, p, u);
    block += gap * gap;
    half[i] = h;
    from[i] = p;
    by[i] = u;
  }
  return block > 0 && block >= within * within ? Math.sqrt(block) : stretchToBlock(stretch);
}

function segmentToCylinder({ from, to, radius }: TubeObstacle<'cylinder'>, a: Point, b: Point): number {
  const half = norm(subtract(to, from)) / 2;
  const axis = half > 0 ? scaled(subtract(to, from), 0.5 / half) : ([0, 0, 1] as const);
  const p = subtract(a, midpoint(from, to));
  const u = subtract(b, a);
  const [pa, ua] = [dot(p, axis), dot(u, axis)];
  const [pp, pu, uu] = [dot(p, p), dot(p, u), dot(u, u)];
  const at = (t: number) => {
    const along = pa + t * ua;
    const squared = pp + 2 * t * pu + t * t * uu - along * along;
    return fromCylinder(half, radius, along, Math.sqrt(Math.max(squared, 0)));
  };
  return uu > 0 ? leastAlong(at) : at(0);
}

/** Least of a convex function over 0 to 1, by the golden section. */
function leastAlong(at: (t: number) => number): number {
  const { atLeft, atRight } = goldenSection(at, 0, 1, ALONG_END, section);
  return Math.min(atLeft, atRight, at(0), at(1));
}

/** An upright block about a body: least and most along each of the vehicle's axes, mm. */
function blockAbout(body: RouteObstacle): readonly number[] {
  return [0, 1, 2].flatMap((i) => {
    if (body.kind !== 'box') {
      const ends = [body.from[i] as number, body.to[i] as number];
      return [Math.min(...ends) - body.radius, Math.max(...ends) + body.radius];
    }
    const reach = body.halfSizes.reduce((sum, half, k) => {
      const axis = body.axes?.[k];
      return sum + half * (axis ? Math.abs(axis[i] as number) : k === i ? 1 : 0);
    }, 0);
    return [(body.centre[i] as number) - reach, (body.centre[i] as number) + reach];
  });
}

/**
 * The clearance that a list of obstacles leaves; without any, everything is far. A body is let go by as soon as the upright
 * blocks about it and about the stretch are farther apart than what is already known to be near.
 */
export function clearanceOf(obstacles: readonly RouteObstacle[]): ClearanceOf {
  const blocks = Float64Array.from(obstacles.flatMap(blockAbout));
  const extras = obstacles.map(({ extra = 0 }) => extra);
  return (from, to, within = Number.POSITIVE_INFINITY) => {
    const [xLow, xHigh] = from[0] < to[0] ? [from[0], to[0]] : [to[0], from[0]];
    const [yLow, yHigh] = from[1] < to[1] ? [from[1], to[1]] : [to[1], from[1]];
    const [zLow, zHigh] = from[2] < to[2] ? [from[2], to[2]] : [to[2], from[2]];
    let least = within;
    let name = '';
    for (let i = 0, at = 0; i < obstacles.length; i += 1, at += 6) {
      const extra = extras[i] as number;
      const near = least + extra;
      if (
        (blocks[at] as number) - xHigh >= near ||
        xLow - (blocks[at + 1] as number) >= near ||
        (blocks[at + 2] as number) - yHigh >= near ||
        yLow - (blocks[at + 3] as number) >= near ||
        (blocks[at + 4] as number) - zHigh >= near ||
        zLow - (blocks[at + 5] as number) >= near
      )
        continue;
      const obstacle = obstacles[i] as RouteObstacle;
      const distance = segmentToObstacle(obstacle, from, to, near) - extra;
      if (distance < least) {
        least = distance;
        name = obstacle.name;
      }
    }
    return { distance: least, name };
  };
}
