import type { PrintPen, TextStyle } from '../pens/print-pen.ts';
import { capHeight, lineHeight } from '../pens/print-pen.ts';
import { BODY, HEADING } from '../pens/styles.ts';
import { brokenInto, writeLines } from '../pens/text-lines.ts';

/** A piece of a page that knows how tall it is at a width, mm. */
export interface Block {
  /** Stays in one column with what follows it. */
  readonly leads?: boolean;
  /** mm kept free above it, but for the head of a column. */
  readonly above?: number;
  height(pen: PrintPen, width: number): number;
  paint(pen: PrintPen, x: number, y: number, width: number): void;
  /** The part that fits a room of mm and the rest; undefined if it should not be parted there. */
  split?(pen: PrintPen, width: number, room: number): readonly [Block, Block] | undefined;
}

/** A section's heading; a soft note may follow on the same line. */
export function heading(text: string, style: TextStyle = HEADING): Block {
  return {
    leads: true,
    above: 2.4,
    height: () => capHeight(style.size) + 2.6,
    paint: (pen, x, y) => pen.text(text, x, y + capHeight(style.size), style),
  };
}

/** A paragraph is not parted so that fewer lines than these stand alone. */
const LEAST_LINES = 2;

/** Lines already broken. */
function linesBlock(lines: readonly string[], style: TextStyle, after: number): Block {
  return {
    height: () => lines.length * lineHeight(style.size) + after,
    paint: (pen, x, y) => void writeLines(pen, lines, x, y, style),
    split: (_, __, room) => {
      const count = Math.min(Math.floor(room / lineHeight(style.size)), lines.length - LEAST_LINES);
      return count < LEAST_LINES
        ? undefined
        : [linesBlock(lines.slice(0, count), style, 0), linesBlock(lines.slice(count), style, after)];
    },
  };
}

/** A paragraph; a long one goes on in the next column. */
export function paragraph(text: string, style: TextStyle = BODY, after = 1.6): Block {
  const lines = (pen: PrintPen, width: number) =>
    linesBlock(brokenInto(pen, text, style, width), style, after);
  return {
    height: (pen, width) => lines(pen, width).height(pen, width),
    paint: (pen, x, y, width) => lines(pen, width).paint(pen, x, y, width),
    split: (pen, width, room) => lines(pen, width).split?.(pen, width, room),
  };
}

/** A sentence that what follows belongs to. */
export function lead(text: string, style: TextStyle = BODY, after = 1.2): Block {
  return { ...paragraph(text, style, after), leads: true };
}

export function space(mm: number): Block {
  return { height: () => mm, paint: () => {} };
}

/** Something drawn, of a height of its own. */
export function drawn(height: number, paint: Block['paint']): Block {
  return { height: () => height, paint };
}

/** An item with a sign before it; `sign` draws it with its left end at x and its line's base at y. */
export function item(
  sign: (pen: PrintPen, x: number, y: number) => void,
  texts: readonly (readonly [text: string, style: TextStyle])[],
  indent = 6,
  after = 1.9,
): Block {
  const parts = texts.filter(([text]) => text !== '');
  return {
    height: (pen, width) =>
      parts.reduce(
        (sum, [text, style]) =>
          sum + brokenInto(pen, text, style, width - indent).length * lineHeight(style.size),
        after,
      ),
    paint: (pen, x, y, width) => {
      let at = y;
      sign(pen, x, y + 0.77 * lineHeight(parts[0]?.[1].size ?? BODY.size));
      for (const [text, style] of parts)
        at = writeLines(pen, brokenInto(pen, text, style, width - indent), x + indent, at, style);
    },
  };
}
