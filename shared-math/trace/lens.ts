import { failed, type Outcome, succeeded } from '../outcome.ts';
import { goldenSection } from '../solve/golden-section.ts';
import { eigenSymmetric } from '../solve/small-symmetric.ts';
import type { PhotoSpot, Planar, UnbentSpot } from './photo-places.ts';

/**
 * One radial coefficient: a place d from the picture's middle, in half diagonals, belongs at d (1 + k |d|²). Positive
 * for the usual barrel, in which straight lines bow outward.
 */
export interface Lens {
  readonly k: number;
  /** px of the picture, right and down. */
  readonly size: PhotoSpot;
}

export type LensFailure = 'too-few-points' | 'line-too-short' | 'line-through-the-middle';

/** No lens that a builder owns bends its picture's corners by more; beyond -1/3 the picture would fold over. */
export const LENS_MOST = 0.3;
/** Half diagonals. A shorter line, or one nearer to the middle, shows no bow to measure. */
const LINE_LEAST = 0.35;
const MIDDLE_LEAST = 0.12;

const middle = ({ size }: Lens): Planar => [size[0] / 2, size[1] / 2];
const halfDiagonal = ({ size }: Lens): number => Math.hypot(size[0], size[1]) / 2;

/** Where a place of the photo would be without the lens's bending, px. */
export function undistorted(lens: Lens, [x, y]: PhotoSpot): UnbentSpot {
  const [cx, cy] = middle(lens);
  const unit = halfDiagonal(lens);
  const r2 = ((x - cx) ** 2 + (y - cy) ** 2) / unit ** 2;
  const stretch = 1 + lens.k * r2;
  return [cx + (x - cx) * stretch, cy + (y - cy) * stretch];
}

/** The way back: r (1 + k r²) = R by Newton's steps from r = R. */
export function distorted(lens: Lens, [x, y]: UnbentSpot): PhotoSpot {
  const [cx, cy] = middle(lens);
  const target = Math.hypot(x - cx, y - cy) / halfDiagonal(lens);
  if (lens.k === 0 || target === 0) return [x, y];
  let r = target / (1 + lens.k * Math.min(target, 1) ** 2);
  for (let step = 0; step < 12; step += 1) {
    const slope = 1 + 3 * lens.k * r * r;
    if (!(slope > 0.05)) break;
    const change = (r * (1 + lens.k * r * r) - target) / slope;
    r -= change;
    if (Math.abs(change) < 1e-14) break;
  }
  const shrink = r / target;
  return [cx + (x - cx) * shrink, cy + (y - cy) * shrink];
}

/** How far from straight points lie, as a share of how far they spread; and their line. */
function straightness(spots: readonly Planar[]): {
  bow: number;
  spread: number;
  along: Planar;
  mean: Planar;
} {
  const n = spots.length;
  const mean: Planar = [spots.reduce((s, [x]) => s + x, 0) / n, spots.reduce((s, [, y]) => s + y, 0) / n];
  const m = new Float64Array(3);
  for (const [x, y] of spots) {
    const [dx, dy] = [x - mean[0], y - mean[1]];
    m[0] = (m[0] as number) + dx * dx;
    m[1] = (m[1] as number) + dx * dy;
    m[2] = (m[2] as number) + dy * dy;
  }
  const { values, vectors } = eigenSymmetric(2, m);
  const [least = 0, most = 0] = values;
  return {
    bow: most > 0 ? Math.max(least, 0) / most : 0,
    spread: Math.sqrt(most / n),
    along: vectors[1] as unknown as Planar,
    mean,
  };
}

/**
 * The radial coefficient at which points that lie on one straight line in the world lie on one in the picture.
 * Least squares of their distance from their own best line, as a share of their spread, over k by golden section.
 * Frame:    px of the photo, right and down. Units: k without one.
 * Shapes:   `spots` three or more along the line.
 * Outcomes: ok; too-few-points; line-too-short; line-through-the-middle (such a line does not bow).
 * Source:   the straight-line property of a pinhole camera: D. C. Brown, Close-range camera calibration, 1971.
 * Checked:  tests/unit/trace/lens.test.ts (an independent camera).
 */
export function fitLens(spots: readonly PhotoSpot[], size: PhotoSpot): Outcome<Lens, LensFailure> {
  if (spots.length < 3) return failed('too-few-points');
  const plain = { k: 0, size };
  const unit = halfDiagonal(plain);
  const { along, mean } = straightness(spots);
  const ends = spots.map(([x, y]) => (x - mean[0]) * along[0] + (y - mean[1]) * along[1]);
  if (Math.max(...ends) - Math.min(...ends) < LINE_LEAST * unit) return failed('line-too-short');
  const [cx, cy] = middle(plain);
  if (Math.abs((cx - mean[0]) * along[1] - (cy - mean[1]) * along[0]) < MIDDLE_LEAST * unit)
    return failed('line-through-the-middle');
  const bowAt = (k: number) => straightness(spots.map((spot) => undistorted({ k, size }, spot))).bow;
  const { low, high } = goldenSection(bowAt, -LENS_MOST, LENS_MOST, 1e-9);
  return succeeded({ k: (low + high) / 2, size });
}
