import type { CurveColumn } from './curve-column.ts';
import type { Range } from './ranges.ts';

export interface PlotPicture {
  readonly at: readonly number[];
  readonly columns: readonly CurveColumn[];
  readonly range: Range;
  /** Drawn as the dotted line of what is wanted. */
  readonly wanted: number | undefined;
  /** Two columns between which the plot is shaded, below the curves. */
  readonly band?: { readonly lower: CurveColumn; readonly upper: CurveColumn } | undefined;
  /** The ends of the axis, where they are not the first and last of `at`. */
  readonly span?: readonly [number, number] | undefined;
}

const sameColumn = (a: ArrayLike<unknown>, b: ArrayLike<unknown>): boolean => {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i += 1) if (!Object.is(a[i], b[i])) return false;
  return true;
};

/** Whether two pictures are drawn alike: the same numbers over the same axes. */
export function samePicture(a: PlotPicture, b: PlotPicture): boolean {
  const sameBand =
    a.band === b.band ||
    (a.band !== undefined &&
      b.band !== undefined &&
      sameColumn(a.band.lower, b.band.lower) &&
      sameColumn(a.band.upper, b.band.upper));
  return (
    sameBand &&
    a.wanted === b.wanted &&
    a.range.middle === b.range.middle &&
    a.range.rung === b.range.rung &&
    sameColumn(a.span ?? [], b.span ?? []) &&
    sameColumn(a.at, b.at) &&
    a.columns.length === b.columns.length &&
    a.columns.every((column, i) => sameColumn(column, b.columns[i] as CurveColumn))
  );
}
