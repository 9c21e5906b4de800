import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { sweepTurn, type TurnSweep } from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { type Column, headOf, lineOf, valueIn } from './column.ts';

export const TURN_POSES = 41;

/** A moment of the turn: the sweep and which of its rows. */
interface TurnMoment {
  readonly sweep: TurnSweep;
  readonly index: number;
}

const angle = (
  name: 'handwheel' | 'leftSteer' | 'rightSteer' | 'meanSteer' | 'ackermannError',
): Column<TurnMoment> => ({ name, unit: 'deg', of: ({ sweep, index }) => sweep[name][index] });

/**
 * The turn's columns, one line each: the table, the command's CSV and its JSON read them here. The ratio is handwheel over
 * wheels; there is no percentage where the wheels are too straight for one.
 */
export const TURN_COLUMNS: readonly Column<TurnMoment>[] = [
  angle('handwheel'),
  angle('leftSteer'),
  angle('rightSteer'),
  angle('meanSteer'),
  { name: 'ratio', unit: 'of 1', of: ({ sweep, index }) => sweep.ratio[index] },
  angle('ackermannError'),
  {
    name: 'ackermannPercent',
    unit: 'percent',
    of: ({ sweep, index }) => sweep.ackermannPercent[index] ?? undefined,
  },
];

/** One row of the turn as data; null where there is no such value. */
export function turnRow(sweep: TurnSweep, index: number): Record<string, number | string | null> {
  return Object.fromEntries(
    TURN_COLUMNS.map((column) => [column.name, valueIn(column, { sweep, index }) ?? null]),
  );
}

/** The whole turn at ride height. */
export function* turnTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${headOf(TURN_COLUMNS)}\n`;
  const sweep = sweepTurn(frontEnd, 0, toRadians(0), TURN_POSES);
  for (let index = 0; index < sweep.count; index += 1) yield `${lineOf(TURN_COLUMNS, { sweep, index })}\n`;
}
