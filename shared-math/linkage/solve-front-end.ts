import type { CarriedPoints, Carrier } from '../layout/index.ts';
import {
  POSE_AXLE_FREE,
  POSE_BIND,
  POSE_HEAVE,
  POSE_OK,
  POSE_PITCH_LEFT,
  POSE_PITCH_RIGHT,
  POSE_ROCKER,
  POSE_ROLL,
  POSE_SIZE,
  POSE_WRAP,
  POSE_X,
  POSE_Y,
  POSE_YAW,
  resetPose,
  solveAxle,
} from '../pose/index.ts';
import type { Radians } from '../units/index.ts';
import { closeLink } from './ball-circle.ts';
import type { FrontEnd, Spindle } from './front-end.ts';
import { rockerBolt, turnedOnBolt } from './rocker-bolt.ts';

export type PoseStatus = 'ok' | 'out-of-reach' | 'no-pose';

/** What failed: nothing; a link too short or too long for the pose; links that leave the axle free; no pose found. */
export type PoseFailure = '' | 'drag-link' | 'tie-rod' | 'axle-free' | 'no-convergence';

/** One wheel in a pose: radians with the signs of design section 3, mm. Defined in design section 6. */
export interface WheelState {
  steer: number;
  toeIn: number;
  camber: number;
  caster: number;
  kingpinInclination: number;
  wheelRise: number;
}

/** The axle's place against ride height: mm and radians. `pitch` is the mean of the halves, `twist` left less right. */
export interface AxleState {
  x: number;
  y: number;
  pitch: number;
  yaw: number;
  twist: number;
}

/** A pose and all that follows from it. Numbers other than the inputs mean something only at status `ok`. */
export interface FrontEndState {
  status: PoseStatus;
  failure: PoseFailure;
  /** mm. */
  heave: number;
  /** rad. */
  roll: number;
  /** rad. */
  handwheel: number;
  readonly left: WheelState;
  readonly right: WheelState;
  meanSteer: number;
  totalToeIn: number;
  readonly axle: AxleState;
  /** mm: the most that a link, bushing or bracket would have to give. */
  bind: number;
  /** rad: the most that a leaf's pitch is off what the leaf asks. */
  wrap: number;
  /** |C|/R of the link's closure: 1 is the end of its reach. */
  dragLinkReach: number;
  tieRodReach: number;
  /** Scratch: the axle's numbers, its centre and turned axes, the links' closures. */
  readonly work: StateWork;
}

interface StateWork {
  readonly pose: Float64Array;
  /** Centre (3), rotation of the left half by rows (9), of the right half (9). */
  readonly frame: Float64Array;
  /** cos, sin, reach of the left spindle, then of the right. */
  readonly turns: Float64Array;
  /** cos, sin of the sector. */
  readonly sector: Float64Array;
  posedFor: FrontEnd | null;
}

const CENTRE = 0;
/** Where each half's turned axes begin in a state's frame. */
export const LEFT_AXES = 3;
export const RIGHT_AXES = 12;

function createWheelState(): WheelState {
  return { steer: 0.5, toeIn: 0.5, camber: 0.5, caster: 0.5, kingpinInclination: 0.5, wheelRise: 0.5 };
}

/** An empty state to solve into. The halves in the initial numbers make the engine keep them as doubles. */
export function createState(): FrontEndState {
  return {
    status: 'no-pose',
    failure: 'no-convergence',
    heave: 0.5,
    roll: 0.5,
    handwheel: 0.5,
    left: createWheelState(),
    right: createWheelState(),
    meanSteer: 0.5,
    totalToeIn: 0.5,
    axle: { x: 0.5, y: 0.5, pitch: 0.5, yaw: 0.5, twist: 0.5 },
    bind: 0.5,
    wrap: 0.5,
    dragLinkReach: 0.5,
    tieRodReach: 0.5,
    work: {
      pose: new Float64Array(POSE_SIZE),
      frame: new Float64Array(21),
      turns: new Float64Array(6),
      sector: new Float64Array(2),
      posedFor: null,
    },
  };
}

/** R = Rz(yaw) Rx(roll) Ry(pitch), by rows. */
function writeRotation(
  out: Float64Array,
  at: number,
  cy: number,
  sy: number,
  cr: number,
  sr: number,
  cp: number,
  sp: number,
): void {
  out[at] = cy * cp - sy * sr * sp;
  out[at + 1] = -sy * cr;
  out[at + 2] = cy * sp + sy * sr * cp;
  out[at + 3] = sy * cp + cy * sr * sp;
  out[at + 4] = cy * cr;
  out[at + 5] = sy * sp - cy * sr * cp;
  out[at + 6] = -cr * sp;
  out[at + 7] = sr;
  out[at + 8] = cr * cp;
}

/**
 * Poses the axle at a heave (mm) and roll (rad) in the state: its centre, turned halves, bind and wrap. The
 * steering needs the axle's pose and gives nothing back, so this is done once and any number of handwheel angles
 * or boxes tried on it. Returns false, with status and failure set, where there is no pose.
 */
export function poseAxle(frontEnd: FrontEnd, heave: number, roll: Radians, state: FrontEndState): boolean {
  const { pose, frame } = state.work;
  if (state.work.posedFor !== frontEnd) {
    resetPose(pose);
    state.work.posedFor = frontEnd;
  }
  state.heave = heave;
  state.roll = roll;
  const code = solveAxle(frontEnd.axle, heave, roll, pose);
  if (code !== POSE_OK) {
    state.status = 'no-pose';
    state.failure = code === POSE_AXLE_FREE ? 'axle-free' : 'no-convergence';
    state.work.posedFor = null;
    return false;
  }
  const yaw = pose[POSE_YAW] as number;
  const left = pose[POSE_PITCH_LEFT] as number;
  const right = pose[POSE_PITCH_RIGHT] as number;
  const cy = Math.cos(yaw);
  const sy = Math.sin(yaw);
  const cr = Math.cos(roll);
  const sr = Math.sin(roll);
  const { centre } = frontEnd.axle;
  frame[CENTRE] = centre[0] + (pose[POSE_X] as number);
  frame[CENTRE + 1] = centre[1] + (pose[POSE_Y] as number);
  frame[CENTRE + 2] = centre[2] + heave;
  writeRotation(frame, LEFT_AXES, cy, sy, cr, sr, Math.cos(left), Math.sin(left));
  if (right === left) frame.copyWithin(RIGHT_AXES, LEFT_AXES, LEFT_AXES + 9);
  else writeRotation(frame, RIGHT_AXES, cy, sy, cr, sr, Math.cos(right), Math.sin(right));

  state.axle.x = pose[POSE_X] as number;
  state.axle.y = pose[POSE_Y] as number;
  state.axle.yaw = yaw;
  state.axle.pitch = (left + right) / 2;
  state.axle.twist = left - right;
  state.bind = pose[POSE_BIND] as number;
  state.wrap = pose[POSE_WRAP] as number;
  writeKingpin(state.left, frontEnd.left, frame, LEFT_AXES, -1);
  writeKingpin(state.right, frontEnd.right, frame, RIGHT_AXES, 1);
  return true;
}

/** Caster and kingpin inclination of one side: the kingpin goes with the axle, whatever the spindle does. */
function writeKingpin(
  wheel: WheelState,
  spindle: Spindle,
  frame: Float64Array,
  axes: number,
  inward: 1 | -1,
): void {
  const u = spindle.upward;
  const ux =
    (frame[axes] as number) * u[0] + (frame[axes + 1] as number) * u[1] + (frame[axes + 2] as number) * u[2];
  const uy =
    (frame[axes + 3] as number) * u[0] +
    (frame[axes + 4] as number) * u[1] +
    (frame[axes + 5] as number) * u[2];
  const uz =
    (frame[axes + 6] as number) * u[0] +
    (frame[axes + 7] as number) * u[1] +
    (frame[axes + 8] as number) * u[2];
  wheel.caster = Math.atan2(-ux, uz);
  wheel.kingpinInclination = Math.atan2(inward * uy, uz);
}

/** Wheel angles and rise of one side, from its spindle's turn (design section 6). */
function writeWheel(
  wheel: WheelState,
  spindle: Spindle,
  frame: Float64Array,
  axes: number,
  cos: number,
  sin: number,
  heave: number,
  inward: 1 | -1,
): void {
  const { spinAxis: s, wheelCentre: w } = spindle;
  const ax = s.base[0] + s.across[0] * cos + s.onward[0] * sin;
  const ay = s.base[1] + s.across[1] * cos + s.onward[1] * sin;
  const az = s.base[2] + s.across[2] * cos + s.onward[2] * sin;
  const x =
    (frame[axes] as number) * ax + (frame[axes + 1] as number) * ay + (frame[axes + 2] as number) * az;
  const y =
    (frame[axes + 3] as number) * ax + (frame[axes + 4] as number) * ay + (frame[axes + 5] as number) * az;
  const z =
    (frame[axes + 6] as number) * ax + (frame[axes + 7] as number) * ay + (frame[axes + 8] as number) * az;
  wheel.steer = Math.atan2(-x, y);
  wheel.toeIn = inward * wheel.steer;
  // Rounding can leave a unit vector's entry a hair beyond 1, where asin would give NaN.
  wheel.camber = Math.asin(Math.max(-1, Math.min(1, inward * z)));

  const wx = w.base[0] + w.across[0] * cos + w.onward[0] * sin;
  const wy = w.base[1] + w.across[1] * cos + w.onward[1] * sin;
  const wz = w.base[2] + w.across[2] * cos + w.onward[2] * sin;
  wheel.wheelRise =
    heave +
    ((frame[axes + 6] as number) * wx + (frame[axes + 7] as number) * wy + (frame[axes + 8] as number) * wz) -
    spindle.wheelHeight;
}

/**
 * Steers the posed axle: turns the pitman ball by the sector, closes the drag link on its spindle and the tie rod on
 * the other, and writes both wheels. Needs `poseAxle` (or a full solve) of the same front end just before.
 */
export function steerAxle(frontEnd: FrontEnd, handwheel: Radians, state: FrontEndState): PoseStatus {
  const { frame, turns, sector } = state.work;
  state.handwheel = handwheel;
  const sectorAngle = handwheel / frontEnd.ratio;
  const cs = Math.cos(sectorAngle);
  const ss = Math.sin(sectorAngle);
  sector[0] = cs;
  sector[1] = ss;
  const { base, across, onward } = frontEnd.pitmanBall;
  return steerByBall(
    frontEnd,
    base[0] + across[0] * cs + onward[0] * ss,
    base[1] + across[1] * cs + onward[1] * ss,
    base[2] + across[2] * cs + onward[2] * ss,
    frontEnd.dragLinkLength,
    frontEnd.dragLinkBranch,
    state,
    turns,
    frame,
  );
}

/**
 * Steers the posed axle from a frame-end ball at (px, py, pz) in the car's frame with a drag link of a given length.
 * What `steerAxle` and the search for a better ball share.
 */
export function steerByBall(
  frontEnd: FrontEnd,
  px: number,
  py: number,
  pz: number,
  dragLinkLength: number,
  dragLinkBranch: 1 | -1,
  state: FrontEndState,
  turns: Float64Array = state.work.turns,
  frame: Float64Array = state.work.frame,
): PoseStatus {
  const drivesLeft = frontEnd.driven === 'left';
  const drivenAxes = drivesLeft ? LEFT_AXES : RIGHT_AXES;
  const followerAxes = drivesLeft ? RIGHT_AXES : LEFT_AXES;
  const drivenTurn = drivesLeft ? 0 : 3;
  const followerTurn = drivesLeft ? 3 : 0;
  const driven = drivesLeft ? frontEnd.left : frontEnd.right;
  const follower = drivesLeft ? frontEnd.right : frontEnd.left;

  // The frame-end ball in the driven half's axes: Rᵀ (p - A), less the circle's base.
  const gx = px - (frame[CENTRE] as number);
  const gy = py - (frame[CENTRE + 1] as number);
  const gz = pz - (frame[CENTRE + 2] as number);
  const d = drivenAxes;
  const ball = frontEnd.dragLinkBall;
  const reachedByDragLink = closeLink(
    ball,
    (frame[d] as number) * gx + (frame[d + 3] as number) * gy + (frame[d + 6] as number) * gz - ball.base[0],
    (frame[d + 1] as number) * gx +
      (frame[d + 4] as number) * gy +
      (frame[d + 7] as number) * gz -
      ball.base[1],
    (frame[d + 2] as number) * gx +
      (frame[d + 5] as number) * gy +
      (frame[d + 8] as number) * gz -
      ball.base[2],
    dragLinkLength,
    dragLinkBranch,
    turns,
    drivenTurn,
  );
  state.dragLinkReach = turns[drivenTurn + 2] as number;
  if (!reachedByDragLink) {
    state.status = 'out-of-reach';
    state.failure = 'drag-link';
    return state.status;
  }

  // The driven spindle's tie rod ball, to the car's axes and on into the follower half's.
  const cos = turns[drivenTurn] as number;
  const sin = turns[drivenTurn + 1] as number;
  const tie = driven.tieRodBall;
  const tx = tie.base[0] + tie.across[0] * cos + tie.onward[0] * sin;
  const ty = tie.base[1] + tie.across[1] * cos + tie.onward[1] * sin;
  const tz = tie.base[2] + tie.across[2] * cos + tie.onward[2] * sin;
  const hx = (frame[d] as number) * tx + (frame[d + 1] as number) * ty + (frame[d + 2] as number) * tz;
  const hy = (frame[d + 3] as number) * tx + (frame[d + 4] as number) * ty + (frame[d + 5] as number) * tz;
  const hz = (frame[d + 6] as number) * tx + (frame[d + 7] as number) * ty + (frame[d + 8] as number) * tz;
  const f = followerAxes;
  const other = follower.tieRodBall;
  const reachedByTieRod = closeLink(
    other,
    (frame[f] as number) * hx + (frame[f + 3] as number) * hy + (frame[f + 6] as number) * hz - other.base[0],
    (frame[f + 1] as number) * hx +
      (frame[f + 4] as number) * hy +
      (frame[f + 7] as number) * hz -
      other.base[1],
    (frame[f + 2] as number) * hx +
      (frame[f + 5] as number) * hy +
      (frame[f + 8] as number) * hz -
      other.base[2],
    frontEnd.tieRodLength,
    frontEnd.tieRodBranch,
    turns,
    followerTurn,
  );
  state.tieRodReach = turns[followerTurn + 2] as number;
  if (!reachedByTieRod) {
    state.status = 'out-of-reach';
    state.failure = 'tie-rod';
    return state.status;
  }

  const { left, right, heave } = state;
  writeWheel(left, frontEnd.left, frame, LEFT_AXES, turns[0] as number, turns[1] as number, heave, -1);
  writeWheel(right, frontEnd.right, frame, RIGHT_AXES, turns[3] as number, turns[4] as number, heave, 1);
  state.meanSteer = (left.steer + right.steer) / 2;
  state.totalToeIn = left.toeIn + right.toeIn;
  state.status = 'ok';
  state.failure = '';
  return state.status;
}

/**
 * Everything of one pose: the axle at a heave and roll, the steering at a handwheel angle, both wheels.
 * The pose by `solveAxle`, started from the pose that the state last held for this front end; the steering in
 * closed form by `closeLink`.
 * Frame:    vehicle, ISO 8855 (x forward, y left, z up).
 * Units:    heave in mm, roll and handwheel in radians; the state in mm and radians.
 * Shapes:   writes into `state`; allocates nothing.
 * Outcomes: ok; out-of-reach (a link cannot span the pose); no-pose (the links leave the axle free, or no pose was
 *           found). Only at ok do the state's numbers mean anything. Never NaN.
 * Source:   own derivation, in the two functions named; outputs as design section 6, after ISO 8855.
 * Checked:  tests/unit/linkage.test.ts, tests/reference/axle-arcs.test.ts, tests/reference/toe-and-kingpin.test.ts.
 */
export function solveFrontEnd(
  frontEnd: FrontEnd,
  heave: number,
  roll: Radians,
  handwheel: Radians,
  state: FrontEndState,
): PoseStatus {
  if (!poseAxle(frontEnd, heave, roll, state)) {
    state.handwheel = handwheel;
    return state.status;
  }
  return steerAxle(frontEnd, handwheel, state);
}

/** The heave and roll at which a state's axle stands, for those who walk from pose to pose. */
export function axleStandsAt(state: FrontEndState): { heave: number; roll: number } {
  return { heave: state.work.pose[POSE_HEAVE] as number, roll: state.work.pose[POSE_ROLL] as number };
}

const onSpindle = new Float64Array(3);

/**
 * Where a point drawn at ride height is in a solved pose, in the car's frame, mm. `out` takes three numbers from
 * `offset` on. The state must be `ok` (for points of the frame or axle a posed axle is enough).
 */
export function carryPoint<By extends Carrier>(
  frontEnd: FrontEnd,
  state: FrontEndState,
  carrier: By,
  at: NoInfer<CarriedPoints[By]>,
  out: Float64Array,
  offset = 0,
): void {
  const { frame, turns, sector } = state.work;
  if (carrier === 'frame') {
    out[offset] = at[0];
    out[offset + 1] = at[1];
    out[offset + 2] = at[2];
    return;
  }
  if (carrier === 'pitman') {
    const { sectorAxis } = frontEnd;
    const { sectorCentre } = frontEnd.layout.steering.box;
    rotateAbout(
      at[0] - sectorCentre[0],
      at[1] - sectorCentre[1],
      at[2] - sectorCentre[2],
      sectorAxis[0],
      sectorAxis[1],
      sectorAxis[2],
      sector[0] as number,
      sector[1] as number,
      onSpindle,
    );
    out[offset] = sectorCentre[0] + (onSpindle[0] as number);
    out[offset + 1] = sectorCentre[1] + (onSpindle[1] as number);
    out[offset + 2] = sectorCentre[2] + (onSpindle[2] as number);
    return;
  }
  if (carrier === 'rocker') {
    const { bearer, pivot } = rockerBolt(frontEnd.layout);
    const turn = state.work.pose[POSE_ROCKER] as number;
    carryPoint(frontEnd, state, bearer, turnedOnBolt(pivot, at, turn), out, offset);
    return;
  }
  const isLeft = carrier === 'axle-left' || carrier === 'spindle-left';
  const { centre } = frontEnd.axle;
  let x = at[0] - centre[0];
  let y = at[1] - centre[1];
  let z = at[2] - centre[2];
  if (carrier === 'spindle-left' || carrier === 'spindle-right') {
    const { bottom, upward } = isLeft ? frontEnd.left : frontEnd.right;
    const turn = isLeft ? 0 : 3;
    rotateAbout(
      x - bottom[0],
      y - bottom[1],
      z - bottom[2],
      upward[0],
      upward[1],
      upward[2],
      turns[turn] as number,
      turns[turn + 1] as number,
      onSpindle,
    );
    x = bottom[0] + (onSpindle[0] as number);
    y = bottom[1] + (onSpindle[1] as number);
    z = bottom[2] + (onSpindle[2] as number);
  }
  const r = isLeft ? LEFT_AXES : RIGHT_AXES;
  for (let row = 0; row < 3; row += 1)
    out[offset + row] =
      (frame[CENTRE + row] as number) +
      (frame[r + 3 * row] as number) * x +
      (frame[r + 3 * row + 1] as number) * y +
      (frame[r + 3 * row + 2] as number) * z;
}

/** Rodrigues' rotation of (x, y, z) about the unit vector u by the angle of cos, sin. */
function rotateAbout(
  x: number,
  y: number,
  z: number,
  ux: number,
  uy: number,
  uz: number,
  cos: number,
  sin: number,
  out: Float64Array,
): void {
  const along = (x * ux + y * uy + z * uz) * (1 - cos);
  out[0] = x * cos + (uy * z - uz * y) * sin + ux * along;
  out[1] = y * cos + (uz * x - ux * z) * sin + uy * along;
  out[2] = z * cos + (ux * y - uy * x) * sin + uz * along;
}
