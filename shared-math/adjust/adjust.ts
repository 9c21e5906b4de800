import type { Point } from '../geometry/points.ts';
import type { LayoutDocument } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { type LeastSquaresFailure, leastSquares, type Observations } from '../solve/least-squares.ts';
import { type Further, type FurtherOf, type FurtherRow, NOTHING_FURTHER } from './further.ts';
import { type AdjustedFurther, ALIKE_ABOVE, FITS_WITHIN, judgeFurther } from './judge-further.ts';
import { type GeometricRow, geometricRow } from './row-kinds.ts';
import { differentiateSteers, type SteerAt, steersAt, worstBumpSteer } from './steer-rows.ts';
import { doubtOf, type SurveyRow } from './survey.ts';
import {
  AXES,
  type AxisName,
  DRAWN_DOUBT,
  documentAt,
  type PointPlace,
  pointAt,
  type UnknownTable,
  unknownsOf,
} from './unknowns.ts';

/** mm. The adjustment has settled when no coordinate moves further in a step. */
const STEP_END = 1e-6;

/** Below this share nothing checks a row: whatever it says, the points follow. */
export const CHECKED_FROM = 0.01;

/** The same of what was observed further: a camera's distance is checked by little else, and that little tells of a slip. */
const FURTHER_CHECKED_FROM = 0.003;

/** mm. A coordinate in doubt by more is not measured. */
export const FREE_FROM = 25;

export interface AdjustedPoint {
  readonly at: Point;
  /** mm, one standard deviation of each coordinate; 0 where it stands still. */
  readonly doubt: Point;
  /** The coordinates that nothing measures. */
  readonly free: readonly AxisName[];
}

/** A row after the adjustment: mm or degrees. */
export interface AdjustedRow {
  readonly id: string;
  readonly observed: number;
  /** Null for a row that is left out and looks at a pose which cannot be solved. */
  readonly computed: number | null;
  /** Observed less computed. */
  readonly residual: number | null;
  /** How much of the row the others check, 0 to 1; null for a row that is left out. */
  readonly redundancy: number | null;
  /** The residual in its own standard deviations; null where nothing checks the row. */
  readonly w: number | null;
  readonly fits: boolean | null;
  /** Rows that the data cannot tell from this one. */
  readonly alike: readonly string[];
}

export { type AdjustedFurther, FITS_WITHIN } from './judge-further.ts';

export interface BumpSteerDoubt {
  /** Degrees: the worst |bump steer| over the travel, and its standard deviation from measuring. */
  readonly worst: number;
  readonly doubt: number;
  /** Shares of its variance by each row's own noise, largest first. */
  readonly shares: readonly { readonly id: string; readonly share: number }[];
  /** And by each coordinate's weak knowledge. */
  readonly unknown: readonly { readonly id: string; readonly axis: AxisName; readonly share: number }[];
}

export interface Adjustment {
  readonly document: LayoutDocument;
  readonly points: ReadonlyMap<string, AdjustedPoint>;
  readonly rows: readonly AdjustedRow[];
  readonly further: readonly AdjustedFurther[];
  /** What `further` left unknown besides, in its order, and one standard deviation of each. */
  readonly furtherUnknowns: readonly { readonly value: number; readonly doubt: number }[];
  /** Sum of the rows' redundancies. */
  readonly redundancy: number;
  /** Null if the worst is not asked for or cannot be known: a pose of the travel is out of reach. */
  readonly bumpSteer: BumpSteerDoubt | null;
  /**
   * Covariance of the changes of steer that were asked for, degrees², whole, in their order; null if none was or one of
   * them cannot be known.
   */
  readonly changes: Float64Array | null;
  /** Sum of squared residuals in their doubts, weak knowledge included: what the adjustment made least. */
  readonly sum: number;
}

export interface AdjustFailure {
  readonly kind: 'out-of-reach' | 'no-minimum';
}

interface PreparedRow {
  readonly row: SurveyRow;
  readonly geometric: GeometricRow | undefined;
  /** Left out: it looks at a planned point, or is set aside. */
  readonly out: boolean;
}

export interface AdjustOptions {
  /** Rows that are set aside: left out, as if they had not been measured, and still compared with what is computed. */
  readonly aside?: ReadonlySet<string>;
  /** True to leave the bump steer and its doubt out, where only points and rows are asked. */
  readonly pointsOnly?: boolean;
  /** What was observed beside the rows. */
  readonly further?: FurtherOf | undefined;
  /** Changes of steer since ride height whose doubt is asked for. */
  readonly changes?: readonly SteerChange[];
}

/** A wheel's steer, or the mean of both, at a heave (mm; roll 0, handwheel 0) less that at heave 0. */
export interface SteerChange {
  readonly of: 'left' | 'right' | 'mean';
  readonly heave: number;
}

function prepareRows(
  table: UnknownTable,
  rows: readonly SurveyRow[],
  aside: ReadonlySet<string> | undefined,
): PreparedRow[] {
  const anyPlanned = [...table.places.values()].some(({ planned }) => planned);
  return rows.map((row) => {
    const geometric = geometricRow(table, row);
    const planned = geometric ? geometric.places.some((place) => place.planned) : anyPlanned;
    return { row, geometric, out: planned || aside?.has(row.id) === true };
  });
}

/** What the rows compute at the unknowns, in their order; undefined if a pose is out of reach or a length has no ends. */
function computeRows(
  table: UnknownTable,
  rows: readonly PreparedRow[],
  x: Float64Array,
  out: Float64Array,
): boolean {
  const heaves = steerHeaves(rows);
  const steers = heaves.length > 0 ? steersAt(table, x, heaves) : undefined;
  if (heaves.length > 0 && !steers) return false;
  for (const [i, { row, geometric }] of rows.entries()) {
    if (geometric) out[i] = geometric.value(x);
    else if (row.kind === 'steer-change' && steers) {
      const at = steers.at[heaves.indexOf(row.heave)] as SteerAt;
      out[i] = at[row.side] - steers.ride[row.side];
    }
    if (!Number.isFinite(out[i])) return false;
  }
  return true;
}

function steerHeaves(rows: readonly PreparedRow[]): number[] {
  return [...new Set(rows.flatMap(({ row }) => (row.kind === 'steer-change' ? [row.heave] : [])))];
}

function slopesOfRows(
  table: UnknownTable,
  rows: readonly PreparedRow[],
  x: Float64Array,
  jacobian: Float64Array,
): boolean {
  const size = x.length;
  for (const [i, { geometric }] of rows.entries()) geometric?.addSlopes(x, jacobian, i * size);
  const heaves = steerHeaves(rows);
  if (heaves.length === 0) return true;
  return differentiateSteers(table, x, heaves, (j, further, back, per) => {
    for (const [i, { row }] of rows.entries()) {
      if (row.kind !== 'steer-change') continue;
      const at = heaves.indexOf(row.heave);
      jacobian[i * size + j] = per * ((further[at] as SteerAt)[row.side] - (back[at] as SteerAt)[row.side]);
    }
  });
}

/** The adjustment's observations: the rows that are not left out, then what was observed further, the drawing as weak knowledge. */
function observationsOf(
  table: UnknownTable,
  rows: readonly PreparedRow[],
  further: Further,
  furtherRows: readonly FurtherRow[],
): Observations {
  const { unknowns } = table;
  const own = further.unknowns;
  const size = unknowns.length + own.length;
  return {
    count: furtherRows.reduce((sum, { observed }) => sum + observed.length, rows.length),
    size,
    observed: Float64Array.from([
      ...rows.map(({ row }) => row.value),
      ...furtherRows.flatMap(({ observed }) => observed),
    ]),
    doubt: Float64Array.from([
      ...rows.map(({ row }) => doubtOf(row)),
      ...furtherRows.flatMap(({ doubts }) => doubts),
    ]),
    prior: Float64Array.from([...unknowns.map(({ drawn }) => drawn), ...own.map(({ known }) => known)]),
    priorDoubt: Float64Array.from([...unknowns.map(() => DRAWN_DOUBT), ...own.map(({ doubt }) => doubt)]),
    learnsCurvature: steerHeaves(rows).length > 0,
    compute(x, computed, jacobian) {
      if (!computeRows(table, rows, x, computed)) return false;
      if (jacobian && !slopesOfRows(table, rows, x, jacobian)) return false;
      if (furtherRows.length === 0) return true;
      further.take(x);
      let at = rows.length;
      for (const row of furtherRows) {
        if (!row.compute(computed, at)) return false;
        if (jacobian)
          row.addSlopes(at, (i, j, slope) => {
            jacobian[i * size + j] = (jacobian[i * size + j] as number) + slope;
          });
        at += row.observed.length;
      }
      return true;
    },
    subtractCurvature(x, pull, hessian) {
      for (const [i, { geometric }] of rows.entries())
        geometric?.subtractCurvature?.(x, pull[i] as number, hessian, size);
    },
  };
}

const FAILURES: Record<LeastSquaresFailure, AdjustFailure['kind']> = {
  'not-computable': 'out-of-reach',
  undetermined: 'no-minimum',
  'no-minimum': 'no-minimum',
};

/** J C Jᵀ of two rows: how the computed values of both vary together. */
function together(jacobian: Float64Array, carried: Float64Array, size: number, i: number, k: number): number {
  let sum = 0;
  for (let j = 0; j < size; j += 1)
    sum += (jacobian[i * size + j] as number) * (carried[k * size + j] as number);
  return sum;
}

/**
 * Adjusts a document's points to a survey: the points that make least
 * Σ ((observed - computed) / doubt)² over the rows + Σ ((value - drawn) / 250 mm)² over the coordinates, and how well
 * each is then known. With J the rows' derivatives there, W = diag(1/doubt²) and P = diag(1/250²), the covariance is
 * C = (JᵀWJ + P)⁻¹, a priori. A residual's own variance is doubt² - (J C Jᵀ)_ii = doubt² r_i, with r_i the row's
 * redundancy, so w_i = residual_i / (doubt_i √r_i). Residuals are correlated by the off-diagonal parts of W⁻¹ - J C Jᵀ.
 * For the worst bump steer with derivatives g the variance is g C gᵀ; since C = C (JᵀWJ + P) C it falls apart into the
 * rows' parts (g C Jᵀ W)_i² doubt_i² and the coordinates' parts (g C)_j² / 250², which add up to it.
 * Frame:    vehicle, ISO 8855, at ride height.
 * Units:    mm; degrees for angles, as the survey has them.
 * Outcomes: the adjustment; out-of-reach (a steer reading's pose cannot be solved on the way), no-minimum. Rows that
 *           contradict or too few are no failure: doubts, free coordinates and w are what they come to.
 * Source:   W. Baarda, A testing procedure for use in geodetic networks, 1968 (the test of one residual), from memory;
 *           C. Ghilani, Adjustment Computations, from memory; shares derived here.
 * Checked:  tests/reference/adjustment.test.ts, tests/unit/adjust/adjust.test.ts, tests/thorough/adjust/simulated.test.ts.
 */
export function adjust(
  document: LayoutDocument,
  survey: readonly SurveyRow[],
  { aside, pointsOnly = false, further: furtherOf, changes = [] }: AdjustOptions = {},
): Outcome<Adjustment, AdjustFailure> {
  const table = unknownsOf(document);
  const { unknowns } = table;
  const prepared = prepareRows(table, survey, aside);
  const used = prepared.filter(({ out }) => !out);
  const further = furtherOf?.(table) ?? NOTHING_FURTHER;
  const usedFurther = further.rows.filter(({ id }) => !aside?.has(id));
  const task = observationsOf(table, used, further, usedFurther);
  const { size } = task;
  const start = Float64Array.from(task.prior);
  const ends = new Float64Array(size).fill(STEP_END);
  for (const [j, own] of further.unknowns.entries()) {
    start[unknowns.length + j] = own.start;
    ends[unknowns.length + j] = own.end;
  }
  const solved = leastSquares(task, start, ends);
  if (!solved.ok) return failed({ kind: FAILURES[solved.failure] });
  const { x, computed, jacobian, covariance, sum } = solved.value;

  // C Jᵀ, by rows of J.
  const carried = new Float64Array(task.count * size);
  for (let i = 0; i < task.count; i += 1)
    for (let k = 0; k < size; k += 1) {
      const slope = jacobian[i * size + k] as number;
      if (slope === 0) continue;
      for (let j = 0; j < size; j += 1)
        carried[i * size + j] =
          (carried[i * size + j] as number) + slope * (covariance[k * size + j] as number);
    }
  const redundancy = Array.from({ length: task.count }, (_, i) => {
    const doubt = task.doubt[i] as number;
    return Math.min(1, Math.max(0, 1 - together(jacobian, carried, size, i, i) / doubt ** 2));
  });
  const checked = redundancy.map(
    (share, i) => share >= (i < used.length ? CHECKED_FROM : FURTHER_CHECKED_FROM),
  );
  /** How strongly the residuals of two numbers go together, without sign; 0 where nothing checks one of them. */
  const correlated = (i: number, k: number): number => {
    if (!checked[i] || !checked[k]) return 0;
    const [a, b] = [task.doubt[i] as number, task.doubt[k] as number];
    const own = a * b * Math.sqrt((redundancy[i] as number) * (redundancy[k] as number));
    return Math.abs(together(jacobian, carried, size, i, k) / own);
  };
  further.take(x);
  const names = used.map(({ row }) => row.id);
  const judged = judgeFurther(further.rows, usedFurther, names, {
    w: (i) =>
      checked[i]
        ? ((task.observed[i] as number) - (computed[i] as number)) /
          ((task.doubt[i] as number) * Math.sqrt(redundancy[i] as number))
        : null,
    redundancy,
    correlated,
  });
  const alike = used.map((_, i) => [
    ...used.flatMap(({ row }, k) => (k !== i && correlated(i, k) > ALIKE_ABOVE ? [row.id] : [])),
    ...judged.alikeTo(i),
  ]);

  const rows = rowsOf(table, prepared, x, (row) => {
    const i = used.indexOf(row);
    const doubt = task.doubt[i] as number;
    const share = redundancy[i] as number;
    const residual = row.row.value - (computed[i] as number);
    const w = checked[i] ? residual / (doubt * Math.sqrt(share)) : null;
    return {
      redundancy: share,
      w,
      fits: w === null ? null : Math.abs(w) <= FITS_WITHIN,
      alike: alike[i] as string[],
    };
  });
  const points = pointsOf(table, x, covariance);
  return succeeded({
    document: withTaped(documentAt(table, x), used, points),
    points,
    rows,
    further: judged.rows,
    furtherUnknowns: further.unknowns.map((_, j) => {
      const at = unknowns.length + j;
      return { value: x[at] as number, doubt: Math.sqrt(covariance[at * size + at] as number) };
    }),
    redundancy: redundancy.slice(0, used.length).reduce((total, share) => total + share, 0),
    bumpSteer: pointsOnly ? null : bumpSteerOf(table, used, task.doubt, x, covariance, carried),
    changes: changesOf(table, x, covariance, changes),
    sum,
  });
}

/** G C Gᵀ, with G the derivatives of the changes of steer by the unknowns. */
function changesOf(
  table: UnknownTable,
  x: Float64Array,
  covariance: Float64Array,
  changes: readonly SteerChange[],
): Float64Array | null {
  const count = changes.length;
  if (count === 0) return null;
  const size = x.length;
  const heaves = [...new Set(changes.map(({ heave }) => heave))];
  const slopes = new Float64Array(count * size);
  const solved = differentiateSteers(table, x, heaves, (j, further, back, per) => {
    for (const [i, { of, heave }] of changes.entries()) {
      const at = heaves.indexOf(heave);
      slopes[i * size + j] = per * ((further[at] as SteerAt)[of] - (back[at] as SteerAt)[of]);
    }
  });
  if (!solved) return null;
  const spread = new Float64Array(count * size);
  for (let i = 0; i < count; i += 1)
    for (let k = 0; k < size; k += 1) {
      const slope = slopes[i * size + k] as number;
      if (slope === 0) continue;
      for (let j = 0; j < size; j += 1)
        spread[i * size + j] =
          (spread[i * size + j] as number) + slope * (covariance[k * size + j] as number);
    }
  const out = new Float64Array(count * count);
  for (let i = 0; i < count; i += 1)
    for (let k = 0; k < count; k += 1) out[i * count + k] = together(slopes, spread, size, i, k);
  return out;
}

/** The document with the origin `tape` for every point that rows look at and leave no coordinate of free. */
function withTaped(
  document: LayoutDocument,
  used: readonly PreparedRow[],
  points: ReadonlyMap<string, AdjustedPoint>,
): LayoutDocument {
  const origins = { ...document.origins };
  for (const { geometric } of used)
    for (const { point } of geometric?.places ?? []) {
      if (points.get(point.id)?.free.length !== 0) continue;
      const known = point.twin !== undefined && point.twin in origins ? point.twin : point.id;
      origins[known] = 'tape';
    }
  return Object.keys(origins).length === 0 ? document : { ...document, origins };
}

/**
 * How far each row is from the drawing, in standard deviations of what its doubt and the drawing's weak knowledge allow:
 * |observed - computed| / √(doubt² + 250² |J_i|²). For surveys in which one figure is so far out that no minimum is
 * found. Rows that cannot be computed, or look at planned points, are left out.
 */
export function distancesFromDrawing(
  document: LayoutDocument,
  survey: readonly SurveyRow[],
  aside: ReadonlySet<string>,
): { readonly id: string; readonly w: number; readonly expected: number }[] {
  const table = unknownsOf(document);
  const x = Float64Array.from(table.unknowns, ({ drawn }) => drawn);
  const value = new Float64Array(1);
  const slopes = new Float64Array(x.length);
  return prepareRows(table, survey, aside).flatMap((row) => {
    slopes.fill(0);
    if (row.out || !computeRows(table, [row], x, value) || !slopesOfRows(table, [row], x, slopes)) return [];
    const expected = value[0] as number;
    const variance = slopes.reduce((sum, slope) => sum + (DRAWN_DOUBT * slope) ** 2, doubtOf(row.row) ** 2);
    return [{ id: row.row.id, w: (row.row.value - expected) / Math.sqrt(variance), expected }];
  });
}

function rowsOf(
  table: UnknownTable,
  prepared: readonly PreparedRow[],
  x: Float64Array,
  judge: (row: PreparedRow) => Pick<AdjustedRow, 'redundancy' | 'w' | 'fits' | 'alike'>,
): AdjustedRow[] {
  const value = new Float64Array(1);
  return prepared.map((row) => {
    const { id, value: observed } = row.row;
    // A row that is left out may look at a pose that the plan cannot reach.
    const computed = computeRows(table, [row], x, value) ? (value[0] as number) : null;
    const judged = row.out ? { redundancy: null, w: null, fits: null, alike: [] } : judge(row);
    return { id, observed, computed, residual: computed === null ? null : observed - computed, ...judged };
  });
}

function pointsOf(
  table: UnknownTable,
  x: Float64Array,
  covariance: Float64Array,
): Map<string, AdjustedPoint> {
  const doubtOfAxis = (place: PointPlace, axis: 0 | 1 | 2) => {
    const index = place.index[axis];
    return index < 0 ? 0 : Math.sqrt(covariance[index * x.length + index] as number);
  };
  return new Map(
    [...table.places].map(([id, place]) => {
      const doubt: Point = [doubtOfAxis(place, 0), doubtOfAxis(place, 1), doubtOfAxis(place, 2)];
      const free = AXES.filter((_, axis) => (doubt[axis] as number) > FREE_FROM);
      return [id, { at: pointAt(place, x), doubt, free }];
    }),
  );
}

function bumpSteerOf(
  table: UnknownTable,
  used: readonly PreparedRow[],
  doubts: Float64Array,
  x: Float64Array,
  covariance: Float64Array,
  carried: Float64Array,
): BumpSteerDoubt | null {
  const found = worstBumpSteer(table, x);
  if (!found) return null;
  const size = x.length;
  const { worst, slopes } = found;
  const spread = new Float64Array(size);
  for (let j = 0; j < size; j += 1)
    for (let k = 0; k < size; k += 1)
      spread[j] = (spread[j] as number) + (slopes[k] as number) * (covariance[k * size + j] as number);
  let variance = 0;
  for (let j = 0; j < size; j += 1) variance += (slopes[j] as number) * (spread[j] as number);
  const shareOf = (part: number) => (variance > 0 ? part / variance : 0);
  const shares = used.map(({ row }, i) => {
    let sum = 0;
    for (let j = 0; j < size; j += 1) sum += (slopes[j] as number) * (carried[i * size + j] as number);
    return { id: row.id, share: shareOf((sum / (doubts[i] as number)) ** 2) };
  });
  const unknown = table.unknowns.map(({ id, axis }, j) => ({
    id,
    axis: AXES[axis],
    share: shareOf(((spread[j] as number) / DRAWN_DOUBT) ** 2),
  }));
  const largestFirst = (a: { share: number }, b: { share: number }) => b.share - a.share;
  return {
    worst,
    doubt: Math.sqrt(Math.max(0, variance)),
    shares: shares.sort(largestFirst),
    unknown: unknown.sort(largestFirst),
  };
}
