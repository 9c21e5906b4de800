import { failed, type Outcome, succeeded } from '../outcome.ts';
import { eigenSymmetric } from '../solve/small-symmetric.ts';
import type { Planar } from './photo-places.ts';

/** The same point in two planes. */
export interface Pair<From extends Planar, To extends Planar> {
  readonly from: From;
  readonly to: To;
}

/** Nine numbers by rows that take a plane to another one, straight lines to straight lines; the types say which to which. */
export type Homography<From extends Planar, To extends Planar> = readonly number[] & {
  readonly takes?: (from: From) => To;
};

export interface HomographyFit<From extends Planar, To extends Planar> {
  readonly matrix: Homography<From, To>;
  /** Distances in the second plane between where a point goes and where it should; its units. */
  readonly rms: number;
  readonly worst: number;
}

export type HomographyFailure = 'too-few-points' | 'points-on-a-line' | 'crossed';

/** Ratio. A triangle flatter than this against the whole is three points on a line. */
const FLAT_BELOW = 2e-3;
/** Ratio of eigenvalues below which points leave the mapping open. */
const OPEN_BELOW = 1e-10;

function product(a: readonly number[], b: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = 0; i < 3; i += 1)
    for (let j = 0; j < 3; j += 1) {
      let sum = 0;
      for (let k = 0; k < 3; k += 1) sum += (a[3 * i + k] as number) * (b[3 * k + j] as number);
      out.push(sum);
    }
  return out;
}

/** The first mapping after the second. */
export function composed<From extends Planar, By extends Planar, To extends Planar>(
  after: Homography<By, To>,
  first: Homography<From, By>,
): Homography<From, To> {
  return product(after, first);
}

/** The way back; undefined if the mapping squeezes its plane into a line. */
export function inverted<From extends Planar, To extends Planar>(
  m: Homography<From, To>,
): Homography<To, From> | undefined {
  const [a, b, c, d, e, f, g, h, i] = m as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const minors = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
  const determinant = a * (minors[0] as number) + b * (minors[3] as number) + c * (minors[6] as number);
  if (determinant === 0 || !Number.isFinite(determinant)) return undefined;
  return minors.map((entry) => entry / determinant);
}

/** Where a place goes; nothing for one on or behind the horizon of a mapping whose middle is given by `front`. */
export function applied<From extends Planar, To extends Planar>(
  m: Homography<From, To>,
  [x, y]: From,
  front = 1,
): To | undefined {
  const w = (m[6] as number) * x + (m[7] as number) * y + (m[8] as number);
  if (!(w * front > 1e-12)) return undefined;
  const place: Planar = [
    ((m[0] as number) * x + (m[1] as number) * y + (m[2] as number)) / w,
    ((m[3] as number) * x + (m[4] as number) * y + (m[5] as number)) / w,
  ];
  return place as To;
}

/** Moves points to their mean and scales their mean distance from it to √2; undefined if all are one spot. */
function normaliser(spots: readonly Planar[]): { to: number[]; back: number[] } | undefined {
  const n = spots.length;
  const cx = spots.reduce((sum, [x]) => sum + x, 0) / n;
  const cy = spots.reduce((sum, [, y]) => sum + y, 0) / n;
  const mean = spots.reduce((sum, [x, y]) => sum + Math.hypot(x - cx, y - cy), 0) / n;
  if (!(mean > 0)) return undefined;
  const s = Math.SQRT2 / mean;
  return { to: [s, 0, -s * cx, 0, s, -s * cy, 0, 0, 1], back: [1 / s, 0, cx, 0, 1 / s, cy, 0, 0, 1] };
}

function twiceArea(a: Planar, b: Planar, c: Planar): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Whether so many lie on one line that no four corners are left. */
function onALine(spots: readonly Planar[]): boolean {
  const span = Math.max(...spots.flatMap((a) => spots.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
  const flat = (a: Planar, b: Planar, c: Planar) => Math.abs(twiceArea(a, b, c)) < FLAT_BELOW * span * span;
  const [a, b, c, d] = spots as unknown as [Planar, Planar, Planar, Planar];
  if (spots.length === 4) return flat(a, b, c) || flat(a, b, d) || flat(a, c, d) || flat(b, c, d);
  // With more, all but one on a line are too many.
  return spots.some((_, left) => {
    const rest = spots.filter((__, i) => i !== left);
    const first = rest[0] as Planar;
    const far = rest.reduce(
      (most, p) =>
        Math.hypot(p[0] - first[0], p[1] - first[1]) > Math.hypot(most[0] - first[0], most[1] - first[1])
          ? p
          : most,
      first,
    );
    return rest.every((p) => flat(first, far, p));
  });
}

/**
 * The homography that takes four or more points to their partners, by the normalised direct linear transformation.
 *
 * Both sets are moved to their mean and scaled to a mean distance of √2; each pair gives two rows of A h = 0; h is the
 * eigenvector of AᵀA with the smallest eigenvalue. Four pairs are met exactly, more in the least squares of the
 * algebraic distance in normalised coordinates.
 * Frame:    any two planes. Units: theirs; the residuals are in those of the second.
 * Shapes:   `pairs` four or more; the matrix 9 numbers by rows, scaled so that the points' mean has w = 1.
 * Outcomes: ok; too-few-points; points-on-a-line (three of four, or all but one of more); crossed (the corners go
 *           around in another order in the two planes, so that the horizon would run between them).
 * Source:   R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 2nd ed. 2004, algorithm 4.2.
 * Checked:  tests/unit/trace/homography.test.ts.
 */
export function fitHomography<From extends Planar, To extends Planar>(
  pairs: readonly Pair<From, To>[],
): Outcome<HomographyFit<From, To>, HomographyFailure> {
  if (pairs.length < 4) return failed('too-few-points');
  const from = pairs.map((pair) => pair.from);
  const to = pairs.map((pair) => pair.to);
  const t = normaliser(from);
  const u = normaliser(to);
  if (!t || !u || onALine(from) || onALine(to)) return failed('points-on-a-line');
  const square = new Float64Array(45);
  const add = (row: readonly number[]) => {
    for (let i = 0, entry = 0; i < 9; i += 1)
      for (let j = 0; j <= i; j += 1, entry += 1)
        square[entry] = (square[entry] as number) + (row[i] as number) * (row[j] as number);
  };
  for (const pair of pairs) {
    const [x, y] = applied<Planar, Planar>(t.to, pair.from) as Planar;
    const [X, Y] = applied<Planar, Planar>(u.to, pair.to) as Planar;
    add([0, 0, 0, -x, -y, -1, Y * x, Y * y, Y]);
    add([x, y, 1, 0, 0, 0, -X * x, -X * y, -X]);
  }
  const { values, vectors } = eigenSymmetric(9, square);
  if (!((values[1] as number) > OPEN_BELOW * (values[8] as number))) return failed('points-on-a-line');
  const raw = product(u.back, product(vectors[0] as number[], t.to));
  const [cx, cy] = applied<Planar, Planar>(t.back, [0, 0]) as Planar;
  const w = (raw[6] as number) * cx + (raw[7] as number) * cy + (raw[8] as number);
  const matrix: Homography<From, To> = raw.map((entry) => entry / w);
  let sum = 0;
  let worst = 0;
  for (const pair of pairs) {
    const got = applied(matrix, pair.from);
    if (!got) return failed('crossed');
    const off = Math.hypot(got[0] - pair.to[0], got[1] - pair.to[1]);
    sum += off * off;
    worst = Math.max(worst, off);
  }
  if (!matrix.every(Number.isFinite) || !inverted(matrix)) return failed('points-on-a-line');
  return succeeded({ matrix, rms: Math.sqrt(sum / pairs.length), worst });
}
