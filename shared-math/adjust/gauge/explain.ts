import type { Point } from '../../geometry/points.ts';
import type { Layout, LayoutDocument } from '../../layout/index.ts';
import { failed, type Outcome, succeeded } from '../../outcome.ts';
import { leastSquares, type Observations } from '../../solve/least-squares.ts';
import { FITS_WITHIN } from '../adjust.ts';
import { USUAL_DOUBT } from '../survey.ts';
import { AXES, type AxisName, layoutAt, type PointPlace, unknownsOf } from '../unknowns.ts';
import { type GaugeFailure, turnDoubt } from './compare.ts';
import { eachPointByItself, type GaugeTask, gaugeTask, predictReadings } from './predict.ts';
import type { GaugeReadings } from './readings.ts';

/** mm. A part of a finished car sits within an inch of its plan, about; one standard deviation of each coordinate. */
export const BUILT_DOUBT = 25;

/** Sums nearer than this cannot be distinguished: the better is then less than e² times as likely as the other. */
export const APART_FROM = 4;

/** mm. Half the step of derivatives by differences. */
const STEP = 0.01;

/** One point that, moved by itself, would explain the readings. */
export interface Explanation {
  /** The hardpoint, sides spelled out. */
  readonly id: string;
  /** mm, vehicle frame: from where it is drawn to where the readings would have it. */
  readonly move: Point;
  /** mm, one standard deviation; near BUILT_DOUBT where the readings say nothing of that coordinate. */
  readonly doubt: Point;
  /** Sum of squares that is left: readings in their doubts, the move and the gauge's zero in theirs. */
  readonly sum: number;
  /** Every reading agrees with the moved layout. */
  readonly fits: boolean;
  /** The readings cannot tell it from the best. */
  readonly asGood: boolean;
}

/** A measurement on the car that would tell explanations apart. */
export interface TellingMeasure {
  readonly id: string;
  readonly axis: AxisName;
  /** mm: the coordinate as drawn, and as this point's explanation would have it. */
  readonly drawn: number;
  readonly expected: number;
}

export interface GaugeExplanation {
  /** The sum with nothing moved. */
  readonly unmoved: number;
  /** Best first; those that explain nothing are left out. */
  readonly points: readonly Explanation[];
  /** What to measure, most telling first: of each explanation as good as the best, the coordinate that it moves most. */
  readonly measures: readonly TellingMeasure[];
}

/** Observed values and their doubts, in the task's order; a zero of its own for each side that has stations. */
interface Rows {
  readonly observed: Float64Array;
  readonly doubt: Float64Array;
  readonly sides: readonly ('left' | 'right')[];
  readonly zeroDoubt: readonly number[];
}

function rowsOf({ stations, turns }: GaugeTask, gains: Float64Array): Rows {
  const sides = [...new Set(stations.map(({ side }) => side))];
  return {
    observed: Float64Array.from([
      ...stations.map(({ change }) => change),
      ...turns.map(({ outer }) => outer),
    ]),
    doubt: Float64Array.from([
      ...stations.map(({ doubt }) => doubt),
      ...turns.map(({ doubt }, i) => turnDoubt(doubt, gains[i] as number)),
    ]),
    sides,
    zeroDoubt: sides.map((side) => stations.find((station) => station.side === side)?.doubt as number),
  };
}

interface Solved {
  readonly sum: number;
  readonly move: Point;
  readonly doubt: Point;
  readonly fits: boolean;
}

/** Moves one point (or none) and the gauge's zeros so that the readings fit best. */
function solveFor(
  layoutOf: (move: readonly number[]) => Layout,
  axes: readonly number[],
  task: GaugeTask,
  rows: Rows,
): Solved | undefined {
  const { observed, doubt, sides, zeroDoubt } = rows;
  const count = observed.length;
  const moved = axes.length;
  const size = moved + sides.length;
  const further = new Float64Array(count);
  const back = new Float64Array(count);
  const at = (x: Float64Array, axis = -1, by = 0) =>
    layoutOf(
      [0, 1, 2].map(
        (of) => (axes.includes(of) ? (x[axes.indexOf(of)] as number) : 0) + (of === axis ? by : 0),
      ),
    );
  const zeroOf = (row: number) => {
    const station = task.stations[row];
    return station ? moved + sides.indexOf(station.side) : -1;
  };
  const observations: Observations = {
    count,
    size,
    observed,
    doubt,
    prior: new Float64Array(size),
    priorDoubt: Float64Array.from([...axes.map(() => BUILT_DOUBT), ...zeroDoubt]),
    learnsCurvature: true,
    compute(x, computed, jacobian) {
      if (predictReadings(at(x), task, computed) !== undefined) return false;
      for (let row = 0; row < count; row += 1) {
        const zero = zeroOf(row);
        if (zero >= 0) computed[row] = (computed[row] as number) + (x[zero] as number);
        if (zero >= 0 && jacobian) jacobian[row * size + zero] = 1;
      }
      if (!jacobian) return true;
      for (const [j, axis] of axes.entries()) {
        if (predictReadings(at(x, axis, STEP), task, further) !== undefined) return false;
        if (predictReadings(at(x, axis, -STEP), task, back) !== undefined) return false;
        for (let row = 0; row < count; row += 1)
          jacobian[row * size + j] = ((further[row] as number) - (back[row] as number)) / (2 * STEP);
      }
      return true;
    },
  };
  const solved = leastSquares(
    observations,
    new Float64Array(size),
    Float64Array.from({ length: size }, (_, j) => (j < moved ? 1e-5 : 1e-8)),
  );
  if (!solved.ok) return undefined;
  const { x, computed, covariance, sum } = solved.value;
  const byAxis = (value: (j: number) => number): Point => {
    const of = (axis: number) => (axes.includes(axis) ? value(axes.indexOf(axis)) : 0);
    return [of(0), of(1), of(2)];
  };
  return {
    sum,
    move: byAxis((j) => x[j] as number),
    doubt: byAxis((j) => Math.sqrt(covariance[j * size + j] as number)),
    fits: computed.every(
      (value, row) => Math.abs((observed[row] as number) - value) <= FITS_WITHIN * (doubt[row] as number),
    ),
  };
}

/**
 * Which single point of the finished car, moved how far, explains a gauge's readings best. For each point in turn the
 * move d and the gauge's zero z of each side make least
 * Σ ((read - computed(d) - z) / u)² + |d|² / 25² + Σ (z / u₀)²,
 * so that of moves which explain the readings alike the smallest is given. Points whose sums lie within 4 of the best
 * cannot be distinguished by these readings, and for them the coordinate that is moved most is what a tape would settle.
 * Frame:    vehicle, ISO 8855, at ride height; both sides spelled out: on a finished car each point stands by itself.
 * Units:    mm; degrees.
 * Outcomes: the explanations; nothing-read, out-of-reach by reading. A point whose moved layout has no pose where a
 *           reading was taken is left out.
 * Source:   own; the ratio of likelihoods exp(-Δ/2) as in any text on statistics.
 * Checked:  tests/unit/gauge/explain.test.ts (cars built with one point off).
 */
export function explainReadings(
  document: LayoutDocument,
  readings: GaugeReadings,
): Outcome<GaugeExplanation, GaugeFailure> {
  const task = gaugeTask(readings);
  if (task.stations.length + task.turns.length === 0) return failed({ kind: 'nothing-read' });
  const table = unknownsOf(eachPointByItself(document));
  const drawn = Float64Array.from(table.unknowns, ({ drawn: value }) => value);
  const gains = new Float64Array(task.turns.length);
  const computed = new Float64Array(task.stations.length + task.turns.length);
  const beyond = predictReadings(layoutAt(table, drawn), task, computed, gains);
  if (beyond !== undefined) return failed({ kind: 'out-of-reach', reading: beyond });
  const rows = rowsOf(task, gains);

  const movedBy = (place: PointPlace) => {
    const beside = Float64Array.from(drawn);
    return (move: readonly number[]) => {
      for (const [axis, index] of place.index.entries())
        if (index >= 0) beside[index] = (drawn[index] as number) + (move[axis] as number);
      return layoutAt(table, beside);
    };
  };
  const still = solveFor(() => layoutAt(table, drawn), [], task, rows);
  const unmoved = still?.sum ?? Number.POSITIVE_INFINITY;
  const found = [...table.places].flatMap(([id, place]) => {
    const axes = [0, 1, 2].filter((axis) => (place.index[axis] as number) >= 0);
    const solved = solveFor(movedBy(place), axes, task, rows);
    return solved && solved.sum < unmoved - APART_FROM ? [{ id, ...solved }] : [];
  });
  found.sort((a, b) => a.sum - b.sum);
  const best = found[0]?.sum ?? 0;
  const points = found.map((entry) => ({ ...entry, asGood: entry.sum - best < APART_FROM }));
  const measures = points
    .filter(({ asGood }) => asGood)
    .map(({ id, move }) => {
      const axis = [0, 1, 2].reduce(
        (most, of) => (Math.abs(move[of] as number) > Math.abs(move[most] as number) ? of : most),
        0,
      );
      const from = (table.places.get(id) as PointPlace).drawn[axis] as number;
      return {
        id,
        axis: AXES[axis] as AxisName,
        drawn: from,
        expected: from + (move[axis] as number),
      };
    })
    .filter(({ drawn: from, expected }) => Math.abs(expected - from) > 2 * USUAL_DOUBT.up)
    .sort((a, b) => Math.abs(b.expected - b.drawn) - Math.abs(a.expected - a.drawn));
  return succeeded({ unmoved, points, measures });
}
