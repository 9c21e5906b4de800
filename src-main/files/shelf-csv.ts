import Papa from 'papaparse';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { quoted } from '../../shared-math/outside/index.ts';
import {
  type Cell,
  COLUMNS,
  cellText,
  headingOf,
  isAsked,
  KIND_WORDS,
  type PartKind,
  partFromCells,
  type ShelfColumn,
  type ShelfPart,
  valueAt,
  wordOf,
} from '../../shared-math/shelf/index.ts';
import type { LengthUnit } from '../../shared-math/units/index.ts';
import { DEFUSED, delimiterOf, FORMULA, type Line, linesOf } from './csv-lines.ts';

// The shelf as a table file (RFC 4180), for a spreadsheet: a line for each entry, plain words at the head of each column.

/** Characters, and entries. A shop's shelf is some hundreds. */
export const SHELF_TEXT_MAX = 4_000_000;
export const SHELF_PARTS_MAX = 5000;

const KIND = 'kind';

/** The whole shelf as text, lengths in mm or in decimal inches as the shop has it. */
export function shelfCsv(parts: readonly ShelfPart[], unit: LengthUnit): string {
  // An empty shelf goes out with every column, as a form to fill in.
  const columns = COLUMNS.filter(
    (column) => parts.length === 0 || parts.some((part) => isAsked(column, part)),
  );
  const rows = parts.map((part) => [
    wordOf(part.kind),
    ...columns.map((column) =>
      isAsked(column, part) ? cellText(column, valueAt(part, column.path), unit) : '',
    ),
  ]);
  const head = [KIND, ...columns.map((column) => headingOf(column, unit))];
  // The mark at the beginning tells a spreadsheet that the text is UTF-8.
  return `\uFEFF${Papa.unparse([head, ...rows], { newline: '\r\n', escapeFormulae: FORMULA })}\r\n`;
}

interface Heading {
  readonly text: string;
  /** Nothing for the column that tells the kind. */
  readonly column: ShelfColumn | undefined;
  readonly unit: LengthUnit;
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ');

function headingFor(text: string): Outcome<Heading, string> {
  const wanted = plain(text);
  if (wanted === KIND) return succeeded({ text, column: undefined, unit: 'mm' });
  for (const column of COLUMNS)
    for (const unit of ['mm', 'in'] as const)
      if (wanted === headingOf(column, unit)) return succeeded({ text, column, unit });
  const bare = COLUMNS.find(({ title }) => title === wanted);
  if (bare)
    return failed(
      `the column ${quoted(text)} tells no unit: write "${headingOf(bare, 'mm')}"${
        bare.holds === 'degrees' ? '' : ` or "${headingOf(bare, 'in')}"`
      }`,
    );
  return failed(
    wanted === '' ? 'a column has no heading' : `the column ${quoted(text)} is not one that a shelf has`,
  );
}

function headingsIn(row: readonly string[]): Outcome<Heading[], string> {
  const found: Heading[] = [];
  for (const text of row) {
    const heading = headingFor(text);
    if (!heading.ok) return heading;
    if (found.some(({ column }) => column === heading.value.column))
      return failed(`the column ${quoted(text)} stands there twice`);
    found.push(heading.value);
  }
  for (const wanted of [KIND, 'name'])
    if (!found.some(({ column }) => (column?.title ?? KIND) === wanted))
      return failed(`there is no column "${wanted}": the first line has to tell what each column is`);
  return succeeded(found);
}

const isFigure = ({ column }: Heading) =>
  column !== undefined && typeof column.holds === 'string' && column.holds !== 'text';

const COMMA = /^[+-]?\d*,\d+/;
const POINT = /^[+-]?\d*\.\d+/;

/** A figure with a decimal comma as one with a point, or why not. */
function withPoint(cell: string, delimiter: string, commas: boolean): Outcome<string, string> {
  const figure = cell.trim();
  if (!figure.includes(',')) {
    return commas && POINT.test(figure)
      ? failed(
          `${quoted(figure)} has a point where other figures of this file have a comma: use one of them throughout`,
        )
      : succeeded(cell);
  }
  if (figure.includes('.') || figure.indexOf(',') !== figure.lastIndexOf(','))
    return failed(`${quoted(figure)} is grouped by commas or points: write the figure without`);
  if (delimiter === ',')
    return failed(`${quoted(figure)} has a decimal comma: write a point, or part the columns by semicolons`);
  return succeeded(cell.replace(',', '.'));
}

function partIn(line: Line, headings: readonly Heading[], delimiter: string, commas: boolean) {
  const refuse = (column: string, reason: string) =>
    failed(`line ${line.number}, column ${quoted(column)}: ${reason}`);
  const extra = line.cells.slice(headings.length).find((cell) => cell.trim() !== '');
  if (extra !== undefined)
    return failed(`line ${line.number}: has more cells than the first line has columns`);
  const cells: Cell[] = [];
  let kind: PartKind | undefined;
  for (const [i, heading] of headings.entries()) {
    const raw = (line.cells[i] ?? '').replace(DEFUSED, '');
    if (!heading.column) {
      const word = plain(raw);
      kind = KIND_WORDS.find(([entry, one]) => word === one || word === entry)?.[0];
      if (!kind)
        return refuse(
          KIND,
          word === ''
            ? 'is missing'
            : `${quoted(raw)} is not one of ${KIND_WORDS.map(([, one]) => `"${one}"`).join(', ')}`,
        );
      continue;
    }
    const text = isFigure(heading) ? withPoint(raw, delimiter, commas) : succeeded(raw);
    if (!text.ok) return refuse(heading.text, text.failure);
    cells.push({ column: heading.column, text: text.value, unit: heading.unit });
  }
  const part = partFromCells(kind as PartKind, cells);
  if (part.ok) return part;
  const { column, reason } = part.failure;
  return refuse(headings.find((heading) => heading.column?.title === column)?.text ?? column, reason);
}

/**
 * Reads a shelf from the text of a table file: all of it or nothing. Commas, semicolons or tabulators may part the
 * columns; where it is not commas, figures may have a decimal comma.
 * Failure: one line that names the line and column and the reason. Checked: tests/unit/files/shelf-csv.test.ts.
 */
export function readShelfCsv(text: string): Outcome<ShelfPart[], string> {
  if (text.length > SHELF_TEXT_MAX) return failed('too large to be a shelf (more than 4 million characters)');
  const body = text.replace(/^\uFEFF/, '');
  const delimiter = delimiterOf(body);
  const lines = linesOf(body, delimiter);
  if (!lines.ok) return lines;
  const [first, ...others] = lines.value;
  if (!first) return failed('there is nothing in it');
  const headings = headingsIn(trimmedEnd(first.cells));
  if (!headings.ok) return failed(`line ${first.number}: ${headings.failure}`);
  if (others.length > SHELF_PARTS_MAX) return failed(`more than ${SHELF_PARTS_MAX} entries`);
  const commas =
    delimiter !== ',' &&
    others.some(({ cells }) =>
      headings.value.some((heading, i) => isFigure(heading) && COMMA.test((cells[i] ?? '').trim())),
    );
  const parts: ShelfPart[] = [];
  for (const line of others) {
    const part = partIn(line, headings.value, delimiter, commas);
    if (!part.ok) return part;
    parts.push(part.value);
  }
  return succeeded(parts);
}

/** A spreadsheet may write empty columns behind the last. */
function trimmedEnd(cells: readonly string[]): readonly string[] {
  const last = cells.findLastIndex((cell) => cell.trim() !== '');
  return cells.slice(0, last + 1);
}
