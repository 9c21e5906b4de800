// Tables: what a layout comes to, row by row as CSV. mm and degrees, full precision. In pieces, so that a long one can be
// written as it is worked out, and called off between two.
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { brakingTable } from './braking.ts';
import { forcesTable } from './forces.ts';
import { mapTable } from './map.ts';
import type { TableName } from './names.ts';
import { pointsTable } from './points.ts';
import { travelTable } from './travel.ts';
import { turnTable } from './turn.ts';

export { textCell } from './cells.ts';

export { TABLE_NAMES, type TableName } from './names.ts';

export interface Table {
  /** What the file is called. */
  readonly words: string;
  /** The table as text, piece by piece. One that cannot be worked out has its head alone. */
  of(document: LayoutDocument): Iterable<string>;
}

const solved = (document: LayoutDocument) => prepareFrontEnd(resolveLayout(document));

/** The tables by name. A new one is one file and one line here; its name stands in `names.ts`. */
export const TABLES: Readonly<Record<TableName, Table>> = {
  points: { words: 'Points', of: pointsTable },
  travel: { words: 'Travel sweep', of: (document) => travelTable(solved(document)) },
  turn: { words: 'Turn', of: (document) => turnTable(solved(document)) },
  braking: { words: 'Braking', of: (document) => brakingTable(solved(document)) },
  forces: { words: 'Link forces', of: (document) => forcesTable(solved(document)) },
  map: { words: 'Map of the pitman ball', of: (document) => mapTable(solved(document)) },
};
