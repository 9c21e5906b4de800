import type { Point } from '../geometry/points.ts';
import { subtract, unit } from '../geometry/vectors.ts';
import type { Carrier, Side } from '../layout/index.ts';
import type { BallCircle } from './ball-circle.ts';
import type { FrontEnd } from './front-end.ts';
import { carryPoint, type FrontEndState, LEFT_AXES, RIGHT_AXES } from './solve-front-end.ts';

/** How fast the wheels steer with the handwheel, in one pose: rad per rad. */
export interface SteerRates {
  readonly left: number;
  readonly right: number;
  readonly mean: number;
}

const scratch = new Float64Array(3);

/** Where a point that its carrier holds as drawn is in the pose, mm. */
export function carriedTo(frontEnd: FrontEnd, state: FrontEndState, carrier: Carrier, at: Point): Point {
  carryPoint(frontEnd, state, carrier, at, scratch);
  return [scratch[0] as number, scratch[1] as number, scratch[2] as number];
}

/** The kingpin's upward direction of a side in the pose. */
export function kingpinDirection(frontEnd: FrontEnd, state: FrontEndState, side: Side): Point {
  const { kingpinTop, kingpinBottom } = frontEnd.layout.axle[side];
  return unit(
    subtract(
      carriedTo(frontEnd, state, `axle-${side}`, kingpinTop),
      carriedTo(frontEnd, state, `axle-${side}`, kingpinBottom),
    ),
  );
}

/** Of the four balls, how each stands from the lower end of its kingpin, or from the sector's centre; mm, car's axes. */
const arm = new Float64Array(12);
const PITMAN = 0;
const DRAG = 3;
const TIE_DRIVEN = 6;
const TIE_FOLLOWER = 9;
/** The lower ends of both kingpins, driven first, and their upward directions. */
const foot = new Float64Array(6);
const upward = new Float64Array(6);

/** Writes R (base + across cos + onward sin - less) for a half's turned axes, which begin at `axes` in the frame. */
function carryArm(
  frame: Float64Array,
  axes: number,
  { base, across, onward }: BallCircle,
  cos: number,
  sin: number,
  less: Point,
  out: Float64Array,
  at: number,
): void {
  const x = base[0] + across[0] * cos + onward[0] * sin - less[0];
  const y = base[1] + across[1] * cos + onward[1] * sin - less[1];
  const z = base[2] + across[2] * cos + onward[2] * sin - less[2];
  carryWay(frame, axes, x, y, z, out, at);
}

/** Writes R v. */
function carryWay(
  frame: Float64Array,
  axes: number,
  x: number,
  y: number,
  z: number,
  out: Float64Array,
  at: number,
): void {
  for (let row = 0; row < 3; row += 1)
    out[at + row] =
      (frame[axes + 3 * row] as number) * x +
      (frame[axes + 3 * row + 1] as number) * y +
      (frame[axes + 3 * row + 2] as number) * z;
}

/** l · (u × r): how fast the end of an arm r, turned about u, goes along a link l. `u` and `r` by their places. */
function along(
  lx: number,
  ly: number,
  lz: number,
  u: Float64Array,
  atU: number,
  r: Float64Array,
  atR: number,
): number {
  const ux = u[atU] as number;
  const uy = u[atU + 1] as number;
  const uz = u[atU + 2] as number;
  const rx = r[atR] as number;
  const ry = r[atR + 1] as number;
  const rz = r[atR + 2] as number;
  return lx * (uy * rz - uz * ry) + ly * (uz * rx - ux * rz) + lz * (ux * ry - uy * rx);
}

/** d steer / d turn of a spindle: steer = atan2(-a_x, a_y) of the spin axis a, whose rate is u × a. */
function steerPerTurn(steer: number, camberTilt: number, u: Float64Array, at: number): number {
  // The spin axis from its two angles: it points left, forward parts by steer, up by its tilt.
  const level = Math.cos(camberTilt);
  const ax = -Math.sin(steer) * level;
  const ay = Math.cos(steer) * level;
  const az = Math.sin(camberTilt);
  const rateX = (u[at + 1] as number) * az - (u[at + 2] as number) * ay;
  const rateY = (u[at + 2] as number) * ax - (u[at] as number) * az;
  return (ax * rateY - ay * rateX) / (ax * ax + ay * ay);
}

const sector = new Float64Array(3);
/** Left and right of the last pose asked for. */
const rates = new Float64Array(2);
/** Of the same pose: rad about each kingpin for each rad of handwheel. */
const turnsPerHandwheel = new Float64Array(2);

/** Writes the rates of both wheels to `rates`, as `steerRates` derives them; allocates nothing. */
function writeRates(frontEnd: FrontEnd, state: FrontEndState): void {
  const { driven: side, pitmanBall, dragLinkBall, sectorAxis } = frontEnd;
  const { frame, turns, sector: swing } = state.work;
  const drivesLeft = side === 'left';
  const driven = drivesLeft ? frontEnd.left : frontEnd.right;
  const follower = drivesLeft ? frontEnd.right : frontEnd.left;
  const near = drivesLeft ? LEFT_AXES : RIGHT_AXES;
  const far = drivesLeft ? RIGHT_AXES : LEFT_AXES;
  const cos = turns[drivesLeft ? 0 : 3] as number;
  const sin = turns[drivesLeft ? 1 : 4] as number;
  const farCos = turns[drivesLeft ? 3 : 0] as number;
  const farSin = turns[drivesLeft ? 4 : 1] as number;

  const { sectorCentre } = frontEnd.layout.steering.box;
  for (let axis = 0; axis < 3; axis += 1) {
    sector[axis] = sectorAxis[axis as 0 | 1 | 2];
    arm[PITMAN + axis] =
      pitmanBall.base[axis as 0 | 1 | 2] +
      pitmanBall.across[axis as 0 | 1 | 2] * (swing[0] as number) +
      pitmanBall.onward[axis as 0 | 1 | 2] * (swing[1] as number) -
      sectorCentre[axis as 0 | 1 | 2];
  }
  carryArm(frame, near, dragLinkBall, cos, sin, driven.bottom, arm, DRAG);
  carryArm(frame, near, driven.tieRodBall, cos, sin, driven.bottom, arm, TIE_DRIVEN);
  carryArm(frame, far, follower.tieRodBall, farCos, farSin, follower.bottom, arm, TIE_FOLLOWER);
  carryWay(frame, near, driven.bottom[0], driven.bottom[1], driven.bottom[2], foot, 0);
  carryWay(frame, far, follower.bottom[0], follower.bottom[1], follower.bottom[2], foot, 3);
  carryWay(frame, near, driven.upward[0], driven.upward[1], driven.upward[2], upward, 0);
  carryWay(frame, far, follower.upward[0], follower.upward[1], follower.upward[2], upward, 3);

  const link = (axis: 0 | 1 | 2) =>
    (frame[axis] as number) +
    (foot[axis] as number) +
    (arm[DRAG + axis] as number) -
    (arm[PITMAN + axis] as number) -
    sectorCentre[axis];
  const lx = link(0);
  const ly = link(1);
  const lz = link(2);
  const drivenTurn = along(lx, ly, lz, sector, 0, arm, PITMAN) / along(lx, ly, lz, upward, 0, arm, DRAG);

  const rod = (axis: 0 | 1 | 2) =>
    (foot[3 + axis] as number) +
    (arm[TIE_FOLLOWER + axis] as number) -
    (foot[axis] as number) -
    (arm[TIE_DRIVEN + axis] as number);
  const rx = rod(0);
  const ry = rod(1);
  const rz = rod(2);
  const followerTurn =
    (drivenTurn * along(rx, ry, rz, upward, 0, arm, TIE_DRIVEN)) /
    along(rx, ry, rz, upward, 3, arm, TIE_FOLLOWER);

  const { left, right } = state;
  const leftTurn = drivesLeft ? drivenTurn : followerTurn;
  const rightTurn = drivesLeft ? followerTurn : drivenTurn;
  const { ratio } = frontEnd;
  turnsPerHandwheel[0] = leftTurn / ratio;
  turnsPerHandwheel[1] = rightTurn / ratio;
  rates[0] = (leftTurn * steerPerTurn(left.steer, -left.camber, upward, drivesLeft ? 0 : 3)) / ratio;
  rates[1] = (rightTurn * steerPerTurn(right.steer, right.camber, upward, drivesLeft ? 3 : 0)) / ratio;
}

/**
 * Rates of steer with the handwheel in a solved pose.
 * A link keeps its length while its ends move across it alike: with l the link from p to q, l·q̇ = l·ṗ. The pitman ball
 * has ṗ = n × (p - c) for each rad of sector, a spindle's ball q̇ = u × (q - k) for each rad of turn; so the driven
 * turn is (l·ṗ)/(l·q̇) for each rad of sector, the tie rod hands it on in the same way, and the wheel's heading follows.
 * Frame:    vehicle. Units: rad of steer for each rad of handwheel.
 * Outcomes: rates; infinite at a dead centre, where the link no longer turns its arm.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/turn.test.ts (against differences of the sweep; integrates back to the wheel angles).
 */
export function steerRates(frontEnd: FrontEnd, state: FrontEndState): SteerRates {
  writeRates(frontEnd, state);
  const left = rates[0] as number;
  const right = rates[1] as number;
  return { left, right, mean: (left + right) / 2 };
}

/** The mean of both wheels' rates, as `steerRates` has it, for loops: allocates nothing. */
export function meanSteerRate(frontEnd: FrontEnd, state: FrontEndState): number {
  writeRates(frontEnd, state);
  return ((rates[0] as number) + (rates[1] as number)) / 2;
}

/** How fast both spindles turn about their kingpins with the handwheel, rad per rad, as `steerRates` derives it. */
export function spindleRates(frontEnd: FrontEnd, state: FrontEndState): { left: number; right: number } {
  writeRates(frontEnd, state);
  return { left: turnsPerHandwheel[0] as number, right: turnsPerHandwheel[1] as number };
}
