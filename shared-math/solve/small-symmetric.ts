/**
 * Symmetric positive systems of up to five unknowns, without allocation. A matrix is its lower triangle by rows:
 * entry (i, j), j <= i, stands at i (i + 1) / 2 + j.
 */

/**
 * Solves (M + damping · diag M) d = -g by the square-root-free Cholesky factors L D Lᵀ.
 * Shapes: `matrix` and `factors` at least n (n + 1) / 2, `gradient` and `step` at least n; `factors` is scratch.
 * Returns the product of the pivots, which at no damping is det M; 0 or less means that M is not positive definite
 * and `step` was not written.
 */
export function solveSymmetric(
  n: number,
  matrix: Float64Array,
  gradient: Float64Array,
  damping: number,
  factors: Float64Array,
  step: Float64Array,
): number {
  let determinant = 1;
  for (let i = 0; i < n; i += 1) {
    const row = (i * (i + 1)) / 2;
    let pivot = (matrix[row + i] as number) * (1 + damping);
    for (let j = 0; j < i; j += 1) {
      const rowJ = (j * (j + 1)) / 2;
      // factors holds L below the diagonal and D on it; the unscaled product is formed first.
      let sum = matrix[row + j] as number;
      for (let k = 0; k < j; k += 1)
        sum -=
          (factors[row + k] as number) *
          (factors[rowJ + k] as number) *
          (factors[(k * (k + 1)) / 2 + k] as number);
      const d = factors[rowJ + j] as number;
      const l = sum / d;
      factors[row + j] = l;
      pivot -= l * sum;
    }
    if (!(pivot > 0)) return 0;
    factors[row + i] = pivot;
    determinant *= pivot;
  }
  for (let i = 0; i < n; i += 1) {
    const row = (i * (i + 1)) / 2;
    let sum = -(gradient[i] as number);
    for (let k = 0; k < i; k += 1) sum -= (factors[row + k] as number) * (step[k] as number);
    step[i] = sum;
  }
  for (let i = 0; i < n; i += 1) step[i] = (step[i] as number) / (factors[(i * (i + 1)) / 2 + i] as number);
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = step[i] as number;
    for (let k = i + 1; k < n; k += 1)
      sum -= (factors[(k * (k + 1)) / 2 + i] as number) * (step[k] as number);
    step[i] = sum;
  }
  return determinant;
}

/**
 * Eigenvalues of a symmetric n × n matrix by cyclic Jacobi rotations (each rotation zeroes one pair of entries; the
 * off-diagonal sum falls quadratically), ascending; with `vectors`, the eigenvectors as its rows in the same order.
 * For set-up and doubtful cases, not for hot loops: it allocates.
 */
export function eigenSymmetric(n: number, matrix: Float64Array): { values: number[]; vectors: number[][] } {
  const a = Array.from({ length: n }, (_, i) =>
    Array.from(
      { length: n },
      (_, j) => matrix[i >= j ? (i * (i + 1)) / 2 + j : (j * (j + 1)) / 2 + i] as number,
    ),
  );
  const v = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 1 : 0)));
  const get = (m: number[][], i: number, j: number) => (m[i] as number[])[j] as number;
  const set = (m: number[][], i: number, j: number, value: number) => {
    (m[i] as number[])[j] = value;
  };
  for (let sweep = 0; sweep < 60; sweep += 1) {
    let off = 0;
    let diagonal = 0;
    for (let i = 0; i < n; i += 1) {
      diagonal += get(a, i, i) ** 2;
      for (let j = 0; j < i; j += 1) off += get(a, i, j) ** 2;
    }
    if (off <= 1e-36 * diagonal) break;
    for (let p = 0; p < n - 1; p += 1)
      for (let q = p + 1; q < n; q += 1) {
        const apq = get(a, p, q);
        if (apq === 0) continue;
        const theta = (get(a, q, q) - get(a, p, p)) / (2 * apq);
        const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < n; k += 1) {
          const akp = get(a, k, p);
          const akq = get(a, k, q);
          set(a, k, p, c * akp - s * akq);
          set(a, k, q, s * akp + c * akq);
        }
        for (let k = 0; k < n; k += 1) {
          const apk = get(a, p, k);
          const aqk = get(a, q, k);
          set(a, p, k, c * apk - s * aqk);
          set(a, q, k, s * apk + c * aqk);
          const vpk = get(v, p, k);
          const vqk = get(v, q, k);
          set(v, p, k, c * vpk - s * vqk);
          set(v, q, k, s * vpk + c * vqk);
        }
      }
  }
  const order = Array.from({ length: n }, (_, i) => i).sort((i, j) => get(a, i, i) - get(a, j, j));
  return { values: order.map((i) => get(a, i, i)), vectors: order.map((i) => [...(v[i] as number[])]) };
}
