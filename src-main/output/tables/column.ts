import { toDegrees } from '../../../shared-math/units/index.ts';

/** A column of a table: what it is called, in what unit, and what a row has for it. Misspelt, it does not compile. */
export interface Column<Row> {
  readonly name: string;
  /** `deg` turns what `of` gives, rad, into degrees; the others are written as they come. */
  readonly unit: 'deg' | 'mm' | 'of 1' | 'percent' | 'given' | 'word';
  /** What a `given` value is in, for a head that says so. */
  readonly said?: string;
  /** Undefined if the row has no such value: an empty cell. */
  of(row: Row): number | string | undefined;
}

/** What a row has in a column, in the column's unit. */
export function valueIn<Row>(column: Column<Row>, row: Row): number | string | undefined {
  const value = column.of(row);
  return column.unit === 'deg' && typeof value === 'number' ? toDegrees(value) : value;
}

export function headOf(columns: readonly Column<never>[]): string {
  return columns.map(({ name }) => name).join(',');
}

/** A row as CSV. No value of a column needs quoting. */
export function lineOf<Row>(columns: readonly Column<Row>[], row: Row): string {
  return columns.map((column) => valueIn(column, row) ?? '').join(',');
}

/** A row as data: a name with a point is a value within a value; null where the row has no such value. */
export function dataOf<Row>(columns: readonly Column<Row>[], row: Row): Record<string, unknown> {
  const data: Record<string, unknown> = {};
  for (const column of columns) {
    const keys = column.name.split('.');
    let within = data;
    for (const key of keys.slice(0, -1)) {
      within[key] ??= {};
      within = within[key] as Record<string, unknown>;
    }
    within[keys.at(-1) as string] = valueIn(column, row) ?? null;
  }
  return data;
}
