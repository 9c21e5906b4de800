import Papa from 'papaparse';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';

// Table files (RFC 4180) as spreadsheets write and read them, line by line.

/**
 * A spreadsheet takes a cell that begins with one of these for a formula, also one from a stranger. They are written
 * behind an apostrophe, and so is a text that begins with one, so that reading can take it off again.
 */
export const FORMULA = /^['=+\-@\t\r\n＝＋－＠]/;
export const DEFUSED = /^'(?=['=+\-@\t\r\n＝＋－＠])/;

/** What stands between cells: the sign that the first line is parted by. */
export function delimiterOf(text: string): string {
  const first = /^[^\r\n]*/.exec(text)?.[0] ?? '';
  const count = (sign: string) => first.split(sign).length;
  // Headings may hold a comma, but in quotes; none holds a semicolon or a tabulator.
  return count(';') > 1 ? ';' : count('\t') > 1 ? '\t' : ',';
}

/** A line of a table file. */
export interface Line {
  /** Counted as an editor counts, from 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

/** The lines that are not empty. A cell with line ends in it takes several. */
export function linesOf(text: string, delimiter: string): Outcome<Line[], string> {
  const { data, errors } = Papa.parse<string[]>(text, { delimiter });
  let number = 1;
  const lines: Line[] = [];
  for (const [row, cells] of data.entries()) {
    const wrong = errors.find((error) => error.row === row);
    if (wrong) return failed(`line ${number}: a quotation mark is opened and not closed as it should be`);
    if (cells.some((cell) => cell.trim() !== '')) lines.push({ number, cells });
    number += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0);
  }
  return succeeded(lines);
}
