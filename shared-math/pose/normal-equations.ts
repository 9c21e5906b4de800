// Sums of a least squares in x, y, yaw and two pitches: JᵀJ as a triangle by rows, and Jᵀr. Allocation-free.

/** Adds one weighted row with slopes in x, y, yaw and one pitch to a normal matrix. */
export function addToMatrix(
  m: Float64Array,
  weight: number,
  jx: number,
  jy: number,
  jw: number,
  jp: number,
  column: number,
): void {
  const wx = weight * jx;
  const wy = weight * jy;
  const ww = weight * jw;
  const wp = weight * jp;
  m[0] = (m[0] as number) + wx * jx;
  m[1] = (m[1] as number) + wy * jx;
  m[2] = (m[2] as number) + wy * jy;
  m[3] = (m[3] as number) + ww * jx;
  m[4] = (m[4] as number) + ww * jy;
  m[5] = (m[5] as number) + ww * jw;
  const row = column === 3 ? 6 : 10;
  m[row] = (m[row] as number) + wp * jx;
  m[row + 1] = (m[row + 1] as number) + wp * jy;
  m[row + 2] = (m[row + 2] as number) + wp * jw;
  const diagonal = column === 3 ? 9 : 14;
  m[diagonal] = (m[diagonal] as number) + wp * jp;
}

/** Adds one row of weight 1 with slopes in both pitches, and its residual. */
export function addRow(
  m: Float64Array,
  g: Float64Array,
  residual: number,
  jx: number,
  jy: number,
  jw: number,
  jl: number,
  jr: number,
): void {
  addToMatrix(m, 1, jx, jy, jw, jl, 3);
  m[10] = (m[10] as number) + jr * jx;
  m[11] = (m[11] as number) + jr * jy;
  m[12] = (m[12] as number) + jr * jw;
  m[13] = (m[13] as number) + jr * jl;
  m[14] = (m[14] as number) + jr * jr;
  addToGradient(g, residual, jx, jy, jw, jl, 3);
  g[4] = (g[4] as number) + residual * jr;
}

/** Adds one weighted residual to the slope of half the sum of squares, by the row's slopes. */
export function addToGradient(
  g: Float64Array,
  weighted: number,
  jx: number,
  jy: number,
  jw: number,
  jp: number,
  column: number,
): void {
  g[0] = (g[0] as number) + weighted * jx;
  g[1] = (g[1] as number) + weighted * jy;
  g[2] = (g[2] as number) + weighted * jw;
  g[column] = (g[column] as number) + weighted * jp;
}
