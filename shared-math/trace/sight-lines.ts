import type { Point } from '../geometry/points.ts';
import { add, cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';

/** A straight line through two points of it, along which a camera sees. mm, vehicle axes. */
export interface SightLine {
  readonly through: Point;
  readonly toward: Point;
}

/** Where two lines of sight come nearest. */
export interface Meeting {
  readonly at: Point;
  /** mm by which they pass one another. */
  readonly gap: number;
  /** The sine of the angle between them: the larger, the better they tell the point's depth. */
  readonly across: number;
}

/**
 * The point nearest to two lines of sight, and how far they pass one another; undefined if they run alongside.
 * Frame: vehicle. Units: mm. Source: halfway along the common perpendicular.
 * Checked: tests/unit/trace/photo-plane.test.ts.
 */
export function meeting(a: SightLine, b: SightLine): Meeting | undefined {
  const [u, v] = [unit(subtract(a.toward, a.through)), unit(subtract(b.toward, b.through))];
  const n = cross(u, v);
  const square = dot(n, n);
  if (!(square > 1e-4)) return undefined;
  const d = subtract(b.through, a.through);
  const onA = add(a.through, scaled(u, dot(cross(d, v), n) / square));
  const onB = add(b.through, scaled(v, dot(cross(d, u), n) / square));
  return {
    at: scaled(add(onA, onB), 0.5),
    gap: Math.hypot(...subtract(onA, onB)),
    across: Math.sqrt(square),
  };
}
