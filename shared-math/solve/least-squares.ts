import { factorise, invertFactored, solveFactored } from './cholesky.ts';

/**
 * Observations of unknowns, each with a doubt (one standard deviation), and what is known of the unknowns beforehand.
 * Shapes: `count` observations of `size` unknowns; a Jacobian is `count` rows of `size` numbers.
 */
export interface Observations {
  readonly count: number;
  readonly size: number;
  readonly observed: Float64Array;
  /** One standard deviation of each observation, in its own unit; above 0. */
  readonly doubt: Float64Array;
  /** What the unknowns are weakly known to be, and the doubt of that; a doubt of Infinity knows nothing. */
  readonly prior: Float64Array;
  readonly priorDoubt: Float64Array;
  /**
   * Writes what the observations would be at `x` and, where a Jacobian is given (cleared to 0), their derivatives.
   * Returns false if they cannot be computed at `x`.
   */
  compute(x: Float64Array, computed: Float64Array, jacobian?: Float64Array): boolean;
  /**
   * Subtracts from the lower triangle of `hessian` the sum of pull_i times the second derivatives of computed_i, for
   * those observations where they are cheap; leaving it out slows the search and does not move its end.
   */
  subtractCurvature?(x: Float64Array, pull: Float64Array, hessian: Float64Array): void;
  /** True if observations are curved whose second derivatives are too dear: they are then learnt from step to step. */
  readonly learnsCurvature?: boolean;
}

export interface LeastSquares {
  readonly x: Float64Array;
  readonly computed: Float64Array;
  readonly jacobian: Float64Array;
  /** (JᵀWJ + P)⁻¹ at the solution, whole, a priori: not scaled by the residuals. */
  readonly covariance: Float64Array;
  /** Sum of squared residuals in their doubts, the prior's included. */
  readonly sum: number;
  readonly steps: number;
}

export type LeastSquaresFailure =
  /** The observations cannot be computed at the start. */
  | 'not-computable'
  /** What is observed and known beforehand leaves an unknown undetermined. */
  | 'undetermined'
  /** No minimum within the steps allowed. */
  | 'no-minimum';

const STEPS_MAX = 300;
/** In doubts: how far a residual may be off by rounding; and by iterated poses and derivatives by differences. */
const ROUNDING = 1e-12;
const POSED_ROUNDING = 1e-9;
/** Damping beyond this means that no step down can be found. */
const DAMPING_MAX = 1e16;

/**
 * The unknowns that make Σ ((observed - computed) / doubt)² + Σ ((x - prior) / priorDoubt)² least, from a start.
 * Gauss and Newton's normal equations (JᵀWJ + P) s = JᵀWr - P(x - prior); where second derivatives are given, they are
 * taken in as Newton's method has them (where the matrix stays positive definite), since an end of a length that nothing holds sideways is held by P alone, which
 * is far smaller than the length's own curvature, and the plain step overshoots. Steps are held by Marquardt's damping:
 * a multiple of the diagonal, raised where a step would not bring the sum down or the matrix is not positive definite,
 * lowered where the sum falls as foreseen. A point from which no direction leads down at first order but one does at
 * second (a length drawn dead straight that wants to be longer) is left by a small seeded push.
 * Frame:    none: it knows no car.
 * Units:    those of the unknowns and observations; `stepEnd` in those of the unknowns, one number each.
 * Shapes:   allocates its work once for each call.
 * Outcomes: a status: the solution, or one of LeastSquaresFailure. Never NaN.
 * Source:   Gauss-Newton and Marquardt's damping as in any text on least squares; covariance as for observations of
 *           independent, known doubts.
 * Checked:  tests/reference/least-squares.test.ts (certified values of a nonlinear regression, a worked network, a
 *           registry solver).
 */
export function leastSquares(
  task: Observations,
  start: Float64Array,
  stepEnd: Float64Array,
):
  | { readonly ok: true; readonly value: LeastSquares }
  | { readonly ok: false; readonly failure: LeastSquaresFailure } {
  const { count, size, observed, doubt, prior, priorDoubt } = task;
  const x = Float64Array.from(start);
  const trial = new Float64Array(size);
  const step = new Float64Array(size);
  const gradient = new Float64Array(size);
  const computed = new Float64Array(count);
  const jacobian = new Float64Array(count * size);
  const pull = new Float64Array(count);
  const normal = new Float64Array(size * size);
  const curvature = new Float64Array(size * size);
  const learnt = new Float64Array(size * size);
  const hessian = new Float64Array(size * size);
  const diagonal = new Float64Array(size);
  const factor = new Float64Array(size * size);

  const sumAt = (at: Float64Array, values: Float64Array) => {
    let sum = 0;
    for (let i = 0; i < count; i += 1)
      sum += (((observed[i] as number) - (values[i] as number)) / (doubt[i] as number)) ** 2;
    for (let j = 0; j < size; j += 1)
      sum += (((at[j] as number) - (prior[j] as number)) / (priorDoubt[j] as number)) ** 2;
    return sum;
  };

  /** Normal matrix and gradient at x; returns false if the observations cannot be computed there. */
  const linearise = (): boolean => {
    jacobian.fill(0);
    if (!task.compute(x, computed, jacobian)) return false;
    normal.fill(0);
    for (let j = 0; j < size; j += 1) {
      const weight = 1 / (priorDoubt[j] as number) ** 2;
      normal[j * size + j] = weight;
      gradient[j] = -weight * ((x[j] as number) - (prior[j] as number));
    }
    for (let i = 0; i < count; i += 1) {
      const weight = 1 / (doubt[i] as number) ** 2;
      pull[i] = weight * ((observed[i] as number) - (computed[i] as number));
      const row = i * size;
      for (let j = 0; j < size; j += 1) {
        const slope = jacobian[row + j] as number;
        if (slope === 0) continue;
        gradient[j] = (gradient[j] as number) + slope * (pull[i] as number);
        const weighted = weight * slope;
        for (let k = 0; k <= j; k += 1)
          normal[j * size + k] = (normal[j * size + k] as number) + weighted * (jacobian[row + k] as number);
      }
    }
    for (let j = 0; j < size; j += 1) diagonal[j] = normal[j * size + j] as number;
    curvature.fill(0);
    task.subtractCurvature?.(x, pull, curvature);
    for (let k = 0; k < size * size; k += 1)
      hessian[k] = (normal[k] as number) + (curvature[k] as number) + (learnt[k] as number);
    return true;
  };

  const before = {
    jacobian: new Float64Array(task.learnsCurvature ? count * size : 0),
    gradient: new Float64Array(size),
  };
  /**
   * Learns from a step what curvature the given second derivatives leave out, as Dennis, Gay and Welsch do (ACM
   * Transactions on Mathematical Software 7, 1981): the least change of the matrix S, symmetric, for which S s is what
   * the Jacobian's own change says. Called at the new x, before the Hessian is used.
   */
  const learn = () => {
    const missing = new Float64Array(size);
    const slope = new Float64Array(size);
    const known = new Float64Array(size);
    let along = 0;
    let sized = 0;
    let foretold = 0;
    for (let j = 0; j < size; j += 1) {
      let seen = 0;
      for (let i = 0; i < count; i += 1)
        seen -=
          ((jacobian[i * size + j] as number) - (before.jacobian[i * size + j] as number)) *
          (pull[i] as number);
      for (let k = 0; k < size; k += 1) {
        const at = k <= j ? j * size + k : k * size + j;
        seen -= (curvature[at] as number) * (step[k] as number);
        known[j] = (known[j] as number) + (learnt[at] as number) * (step[k] as number);
      }
      missing[j] = seen;
      slope[j] = (before.gradient[j] as number) - (gradient[j] as number);
      along += (slope[j] as number) * (step[j] as number);
      sized += (known[j] as number) * (step[j] as number);
      foretold += seen * (step[j] as number);
    }
    if (!(along > 0)) return;
    const scale = Math.abs(sized) > Math.abs(foretold) ? Math.abs(foretold / sized) : 1;
    let off = 0;
    for (let j = 0; j < size; j += 1) {
      missing[j] = (missing[j] as number) - scale * (known[j] as number);
      off += (missing[j] as number) * (step[j] as number);
    }
    for (let j = 0; j < size; j += 1)
      for (let k = 0; k <= j; k += 1) {
        const at = j * size + k;
        const change =
          ((missing[j] as number) * (slope[k] as number) + (slope[j] as number) * (missing[k] as number)) /
            along -
          (off * (slope[j] as number) * (slope[k] as number)) / along ** 2;
        const now = scale * (learnt[at] as number) + change;
        hessian[at] = (hessian[at] as number) + now - (learnt[at] as number);
        learnt[at] = now;
      }
  };

  const solution = (sum: number, steps: number) => {
    if (!factorise(size, normal, 0, diagonal, factor)) return { ok: false, failure: 'undetermined' } as const;
    const covariance = new Float64Array(size * size);
    invertFactored(size, factor, covariance);
    return { ok: true, value: { x, computed, jacobian, covariance, sum, steps } } as const;
  };

  if (!linearise()) return { ok: false, failure: 'not-computable' };
  if (diagonal.some((entry) => !(entry > 0))) return { ok: false, failure: 'undetermined' };
  let sum = sumAt(x, computed);
  let damping = 0;
  let pushes = 0;
  const trialValues = new Float64Array(count);
  for (let steps = 0; steps < STEPS_MAX; steps += 1) {
    // Where the second derivatives point nowhere down (the matrix is not positive definite), Gauss and Newton's is taken.
    const definite = factorise(size, hessian, damping, diagonal, factor);
    if (!definite && !factorise(size, normal, damping, diagonal, factor))
      return { ok: false, failure: 'undetermined' };
    step.set(gradient);
    solveFactored(size, factor, step);
    let small = true;
    let foreseen = 0;
    for (let j = 0; j < size; j += 1) {
      const move = step[j] as number;
      if (Math.abs(move) >= (stepEnd[j] as number)) small = false;
      trial[j] = (x[j] as number) + move;
      foreseen += move * ((gradient[j] as number) + damping * (diagonal[j] as number) * move);
    }
    if (small) {
      if (definite && damping === 0) return solution(sum, steps);
      if (definite || damping > 0) {
        damping = damping > 1e-9 ? damping / 16 : 0;
        continue;
      }
      // Level, but not at a minimum: push off it, the same way every time.
      if (pushes === 5) return { ok: false, failure: 'no-minimum' };
      pushes += 1;
      for (let j = 0; j < size; j += 1)
        x[j] = (x[j] as number) + 1e4 * (stepEnd[j] as number) * Math.sin(1 + 2.4 * j + pushes);
      if (!linearise()) return { ok: false, failure: 'not-computable' };
      sum = sumAt(x, computed);
      continue;
    }
    const reached = task.compute(trial, trialValues);
    const trialSum = reached ? sumAt(trial, trialValues) : Number.POSITIVE_INFINITY;
    // Near the end the sum's own rounding hides what a step gains.
    const off = task.learnsCurvature ? POSED_ROUNDING : ROUNDING;
    const noise = off * (sum + Math.sqrt(sum) + off);
    const level = foreseen <= noise && trialSum <= sum + noise;
    if (trialSum < sum || level) {
      const share = (sum - trialSum) / foreseen;
      if (level || share > 0.75) damping = damping > 1e-9 ? damping / 8 : 0;
      else if (share < 0.25) damping = Math.max(1e-4, damping * 4);
      if (task.learnsCurvature) {
        before.jacobian.set(jacobian);
        before.gradient.set(gradient);
      }
      x.set(trial);
      if (!linearise()) return { ok: false, failure: 'not-computable' };
      if (task.learnsCurvature) learn();
      sum = sumAt(x, computed);
    } else {
      damping = Math.max(1e-4, damping * 8);
      if (damping > DAMPING_MAX) return { ok: false, failure: 'no-minimum' };
    }
  }
  return { ok: false, failure: 'no-minimum' };
}
