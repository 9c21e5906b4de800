import {
  DASHES,
  FIELD,
  LETTERS,
  type Sketch,
  type SketchInk,
} from '../../../../shared-math/words/sketches/index.ts';
import { ATTENTION, GOOD, INK, RULE, SOFT, STEEL, STOP, WHITE } from '../../pens/colours.ts';
import type { PrintPen, StrokeStyle, TextStyle } from '../../pens/print-pen.ts';

const INKS: Readonly<Record<SketchInk | 'paper', string>> = {
  ink: INK,
  soft: SOFT,
  rule: RULE,
  steel: STEEL,
  stop: STOP,
  attention: ATTENTION,
  good: GOOD,
  paper: WHITE,
};

/** Points of the printer in a millimetre. */
const POINTS = 72 / 25.4;

/** How tall a sketch is at a width, mm. */
export const sketchHeight = (width: number) => (width * FIELD.height) / FIELD.width;

/** Draws a sketch with its upper left corner at a place of the page, `width` mm wide, as one picture of the page. */
export function drawSketch(pen: PrintPen, sketch: Sketch, x: number, y: number, width: number): void {
  const scale = width / FIELD.width;
  const placed = (at: readonly number[]) => at.map((value, i) => (i % 2 === 0 ? x : y) + value * scale);
  const stroke = (mark: Exclude<Sketch['marks'][number], { kind: 'text' }>): StrokeStyle => ({
    width: mark.width * scale,
    colour: INKS[mark.ink],
    ...(mark.dash ? { dash: DASHES[mark.dash].map((part) => part * scale) } : {}),
  });
  pen.figure(sketch.alt, () => {
    for (const mark of sketch.marks) {
      if (mark.kind === 'line') {
        const points = placed(mark.at);
        if (mark.fill) pen.fill(points, INKS[mark.fill]);
        pen.stroke(points, stroke(mark), mark.closed);
      } else if (mark.kind === 'circle')
        pen.circle(
          x + mark.x * scale,
          y + mark.y * scale,
          mark.radius * scale,
          stroke(mark),
          mark.fill && INKS[mark.fill],
        );
      else {
        const style: TextStyle = { face: 'regular', size: LETTERS * scale * POINTS, colour: INKS[mark.ink] };
        pen.text(mark.words, x + mark.x * scale, y + mark.y * scale, style, mark.align);
      }
    }
  });
}
