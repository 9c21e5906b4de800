import { type Hardpoint, hardpoints, type LayoutDocument } from '../../../shared-math/layout/index.ts';
import { textCell } from './cells.ts';
import { type Column, headOf, lineOf } from './column.ts';

const POINT_COLUMNS: readonly Column<Hardpoint>[] = [
  { name: 'point', unit: 'word', of: ({ id }) => textCell(id) },
  { name: 'name', unit: 'word', of: ({ name }) => textCell(name) },
  { name: 'carriedBy', unit: 'word', of: ({ carrier }) => carrier },
  { name: 'x', unit: 'mm', of: ({ at }) => at[0] },
  { name: 'y', unit: 'mm', of: ({ at }) => at[1] },
  { name: 'z', unit: 'mm', of: ({ at }) => at[2] },
];

/** Every hardpoint at ride height, mm in the car's frame: x forward, y left, z up. */
export function* pointsTable(document: LayoutDocument): Iterable<string> {
  yield `${headOf(POINT_COLUMNS)}\n`;
  for (const point of hardpoints(document)) yield `${lineOf(POINT_COLUMNS, point)}\n`;
}
