import { type FigureReach, type LoadCase, linkForces, type Peak } from '../../../shared-math/forces/index.ts';
import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { type Column, headOf, lineOf } from './column.ts';

/** A figure of a case. */
export interface ForceRow {
  readonly loads: LoadCase;
  readonly reach: FigureReach;
}

/** N of a force, N·m of a moment. */
const inUnit = ({ figure }: FigureReach, { value }: Peak) =>
  figure.kind === 'moment' ? value / 1000 : value;

const peaks = (load: 'light' | 'heavy'): readonly Column<ForceRow>[] =>
  (['least', 'most'] as const).flatMap((end) => [
    {
      name: `${load}.${end}`,
      unit: 'given' as const,
      of: ({ reach }: ForceRow) => inUnit(reach, reach[load][end]),
    },
    {
      name: `${load}.${end}Handwheel`,
      unit: 'deg' as const,
      of: ({ reach }: ForceRow) => reach[load][end].handwheel,
    },
  ]);

/** The columns of forces, one line each: the table and the command's CSV read them here. */
export const FORCE_COLUMNS: readonly Column<ForceRow>[] = [
  { name: 'case', unit: 'word', of: ({ loads }) => loads.id },
  { name: 'lightLoad', unit: 'given', of: ({ loads }) => loads.loads[0] },
  { name: 'heavyLoad', unit: 'given', of: ({ loads }) => loads.loads[1] },
  { name: 'figure', unit: 'word', of: ({ reach }) => reach.figure.id },
  { name: 'kind', unit: 'word', of: ({ reach }) => reach.figure.kind },
  ...peaks('light'),
  ...peaks('heavy'),
];

/** All figures of all cases, in their order. */
export function* forceRows(cases: readonly LoadCase[]): Iterable<ForceRow> {
  for (const loads of cases) for (const reach of loads.figures) yield { loads, reach };
}

/** Forces at ride height; only the head where masses cannot be. */
export function* forcesTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${headOf(FORCE_COLUMNS)}\n`;
  const forces = linkForces(frontEnd);
  if (!forces.ok) return;
  for (const row of forceRows(forces.value.cases)) yield `${lineOf(FORCE_COLUMNS, row)}\n`;
}
