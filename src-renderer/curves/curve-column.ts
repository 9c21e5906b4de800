/**
 * One curve's values, row by row of its axis; null where there is none, which leaves a gap. Undefined at the rows of another
 * curve: there the line runs through.
 */
export type CurveColumn = readonly (number | null | undefined)[];

/** The first and last row that has a value; undefined if none has. */
export function endsOf(column: CurveColumn): { first: number; last: number } | undefined {
  const first = column.findIndex((value) => typeof value === 'number');
  if (first < 0) return undefined;
  return { first, last: column.findLastIndex((value) => typeof value === 'number') };
}
