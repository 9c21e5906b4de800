import { FLAG_NO_KICK, type RideRun, RUN_DIVERGED, RUN_OK } from '../../../shared-math/ride/index.ts';
import { MM_PER_INCH, toDegrees } from '../../../shared-math/units/index.ts';
import type { CurveColumn } from '../../curves/curve-column.ts';
import { type Ladder, rungs } from '../../curves/ranges.ts';
import { valueAt } from './run-rows.ts';

/** A drive in the units it is shown in, over s: degrees, and heave and toe in inches or mm. */
export interface RoadColumns {
  readonly steer: CurveColumn;
  readonly heave: CurveColumn;
  readonly roll: CurveColumn;
  readonly toe: CurveColumn;
  readonly kick: CurveColumn;
}

export interface RoadData {
  readonly at: readonly number[];
  readonly columns: RoadColumns;
}

/** The total toe as a length over the tyres' diameter, from the total angle: both wheels take half of it. */
const toeLength = (total: number, tyreRadius: number) => 4 * tyreRadius * Math.sin(total / 2);

/** Undefined if the car was thrown off, and no steering where the linkage does not reach. */
export function roadData(run: RideRun, tyreRadius: number, unit: 'in' | 'mm'): RoadData {
  const per = unit === 'in' ? MM_PER_INCH : 1;
  const rows = Array.from({ length: run.count }, (_, row) => row);
  const steered = (value: (row: number) => number): CurveColumn =>
    rows.map((row) => (run.status[row] === RUN_OK ? value(row) : null));
  const ridden = (value: (row: number) => number): CurveColumn =>
    rows.map((row) => (run.status[row] === RUN_DIVERGED ? null : value(row)));
  const of = (column: Float64Array, row: number) => column[row] as number;
  return {
    at: Array.from(run.time),
    columns: {
      steer: steered((row) => toDegrees(of(run.bumpSteer, row))),
      heave: ridden((row) => of(run.heave, row) / per),
      roll: ridden((row) => toDegrees(of(run.roll, row))),
      toe: steered((row) => toeLength(of(run.totalToeIn, row), tyreRadius) / per),
      kick: rows.map((row) =>
        run.status[row] === RUN_OK && ((run.flags[row] as number) & FLAG_NO_KICK) === 0
          ? toDegrees(of(run.kick, row))
          : null,
      ),
    },
  };
}

/** The same at one moment; by the straight line between two rows. */
export function roadNow(run: RideRun, tyreRadius: number, unit: 'in' | 'mm', time: number) {
  const per = unit === 'in' ? MM_PER_INCH : 1;
  return {
    steer: toDegrees(valueAt(run, run.bumpSteer, time)),
    heave: valueAt(run, run.heave, time) / per,
    roll: toDegrees(valueAt(run, run.roll, time)),
    toe: toeLength(valueAt(run, run.totalToeIn, time), tyreRadius) / per,
    kick: toDegrees(valueAt(run, run.kick, time)),
  };
}

/** Where a curve is farthest from nothing: its value and its moment (s). Undefined if it has no value at all. */
export function farthest(data: RoadData, column: CurveColumn): { value: number; at: number } | undefined {
  let found: { value: number; at: number } | undefined;
  column.forEach((value, row) => {
    if (typeof value !== 'number') return;
    if (!found || Math.abs(value) > Math.abs(found.value)) found = { value, at: data.at[row] as number };
  });
  return found;
}

/** The axle's heave on a road. */
export const HEAVE_LADDERS: Record<'in' | 'mm', Ladder> = {
  in: rungs([0.5, 0.2], [1, 0.5], [2, 1], [3, 1], [5, 2], [10, 5], [40, 20]),
  mm: rungs([10, 5], [25, 10], [50, 20], [80, 40], [130, 50], [250, 100], [1000, 500]),
};

/** Degrees that the handwheel is thrown. */
export const KICK_LADDER = rungs(
  [2, 1],
  [5, 2],
  [10, 5],
  [20, 10],
  [45, 20],
  [90, 45],
  [180, 90],
  [400, 200],
  [1000, 500],
);
