import { MM_PER_INCH } from '../../../../shared-math/units/index.ts';
import { INK } from '../../pens/colours.ts';
import type { PrintPen } from '../../pens/print-pen.ts';
import { DIMENSION, SMALL_INK } from '../../pens/styles.ts';

/** mm: how long the rules are. */
export const RULE_MM = 100;
const RULE_INCHES = 4;
/** mm that the rules along the foot of a page take, and that along its right edge. */
export const FOOT = 15;
export const EDGE = 9;

const LINE = { width: 0.2, colour: INK, cap: 'butt' } as const;

/**
 * Rules to check the print by: 100 mm in tens and 4 in in quarters along the foot, 100 mm again up the right edge, since
 * a printer may stretch one way only. Their ends are the outer edges of thin strokes' middles.
 */
export function checkRules(
  pen: PrintPen,
  area: { x: number; y: number; width: number; height: number },
): void {
  const y = area.y + area.height - 6;
  const x = area.x;
  pen.line(x, y, x + RULE_MM, y, LINE);
  for (let i = 0; i <= 10; i += 1) {
    const at = x + 10 * i;
    pen.line(at, y, at, y - (i % 5 === 0 ? 4 : 2.4), LINE);
  }
  pen.text('0', x, y - 5, DIMENSION, 'centre');
  pen.text('50', x + 50, y - 5, DIMENSION, 'centre');
  pen.text('100 mm', x + 100, y - 5, DIMENSION, 'centre');
  for (let i = 0; i <= 4 * RULE_INCHES; i += 1) {
    const at = x + (i * MM_PER_INCH) / 4;
    pen.line(at, y, at, y + (i % 4 === 0 ? 3 : 1.6), LINE);
  }
  pen.line(x, y, x + RULE_INCHES * MM_PER_INCH, y, LINE);
  pen.text('4 in', x + RULE_INCHES * MM_PER_INCH + 1.5, y + 3, DIMENSION);
  const words = [
    'Print at 100 per cent, never fitted to the page.',
    'Measure all three rules before anything is cut.',
  ];
  words.forEach((line, i) => {
    pen.text(line, x + RULE_MM + 14, y - 2.5 + 3.4 * i, SMALL_INK);
  });
  const edge = area.x + area.width - 1;
  const foot = area.y + area.height - FOOT - 2;
  pen.line(edge, foot, edge, foot - RULE_MM, LINE);
  for (let i = 0; i <= 10; i += 1) {
    const at = foot - 10 * i;
    pen.line(edge, at, edge - (i % 5 === 0 ? 4 : 2.4), at, LINE);
  }
  pen.turnedText('100 mm', edge - 5, foot - 50, DIMENSION, 90, 'centre');
}
