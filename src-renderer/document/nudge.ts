import type { Point } from '../../shared-math/geometry/points.ts';

/** The three views of the sheet. Each shows two axes of the car and hides the third. */
export type ViewName = 'side' | 'top' | 'front';
/** What can fill the board: one of the three views, or the car in space. */
export type ShownView = ViewName | 'pictorial';
export type Arrow = 'ArrowLeft' | 'ArrowRight' | 'ArrowUp' | 'ArrowDown';

type Step = readonly [axis: 0 | 1 | 2, sign: 1 | -1];

/**
 * Which way each arrow points on the sheet. Side view: the front of the car to the left. Top view above it: the
 * car's left side below. Front view: seen from ahead, the car's left side to the right.
 */
const STEPS: Record<ViewName, Record<Arrow, Step>> = {
  side: { ArrowLeft: [0, 1], ArrowRight: [0, -1], ArrowUp: [2, 1], ArrowDown: [2, -1] },
  top: { ArrowLeft: [0, 1], ArrowRight: [0, -1], ArrowUp: [1, -1], ArrowDown: [1, 1] },
  front: { ArrowLeft: [1, -1], ArrowRight: [1, 1], ArrowUp: [2, 1], ArrowDown: [2, -1] },
};

/** The point one step along an arrow of a view, mm. */
export function nudged(at: Point, view: ViewName, arrow: Arrow, step: number): Point {
  const [axis, sign] = STEPS[view][arrow];
  const to: [number, number, number] = [...at];
  to[axis] += sign * step;
  return to;
}

/** Step of an arrow key, mm: 1/16 in or 1 mm; with Shift 1/2 in or 10 mm. */
export function nudgeStep(unit: 'in' | 'mm', large: boolean): number {
  if (unit === 'mm') return large ? 10 : 1;
  return (25.4 / 16) * (large ? 8 : 1);
}
