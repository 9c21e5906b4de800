/**
 * A second, slow and obvious model of a chain of joints: yokes as vectors in space. A spider keeps the ears of its two
 * yokes square to each other, so the driven ears are square to the driving ears and to their own shaft. Shares no code
 * with the sources. Vectors are [x, y, z]; angles in rad.
 */

type Vector = readonly [number, number, number];

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const unitOf = (a: Vector): Vector => times(a, 1 / Math.sqrt(dot(a, a)));

/** Turned right-hand about a unit axis (Rodrigues). */
function turned(v: Vector, axis: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return plus(plus(times(v, c), times(cross(axis, v), s)), times(axis, dot(axis, v) * (1 - c)));
}

function anySquare(axis: Vector): Vector {
  return unitOf(cross(axis, Math.abs(axis[0]) < 0.7 ? [1, 0, 0] : [0, 0, 1]));
}

export interface VectorChain {
  /** One more than joints, from handwheel to box. */
  readonly directions: readonly Vector[];
  /** One for each shaft between two joints. */
  readonly clocks: readonly number[];
  readonly kinds: readonly ('single' | 'double')[];
}

/** Ears of the last yoke, up to sign, for a turn of the column from an arbitrary start. */
function lastEars(chain: VectorChain, input: number): Vector {
  const { directions, clocks, kinds } = chain;
  const d0 = unitOf(directions[0]!);
  let ears = turned(anySquare(d0), d0, input);
  kinds.forEach((kind, i) => {
    const before = unitOf(directions[i]!);
    const after = unitOf(directions[i + 1]!);
    // A double joint: a short middle piece on the bisector, its two yokes in one plane.
    const through = kind === 'double' ? [unitOf(plus(before, after)), after] : [after];
    for (const direction of through) ears = unitOf(cross(ears, direction));
    if (i < clocks.length) ears = turned(ears, after, clocks[i]!);
  });
  return ears;
}

/** Output turn for inputs over one turn, `count` steps, begun at 0; unwrapped through the ears' half-turn symmetry. */
export function outputs(chain: VectorChain, count: number): Float64Array {
  const last = unitOf(chain.directions[chain.directions.length - 1]!);
  const start = lastEars(chain, 0);
  const side = cross(last, start);
  const list = new Float64Array(count + 1);
  let before = 0;
  for (let i = 0; i <= count; i += 1) {
    const ears = lastEars(chain, (i / count) * 2 * Math.PI);
    const angle = Math.atan2(dot(ears, side), dot(ears, start));
    before = angle + Math.PI * Math.round((before - angle) / Math.PI);
    list[i] = before;
  }
  return list;
}

/** Peak to peak of output minus input, and least and greatest ratio, by sampling and central differences. */
export function measured(chain: VectorChain, count = 720): { swing: number; min: number; max: number } {
  const list = outputs(chain, count);
  const step = (2 * Math.PI) / count;
  let [low, high, min, max] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < count; i += 1) {
    const error = list[i]! - i * step;
    low = Math.min(low, error);
    high = Math.max(high, error);
    const next = list[i + 1]!;
    const previous = i > 0 ? list[i - 1]! : list[count - 1]! - 2 * Math.PI;
    min = Math.min(min, (next - previous) / (2 * step));
    max = Math.max(max, (next - previous) / (2 * step));
  }
  return { swing: high - low, min, max };
}
