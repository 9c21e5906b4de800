import type { Point } from '../geometry/points.ts';
import { cross, dot, scaled, subtract } from '../geometry/vectors.ts';
import { REACH_SLACK } from '../tolerances.ts';

/**
 * The circle on which a point goes as it turns about an axis: base + across cos t + onward sin t, with t right-hand
 * about the axis and t = 0 where the point was drawn.
 */
export interface BallCircle<At extends Point = Point> {
  readonly base: At;
  readonly across: Point;
  readonly onward: Point;
  /** |across|², mm². */
  readonly radiusSquared: number;
}

/** The circle of a point about the line through `through` along `axis` (length 1). Same frame as its points. */
export function ballCircle<At extends Point>(through: At, axis: Point, point: NoInfer<At>): BallCircle<At> {
  const d = subtract(point, through);
  const along = scaled(axis, dot(d, axis));
  const across = subtract(d, along);
  const base: Point = [through[0] + along[0], through[1] + along[1], through[2] + along[2]];
  return {
    base: base as At,
    across,
    onward: cross(axis, across),
    radiusSquared: dot(across, across),
  };
}

/**
 * Turn of a spindle that puts its ball one link length from a known point.
 * With v from the circle's base to the point, the ball base + across cos t + onward sin t is the length away where
 *   A cos t + B sin t = C,  A = v·across, B = v·onward, C = (|v|² + |across|² - length²) / 2.
 * The roots are t = atan2(B, A) ± acos(C/R), R = hypot(A, B); written out by the addition theorems they need no
 * trigonometry: cos t = (A C ∓ B S)/R² and sin t = (B C ± A S)/R² with S = √(R² - C²).
 * Frame:    any one right-handed frame; the point (vx, vy, vz) is relative to the circle's base.
 * Units:    mm; t right-hand about the axis.
 * Shapes:   writes cos t, sin t and the reach |C|/R to out[at], out[at + 1], out[at + 2]; allocates nothing.
 * Outcomes: true; false where |C| exceeds R by more than REACH_SLACK (within it, taken as at the end of reach): then
 *           out[at + 2] holds the reach, above 1, or infinity where the point lies on the axis itself.
 * Source:   own derivation, as above; the form of the roots is that of McCarthy and Soh, Geometric Design of
 *           Linkages, appendix A.
 * Checked:  tests/reference/textbook-four-bar.test.ts, tests/reference/spatial-link.test.ts.
 */
export function closeLink(
  circle: BallCircle,
  vx: number,
  vy: number,
  vz: number,
  length: number,
  branch: 1 | -1,
  out: Float64Array,
  at: number,
): boolean {
  const { across, onward } = circle;
  const a = vx * across[0] + vy * across[1] + vz * across[2];
  const b = vx * onward[0] + vy * onward[1] + vz * onward[2];
  const c = (vx * vx + vy * vy + vz * vz + circle.radiusSquared - length * length) / 2;
  const rr = a * a + b * b;
  const r = Math.sqrt(rr);
  const reach = Math.abs(c) / r;
  if (!(reach <= 1 + REACH_SLACK)) {
    out[at + 2] = Number.isNaN(reach) ? Number.POSITIVE_INFINITY : reach;
    return false;
  }
  const s = branch * Math.sqrt(Math.max((r - c) * (r + c), 0));
  out[at] = (a * c - b * s) / rr;
  out[at + 1] = (b * c + a * s) / rr;
  out[at + 2] = reach;
  return true;
}

/**
 * The branch that contains t = 0 where the ball and the point are drawn one link length apart. At t = 0 the two roots
 * differ in the sign of dC/dt = B: the upper one has B <= 0. At a dead centre (B = 0) they are one.
 */
export function drawnBranch<At extends Point>(circle: BallCircle<At>, point: NoInfer<At>): 1 | -1 {
  return dot(subtract(point, circle.base), circle.onward) > 0 ? -1 : 1;
}
