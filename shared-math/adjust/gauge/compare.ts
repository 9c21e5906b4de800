import { type LayoutDocument, resolveLayout, type Side } from '../../layout/index.ts';
import { failed, type Outcome, succeeded } from '../../outcome.ts';
import { factorise, solveFactored } from '../../solve/cholesky.ts';
import type { Degrees } from '../../units/index.ts';
import { FITS_WITHIN } from '../adjust.ts';
import { gaugeTask, predictReadings } from './predict.ts';
import type { GaugeReadings } from './readings.ts';

export interface ComparedReading {
  readonly id: string;
  readonly side: Side;
  /** Degrees, positive to the left. */
  readonly observed: Degrees;
  readonly computed: Degrees;
  /** Observed less computed. */
  readonly residual: Degrees;
  /** One standard deviation of the residual: reading, zero and, where it is known, the layout's own doubt. */
  readonly doubt: Degrees;
  readonly agrees: boolean;
}

export interface GaugeComparison {
  readonly stations: readonly ComparedReading[];
  readonly turns: readonly ComparedReading[];
  /** The residuals' sum of squares in their doubts, taken together; what 999 of 1,000 right layouts stay below. */
  readonly sum: number;
  readonly limit: number;
  /** Every reading agrees, and all together do. */
  readonly agrees: boolean;
  /** True if the layout's own doubt is in the doubts; false if it is not known, and the layout was taken as exact. */
  readonly layoutDoubted: boolean;
}

export type GaugeFailure =
  | { readonly kind: 'nothing-read' }
  /** The layout cannot be solved where this reading was taken. */
  | { readonly kind: 'out-of-reach'; readonly reading: string };

/**
 * The value that a chi-squared variable of n degrees of freedom stays below 999 times of 1,000:
 * n (1 - 2/(9n) + z √(2/(9n)))³ with z = 3.0902.
 * Source: E. B. Wilson and M. M. Hilferty, The distribution of chi-square, 1931, from memory; within 2.5 % from n = 2 on, 1.2 % from 5 on.
 */
export function chiSquaredLimit(n: number): number {
  const part = 2 / (9 * n);
  return n * (1 - part + 3.0902 * Math.sqrt(part)) ** 3;
}

/**
 * The doubt of what is read at a turn, degrees: the outer wheel's own, and the inner wheel's as it comes through the
 * linkage, `gain` degrees of the outer wheel for each of the inner one.
 */
export function turnDoubt(doubt: Degrees, gain: number): Degrees {
  return doubt * Math.hypot(1, gain);
}

/**
 * Compares a gauge's readings with what the layout says. Stations are read against the gauge's zero at ride height,
 * which is itself one reading with a reading's doubt: residuals of one wheel share it, so their covariance is
 * S = diag(u²) + u₀² on all pairs of one side + the layout's own doubt D. Each residual is judged by √S_ii, all together
 * by rᵀ S⁻¹ r, which follows a chi-squared distribution if the layout is right.
 * Frame:    vehicle, ISO 8855. Units: degrees; positive to the left.
 * @param doubtOfLayout  covariance (degrees²) of the computed changes of steer at the stations, whole, in their order;
 *                       leave it out if the layout's doubt is not known
 * Outcomes: the comparison; nothing-read, out-of-reach by reading.
 * Checked:  tests/unit/gauge/compare.test.ts.
 */
export function compareGauge(
  document: LayoutDocument,
  readings: GaugeReadings,
  doubtOfLayout?: Float64Array,
): Outcome<GaugeComparison, GaugeFailure> {
  const task = gaugeTask(readings);
  const { stations, turns } = task;
  const count = stations.length + turns.length;
  if (count === 0) return failed({ kind: 'nothing-read' });
  const computed = new Float64Array(count);
  const gains = new Float64Array(turns.length);
  const beyond = predictReadings(resolveLayout(document), task, computed, gains);
  if (beyond !== undefined) return failed({ kind: 'out-of-reach', reading: beyond });

  const covariance = new Float64Array(count * count);
  for (const [i, one] of stations.entries())
    for (const [k, other] of stations.entries()) {
      const zero = one.side === other.side ? one.doubt * other.doubt : 0;
      const own = i === k ? one.doubt ** 2 : 0;
      covariance[i * count + k] = own + zero + (doubtOfLayout?.[i * stations.length + k] ?? 0);
    }
  for (const [i, { doubt }] of turns.entries()) {
    const row = stations.length + i;
    covariance[row * count + row] = turnDoubt(doubt, gains[i] as number) ** 2;
  }
  const observed = [...stations.map(({ change }) => change), ...turns.map(({ outer }) => outer)];
  const residual = Float64Array.from(observed, (value, i) => value - (computed[i] as number));
  const compared = [...stations, ...turns].map(({ id, side }, i): ComparedReading => {
    const doubt = Math.sqrt(covariance[i * count + i] as number);
    return {
      id,
      side,
      observed: observed[i] as number,
      computed: computed[i] as number,
      residual: residual[i] as number,
      doubt,
      agrees: Math.abs(residual[i] as number) <= FITS_WITHIN * doubt,
    };
  });
  const sum = weightedSum(covariance, residual);
  const limit = chiSquaredLimit(count);
  return succeeded({
    stations: compared.slice(0, stations.length),
    turns: compared.slice(stations.length),
    sum,
    limit,
    agrees: sum <= limit && compared.every(({ agrees }) => agrees),
    layoutDoubted: doubtOfLayout !== undefined,
  });
}

/** rᵀ S⁻¹ r. S has every reading's own variance on its diagonal, so it is positive definite. */
function weightedSum(covariance: Float64Array, residual: Float64Array): number {
  const count = residual.length;
  const factor = new Float64Array(count * count);
  factorise(count, covariance, 0, new Float64Array(count), factor);
  const solved = Float64Array.from(residual);
  solveFactored(count, factor, solved);
  return solved.reduce((sum, entry, i) => sum + entry * (residual[i] as number), 0);
}
