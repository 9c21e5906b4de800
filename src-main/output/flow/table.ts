import { type Align, lineHeight, type PrintPen, type TextStyle } from '../pens/print-pen.ts';
import { BODY, CELL, COLUMN, ROW_RULE } from '../pens/styles.ts';
import { brokenInto, writeLines } from '../pens/text-lines.ts';
import type { Block } from './block.ts';

export interface TableColumn {
  readonly head: string;
  /** Its share of the table's width. */
  readonly width: number;
  readonly align?: Align;
}

/** A cell: a text, or several lines each in a style of its own. */
export type CellText = string | readonly (readonly [text: string, style: TextStyle])[];

/** mm above and below a row's text, and between columns. */
const ROW_PAD = 0.7;
const COLUMN_GAP = 2.2;
/** A table is not parted so that fewer rows than these stand alone. */
const LEAST_ROWS = 3;

type Lines = readonly (readonly [line: string, style: TextStyle])[];

function linesOf(pen: PrintPen, cell: CellText, width: number): Lines {
  const parts = typeof cell === 'string' ? [[cell, BODY] as const] : cell;
  return parts.flatMap(([text, style]) =>
    text === '' ? [] : brokenInto(pen, text, style, width).map((line) => [line, style] as const),
  );
}

const heightOf = (lines: Lines) => lines.reduce((sum, [, style]) => sum + lineHeight(style.size), 0);

/**
 * A table: thin rules between rows, a firm one under the head. Figures stand right-aligned under their heads. The head
 * comes again where the table goes on in another column.
 */
export function table(columns: readonly TableColumn[], rows: readonly (readonly CellText[])[]): Block {
  const whole = columns.reduce((sum, { width }) => sum + width, 0);
  const widths = (width: number) => columns.map((column) => (column.width / whole) * width);
  const inner = (width: number, i: number) => width - (i < columns.length - 1 ? COLUMN_GAP : 0);
  const heads = (pen: PrintPen, width: number) =>
    widths(width).map((wide, i) => brokenInto(pen, columns[i]?.head ?? '', COLUMN, inner(wide, i)));
  const hasHead = columns.some(({ head }) => head !== '');
  const headHeight = (pen: PrintPen, width: number) =>
    hasHead ? Math.max(...heads(pen, width).map((lines) => lines.length)) * lineHeight(COLUMN.size) + 1 : 0;
  const rowHeight = (pen: PrintPen, row: readonly CellText[], width: number) =>
    Math.max(...widths(width).map((wide, i) => heightOf(linesOf(pen, row[i] ?? '', inner(wide, i))))) +
    2 * ROW_PAD;

  const place = (x: number, wide: number, align: Align) =>
    align === 'left' ? x : align === 'right' ? x + wide : x + wide / 2;

  return {
    height: (pen, width) =>
      headHeight(pen, width) + rows.reduce((sum, row) => sum + rowHeight(pen, row, width), 0) + 3,
    paint: (pen, x, y, width) => {
      let at = y;
      if (hasHead) {
        const tall = headHeight(pen, width);
        let left = x;
        heads(pen, width).forEach((lines, i) => {
          const wide = widths(width)[i] as number;
          const align = columns[i]?.align ?? 'left';
          const top = at + tall - 1 - lines.length * lineHeight(COLUMN.size);
          writeLines(pen, lines, place(left, inner(wide, i), align), top, COLUMN, align);
          left += wide;
        });
        at += tall;
        pen.line(x, at, x + width, at, CELL);
      }
      rows.forEach((row, number) => {
        const tall = rowHeight(pen, row, width);
        let left = x;
        widths(width).forEach((wide, i) => {
          const align = columns[i]?.align ?? 'left';
          let line = at + ROW_PAD;
          for (const [text, style] of linesOf(pen, row[i] ?? '', inner(wide, i)))
            line = writeLines(pen, [text], place(left, inner(wide, i), align), line, style, align);
          left += wide;
        });
        at += tall;
        pen.line(x, at, x + width, at, number === rows.length - 1 ? CELL : ROW_RULE);
      });
    },
    split: (pen, width, room) => {
      let used = headHeight(pen, width);
      let count = 0;
      for (const row of rows) {
        used += rowHeight(pen, row, width);
        if (used > room) break;
        count += 1;
      }
      count = Math.min(count, rows.length - LEAST_ROWS);
      return count < LEAST_ROWS
        ? undefined
        : [table(columns, rows.slice(0, count)), table(columns, rows.slice(count))];
    },
  };
}

/** Facts as name and value, without a head. */
export function facts(rows: readonly (readonly [what: string, value: string])[], share = 0.52): Block {
  return table(
    [
      { head: '', width: share },
      { head: '', width: 1 - share, align: 'right' },
    ],
    rows,
  );
}
