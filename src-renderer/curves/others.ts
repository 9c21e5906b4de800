import { COMPARE_DASHES } from '../look/compare.ts';
import type { CurveColumn } from './curve-column.ts';
import type { Curve } from './strip.ts';

/** The curve of another variant, as a plot takes it: named by its letter, dashed as the letter is. */
export function otherCurve(
  other: { readonly letter: keyof typeof COMPARE_DASHES },
  whose: string,
  column: CurveColumn,
  now: number | undefined,
): Curve {
  const { letter } = other;
  return {
    name: letter,
    letter,
    whose,
    ink: { token: 'ink-soft', width: 1.5, dash: COMPARE_DASHES[letter] },
    column,
    now,
  };
}

/** Curves over an axis of their own. */
export interface Table<Name extends string> {
  readonly at: readonly number[];
  readonly columns: Readonly<Record<Name, CurveColumn>>;
}

/**
 * Brings curves that are known at different places onto one axis. At the places of the others a curve is left
 * undefined, so that its line runs through; its own gaps stay gaps.
 */
export function joined<Name extends string>(
  tables: readonly Table<Name>[],
): { readonly at: readonly number[]; readonly columns: readonly Readonly<Record<Name, CurveColumn>>[] } {
  const [only] = tables;
  if (tables.length === 1 && only) return { at: only.at, columns: [only.columns] };
  const at = [...new Set(tables.flatMap((table) => table.at))].sort((a, b) => a - b);
  const columns = tables.map((table) => {
    const rowAt = new Map(table.at.map((place, row) => [place, row]));
    const rows = at.map((place) => rowAt.get(place));
    const spread = (column: CurveColumn): CurveColumn =>
      rows.map((row) => (row === undefined ? undefined : column[row]));
    return Object.fromEntries(
      Object.entries<CurveColumn>(table.columns).map(([name, column]) => [name, spread(column)]),
    ) as Record<Name, CurveColumn>;
  });
  return { at, columns };
}
