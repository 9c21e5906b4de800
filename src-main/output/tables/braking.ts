import { type BrakingRow, brakingCar, sweepBraking } from '../../../shared-math/brake/index.ts';
import type { Side } from '../../../shared-math/layout/index.ts';
import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { type Column, headOf, lineOf } from './column.ts';

/** What a grip that cannot be posed has too: N, N·m, shares of g, degrees of wind-up. */
const ASKED: readonly Column<BrakingRow>[] = [
  { name: 'grip', unit: 'of 1', of: ({ grip }) => grip },
  { name: 'status', unit: 'word', of: ({ status }) => status },
  { name: 'deceleration', unit: 'of 1', of: ({ deceleration }) => deceleration },
  { name: 'frontLoad', unit: 'given', said: 'N', of: ({ frontLoad }) => frontLoad },
  { name: 'brakeForce', unit: 'given', said: 'N', of: ({ brakeForce }) => brakeForce },
  { name: 'moment', unit: 'given', said: 'N·m', of: ({ moment }) => moment / 1000 },
  { name: 'windUp.left', unit: 'deg', of: ({ windUp }) => windUp.left },
  { name: 'windUp.right', unit: 'deg', of: ({ windUp }) => windUp.right },
];

const wheel = (side: Side): readonly Column<BrakingRow>[] => [
  { name: `${side}.caster`, unit: 'deg', of: (row) => row[`${side}Caster`] },
  { name: `${side}.steer`, unit: 'deg', of: (row) => row[`${side}Steer`] },
];

/** Braking's columns, one line each: the table, the command's CSV and its JSON read them here. */
export const BRAKING_COLUMNS: readonly Column<BrakingRow>[] = [
  ...ASKED,
  ...wheel('left'),
  ...wheel('right'),
  { name: 'brakeSteer', unit: 'deg', of: ({ brakeSteer }) => brakeSteer },
];

/** The columns of a grip: fewer where it cannot be posed. */
export const brakingColumnsOf = ({ status }: BrakingRow): readonly Column<BrakingRow>[] =>
  status === 'ok' ? BRAKING_COLUMNS : ASKED;

/** A grip as CSV, what was not posed left empty. */
export function brakingLine(row: BrakingRow): string {
  const columns = brakingColumnsOf(row);
  return `${lineOf(columns, row)}${','.repeat(BRAKING_COLUMNS.length - columns.length)}`;
}

/** Braking over the usual grips at ride height, straight ahead; only its head where the springs cannot be worked out. */
export function* brakingTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${headOf(BRAKING_COLUMNS)}\n`;
  const car = brakingCar(frontEnd.layout);
  if (!car.ok) return;
  for (const row of sweepBraking(frontEnd, car.value)) yield `${brakingLine(row)}\n`;
}
