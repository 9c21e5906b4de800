import { add, scaled, unit } from '../../../shared-math/geometry/vectors.ts';
import type { Point, ShaftDocument } from '../../../shared-math/layout/index.ts';
import { type CarView, frameOf, pointOnPage } from './car-view.ts';
import { INK, STEEL, WHITE } from './colours.ts';
import type { PrintPen } from './print-pen.ts';

/** mm of the car: a shaft's usual thickness, and how far column and box input are drawn beyond their ends. */
const THICK = 19;
const BEYOND_COLUMN = 240;
const BEYOND_BOX = 60;

/** A bar of two edges between two points of the car, drawn as a shaft. */
function bar(pen: PrintPen, view: CarView, from: Point, to: Point, colour: string): void {
  const [x1, y1] = pointOnPage(view, from);
  const [x2, y2] = pointOnPage(view, to);
  const width = THICK / view.scale;
  pen.line(x1, y1, x2, y2, { width: width + 0.35, colour, cap: 'butt' });
  pen.line(x1, y1, x2, y2, { width: Math.max(width - 0.2, 0.1), colour: WHITE, cap: 'butt' });
}

/** The steering shaft in a view: column and box input as stubs, shafts between joints, a cross for each joint, supports. */
export function paintShaft(pen: PrintPen, view: CarView, shaft: ShaftDocument): void {
  const [left, top, right, bottom] = frameOf(view);
  const centres = shaft.joints.map(({ centre }) => centre);
  pen.within([left, top, right, top, right, bottom, left, bottom], 1, () => {
    const column = add(shaft.column.end, scaled(unit(shaft.column.axis), -BEYOND_COLUMN));
    bar(pen, view, column, centres[0] as Point, INK);
    bar(
      pen,
      view,
      centres[centres.length - 1] as Point,
      add(shaft.box.end, scaled(unit(shaft.box.axis), BEYOND_BOX)),
      INK,
    );
    for (let i = 1; i < centres.length; i += 1)
      bar(pen, view, centres[i - 1] as Point, centres[i] as Point, STEEL);
    for (const { shaft: index, at } of shaft.supports) {
      const [from, to] = [centres[index] as Point, centres[index + 1] as Point];
      const [x, y] = pointOnPage(view, add(scaled(from, 1 - at), scaled(to, at)));
      const half = Math.max(28 / view.scale, 1);
      pen.rect(x - half, y - half, 2 * half, 2 * half, { width: 0.3, colour: INK }, WHITE);
      pen.circle(x, y, half * 0.55, { width: 0.2, colour: INK });
    }
    shaft.joints.forEach(({ kind, centre }) => {
      const [x, y] = pointOnPage(view, centre);
      const r = Math.max(24 / view.scale, 1);
      pen.circle(x, y, r, { width: 0.4, colour: STEEL }, WHITE);
      const d = r * 0.62;
      pen.line(x - d, y - d, x + d, y + d, { width: 0.25, colour: STEEL });
      pen.line(x - d, y + d, x + d, y - d, { width: 0.25, colour: STEEL });
      if (kind === 'double') pen.circle(x, y, r + 0.5, { width: 0.2, colour: STEEL });
    });
  });
}
