import type { Mark } from './pictorial-marks.ts';
import type { PrintPen } from './print-pen.ts';

/** Where a picture lies on a page: the place of the car's origin, mm, and what its mm are divided by. */
export interface MarkPlace {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  /** What its lines' widths are multiplied by: 1 if absent. */
  readonly ink?: number;
}

/** Draws the marks of a picture with a pen, in their order. */
export function paintMarks(pen: PrintPen, marks: readonly Mark[], { x, y, scale, ink = 1 }: MarkPlace): void {
  for (const { points, closed, fill, line } of marks) {
    const placed = points.map((each, i) => (i % 2 === 0 ? x : y) + each / scale);
    if (fill) pen.fill(placed, fill);
    if (line) pen.stroke(placed, { ...line, width: ink * line.width }, closed);
  }
}
