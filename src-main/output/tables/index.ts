// Tables: what a layout comes to, row by row as CSV. mm and degrees, full precision. In pieces, so that a long one can be
// written as it is worked out, and called off between two.
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { BRAKING_COLUMNS, brakingTable } from './braking.ts';
import type { Column } from './column.ts';
import { FORCE_COLUMNS, forcesTable } from './forces.ts';
import { mapColumns, mapTable } from './map.ts';
import type { TableName } from './names.ts';
import { POINT_COLUMNS, pointsTable } from './points.ts';
import { SWEEP_COLUMNS, travelTable } from './travel.ts';
import { TURN_COLUMNS, turnTable } from './turn.ts';

export { textCell } from './cells.ts';

export { NUMBERS, type Numbers, TABLE_NAMES, type TableName } from './names.ts';
export { forSpreadsheet } from './spreadsheet.ts';

export interface Table {
  /** What the file is called. */
  readonly words: string;
  /** Its columns, for heads that say their units. */
  readonly columns: readonly Column<never>[];
  /** The table as text, piece by piece. One that cannot be worked out has its head alone. */
  of(document: LayoutDocument): Iterable<string>;
}

const solved = (document: LayoutDocument) => prepareFrontEnd(resolveLayout(document));

/** The tables by name. A new one is one file and one line here; its name stands in `names.ts`. */
export const TABLES: Readonly<Record<TableName, Table>> = {
  points: { words: 'Points', columns: POINT_COLUMNS, of: pointsTable },
  travel: { words: 'Travel sweep', columns: SWEEP_COLUMNS, of: (document) => travelTable(solved(document)) },
  turn: { words: 'Turn', columns: TURN_COLUMNS, of: (document) => turnTable(solved(document)) },
  braking: { words: 'Braking', columns: BRAKING_COLUMNS, of: (document) => brakingTable(solved(document)) },
  forces: { words: 'Link forces', columns: FORCE_COLUMNS, of: (document) => forcesTable(solved(document)) },
  map: {
    words: 'Map of the pitman ball',
    columns: [...mapColumns('x'), ...mapColumns('y')],
    of: (document) => mapTable(solved(document)),
  },
};
