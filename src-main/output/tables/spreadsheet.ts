import Papa from 'papaparse';
import type { Column } from './column.ts';
import type { Numbers } from './names.ts';

// A table for a reader's spreadsheet: heads that say their unit, digits that a bench can use, and the separators of the
// reader's language. The plain form, for programs, keeps every digit.

const DECIMALS: Readonly<Record<Column<never>['unit'], number>> = {
  deg: 3,
  mm: 2,
  'of 1': 3,
  percent: 1,
  given: 2,
  word: 0,
};

const UNITS: Partial<Record<Column<never>['unit'], string>> = { deg: 'degrees', mm: 'mm', percent: '%' };

/** Below this a figure is the noise of solving, not a figure. */
const NOISE = 1e-9;

const NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/;

/** A figure with so many decimals; one that would read as nothing and is not keeps two digits of its own. */
function written(value: number, decimals: number, numbers: Numbers): string {
  const fixed = value.toFixed(decimals);
  const lost = Number(fixed) === 0 && Math.abs(value) > NOISE;
  const text = lost ? value.toPrecision(2) : Number(fixed) === 0 ? (0).toFixed(decimals) : fixed;
  return numbers === 'comma' ? text.replace('.', ',') : text;
}

/**
 * A plain table, piece by piece, as a spreadsheet of the reader's language takes it: commas between cells beside a decimal
 * point, semicolons beside a decimal comma.
 */
export function* forSpreadsheet(
  pieces: Iterable<string>,
  columns: readonly Column<never>[],
  numbers: Exclude<Numbers, 'data'>,
): Iterable<string> {
  const delimiter = numbers === 'comma' ? ';' : ',';
  let kinds: (Column<never> | undefined)[] | undefined;
  for (const piece of pieces) {
    const rows = Papa.parse<string[]>(piece.trimEnd(), { delimiter: ',' }).data;
    const lines = rows.map((cells) => {
      if (kinds) return cells.map((cell, i) => cellFor(cell, kinds?.[i], numbers));
      kinds = cells.map((name) => columns.find((column) => column.name === name));
      return cells.map((name, i) => headFor(name, kinds?.[i]));
    });
    yield `${Papa.unparse(lines, { delimiter, newline: '\n' })}\n`;
  }
}

/** "x, mm": what a column is called, and in what unit. */
function headFor(name: string, column: Column<never> | undefined): string {
  const unit = column?.said ?? UNITS[column?.unit ?? 'word'];
  return unit ? `${name}, ${unit}` : name;
}

function cellFor(cell: string, column: Column<never> | undefined, numbers: Numbers): string {
  const unit = column?.unit ?? 'word';
  return unit !== 'word' && NUMBER.test(cell) ? written(Number(cell), DECIMALS[unit], numbers) : cell;
}
