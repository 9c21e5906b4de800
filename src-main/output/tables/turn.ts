import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  type ReturnToStraight,
  returnToStraight,
  sweepTurn,
  type TurnSweep,
} from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { type Column, headOf, lineOf, valueIn } from './column.ts';

export const TURN_POSES = 41;

/** A moment of the turn: the sweep and which of its rows, and what brings the wheels back there. */
interface TurnMoment {
  readonly sweep: TurnSweep;
  readonly index: number;
  readonly back: ReturnToStraight | undefined;
}

const angle = (
  name: 'handwheel' | 'leftSteer' | 'rightSteer' | 'meanSteer' | 'ackermannError',
): Column<TurnMoment> => ({ name, unit: 'deg', of: ({ sweep, index }) => sweep[name][index] });

/** A lever about a kingpin, mm. */
const lever = (name: 'leftTrail' | 'rightTrail' | 'leftScrub' | 'rightScrub'): Column<TurnMoment> => ({
  name,
  unit: 'mm',
  of: ({ back, index }) => back?.[name][index],
});

/** A moment at the handwheel, N·m, above 0 back to straight. */
const moment = (name: string, of: 'bySideForce' | 'byWeight' | 'both'): Column<TurnMoment> => ({
  name,
  unit: 'given',
  said: 'N·m',
  of: ({ back, index }) => back && (back[of][index] as number) / 1000,
});

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
  lever('leftTrail'),
  lever('rightTrail'),
  lever('leftScrub'),
  lever('rightScrub'),
  moment('returnBySideForce', 'bySideForce'),
  moment('returnByWeight', 'byWeight'),
  moment('returnMoment', 'both'),
];

/** One row of the turn as data; null where there is no such value. */
export function turnRow(
  sweep: TurnSweep,
  index: number,
  back: ReturnToStraight | undefined,
): Record<string, number | string | null> {
  return Object.fromEntries(
    TURN_COLUMNS.map((column) => [column.name, valueIn(column, { sweep, index, back }) ?? null]),
  );
}

/** The whole turn at ride height. */
export function* turnTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${headOf(TURN_COLUMNS)}\n`;
  const sweep = sweepTurn(frontEnd, 0, toRadians(0), TURN_POSES);
  const back = returnToStraight(frontEnd, sweep, 0, toRadians(0));
  for (let index = 0; index < sweep.count; index += 1)
    yield `${lineOf(TURN_COLUMNS, { sweep, index, back })}\n`;
}
