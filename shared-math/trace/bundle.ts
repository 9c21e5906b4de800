import type { Point } from '../geometry/points.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { type LeastSquares, type LeastSquaresFailure, leastSquares } from '../solve/least-squares.ts';
import { type BundleTask, LENS_WEAKLY, type PreparedRow, prepareRows } from './bundle-rows.ts';
import { CAMERA_UNKNOWNS } from './camera-model.ts';

export type { BundleCamera, BundlePoint, BundleRow, BundleTask } from './bundle-rows.ts';

export interface BundledCamera {
  /** px, and one standard deviation as a share of it. */
  readonly focal: number;
  readonly focalDoubt: number;
  readonly at: Point;
  readonly doubt: Point;
  /** Radial terms, from bent to straight, radius in half diagonals. */
  readonly lens: readonly [number, number];
}

export interface BundledPoint {
  readonly at: Point;
  /** mm, one standard deviation of each coordinate; 0 where it is fixed. */
  readonly doubt: Point;
}

/** One number that was observed, after the adjustment. */
export interface BundledRow {
  readonly id: string;
  /** Observed less computed, in the row's unit: px, mm or rad. */
  readonly residual: number;
  /** How much of it the others check, 0 to 1. */
  readonly redundancy: number;
  /** The residual in its own standard deviations; null where nothing checks it. */
  readonly w: number | null;
}

export interface Bundle {
  readonly cameras: readonly BundledCamera[];
  readonly points: ReadonlyMap<string, BundledPoint>;
  /** A click gives two, right and down; a line one a spot, and one more for its direction where that is given. */
  readonly rows: readonly BundledRow[];
  /** Sum of squared residuals in their doubts, what was known beforehand included. */
  readonly sum: number;
  /** Observed numbers and what was known beforehand, less unknowns: what the sum is on average where doubts are right. */
  readonly freedom: number;
}

/** Below this share nothing checks a row: whatever it says, the rest follows. */
const CHECKED_FROM = 0.01;

/** Ends of steps by what an unknown is: logarithm and turn, place (mm), lens. */
const ENDS = [1e-8, 1e-8, 1e-8, 1e-8, 1e-4, 1e-4, 1e-4, 1e-8, 1e-8];

/** All that may move, in one list: cameras, points, and two ends of each line; and which of it is unknown. */
function layOut(task: BundleTask) {
  const all: { start: number; doubt: number; end: number }[] = [];
  const free = Number.POSITIVE_INFINITY;
  for (const { start, focal, terms } of task.cameras) {
    const starts = [Math.log(start.focal), 0, 0, 0, ...start.at, 0, 0];
    for (const [j, value] of starts.entries()) {
      const lens = j - 7;
      const doubt = lens >= 0 ? (lens < terms ? LENS_WEAKLY : 0) : j === 0 && focal ? focal.share : free;
      const known = j === 0 && focal ? Math.log(focal.px) : value;
      all.push({ start: known, doubt, end: ENDS[j] as number });
    }
  }
  for (const { at, doubt } of task.points)
    for (const axis of [0, 1, 2] as const) all.push({ start: at[axis], doubt: doubt[axis], end: 1e-4 });
  for (const { kind } of task.rows)
    if (kind === 'line') for (let end = 0; end < 2; end += 1) all.push({ start: 0, doubt: free, end: 1e-5 });
  let size = 0;
  const columns = Int32Array.from(all, ({ doubt }) => (doubt > 0 ? size++ : -1));
  return { all, columns, size };
}

/**
 * One adjustment of photos and tape: the cameras, the points and whatever else is unknown that make the squares of all
 * clicks, straight lines, taped lengths and camera's distances, each in its doubt, least together.
 *
 * A click is where its camera sees its point (`camera-model.ts`). Spots of a line that is straight in the world lie,
 * without the lens's bending, on one line of the picture, which has two unknowns of its own; where its direction in the
 * world is given (level, plumb), that line has to run as such a direction shows there. What is known beforehand (corners
 * of a rectangle, known points, a focal length from the photo's file) is weighed by its doubt; a doubt of 0 holds it fast.
 * The covariance is that of independent observations of known doubts, not scaled by the residuals; a residual's
 * own variance is that of its row less what the unknowns explain.
 * Frame:    the world's, right-handed; the cameras' right, down, ahead. Units: px, mm, rad.
 * Shapes:   any number of cameras, points and rows; ids of points are unlike one another.
 * Outcomes: the adjustment; not-computable (a point behind its camera, or one that is not among the points),
 *           undetermined, no-minimum.
 * Source:   B. Triggs, P. McLauchlan, R. Hartley and A. Fitzgibbon, Bundle Adjustment: A Modern Synthesis, 2000, and
 *           for standardised residuals W. Baarda, A testing procedure for use in geodetic networks, 1968; both from
 *           memory.
 * Checked:  tests/unit/trace/bundle.test.ts (an independent camera with another lens model, many times by lot).
 */
export function adjustBundle(task: BundleTask): Outcome<Bundle, LeastSquaresFailure> {
  const { all, columns, size } = layOut(task);
  const values = Float64Array.from(all, ({ start }) => start);
  const prepared = prepareRows(task, values);
  if (!prepared) return failed('not-computable');
  const count = prepared.reduce((sum, row) => sum + row.observed.length, 0);
  const unknown = all.filter(({ doubt }) => doubt > 0);
  const scatter = (x: Float64Array) => {
    for (let j = 0; j < columns.length; j += 1) {
      const column = columns[j] as number;
      if (column >= 0) values[j] = x[column] as number;
    }
  };
  const fit = leastSquares(
    {
      count,
      size,
      observed: Float64Array.from(prepared.flatMap(({ observed }) => observed)),
      doubt: Float64Array.from(prepared.flatMap(({ doubts }) => doubts)),
      prior: Float64Array.from(unknown, ({ start }) => start),
      priorDoubt: Float64Array.from(unknown, ({ doubt }) => doubt),
      compute(x, computed, jacobian) {
        scatter(x);
        let at = 0;
        for (const row of prepared) {
          if (!row.compute(values, computed, at)) return false;
          if (jacobian)
            row.slopes(values, at, (i, j, slope) => {
              const column = columns[j] as number;
              if (column < 0) return;
              const entry = i * size + column;
              jacobian[entry] = (jacobian[entry] as number) + slope;
            });
          at += row.observed.length;
        }
        return true;
      },
    },
    Float64Array.from(unknown, ({ start }) => start),
    Float64Array.from(unknown, ({ end }) => end),
  );
  if (!fit.ok) return failed(fit.failure);
  scatter(fit.value.x);
  const doubtOf = (j: number): number => {
    const column = columns[j] as number;
    return column < 0 ? 0 : Math.sqrt(fit.value.covariance[column * size + column] as number);
  };
  const triple = (of: (j: number) => number, j: number): Point => [of(j), of(j + 1), of(j + 2)];
  const heldAt = (j: number) => values[j] as number;
  const pointsAt = CAMERA_UNKNOWNS * task.cameras.length;
  const known = unknown.filter(({ doubt }) => Number.isFinite(doubt)).length;
  return succeeded({
    cameras: task.cameras.map((_, c) => {
      const j = CAMERA_UNKNOWNS * c;
      return {
        focal: Math.exp(heldAt(j)),
        focalDoubt: doubtOf(j),
        at: triple(heldAt, j + 4),
        doubt: triple(doubtOf, j + 4),
        lens: [heldAt(j + 7), heldAt(j + 8)] as const,
      };
    }),
    points: new Map(
      task.points.map(({ id }, i) => [
        id,
        { at: triple(heldAt, pointsAt + 3 * i), doubt: triple(doubtOf, pointsAt + 3 * i) },
      ]),
    ),
    rows: rowsOf(prepared, fit.value, size),
    sum: fit.value.sum,
    freedom: count + known - size,
  });
}

function rowsOf(prepared: readonly PreparedRow[], fit: LeastSquares, size: number): BundledRow[] {
  const { jacobian, covariance, computed } = fit;
  let at = 0;
  return prepared.flatMap(({ id, observed, doubts }) =>
    observed.map((value, i): BundledRow => {
      const row = at * size;
      let explained = 0;
      for (let j = 0; j < size; j += 1)
        for (let k = 0; k < size; k += 1)
          explained +=
            (jacobian[row + j] as number) *
            (covariance[j * size + k] as number) *
            (jacobian[row + k] as number);
      const doubt = doubts[i] as number;
      const residual = value - (computed[at] as number);
      const redundancy = Math.max(0, 1 - explained / doubt ** 2);
      at += 1;
      const w = redundancy < CHECKED_FROM ? null : residual / (doubt * Math.sqrt(redundancy));
      return { id, residual, redundancy, w };
    }),
  );
}

/** The ids of rows that do not fit, the worst first: this far off by chance is one row in a thousand. */
export function misfitsOf({ rows }: Bundle, within = 3.29): string[] {
  const worst = new Map<string, number>();
  for (const { id, w } of rows) worst.set(id, Math.max(worst.get(id) ?? 0, Math.abs(w ?? 0)));
  return [...worst]
    .filter(([, w]) => w > within)
    .sort((a, b) => b[1] - a[1])
    .map(([id]) => id);
}
