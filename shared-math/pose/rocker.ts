import { distance, type Point } from '../geometry/points.ts';
import { subtract } from '../geometry/vectors.ts';
import type { Side } from '../layout/index.ts';
import { addRow } from './normal-equations.ts';
import { ANGLE_ARM, type AxleRow } from './rows.ts';

// The rocker of a Watt's linkage turns as its two bars make it turn. It is one more unknown, but of these two residuals
// alone, so it is settled where they are: the pose's own unknowns stay the axle's.

/** One bar of the rocker, from the axle's centre as drawn; mm. */
export interface RockerBar {
  /** The half that carries the bar's axle end: the rocker's bolt, or the bar's far end. */
  readonly isRight: boolean;
  /** From the bolt to the bar's end on the rocker. */
  readonly arm: Point;
  readonly end: Point;
  readonly length: number;
}

/** A rocker made ready, with room for its working numbers. */
export interface Rocker {
  readonly onAxle: boolean;
  /** From the axle's centre as drawn, mm. */
  readonly pivot: Point;
  readonly bars: readonly [RockerBar, RockerBar];
  /** For each bar: residual, slopes in x, y, yaw and pitch, slope in the rocker's own turn. */
  readonly work: Float64Array;
}

type RockerRow = Extract<AxleRow, { form: 'rocker' }>;

/** Numbers of one bar in `work`. */
export const ROCKER_STRIDE = 6;
/** rad. Below this a step of the rocker moves no ball by a picometre. */
const TURN_END = 1e-14;
const TURNS_MAX = 40;
/** rad that the rocker turns in one step at most, so that it stays on its branch. */
const TURN_STEP_MAX = 0.3;

/** A rocker ready for any number of poses, its points taken from the axle's centre; mm. */
export function prepareRocker(row: RockerRow, axleCentre: Point): Rocker {
  const isRight = (half: Side) => half === 'right';
  const bar = ({ rocker, end, half }: RockerRow['upper']): RockerBar => ({
    isRight: isRight(row.on === 'axle' ? row.half : half),
    arm: subtract(rocker, row.pivot),
    end: subtract(end, axleCentre),
    length: distance(rocker, end),
  });
  return {
    onAxle: row.on === 'axle',
    pivot: subtract(row.pivot, axleCentre),
    bars: [bar(row.upper), bar(row.lower)],
    work: new Float64Array(2 * ROCKER_STRIDE),
  };
}

/** The pose of the axle's halves, as the solver has it while it works: sines and cosines, and the centre's movement in mm. */
export interface PosedHalves {
  x: number;
  y: number;
  heave: number;
  cosRoll: number;
  sinRoll: number;
  cosYaw: number;
  sinYaw: number;
  cosLeft: number;
  sinLeft: number;
  cosRight: number;
  sinRight: number;
}

/** Residual and slopes of one bar with the rocker turned by (c, s), into `work` from `to` on. */
function measureBar(rocker: Rocker, bar: RockerBar, halves: PosedHalves, c: number, s: number, to: number) {
  const { work, pivot, onAxle } = rocker;
  const { arm, end } = bar;
  // The arm turned about the fore-and-aft bolt, right-hand about +x, and its slope by the turn.
  const armY = c * arm[1] - s * arm[2];
  const armZ = s * arm[1] + c * arm[2];
  const px = pivot[0] + arm[0];
  const py = pivot[1] + armY;
  const pz = pivot[2] + armZ;
  // What the axle carries of the bar, in its half, and what the frame does.
  const rx = onAxle ? px : end[0];
  const ry = onAxle ? py : end[1];
  const rz = onAxle ? pz : end[2];
  const cp = bar.isRight ? halves.cosRight : halves.cosLeft;
  const sp = bar.isRight ? halves.sinRight : halves.sinLeft;
  const { cosRoll, sinRoll, cosYaw, sinYaw } = halves;
  const v1x = cp * rx + sp * rz;
  const v1z = cp * rz - sp * rx;
  const v2y = cosRoll * ry - sinRoll * v1z;
  const vz = sinRoll * ry + cosRoll * v1z;
  const vx = cosYaw * v1x - sinYaw * v2y;
  const vy = sinYaw * v1x + cosYaw * v2y;
  const dx = halves.x + vx - (onAxle ? end[0] : px);
  const dy = halves.y + vy - (onAxle ? end[1] : py);
  const dz = halves.heave + vz - (onAxle ? end[2] : pz);
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const inverse = length > 0 ? 1 / length : 0;
  const nx = dx * inverse;
  const ny = dy * inverse;
  const nz = dz * inverse;
  work[to] = length - bar.length;
  work[to + 1] = nx;
  work[to + 2] = ny;
  work[to + 3] = (ny * vx - nx * vy) / ANGLE_ARM;
  const p2y = sinRoll * v1x;
  work[to + 4] =
    (nx * (cosYaw * v1z - sinYaw * p2y) + ny * (sinYaw * v1z + cosYaw * p2y) - nz * cosRoll * v1x) /
    ANGLE_ARM;
  // The ball goes by x̂ × arm = (0, -armZ, armY) for each radian of the rocker; on the axle, carried by its half.
  if (onAxle) {
    const w1x = sp * armY;
    const w1z = cp * armY;
    const w2y = -cosRoll * armZ - sinRoll * w1z;
    const wz = -sinRoll * armZ + cosRoll * w1z;
    work[to + 5] = nx * (cosYaw * w1x - sinYaw * w2y) + ny * (sinYaw * w1x + cosYaw * w2y) + nz * wz;
  } else work[to + 5] = ny * armZ - nz * armY;
}

/**
 * Turns the rocker until its two bars miss their lengths by the least sum of squares, and leaves residuals and slopes in
 * `work`; returns the turn. Where both bars close that is what a bolt free to turn does. Gauss-Newton in one unknown.
 * Frame:   vehicle. Units: mm, radians; angles of the slopes by ANGLE_ARM.
 * Source:  own derivation; one unknown projected out of a least squares (Golub and Pereyra's variable projection, from memory).
 * Checked: tests/unit/pose.test.ts (a registry optimiser with the rocker's turn as an unknown of its own);
 *          tests/reference/watt-curve.test.ts.
 */
export function turnRocker(rocker: Rocker, halves: PosedHalves, from: number): number {
  const { work, bars } = rocker;
  let turn = from;
  for (let count = 0; count < TURNS_MAX; count += 1) {
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    measureBar(rocker, bars[0], halves, c, s, 0);
    measureBar(rocker, bars[1], halves, c, s, ROCKER_STRIDE);
    const a = work[5] as number;
    const b = work[ROCKER_STRIDE + 5] as number;
    const square = a * a + b * b;
    if (square < 1e-9) break;
    const step = -(a * (work[0] as number) + b * (work[ROCKER_STRIDE] as number)) / square;
    if (Math.abs(step) < TURN_END) break;
    turn += Math.max(-TURN_STEP_MAX, Math.min(TURN_STEP_MAX, step));
  }
  return turn;
}

/**
 * The bars of a rocker in the normal equations, once the rocker stands as they want it: of their two rows the share that
 * no turn of the rocker can settle, which is square to their slopes in that turn. Returns the larger residual, mm; all of it
 * counts where both bars lie in line with the rocker, as then its turn settles nothing and nothing is held.
 */
export function addRocker(
  rocker: Rocker,
  unknowns: 4 | 5,
  firm: Float64Array,
  gradient: Float64Array,
): number {
  const { work, bars } = rocker;
  const a = work[5] as number;
  const b = work[ROCKER_STRIDE + 5] as number;
  const size = Math.sqrt(a * a + b * b);
  const upper = size > 1e-4 ? -b / size : 0;
  const lower = size > 1e-4 ? a / size : 0;
  const both = (i: number) => upper * (work[i] as number) + lower * (work[ROCKER_STRIDE + i] as number);
  const upperPitch = upper * (work[4] as number);
  const lowerPitch = lower * (work[ROCKER_STRIDE + 4] as number);
  const upperRight = unknowns === 5 && bars[0].isRight;
  const lowerRight = unknowns === 5 && bars[1].isRight;
  addRow(
    firm,
    gradient,
    both(0),
    both(1),
    both(2),
    both(3),
    (upperRight ? 0 : upperPitch) + (lowerRight ? 0 : lowerPitch),
    (upperRight ? upperPitch : 0) + (lowerRight ? lowerPitch : 0),
  );
  return Math.max(Math.abs(work[0] as number), Math.abs(work[ROCKER_STRIDE] as number));
}
