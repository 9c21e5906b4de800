import type { ViewPoint } from '../drawing/index.ts';

/** A circle of a view's plane: what a detail shows. mm. */
export interface DetailCircle {
  readonly centre: ViewPoint;
  readonly radius: number;
}

export function isWithin({ centre, radius }: DetailCircle, [x, y]: ViewPoint): boolean {
  return Math.hypot(x - centre[0], y - centre[1]) <= radius;
}

/**
 * The runs of an open line that lie in a circle, in its order; a piece of it from a to b enters and leaves where
 * |a + t (b - a) - c|² = r², a quadratic in t.
 * Frame: the view's own plane. Units: mm. Shapes: each run has two places or more; none if the line stays outside.
 */
export function clippedToCircle(circle: DetailCircle, line: readonly ViewPoint[]): ViewPoint[][] {
  const runs: ViewPoint[][] = [];
  let run: ViewPoint[] = [];
  const end = () => {
    if (run.length > 1) runs.push(run);
    run = [];
  };
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1] as ViewPoint, line[i] as ViewPoint];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const [x, y] = [a[0] - circle.centre[0], a[1] - circle.centre[1]];
    const square = dx * dx + dy * dy;
    const half = x * dx + y * dy;
    const root = half * half - square * (x * x + y * y - circle.radius * circle.radius);
    if (square === 0 || root <= 0) {
      end();
      continue;
    }
    const from = Math.max(0, (-half - Math.sqrt(root)) / square);
    const to = Math.min(1, (-half + Math.sqrt(root)) / square);
    if (from >= to) {
      end();
      continue;
    }
    if (from > 0) end();
    if (run.length === 0) run.push([a[0] + from * dx, a[1] + from * dy]);
    run.push([a[0] + to * dx, a[1] + to * dy]);
    if (to < 1) end();
  }
  end();
  return runs;
}

/**
 * How far left and right flat lines (right, down, right, down …) reach between two heights, so that words beside them cross none;
 * undefined if none is there. Any unit of length.
 */
export function reachBetween(
  lines: readonly (readonly number[])[],
  top: number,
  bottom: number,
): { readonly left: number; readonly right: number } | undefined {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  for (const line of lines)
    for (let i = 2; i + 1 < line.length; i += 2) {
      const [y1, y2] = [line[i - 1] as number, line[i + 1] as number];
      if (Math.max(y1, y2) < top || Math.min(y1, y2) > bottom) continue;
      left = Math.min(left, line[i - 2] as number, line[i] as number);
      right = Math.max(right, line[i - 2] as number, line[i] as number);
    }
  return left <= right ? { left, right } : undefined;
}
