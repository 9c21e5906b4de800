/** A root of `f` between `low` and `high`, where its sign changes, by halving until nothing is left to halve. */
export function root(f: (x: number) => number, low: number, high: number): number {
  const rising = f(high) > 0;
  if (rising === f(low) > 0) throw new Error(`no change of sign from ${low} to ${high}`);
  let [a, b] = [low, high];
  for (let i = 0; i < 200 && a !== b; i += 1) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

export type Vector = readonly [number, number, number];

export const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const apart = (a: Vector, b: Vector) => Math.hypot(...minus(a, b));

/** A point turned about the line through `through` along `axis`, by Euler's quaternion. rad, right-hand. */
export function turned(point: Vector, through: Vector, axis: Vector, angle: number): Vector {
  const size = Math.hypot(...axis);
  const [s, w] = [Math.sin(angle / 2) / size, Math.cos(angle / 2)];
  const q: Vector = [axis[0] * s, axis[1] * s, axis[2] * s];
  const v = minus(point, through);
  const t = cross(q, v);
  const u: Vector = [t[0] + w * v[0], t[1] + w * v[1], t[2] + w * v[2]];
  const c = cross(q, u);
  return [through[0] + v[0] + 2 * c[0], through[1] + v[1] + 2 * c[1], through[2] + v[2] + 2 * c[2]];
}
