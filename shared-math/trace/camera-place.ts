import { failed, type Outcome, succeeded } from '../outcome.ts';
import { goldenSection } from '../solve/golden-section.ts';
import { type LeastSquares, leastSquares } from '../solve/least-squares.ts';
import { CAMERA_UNKNOWNS, type CameraFrame, SEEN_SIZE, see, turnOf } from './camera-model.ts';
import { applied, type Homography, inverted, type Pair } from './homography.ts';
import type { FlatPlace, PhotoSpot, Planar, UnbentSpot } from './photo-places.ts';

/** Where the camera stood against the plane that was straightened: the foot of its perpendicular and how far off. */
export interface CameraPlace<Place extends Planar> {
  readonly foot: Place;
  readonly distance: number;
}

export interface FittedCamera extends CameraPlace<FlatPlace> {
  /** px. */
  readonly focal: number;
  /** From the plane to undistorted px, as this camera shows it; above 0 in front. */
  readonly toPhoto: Homography<FlatPlace, UnbentSpot>;
  /** px; the farthest of the points from where this camera shows it. */
  readonly worst: number;
}

export type CameraFailure =
  /** No camera shows points of such places like this, from whatever distance. */
  | 'not-this-shape'
  /** A camera shows them like this, but not from the given distance. */
  | 'not-from-there';

/** Times the picture's width: what focal lengths are looked through, and in how many steps of their logarithm. */
const FOCAL_LEAST = 0.1;
const FOCAL_MOST = 50;
const FOCAL_STEPS = 60;
/** px, one standard deviation of a click. */
const CLICK_DOUBT = 1;
/**
 * One standard deviation of a camera's distance by the tape, as a share of it: where in a phone the picture comes together
 * is not marked, and the tape is seldom square to the plane. Common practice, no published source.
 */
export const DISTANCE_DOUBT = 0.003;
/** Points that lie off by more, as a share of their spread in the picture, are no matter of clicking. */
const OFF_MOST = 0.03;
const FITTED = 7;

type HomographyColumn = readonly [number, number, number];
const inner = (a: HomographyColumn, b: HomographyColumn) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: HomographyColumn): HomographyColumn => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};

export interface Stance {
  readonly focal: number;
  /** From the plane (right, down, into the picture) to the camera, by rows. */
  readonly turn: Float64Array;
  readonly at: HomographyColumn;
}

/**
 * How a camera of a given focal length would stand to show the plane most nearly as the homography has it. Its columns
 * are K [r1 r2 t] up to a factor; at a wrong focal length the first two are not square to one another nor of one length,
 * and are made so.
 */
export function standing<Place extends Planar>(
  toPhoto: Homography<Place, UnbentSpot>,
  [cx, cy]: UnbentSpot,
  focal: number,
): Stance {
  const column = (j: number): HomographyColumn => {
    const w = toPhoto[6 + j] as number;
    return [((toPhoto[j] as number) - cx * w) / focal, ((toPhoto[3 + j] as number) - cy * w) / focal, w];
  };
  const [g1, g2, g3] = [column(0), column(1), column(2)];
  const scale = (Math.hypot(...g1) + Math.hypot(...g2)) / 2;
  const r1 = unit(g1);
  const off = inner(r1, g2);
  const r2 = unit([g2[0] - off * r1[0], g2[1] - off * r1[1], g2[2] - off * r1[2]]);
  const r3: HomographyColumn = [
    r1[1] * r2[2] - r1[2] * r2[1],
    r1[2] * r2[0] - r1[0] * r2[2],
    r1[0] * r2[1] - r1[1] * r2[0],
  ];
  const t: HomographyColumn = [g3[0] / scale, g3[1] / scale, g3[2] / scale];
  return {
    focal,
    turn: Float64Array.of(r1[0], r2[0], r3[0], r1[1], r2[1], r3[1], r1[2], r2[2], r3[2]),
    at: [-inner(r1, t), -inner(r2, t), -inner(r3, t)],
  };
}

/** A homography with w above 0 at a place that the camera has before it. */
export function facing<Place extends Planar>(
  toPhoto: Homography<Place, UnbentSpot>,
  [right, down]: NoInfer<Place>,
): Homography<Place, UnbentSpot> {
  const w = (toPhoto[6] as number) * right + (toPhoto[7] as number) * down + (toPhoto[8] as number);
  return toPhoto.map((entry) => entry * Math.sign(w));
}

/**
 * The camera that shows points of a plane where they were seen and stood as far from it as the tape says, by least squares
 * of both in their doubts.
 *
 * A pinhole with its axis through the picture's middle and square pixels has seven unknowns: focal length, direction,
 * place. Four points give eight numbers and the tape a ninth. Seen askew, the points alone say the focal length: the
 * rectangle's two directions are square to one another. Seen square they leave it open, and the tape says it. In between
 * both speak, and the distance that goes with a focal length may rise and fall again as that grows; so its logarithm is
 * looked through from end to end, and least squares start from each focal length at which the misfit is least about it.
 * Frame:    the plane's own; lengths in its units. Shapes: `pairs` four or more, undistorted px to places; `toPhoto` the
 *           homography that they give, from the plane to undistorted px.
 * Outcomes: the camera; not-this-shape; not-from-there.
 * Source:   the constraints on a focal length from one view of a plane: R. Hartley and A. Zisserman, Multiple View
 *           Geometry in Computer Vision, 2nd ed. 2004, chapter 8, from memory; the fit is an own composition.
 * Checked:  tests/unit/trace/camera-place.test.ts (an independent camera).
 */
export function fitCamera(
  pairs: readonly Pair<UnbentSpot, FlatPlace>[],
  toPhoto: Homography<FlatPlace, UnbentSpot>,
  size: PhotoSpot,
  distance: number,
): Outcome<FittedCamera, CameraFailure> {
  const middle: UnbentSpot = [size[0] / 2, size[1] / 2];
  const n = pairs.length;
  const mean: FlatPlace = [
    pairs.reduce((sum, { to }) => sum + to[0], 0) / n,
    pairs.reduce((sum, { to }) => sum + to[1], 0) / n,
  ];
  const inFront = facing(toPhoto, mean);
  const places = Float64Array.from(pairs.flatMap(({ to }) => [to[0], to[1], 0]));
  const spread = Math.max(
    ...pairs.flatMap((a) => pairs.map((b) => Math.hypot(a.from[0] - b.from[0], a.from[1] - b.from[1]))),
  );
  const most = Math.max(OFF_MOST * spread, 4 * CLICK_DOUBT);
  const seen = new Float64Array(SEEN_SIZE);
  const unknowns = new Float64Array(CAMERA_UNKNOWNS);
  const put = ({ focal, at }: Stance) => {
    unknowns.fill(0);
    unknowns[0] = Math.log(focal);
    unknowns.set(at, 4);
  };
  const worstAt = (frame: CameraFrame): number => {
    let worst = 0;
    for (const [i, { from }] of pairs.entries()) {
      if (!see(unknowns, 0, frame, places, 3 * i, seen)) return Number.POSITIVE_INFINITY;
      worst = Math.max(worst, Math.hypot((seen[0] as number) - from[0], (seen[1] as number) - from[1]));
    }
    return worst;
  };

  let shape = Number.POSITIVE_INFINITY;
  const stanceAt = (logFocal: number) => standing(inFront, middle, Math.exp(logFocal));
  const misfitAt = (logFocal: number): number => {
    const stance = stanceAt(logFocal);
    put(stance);
    const worst = worstAt({ turn: stance.turn, size });
    shape = Math.min(shape, worst);
    const far = (Math.abs(stance.at[2]) - distance) / (DISTANCE_DOUBT * distance);
    return (worst / CLICK_DOUBT) ** 2 + far ** 2;
  };
  const least = Math.log(FOCAL_LEAST * size[0]);
  const stride = Math.log(FOCAL_MOST / FOCAL_LEAST) / FOCAL_STEPS;
  const misfits = Array.from({ length: FOCAL_STEPS + 1 }, (_, step) => misfitAt(least + step * stride));
  // A valley far above the deepest is one of a wrong kind of picture, and its search is long.
  const worthTrying = 100 + 100 * Math.min(...misfits);
  const starts = misfits.flatMap((misfit, step): Stance[] => {
    const [below, above] = [
      misfits[step - 1] ?? Number.POSITIVE_INFINITY,
      misfits[step + 1] ?? Number.POSITIVE_INFINITY,
    ];
    if (!(misfit <= below && misfit < above)) return [];
    const at = least + step * stride;
    const { low, high, atLeft, atRight } = goldenSection(misfitAt, at - stride, at + stride, 1e-5);
    return Math.min(atLeft, atRight) < worthTrying ? [stanceAt((low + high) / 2)] : [];
  });

  let best: { fit: LeastSquares; frame: CameraFrame } | undefined;
  for (const start of starts) {
    const frame: CameraFrame = { turn: start.turn, size };
    const fit = refined(pairs, places, frame, start, distance);
    if (fit && fit.sum < (best?.fit.sum ?? Number.POSITIVE_INFINITY)) best = { fit, frame };
  }
  const failure = shape > most ? 'not-this-shape' : 'not-from-there';
  if (!best) return failed(failure);
  unknowns.fill(0);
  unknowns.set(best.fit.x);
  const worst = worstAt(best.frame);
  const focal = Math.exp(unknowns[0] as number);
  if (!(worst <= most) || focal < FOCAL_LEAST * size[0] || focal > FOCAL_MOST * size[0])
    return failed(failure);
  const turn = turnOf(unknowns, 0, best.frame);
  const at: HomographyColumn = [unknowns[4] as number, unknowns[5] as number, unknowns[6] as number];
  const row = (i: number): HomographyColumn => [
    turn[3 * i] as number,
    turn[3 * i + 1] as number,
    -inner([turn[3 * i] as number, turn[3 * i + 1] as number, turn[3 * i + 2] as number], at),
  ];
  const ahead = row(2);
  const shown = [0, 1].flatMap((i) =>
    row(i).map((entry, j) => focal * entry + (middle[i] as number) * (ahead[j] as number)),
  );
  return succeeded({
    foot: [at[0], at[1]],
    distance: Math.abs(at[2]),
    focal,
    toPhoto: [...shown, ...ahead],
    worst,
  });
}

function refined(
  pairs: readonly Pair<UnbentSpot, FlatPlace>[],
  places: Float64Array,
  frame: CameraFrame,
  start: Stance,
  distance: number,
): LeastSquares | undefined {
  const count = 2 * pairs.length + 1;
  const side = Math.sign(start.at[2]) || -1;
  const observed = new Float64Array(count);
  const doubt = new Float64Array(count).fill(CLICK_DOUBT);
  for (const [i, { from }] of pairs.entries()) observed.set(from, 2 * i);
  observed[count - 1] = distance;
  doubt[count - 1] = DISTANCE_DOUBT * distance;
  const whole = new Float64Array(CAMERA_UNKNOWNS);
  const seen = new Float64Array(SEEN_SIZE);
  const first = new Float64Array(FITTED);
  first[0] = Math.log(start.focal);
  first.set(start.at, 4);
  const fit = leastSquares(
    {
      count,
      size: FITTED,
      observed,
      doubt,
      prior: new Float64Array(FITTED),
      priorDoubt: new Float64Array(FITTED).fill(Number.POSITIVE_INFINITY),
      compute(x, computed, jacobian) {
        whole.set(x);
        for (let i = 0; i < pairs.length; i += 1) {
          if (!see(whole, 0, frame, places, 3 * i, seen)) return false;
          for (let axis = 0; axis < 2; axis += 1) {
            const row = 2 * i + axis;
            computed[row] = seen[axis] as number;
            if (!jacobian) continue;
            const from = 2 + axis * (CAMERA_UNKNOWNS + 3);
            for (let j = 0; j < FITTED; j += 1) jacobian[row * FITTED + j] = seen[from + j] as number;
          }
        }
        computed[count - 1] = side * (x[6] as number);
        if (jacobian) jacobian[(count - 1) * FITTED + 6] = side;
        return true;
      },
    },
    first,
    Float64Array.of(1e-8, 1e-8, 1e-8, 1e-8, 1e-7 * distance, 1e-7 * distance, 1e-7 * distance),
  );
  return fit.ok ? fit.value : undefined;
}

/** Undistorted px to the plane, as a fitted camera shows it, with 1 for w at a spot in front. */
export function planeSeenBy(
  { toPhoto }: FittedCamera,
  spot: UnbentSpot,
): Homography<UnbentSpot, FlatPlace> | undefined {
  const back = inverted(toPhoto);
  if (!back) return undefined;
  const w = (back[6] as number) * spot[0] + (back[7] as number) * spot[1] + (back[8] as number);
  const scaled: Homography<UnbentSpot, FlatPlace> = back.map((entry) => entry / w);
  return applied(scaled, spot) ? scaled : undefined;
}
