import {
  type Hardpoint,
  hardpoints,
  type LayoutDocument,
  type Origin,
  originOf,
} from '../../../shared-math/layout/index.ts';
import { textCell } from './cells.ts';
import { type Column, headOf, lineOf } from './column.ts';

export const POINT_COLUMNS: readonly Column<Hardpoint & { readonly origin: Origin }>[] = [
  { name: 'point', unit: 'word', of: ({ id }) => textCell(id) },
  { name: 'name', unit: 'word', of: ({ name }) => textCell(name) },
  { name: 'carriedBy', unit: 'word', of: ({ carrier }) => carrier },
  { name: 'x', unit: 'mm', of: ({ at }) => at[0] },
  { name: 'y', unit: 'mm', of: ({ at }) => at[1] },
  { name: 'z', unit: 'mm', of: ({ at }) => at[2] },
  { name: 'origin', unit: 'word', of: ({ origin }) => origin },
];

/** Every hardpoint at ride height, mm in the car's frame: x forward, y left, z up; and where its place comes from. */
export function* pointsTable(document: LayoutDocument): Iterable<string> {
  yield `${headOf(POINT_COLUMNS)}\n`;
  for (const point of hardpoints(document))
    yield `${lineOf(POINT_COLUMNS, { ...point, origin: originOf(document, point) })}\n`;
}
