// Tables: what a layout comes to, row by row as CSV. mm and degrees, full precision. In pieces, so that a long one can be
// written as it is worked out, and called off between two.
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { mapTable } from './map.ts';
import type { TableName } from './names.ts';
import { pointsTable } from './points.ts';
import { travelTable } from './travel.ts';
import { turnTable } from './turn.ts';

export { textCell } from './cells.ts';

export { TABLE_NAMES, type TableName } from './names.ts';

export const TABLE_WORDS: Record<TableName, string> = {
  points: 'Points',
  travel: 'Travel sweep',
  turn: 'Turn',
  map: 'Map of the pitman ball',
};

/** A layout's table as text, piece by piece. One that cannot be worked out has its head alone. */
export function tableOf(name: TableName, document: LayoutDocument): Iterable<string> {
  if (name === 'points') return pointsTable(document);
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  if (name === 'travel') return travelTable(frontEnd);
  return name === 'turn' ? turnTable(frontEnd) : mapTable(frontEnd);
}
