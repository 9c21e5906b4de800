import type { BrakingRow } from '../../../../shared-math/brake/index.ts';
import { ROW_OK, type TravelSweep, toeLength } from '../../../../shared-math/sweep/index.ts';
import { MM_PER_INCH, toDegrees } from '../../../../shared-math/units/index.ts';
import type { CurveColumn } from '../../../curves/curve-column.ts';
import { rungs } from '../../../curves/ranges.ts';

export type Along = 'heave' | 'roll' | 'braking';

/** The curves of a sweep in the units they are shown in: degrees, and toe as a length in inches or mm. */
export interface TravelData {
  readonly along: Along;
  /** mm of heave, degrees of roll, or how hard the brakes are on, as a share of g. */
  readonly at: readonly number[];
  readonly leftSteer: CurveColumn;
  readonly rightSteer: CurveColumn;
  readonly meanSteer: CurveColumn;
  readonly toe: CurveColumn;
  readonly leftCaster: CurveColumn;
  readonly rightCaster: CurveColumn;
}

/** Total toe-in, over the tyre's diameter, of two wheel steers; in the unit. */
export function toeOf(left: number, right: number, tyreRadius: number, unit: 'in' | 'mm'): number {
  const mm = toeLength(-left, tyreRadius) + toeLength(right, tyreRadius);
  return unit === 'in' ? mm / MM_PER_INCH : mm;
}

export function travelData(sweep: TravelSweep, tyreRadius: number, unit: 'in' | 'mm'): TravelData {
  const rows = Array.from({ length: sweep.count }, (_, row) => row);
  const column = (value: (row: number) => number): CurveColumn =>
    rows.map((row) => (sweep.status[row] === ROW_OK ? value(row) : null));
  const degrees = (values: Float64Array) => column((row) => toDegrees(values[row] as number));
  return {
    along: sweep.along,
    at: Array.from(sweep.at, (value) => (sweep.along === 'heave' ? value : toDegrees(value))),
    leftSteer: degrees(sweep.leftSteer),
    rightSteer: degrees(sweep.rightSteer),
    meanSteer: degrees(sweep.meanSteer),
    toe: column((row) =>
      toeOf(sweep.leftSteer[row] as number, sweep.rightSteer[row] as number, tyreRadius, unit),
    ),
    leftCaster: degrees(sweep.leftCaster),
    rightCaster: degrees(sweep.rightCaster),
  };
}

/** The same over how hard the car brakes, at ride height. */
export function brakingData(rows: readonly BrakingRow[], tyreRadius: number, unit: 'in' | 'mm'): TravelData {
  const column = (value: (row: BrakingRow) => number): CurveColumn =>
    rows.map((row) => (row.status === 'ok' ? value(row) : null));
  const degrees = (value: (row: BrakingRow) => number) => column((row) => toDegrees(value(row)));
  return {
    along: 'braking',
    at: rows.map(({ grip }) => grip),
    leftSteer: degrees((row) => row.leftSteer),
    rightSteer: degrees((row) => row.rightSteer),
    meanSteer: degrees((row) => (row.leftSteer + row.rightSteer) / 2),
    toe: column((row) => toeOf(row.leftSteer, row.rightSteer, tyreRadius, unit)),
    leftCaster: degrees((row) => row.leftCaster),
    rightCaster: degrees((row) => row.rightCaster),
  };
}

/** The value of the row nearest to 0 that the linkage reaches. */
export function atRide(data: TravelData, column: CurveColumn): number | undefined {
  let best: number | undefined;
  let nearest = Number.POSITIVE_INFINITY;
  column.forEach((value, row) => {
    const away = Math.abs(data.at[row] as number);
    if (typeof value === 'number' && away < nearest) {
      nearest = away;
      best = value;
    }
  });
  return best;
}

/** Whether the linkage misses any row. */
export function hasGaps(data: TravelData): boolean {
  return data.meanSteer.includes(null);
}

export const CASTER_LADDER = rungs(
  [1, 0.5],
  [2, 1],
  [3, 1],
  [5, 2],
  [8, 4],
  [12, 5],
  [20, 10],
  [45, 20],
  [90, 45],
);
