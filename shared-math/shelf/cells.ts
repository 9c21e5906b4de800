import { refusalOf } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { quoted } from '../outside/index.ts';
import { type LengthUnit, MM_PER_INCH, parseAngle, parseLength } from '../units/index.ts';
import {
  type Choices,
  COLUMNS,
  isAsked,
  KIND_WORDS,
  putValue,
  type ShelfColumn,
  valueAt,
} from './columns.ts';
import { type PartKind, type ShelfPart, shelfPartSchema } from './part-schema.ts';

/** What is wrong with an entry: in which column, by its title, and the reason. */
export interface CellRefusal {
  readonly column: string;
  readonly reason: string;
}

/** The unit that stands behind a column's title, or undefined if it has none. */
export function unitOf({ holds }: ShelfColumn, unit: LengthUnit): string {
  if (holds === 'length') return unit;
  if (holds === 'pitch') return unit === 'in' ? 'per in' : 'mm';
  return holds === 'degrees' ? 'deg' : '';
}

/** A column as it is headed: "bearing bore (mm)", "thread pitch (per in)", "name". */
export function headingOf(column: ShelfColumn, unit: LengthUnit): string {
  const suffix = unitOf(column, unit);
  return suffix === '' ? column.title : `${column.title} (${suffix})`;
}

/** Keeps what was meant: an inch figure and back is the same mm. */
const clean = (value: number) => Math.round(value * 1e9) / 1e9;

/** A value as its cell says it. */
export function cellText(column: ShelfColumn, value: unknown, unit: LengthUnit): string {
  const { holds } = column;
  if (value === undefined) return '';
  if (typeof holds === 'object') return holds.find(([entry]) => entry === value)?.[1] ?? '';
  if (typeof value !== 'number') return String(value);
  if (unit === 'in' && holds === 'length') return String(value / MM_PER_INCH);
  if (unit === 'in' && holds === 'pitch') return String(MM_PER_INCH / value);
  return String(value);
}

const FIGURE = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

function choiceIn(choices: Choices, text: string): Outcome<string, string> {
  const wanted = text.toLowerCase().replace(/\s+/g, ' ');
  const found = choices.find(([value, words]) => words.toLowerCase() === wanted || value === wanted);
  if (found) return succeeded(found[0]);
  const list = choices.map(([, words]) => `"${words}"`).join(', ');
  return failed(`${quoted(text)} is not one of ${list}`);
}

/** Reads a cell that is not empty. Lengths may carry a unit of their own and be fractions: 3/4 in. */
export function cellValue(
  { holds }: ShelfColumn,
  text: string,
  unit: LengthUnit,
): Outcome<string | number, string> {
  if (holds === 'text') return succeeded(text);
  if (typeof holds === 'object') return choiceIn(holds, text);
  if (FIGURE.test(text)) {
    const value = Number(text);
    if (!Number.isFinite(value)) return failed(`${quoted(text)} is no figure that can be kept`);
    if (unit === 'in' && holds === 'length') return succeeded(clean(value * MM_PER_INCH));
    if (unit === 'in' && holds === 'pitch')
      return value > 0 ? succeeded(clean(MM_PER_INCH / value)) : failed('must be more than 0');
    return succeeded(value);
  }
  if (holds === 'length') return parseLength(text, unit);
  if (holds === 'degrees') return parseAngle(text);
  return failed(`${quoted(text)} is not a number; write for example ${holds === 'whole' ? '4' : '4.5'}`);
}

/** The column that a path in the part belongs to. */
function columnAt(kind: PartKind, path: string): ShelfColumn | undefined {
  const own = COLUMNS.filter(({ kinds }) => kinds.includes(kind));
  return own.find((column) => column.path === path) ?? own.find((column) => column.path.startsWith(path));
}

function titleAt(kind: PartKind, path: string): string {
  return columnAt(kind, path)?.title ?? path;
}

/** Checks an entry whole; the refusal names the column. */
export function checkPart(input: { readonly kind: PartKind }): Outcome<ShelfPart, CellRefusal> {
  const stray = COLUMNS.find(
    (column) =>
      column.kinds.includes(input.kind) &&
      valueAt(input, column.path) !== undefined &&
      !isAsked(column, input),
  );
  if (stray) {
    const gate = stray.when && valueAt(input, stray.when[0]) === undefined ? stray.when[0] : undefined;
    if (gate) return failed({ column: stray.title, reason: `needs "${titleAt(input.kind, gate)}" as well` });
    const what = stray.when?.[0].startsWith('ends')
      ? 'this kind of end'
      : `this kind of ${wordOf(input.kind)}`;
    return failed({ column: stray.title, reason: `is not a figure of ${what}: leave it empty` });
  }
  const missing = COLUMNS.find(
    (column) => isAsked(column, input) && !column.optional && valueAt(input, column.path) === undefined,
  );
  if (missing) return failed({ column: missing.title, reason: 'is missing' });
  const read = shelfPartSchema.safeParse(input);
  if (read.success) return succeeded(read.data);
  const path = (read.error.issues[0]?.path ?? []).join('.');
  const { reason } = refusalOf(read.error, input);
  return failed({ column: titleAt(input.kind, path), reason: reason.replace(/^missing; .*/, 'is missing') });
}

/** What one of a kind is called: "steering box". */
export function wordOf(kind: PartKind): string {
  return KIND_WORDS.find(([entry]) => entry === kind)?.[1] ?? kind;
}

/** A cell of an entry: its column, its text and the unit that its heading or its reader has. */
export interface Cell {
  readonly column: ShelfColumn;
  readonly text: string;
  readonly unit: LengthUnit;
}

/**
 * Reads an entry from its cells; empty ones are left out. The refusal names the column and the reason.
 * Checked: tests/unit/shelf.test.ts.
 */
export function partFromCells(kind: PartKind, cells: readonly Cell[]): Outcome<ShelfPart, CellRefusal> {
  const part: Record<string, unknown> & { readonly kind: PartKind } = { kind };
  for (const { column, text, unit } of cells) {
    const written = text.trim();
    if (written === '') continue;
    if (!column.kinds.includes(kind))
      return failed({ column: column.title, reason: `is not a figure of a ${wordOf(kind)}: leave it empty` });
    const value = cellValue(column, written, unit);
    if (!value.ok) return failed({ column: column.title, reason: value.failure });
    putValue(part, column.path, value.value);
  }
  return checkPart(part);
}
