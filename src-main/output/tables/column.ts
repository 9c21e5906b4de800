import { toDegrees } from '../../../shared-math/units/index.ts';

/** A column of a table: what it is called, in what unit, and what a row has for it. Misspelt, it does not compile. */
export interface Column<Row> {
  readonly name: string;
  /** `deg` turns what `of` gives, rad, into degrees; the others are written as they come. */
  readonly unit: 'deg' | 'mm' | 'of 1' | 'percent' | 'given' | 'word';
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
