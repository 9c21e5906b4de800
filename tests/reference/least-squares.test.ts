import { describe, expect, test } from 'vitest';
import { leastSquares, type Observations } from '../../shared-math/solve/least-squares.ts';

/** Unknowns of which nothing is known beforehand. */
function unknownBeforehand(size: number) {
  return { prior: new Float64Array(size), priorDoubt: new Float64Array(size).fill(Number.POSITIVE_INFINITY) };
}

// NIST Statistical Reference Datasets, nonlinear regression, Misra1a: y = b1 (1 - exp(-b2 x)). Data, certified values and
// both starts from memory, recomputed beside this project by another solver: the same to the digits given.
const MISRA_X = [
  77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0,
];
const MISRA_Y = [
  10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78,
];

const misra: Observations = {
  count: MISRA_X.length,
  size: 2,
  observed: Float64Array.from(MISRA_Y),
  doubt: new Float64Array(MISRA_X.length).fill(1),
  ...unknownBeforehand(2),
  compute([b1, b2], computed, jacobian) {
    for (const [i, x] of MISRA_X.entries()) {
      const decay = Math.exp(-(b2 as number) * x);
      computed[i] = (b1 as number) * (1 - decay);
      if (!jacobian) continue;
      jacobian[2 * i] = 1 - decay;
      jacobian[2 * i + 1] = (b1 as number) * x * decay;
    }
    return computed.every(Number.isFinite);
  },
};

describe('certified values of a nonlinear regression', () => {
  test.each([
    ['the far start', 500, 0.0001],
    ['the near start', 250, 0.0005],
  ])('Misra1a from %s', (_, b1, b2) => {
    const solved = leastSquares(misra, Float64Array.of(b1, b2), Float64Array.of(1e-9, 1e-15));
    expect(solved.ok).toBe(true);
    if (!solved.ok) return;
    const { x, sum, covariance } = solved.value;
    expect(x[0]).toBeCloseTo(238.94212918, 6);
    expect(x[1]! / 5.5015643181e-4).toBeCloseTo(1, 8);
    expect(sum).toBeCloseTo(0.12455138894, 9);
    // Certified standard deviations are a posteriori: scaled by the residuals over 14 - 2 degrees of freedom.
    const variance = sum / (MISRA_X.length - 2);
    expect(Math.sqrt(variance * covariance[0]!)).toBeCloseTo(2.7070075241, 7);
    expect(Math.sqrt(variance * covariance[3]!) / 7.2668688436e-6).toBeCloseTo(1, 7);
  });
});

// Own example: three stations and distances to one point, each with doubt 1.6 mm; figures computed with SciPy
// (optimize.least_squares, tolerances 1e-15, covariance by its Jacobian).
const STATIONS = [
  [0, 0],
  [1000, 0],
  [400, 900],
] as const;

const network: Observations = {
  count: 3,
  size: 2,
  observed: Float64Array.of(641.5, 639.2, 511.0),
  doubt: new Float64Array(3).fill(1.6),
  ...unknownBeforehand(2),
  compute([x, y], computed, jacobian) {
    for (const [i, [sx, sy]] of STATIONS.entries()) {
      const [dx, dy] = [(x as number) - sx, (y as number) - sy];
      computed[i] = Math.hypot(dx, dy);
      if (!jacobian) continue;
      jacobian[2 * i] = dx / computed[i]!;
      jacobian[2 * i + 1] = dy / computed[i]!;
    }
    return true;
  },
};

describe('a network of three distances', () => {
  test('point, doubts, residuals and what checks each distance', () => {
    const solved = leastSquares(network, Float64Array.of(450, 350), Float64Array.of(1e-9, 1e-9));
    expect(solved.ok).toBe(true);
    if (!solved.ok) return;
    const { x, covariance: c, computed, jacobian: j } = solved.value;
    expect(x[0]).toBeCloseTo(501.5348, 4);
    expect(x[1]).toBeCloseTo(399.5789, 4);
    expect(Math.sqrt(c[0]!)).toBeCloseTo(1.438, 4);
    expect(Math.sqrt(c[3]!)).toBeCloseTo(1.2237, 4);
    const residuals = [...computed].map((value, i) => network.observed[i]! - value);
    for (const [i, expected] of [0.2508, 0.3488, 0.3821].entries())
      expect(residuals[i]).toBeCloseTo(expected, 4);
    const redundancy = STATIONS.map((_, i) => {
      const [a, b] = [j[2 * i]!, j[2 * i + 1]!];
      return 1 - (a * a * c[0]! + 2 * a * b * c[1]! + b * b * c[3]!) / 1.6 ** 2;
    });
    for (const [i, expected] of [0.1903, 0.368, 0.4416].entries())
      expect(redundancy[i]).toBeCloseTo(expected, 4);
    for (const [i, share] of redundancy.entries())
      expect(Math.abs(residuals[i]!) / (1.6 * Math.sqrt(share))).toBeCloseTo(0.3594, 3);
  });

  test('a start from which a plain step overshoots, and one dead on a saddle', () => {
    // One length to a point that nothing holds sideways but what is weakly known: the length wants to be longer.
    const observed = 1003;
    const lone: Observations = {
      count: 2,
      size: 2,
      observed: Float64Array.of(observed, 1000),
      doubt: Float64Array.of(1.6, 0.1),
      prior: Float64Array.of(1000, 0),
      priorDoubt: Float64Array.of(250, 250),
      compute([x, y], computed, jacobian) {
        computed[0] = Math.hypot(x as number, y as number);
        computed[1] = x as number;
        if (!jacobian) return true;
        jacobian[0] = (x as number) / computed[0];
        jacobian[1] = (y as number) / computed[0];
        jacobian[2] = 1;
        return true;
      },
      subtractCurvature([x, y], pull, hessian) {
        const length = Math.hypot(x as number, y as number);
        hessian[0]! -= (pull[0]! * (y as number) ** 2) / length ** 3;
        hessian[2]! += (pull[0]! * (x as number) * (y as number)) / length ** 3;
        hessian[3]! -= (pull[0]! * (x as number) ** 2) / length ** 3;
      },
    };
    const sums = [0, 1e-3, 30, -200].map((y) => {
      const solved = leastSquares(lone, Float64Array.of(1000, y), Float64Array.of(1e-6, 1e-6));
      expect(solved.ok, `from y = ${y}`).toBe(true);
      return solved.ok ? solved.value.sum : Number.NaN;
    });
    // The least sum by a walk over y, with x free: all starts must find it.
    let least = Number.POSITIVE_INFINITY;
    for (let y = 0; y < 120; y += 0.01) {
      // At given y the best x is within a hair of 1000; a few steps of bisection on the slope find it.
      let [low, high] = [990, 1010];
      const sum = (x: number) =>
        ((observed - Math.hypot(x, y)) / 1.6) ** 2 +
        ((1000 - x) / 0.1) ** 2 +
        ((x - 1000) / 250) ** 2 +
        (y / 250) ** 2;
      for (let k = 0; k < 60; k += 1) {
        const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
        if (sum(a) < sum(b)) high = b;
        else low = a;
      }
      least = Math.min(least, sum(low));
    }
    for (const sum of sums) expect(sum).toBeCloseTo(least, 6);
  });
});
