import type { Severity } from '../../../shared-math/findings/index.ts';
import { ATTENTION, GOOD, INK, STOP } from './colours.ts';
import type { PrintPen } from './print-pen.ts';
import { WARNING_SIGN } from './styles.ts';

// Signs before a line, with their left end at x and the line's base at y: a form each, so that black and white will do.

/** A finding's sign: a cross in a square, an exclamation mark in a triangle, a tick. */
export function severitySign(pen: PrintPen, severity: Severity, x: number, y: number): void {
  if (severity === 'stop') {
    const line = { width: 0.5, colour: STOP };
    pen.rect(x, y - 2.8, 3.2, 3.2, { width: 0.3, colour: STOP });
    pen.line(x + 0.7, y - 2.1, x + 2.5, y - 0.3, line);
    pen.line(x + 0.7, y - 0.3, x + 2.5, y - 2.1, line);
  } else if (severity === 'attention') {
    pen.stroke([x, y + 0.3, x + 3.4, y + 0.3, x + 1.7, y - 2.8], { width: 0.3, colour: ATTENTION }, true);
    pen.text('!', x + 1.7, y - 0.05, { ...WARNING_SIGN, size: 6.5 }, 'centre');
  } else pen.stroke([x + 0.3, y - 1.2, x + 1.2, y - 0.2, x + 3, y - 2.6], { width: 0.5, colour: GOOD });
}

/** A small open square to be ticked with a pencil. */
export function tickBox(pen: PrintPen, x: number, y: number): void {
  pen.rect(x, y - 2.4, 2.8, 2.8, { width: 0.25, colour: INK });
}
