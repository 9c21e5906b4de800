import { isWhole, rangeOf, type Spot, type Stroke, spotAt, stretchOf } from './stroke.ts';

/** mm. Strokes that lie on one another to within this are one. */
const SAME = 0.02;
/** mm. What is left of a stroke must be longer than this to be drawn. */
const LEFT = 0.05;

type Stretch = readonly [from: number, to: number];

/** Takes stretches out of a range; all in rising order. */
function without(range: Stretch, taken: readonly Stretch[]): Stretch[] {
  let left: Stretch[] = [range];
  for (const [from, to] of taken)
    left = left.flatMap(([low, high]): Stretch[] => {
      if (to <= low || from >= high) return [[low, high]];
      return [...(from > low ? [[low, from] as const] : []), ...(to < high ? [[to, high] as const] : [])];
    });
  return left;
}

const TURN = 2 * Math.PI;

const near = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]) < SAME;

/** Which stretches of a stroke, in its own parameter, another one lies on. */
function sharedWith(stroke: Stroke, other: Stroke): Stretch[] {
  if (stroke.kind === 'line') {
    if (other.kind !== 'line') return [];
    const [dx, dy] = [stroke.b[0] - stroke.a[0], stroke.b[1] - stroke.a[1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) return [];
    const share = ([x, y]: Spot) => ((x - stroke.a[0]) * dx + (y - stroke.a[1]) * dy) / (length * length);
    const off = ([x, y]: Spot) => Math.abs((x - stroke.a[0]) * dy - (y - stroke.a[1]) * dx) / length;
    if (off(other.a) > SAME || off(other.b) > SAME) return [];
    const [s, t] = [share(other.a), share(other.b)];
    return [s < t ? [s, t] : [t, s]];
  }
  if (other.kind !== 'curve' || !near(stroke.centre, other.centre)) return [];
  // Half axes alike, whichever way they are counted; of circles any way.
  const round = (each: typeof stroke) => Math.abs(Math.hypot(...each.u) - Math.hypot(...each.v)) < SAME;
  const alike = round(stroke)
    ? round(other) && Math.abs(Math.hypot(...stroke.u) - Math.hypot(...other.u)) < SAME
    : [1, -1].some((sign) => near(stroke.u, [sign * other.u[0], sign * other.u[1]])) &&
      Math.abs(Math.hypot(...stroke.v) - Math.hypot(...other.v)) < SAME;
  if (!alike) return [];
  const [low, high] = rangeOf(stroke);
  if (isWhole(other)) return [[Math.min(low, high), Math.max(low, high)]];
  // The other's ends in this one's own angle.
  const angleOf = (spot: Spot) => {
    const [x, y] = [spot[0] - stroke.centre[0], spot[1] - stroke.centre[1]];
    const [u, v] = [stroke.u, stroke.v];
    return Math.atan2(
      (x * v[0] + y * v[1]) / (v[0] * v[0] + v[1] * v[1]),
      (x * u[0] + y * u[1]) / (u[0] * u[0] + u[1] * u[1]),
    );
  };
  const [from, to] = rangeOf(other);
  const start = angleOf(spotAt(other, Math.min(from, to)));
  const handed = (c: typeof stroke) => Math.sign(c.u[0] * c.v[1] - c.u[1] * c.v[0]);
  const sweep = Math.abs(to - from) * handed(stroke) * handed(other);
  const [first, last] = sweep > 0 ? [start, start + sweep] : [start + sweep, start];
  const shift = TURN * Math.floor((Math.min(low, high) - first) / TURN);
  return [0, 1, 2].map((i): Stretch => [first + shift + i * TURN, last + shift + i * TURN]);
}

const lengthOf = (stroke: Stroke, [from, to]: Stretch): number =>
  stroke.kind === 'line'
    ? (to - from) * Math.hypot(stroke.b[0] - stroke.a[0], stroke.b[1] - stroke.a[1])
    : (to - from) * Math.hypot(...stroke.u);

/** Takes strokes one after another and gives of each what no earlier one lies on, so that nothing is drawn twice. */
export class Once {
  readonly #drawn: Stroke[] = [];

  /** What of a stroke was not there yet, in its own order. */
  add(stroke: Stroke): Stroke[] {
    const [from, to] = rangeOf(stroke);
    const range: Stretch = from < to ? [from, to] : [to, from];
    const taken = this.#drawn.flatMap((other) => sharedWith(stroke, other));
    const whole = taken.every(([low, high]) => high <= range[0] || low >= range[1]);
    const left = whole ? [range] : without(range, taken).filter((each) => lengthOf(stroke, each) > LEFT);
    this.#drawn.push(stroke);
    const ordered = from < to ? left : left.reverse().map(([low, high]): Stretch => [high, low]);
    return whole ? [stroke] : ordered.map(([low, high]) => stretchOf(stroke, low, high));
  }
}
