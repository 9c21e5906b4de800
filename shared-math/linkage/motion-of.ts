import type { Point } from '../geometry/points.ts';
import type { Carrier } from '../layout/index.ts';
import { POSE_ROCKER } from '../pose/index.ts';
import type { FrontEnd } from './front-end.ts';
import { rockerBolt } from './rocker-bolt.ts';
import { type FrontEndState, LEFT_AXES, RIGHT_AXES } from './solve-front-end.ts';

/** Numbers of a motion: a matrix by rows (9), then what is added (3), mm. */
export const MOTION_SIZE = 12;

const turn = new Float64Array(9);

/** Writes the rotation about the unit vector u by the angle of cos, sin: cos I + sin [u]× + (1 - cos) u uᵀ (Rodrigues). */
function writeTurn(u: Point, cos: number, sin: number): void {
  const [x, y, z] = u;
  const rest = 1 - cos;
  turn[0] = cos + rest * x * x;
  turn[1] = rest * x * y - sin * z;
  turn[2] = rest * x * z + sin * y;
  turn[3] = rest * x * y + sin * z;
  turn[4] = cos + rest * y * y;
  turn[5] = rest * y * z - sin * x;
  turn[6] = rest * x * z - sin * y;
  turn[7] = rest * y * z + sin * x;
  turn[8] = cos + rest * z * z;
}

/** Writes the motion that keeps `from` of the drawing at (x, y, z) of the pose, its matrix being there already. */
function writeOffset(out: Float64Array, at: number, from: Point, x: number, y: number, z: number): void {
  for (let row = 0; row < 3; row += 1)
    out[at + 9 + row] =
      (row === 0 ? x : row === 1 ? y : z) -
      (out[at + 3 * row] as number) * from[0] -
      (out[at + 3 * row + 1] as number) * from[1] -
      (out[at + 3 * row + 2] as number) * from[2];
}

/**
 * How a carrier has moved in a solved pose from where it is drawn: a point p drawn on it stands at M p + t. The same as
 * `carryPoint`, for many points of one pose.
 * Frame:    vehicle. Units: mm.
 * Shapes:   writes MOTION_SIZE numbers, M by rows and t, from `at` on; allocates nothing.
 * Source:   own derivation; rotation by Rodrigues' formula.
 * Checked:  tests/unit/held.test.ts (against `carryPoint`).
 */
export function writeMotion(
  frontEnd: FrontEnd,
  state: FrontEndState,
  carrier: Carrier,
  out: Float64Array,
  at: number,
): void {
  const { frame, turns, sector } = state.work;
  if (carrier === 'frame') {
    for (let i = 0; i < MOTION_SIZE; i += 1) out[at + i] = i === 0 || i === 4 || i === 8 ? 1 : 0;
    return;
  }
  if (carrier === 'pitman') {
    const { sectorCentre } = frontEnd.layout.steering.box;
    writeTurn(frontEnd.sectorAxis, sector[0] as number, sector[1] as number);
    for (let i = 0; i < 9; i += 1) out[at + i] = turn[i] as number;
    writeOffset(out, at, sectorCentre, sectorCentre[0], sectorCentre[1], sectorCentre[2]);
    return;
  }
  if (carrier === 'rocker') {
    writeRocker(frontEnd, state, out, at);
    return;
  }
  const isLeft = carrier === 'axle-left' || carrier === 'spindle-left';
  const r = isLeft ? LEFT_AXES : RIGHT_AXES;
  const { centre } = frontEnd.axle;
  if (carrier === 'axle-left' || carrier === 'axle-right') {
    for (let i = 0; i < 9; i += 1) out[at + i] = frame[r + i] as number;
    writeOffset(out, at, centre, frame[0] as number, frame[1] as number, frame[2] as number);
    return;
  }
  const { bottom, upward } = isLeft ? frontEnd.left : frontEnd.right;
  writeTurn(upward, turns[isLeft ? 0 : 3] as number, turns[isLeft ? 1 : 4] as number);
  // The kingpin's lower end is drawn at centre + bottom, and goes with the axle.
  const foot = FOOT;
  for (let row = 0; row < 3; row += 1) {
    const a = frame[r + 3 * row] as number;
    const b = frame[r + 3 * row + 1] as number;
    const c = frame[r + 3 * row + 2] as number;
    for (let column = 0; column < 3; column += 1)
      out[at + 3 * row + column] =
        a * (turn[column] as number) + b * (turn[3 + column] as number) + c * (turn[6 + column] as number);
    foot[row] = (frame[row] as number) + a * bottom[0] + b * bottom[1] + c * bottom[2];
  }
  for (let row = 0; row < 3; row += 1)
    out[at + 9 + row] =
      (foot[row] as number) -
      (out[at + 3 * row] as number) * (centre[0] + bottom[0]) -
      (out[at + 3 * row + 1] as number) * (centre[1] + bottom[1]) -
      (out[at + 3 * row + 2] as number) * (centre[2] + bottom[2]);
}

const FOOT = new Float64Array(3);

/** A rocker turned about x on its bolt, which goes with what it is on. */
function writeRocker(frontEnd: FrontEnd, state: FrontEndState, out: Float64Array, at: number): void {
  const { bearer, pivot } = rockerBolt(frontEnd.layout);
  writeMotion(frontEnd, state, bearer, out, at);
  const [, y, z] = pivot;
  const angle = state.work.pose[POSE_ROCKER] as number;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  // M Rx and M (pivot - Rx pivot) + t.
  for (let row = 0; row < 3; row += 1) {
    const m = at + 3 * row;
    const b = out[m + 1] as number;
    const d = out[m + 2] as number;
    out[m + 1] = b * c + d * s;
    out[m + 2] = d * c - b * s;
    out[at + 9 + row] = (out[at + 9 + row] as number) + b * (y - c * y + s * z) + d * (z - s * y - c * z);
  }
}
