/**
 * Symmetric positive definite systems of any size by Cholesky's factors, M = L Lᵀ. Matrices are whole, by rows: entry
 * (i, j) stands at i n + j. Nothing is allocated; of M and L only the lower triangle is read or written.
 */

/**
 * Writes the factor L of M + damping · D, with D a diagonal (n numbers).
 * Returns false if the sum is not positive definite to rounding; `factor` then holds nothing of use.
 */
export function factorise(
  n: number,
  matrix: Float64Array,
  damping: number,
  diagonal: Float64Array,
  factor: Float64Array,
): boolean {
  for (let i = 0; i < n; i += 1) {
    const row = i * n;
    for (let j = 0; j < i; j += 1) {
      const other = j * n;
      let sum = matrix[row + j] as number;
      for (let k = 0; k < j; k += 1) sum -= (factor[row + k] as number) * (factor[other + k] as number);
      factor[row + j] = sum / (factor[other + j] as number);
    }
    const whole = (matrix[row + i] as number) + damping * (diagonal[i] as number);
    let pivot = whole;
    for (let k = 0; k < i; k += 1) pivot -= (factor[row + k] as number) ** 2;
    if (!(pivot > 1e-14 * Math.abs(whole))) return false;
    factor[row + i] = Math.sqrt(pivot);
  }
  return true;
}

/** Solves L Lᵀ x = b in place: `x` holds b on entry. */
export function solveFactored(n: number, factor: Float64Array, x: Float64Array): void {
  for (let i = 0; i < n; i += 1) {
    let sum = x[i] as number;
    for (let k = 0; k < i; k += 1) sum -= (factor[i * n + k] as number) * (x[k] as number);
    x[i] = sum / (factor[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = x[i] as number;
    for (let k = i + 1; k < n; k += 1) sum -= (factor[k * n + i] as number) * (x[k] as number);
    x[i] = sum / (factor[i * n + i] as number);
  }
}

/** Writes the whole inverse of L Lᵀ, column by column of L⁻¹, whose products it is made of: (L Lᵀ)⁻¹ = L⁻ᵀ L⁻¹. */
export function invertFactored(n: number, factor: Float64Array, inverse: Float64Array): void {
  // L⁻¹ first, into the lower triangle.
  for (let j = 0; j < n; j += 1) {
    inverse[j * n + j] = 1 / (factor[j * n + j] as number);
    for (let i = j + 1; i < n; i += 1) {
      let sum = 0;
      for (let k = j; k < i; k += 1) sum -= (factor[i * n + k] as number) * (inverse[k * n + j] as number);
      inverse[i * n + j] = sum / (factor[i * n + i] as number);
    }
  }
  // Row i of the product needs only rows of L⁻¹ from i on, so it can be written over row i, columns up to i.
  for (let i = 0; i < n; i += 1)
    for (let j = 0; j <= i; j += 1) {
      let sum = 0;
      for (let k = i; k < n; k += 1) sum += (inverse[k * n + i] as number) * (inverse[k * n + j] as number);
      // Column i of L⁻¹ is still needed for this row's other columns; the diagonal is written last, as j ends at i.
      inverse[i * n + j] = sum;
    }
  for (let i = 0; i < n; i += 1)
    for (let j = i + 1; j < n; j += 1) inverse[i * n + j] = inverse[j * n + i] as number;
}
