import type { Point } from '../../geometry/points.ts';
import { add, cross, norm, scaled, subtract, unit } from '../../geometry/vectors.ts';
import type { Carrier } from '../../layout/index.ts';
import type { DrawnHull } from '../drawing.ts';
import type { Pen } from '../pen.ts';
import { SIZES } from './sizes.ts';

/** A point and what carries it. */
export type End = readonly [carrier: Carrier, at: Point];

/** A straight rod between two carried points, centre to centre. */
export function rod(pen: Pen, from: End, to: End, radius: number): DrawnHull {
  return pen.hull(pen.ball(from[0], from[1], radius), pen.ball(to[0], to[1], radius));
}

/** A rod with a ball at each end. */
export function ballRod(pen: Pen, from: End, to: End, radius: number = SIZES.rod): DrawnHull[] {
  return [
    rod(pen, from, to, radius),
    pen.hull(pen.ball(from[0], from[1], SIZES.ball)),
    pen.hull(pen.ball(to[0], to[1], SIZES.ball)),
  ];
}

/** A bushed eye about an axis (length 1), square across a bar's end. */
export function eye(pen: Pen, end: End, axis: Point): DrawnHull {
  return pen.cylinder(end[0], end[1], axis, -SIZES.eyeHalfWidth, SIZES.eyeHalfWidth, SIZES.eye);
}

/** A bar with a bushed eye at each end; the bushings' bolts run across the car, or along it for a bar across. */
export function eyeBar(pen: Pen, from: End, to: End, radius: number = SIZES.rod): DrawnHull[] {
  const along = subtract(to[1], from[1]);
  const wish: Point = Math.abs(along[1]) > Math.abs(along[0]) ? [1, 0, 0] : [0, 1, 0];
  // Square to the bar and level, so that the eye wraps the bar's end.
  const axis = norm(cross(along, wish)) > 1e-6 ? squareAcross(along, wish) : wish;
  return [rod(pen, from, to, radius), eye(pen, from, axis), eye(pen, to, axis)];
}

function squareAcross(along: Point, wish: Point): Point {
  const direction = unit(along);
  const share = wish[0] * direction[0] + wish[1] * direction[1] + wish[2] * direction[2];
  return unit(subtract(wish, scaled(direction, share)));
}

/** An arm that tapers from a boss about `axis` (length 1) to the ball it holds. */
export function arm(pen: Pen, carrier: Carrier, root: Point, axis: Point, ball: Point): DrawnHull[] {
  return [
    pen.hull(
      pen.disc(carrier, add(root, scaled(axis, -11)), axis, SIZES.armRoot),
      pen.disc(carrier, add(root, scaled(axis, 11)), axis, SIZES.armRoot),
      pen.ball(carrier, ball, SIZES.armEnd),
    ),
    pen.hull(pen.ball(carrier, ball, SIZES.ball)),
  ];
}
