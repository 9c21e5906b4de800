import { eigenSymmetric } from '../solve/small-symmetric.ts';
import type { Point } from './points.ts';
import { add, cross, dot, scaled } from './vectors.ts';

/** A circle in space, or that the points lie on a straight line. mm. */
export type CircleFit =
  | {
      readonly kind: 'circle';
      readonly centre: Point;
      /** Square to the circle's plane, length 1, its largest entry positive. */
      readonly axis: Point;
      readonly radius: number;
      /** Largest distance of a point from the fitted circle's plane and rim. */
      readonly worst: number;
    }
  | { readonly kind: 'straight' };

/** 1/mm. A path flatter than a kilometre's radius has no centre that anyone could build to. */
const STRAIGHT_BELOW = 1e-6;

/**
 * The circle that fits a nearly straight path of points in the path's best plane.
 *
 * The plane is that of the two principal directions of the points about their mean, e1 along the path and e2 across.
 * In (u, v) along them a circle is  κ (u² + v²)/2 + β u - v + α = 0, with centre (-β/κ, 1/κ) and curvature near κ.
 * On the circle the left side's gradient has the constant length √(1 + β² - 2 α κ), so least squares of the left side
 * is least squares of distance to first order; it is linear in (α, β, κ); and it stays finite as the path becomes
 * straight (κ = 0) or curves the other way (κ < 0), where fits of a centre and radius run away.
 * Frame:    that of the points. Units: mm. Shapes: `points` 3 numbers each, five or more of them.
 * Outcomes: circle; straight.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/aim.test.ts (points of exact arcs; a straight line; noise).
 */
export function fitCircle(points: Float64Array): CircleFit {
  const n = points.length / 3;
  const at = (i: number): Point => [
    points[3 * i] as number,
    points[3 * i + 1] as number,
    points[3 * i + 2] as number,
  ];
  let mean: Point = [0, 0, 0];
  for (let i = 0; i < n; i += 1) mean = add(mean, at(i));
  mean = scaled(mean, 1 / n);

  const spread = new Float64Array(6);
  const offset = (i: number): Point => add(at(i), scaled(mean, -1));
  for (let i = 0; i < n; i += 1) {
    const d = offset(i);
    for (let row = 0, entry = 0; row < 3; row += 1)
      for (let column = 0; column <= row; column += 1, entry += 1)
        spread[entry] = (spread[entry] as number) + (d[row] as number) * (d[column] as number);
  }
  const { values, vectors } = eigenSymmetric(3, spread);
  const along = vectors[2] as unknown as Point;
  if (!((values[2] as number) > 0)) return { kind: 'straight' };
  const across = vectors[1] as unknown as Point;
  let axis = cross(along, across);
  const size = axis.map(Math.abs);
  if ((axis[size.indexOf(Math.max(...size))] as number) < 0) axis = scaled(axis, -1);

  // Lengths are scaled by the path's half-length so that the three columns are of one size.
  const s = Math.sqrt((values[2] as number) / n);
  // Normal equations of v = α + β u + κ w, w = (u² + v²)/2, in scaled lengths.
  const m = [0, 0, 0, 0, 0, 0];
  const g = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const d = offset(i);
    const u = dot(d, along) / s;
    const v = dot(d, across) / s;
    const w = (u * u + v * v) / 2;
    const row = [1, u, w];
    for (let r = 0, entry = 0; r < 3; r += 1) {
      for (let c = 0; c <= r; c += 1, entry += 1)
        m[entry] = (m[entry] as number) + (row[r] as number) * (row[c] as number);
      g[r] = (g[r] as number) + (row[r] as number) * v;
    }
  }
  const solution = solveThree(m, g);
  if (!solution) return { kind: 'straight' };
  const [alpha, beta, kappaScaled] = solution;
  const kappa = kappaScaled / s;
  if (!(Math.abs(kappa) > STRAIGHT_BELOW)) return { kind: 'straight' };
  const u0 = -beta / kappa;
  const v0 = 1 / kappa;
  const centre = add(mean, add(scaled(along, u0), scaled(across, v0)));
  const radius = Math.sqrt(u0 * u0 + v0 * v0 - (2 * alpha * s) / kappa);
  let worst = 0;
  for (let i = 0; i < n; i += 1) {
    const d = add(at(i), scaled(centre, -1));
    const high = dot(d, axis);
    const rim = Math.sqrt(Math.max(dot(d, d) - high * high, 0)) - radius;
    worst = Math.max(worst, Math.hypot(high, rim));
  }
  return { kind: 'circle', centre, axis, radius, worst };
}

/** Cramer's rule for a symmetric 3 × 3 system, lower triangle by rows; undefined if it is singular. */
function solveThree(m: readonly number[], g: readonly number[]): [number, number, number] | undefined {
  const [a, b, c, d, e, f] = m as [number, number, number, number, number, number];
  const [x, y, z] = g as [number, number, number];
  const A = c * f - e * e;
  const B = d * e - b * f;
  const C = b * e - c * d;
  const determinant = a * A + b * B + d * C;
  if (!(Math.abs(determinant) > 1e-12 * a * c * f)) return undefined;
  const D = a * f - d * d;
  const E = b * d - a * e;
  const F = a * c - b * b;
  return [
    (A * x + B * y + C * z) / determinant,
    (B * x + D * y + E * z) / determinant,
    (C * x + E * y + F * z) / determinant,
  ];
}
