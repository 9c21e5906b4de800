import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { sweepTurn, type TurnSweep } from '../../../shared-math/sweep/index.ts';
import { toDegrees, toRadians } from '../../../shared-math/units/index.ts';

export const TURN_POSES = 41;

export const TURN_COLUMNS = [
  'handwheel',
  'leftSteer',
  'rightSteer',
  'meanSteer',
  'ratio',
  'ackermannError',
  'ackermannPercent',
] as const;

/** One row of the turn, degrees; the ratio is handwheel over wheels; null where the wheels are too straight for a percentage. */
export function turnRow(
  sweep: TurnSweep,
  index: number,
): Record<(typeof TURN_COLUMNS)[number], number | null> {
  const degrees = (column: Float64Array) => toDegrees(column[index] as number);
  return {
    handwheel: degrees(sweep.handwheel),
    leftSteer: degrees(sweep.leftSteer),
    rightSteer: degrees(sweep.rightSteer),
    meanSteer: degrees(sweep.meanSteer),
    ratio: sweep.ratio[index] as number,
    ackermannError: degrees(sweep.ackermannError),
    ackermannPercent: sweep.ackermannPercent[index] ?? null,
  };
}

/** The whole turn at ride height. */
export function* turnTable(frontEnd: FrontEnd): Iterable<string> {
  yield `${TURN_COLUMNS.join(',')}\n`;
  const sweep = sweepTurn(frontEnd, 0, toRadians(0), TURN_POSES);
  for (let i = 0; i < sweep.count; i += 1) {
    const entry = turnRow(sweep, i);
    yield `${TURN_COLUMNS.map((name) => entry[name] ?? '').join(',')}\n`;
  }
}
