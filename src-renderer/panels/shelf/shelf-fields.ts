import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import { sizeWords } from '../../../shared-math/shaft/index.ts';
import {
  cellValue,
  columnsOf,
  isAsked,
  type PartKind,
  putValue,
  type ShelfColumn,
  valueAt,
} from '../../../shared-math/shelf/index.ts';
import { formatDecimal, type LengthStyle, MM_PER_INCH } from '../../../shared-math/units/index.ts';

/** An entry while it is being filled in: its kind, and whatever is given so far. */
export type Draft = Record<string, unknown> & { readonly kind: PartKind };

/** Only what a part of this kind, given so far, is asked: a figure of another form of end goes when the form changes. */
function tidied(from: Draft, kind = from.kind): Draft {
  const draft: Draft = { kind };
  for (const column of columnsOf(kind)) {
    const value = valueAt(from, column.path);
    if (value !== undefined && isAsked(column, draft)) putValue(draft, column.path, value);
  }
  return draft;
}

/** A new entry, each choice that has to be made standing on its first. */
export function blankDraft(kind: PartKind): Draft {
  const draft: Draft = { kind, count: 1 };
  for (const column of columnsOf(kind))
    if (typeof column.holds === 'object' && !column.optional && isAsked(column, draft) && !column.when)
      putValue(draft, column.path, column.holds[0]?.[0]);
  return draft;
}

/** With one figure set, or taken out. */
export function withFigure(draft: Draft, column: ShelfColumn, value: unknown): Draft {
  const next = structuredClone(draft);
  putValue(next, column.path, value);
  const kept = tidied(next);
  // A choice that the new form asks stands on its first.
  for (const each of columnsOf(kept.kind))
    if (
      typeof each.holds === 'object' &&
      !each.optional &&
      isAsked(each, kept) &&
      valueAt(kept, each.path) === undefined
    )
      putValue(kept, each.path, each.holds[0]?.[0]);
  return kept;
}

/** A figure as it stands in its field, with its unit. */
export function figureText(column: ShelfColumn, value: unknown, style: LengthStyle): string {
  if (typeof value !== 'number') return value === undefined ? '' : String(value);
  if (column.holds === 'length') return sizeWords(value, style);
  if (column.holds === 'degrees') return `${value}°`;
  if (column.holds === 'pitch')
    return style.unit === 'in' ? `${Number(formatDecimal(MM_PER_INCH / value, 3))} per in` : `${value} mm`;
  return String(value);
}

/** What was typed, as a value; undefined if the field was emptied and may be. */
export function readFigure(column: ShelfColumn, typed: string, style: LengthStyle): Outcome<unknown, string> {
  const text = typed
    .trim()
    .replace(/\s*per in\.?$/i, '')
    .replace(column.holds === 'pitch' ? /\s*mm$/i : /$^/, '');
  if (text === '') return column.optional ? succeeded(undefined) : failed('this has to be given');
  const value = cellValue(column, text, style.unit);
  if (!value.ok) return value;
  if (
    typeof value.value === 'number' &&
    value.value <= 0 &&
    column.path !== 'count' &&
    column.path !== 'price'
  )
    return failed('must be more than 0');
  return value;
}
