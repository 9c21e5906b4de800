import type { Point } from '../geometry/points.ts';
import { midpoint } from '../geometry/vectors.ts';
import type { Layout } from '../layout/index.ts';
import { eigenSymmetric, solveSymmetric } from '../solve/small-symmetric.ts';
import {
  NEIGHBOUR_HEAVE,
  NEIGHBOUR_ROLL,
  POSE_RANK_MIN,
  POSE_STEP_END,
  POSE_STEPS_MAX,
  WIND_UP_MOST,
} from '../tolerances.ts';
import { toRadians } from '../units/index.ts';
import { LATERAL_KINDS } from './lateral-kinds/index.ts';
import { LOCATION_KINDS } from './location-kinds/index.ts';
import { addToGradient, addToMatrix } from './normal-equations.ts';
import {
  addRocker,
  type PosedHalves,
  prepareRocker,
  ROCKER_STRIDE,
  type Rocker,
  turnRocker,
} from './rocker.ts';
import {
  ANGLE_ARM,
  type AxleKind,
  type AxleRow,
  type FlatRow,
  FORM_CENTRED,
  FORM_COINCIDE,
  FORM_DISTANCE,
  FORM_LEAF_PITCH,
  flattenRows,
  LEAF_PITCH_WEIGHT,
  STRIDE,
} from './rows.ts';
import { NO_WIND_UP, woundRows } from './wind-up.ts';

/** An axle with what holds it, made ready for any number of poses. Holds scratch space: one user at a time. */
export interface AxleModel {
  /** A0, the midpoint of the wheel centres at ride height. */
  readonly centre: Point;
  /** 4 unknowns where one pitch serves both halves, else 5. */
  readonly unknowns: 4 | 5;
  /** What holds it, those of its location first. */
  readonly rows: readonly AxleRow[];
  readonly table: Float64Array;
  /** Wound up further than anything holds an axle: it has no pose. */
  readonly overwound: boolean;
  /** Of a Watt's linkage; undefined if the axle has none. */
  readonly rocker: Rocker | undefined;
  readonly scratch: AxleScratch;
}

interface AxleScratch {
  /** JᵀJ of the rows that hold the axle; a hairpin's sideways offset only guides it and does not count. */
  readonly firm: Float64Array;
  /** JᵀJ of all rows, weighted. */
  readonly all: Float64Array;
  readonly gradient: Float64Array;
  readonly factors: Float64Array;
  readonly step: Float64Array;
  readonly best: Float64Array;
  readonly halves: PosedHalves;
}

/** Where an axle stands: x, y in mm from ride height; yaw, left pitch, right pitch in radians. */
export const POSE_X = 0;
export const POSE_Y = 1;
export const POSE_YAW = 2;
export const POSE_PITCH_LEFT = 3;
export const POSE_PITCH_RIGHT = 4;
/** Filled in beside the five: largest residual of weight 1 (mm), largest leaf wrap (rad). */
export const POSE_BIND = 5;
export const POSE_WRAP = 6;
/** The heave (mm) and roll (rad) that the numbers belong to. */
export const POSE_HEAVE = 7;
export const POSE_ROLL = 8;
/** How far the rocker of a Watt's linkage has turned on its bolt, rad, right-hand about +x; 0 if there is none. */
export const POSE_ROCKER = 9;
export const POSE_SIZE = 10;

/** How a pose came out. `axle-free`: the links leave it free; `no-convergence`: no pose in the steps allowed. */
export const POSE_OK = 0;
export const POSE_AXLE_FREE = 1;
export const POSE_NO_CONVERGENCE = 2;
export type PoseCode = typeof POSE_OK | typeof POSE_AXLE_FREE | typeof POSE_NO_CONVERGENCE;

/** mm. Only below this does a step tell how fast the iteration contracts; also, "no step yet" is infinity. */
const POSE_STEP_PRIOR = 1e3;
const RANK_SQUARED = POSE_RANK_MIN * POSE_RANK_MIN;
const ROLL_STEP = toRadians(NEIGHBOUR_ROLL);
const WIND_UP_RADIANS = toRadians(WIND_UP_MOST);

/** An axle made ready; `windUp`: wound up in what holds it in pitch, as braking does it. */
export function prepareAxle(layout: Layout, windUp = NO_WIND_UP): AxleModel {
  const centre = midpoint(layout.axle.left.wheelCentre, layout.axle.right.wheelCentre);
  const location = LOCATION_KINDS[layout.location.kind] as AxleKind<Layout['location']>;
  const lateral = LATERAL_KINDS[layout.lateral.kind] as AxleKind<Layout['lateral']>;
  const rows = [
    ...woundRows(location.rows(layout.location), windUp, centre),
    ...lateral.rows(layout.lateral),
  ];
  const joined = layout.axle.beam === 'tube' || location.joinsHalves === true;
  return {
    centre,
    unknowns: joined ? 4 : 5,
    rows,
    overwound: !(Math.max(Math.abs(windUp.left), Math.abs(windUp.right)) <= WIND_UP_RADIANS),
    table: flattenRows(
      rows.filter((row): row is FlatRow => row.form !== 'rocker'),
      centre,
    ),
    rocker: rockerOf(rows, centre),
    scratch: {
      firm: new Float64Array(15),
      all: new Float64Array(15),
      gradient: new Float64Array(5),
      factors: new Float64Array(15),
      step: new Float64Array(5),
      best: new Float64Array(6),
      halves: {
        x: 0.5,
        y: 0.5,
        heave: 0.5,
        cosRoll: 0.5,
        sinRoll: 0.5,
        cosYaw: 0.5,
        sinYaw: 0.5,
        cosLeft: 0.5,
        sinLeft: 0.5,
        cosRight: 0.5,
        sinRight: 0.5,
      },
    },
  };
}

function rockerOf(rows: readonly AxleRow[], centre: Point): Rocker | undefined {
  const row = rows.find((each) => each.form === 'rocker');
  return row && prepareRocker(row, centre);
}

/**
 * Residuals, their slopes and the normal equations at a pose; returns half the weighted sum of squares, mm².
 *
 * A point r of half s (from A0) is at v = Rz(yaw) Rx(roll) Ry(pitch) r + (x, y, heave). With
 * v1 = Ry r = (c r_x + s r_z, r_y, -s r_x + c r_z) and v2 = Rx v1, the slopes are
 * dv/dyaw = ẑ × v and dv/dpitch = Rz Rx (v1_z, 0, -v1_x). Angles are scaled by ANGLE_ARM to mm.
 */
function evaluate(
  model: AxleModel,
  heave: number,
  cosRoll: number,
  sinRoll: number,
  pose: Float64Array,
): number {
  const { table, unknowns } = model;
  const { firm, all, gradient } = model.scratch;
  for (let i = 0; i < 15; i += 1) {
    firm[i] = 0;
    all[i] = 0;
  }
  for (let i = 0; i < 5; i += 1) gradient[i] = 0;

  const x = pose[POSE_X] as number;
  const y = pose[POSE_Y] as number;
  const yaw = pose[POSE_YAW] as number;
  const pitchLeft = pose[POSE_PITCH_LEFT] as number;
  const pitchRight = pose[POSE_PITCH_RIGHT] as number;
  const cosYaw = Math.cos(yaw);
  const sinYaw = Math.sin(yaw);
  const cosLeft = Math.cos(pitchLeft);
  const sinLeft = Math.sin(pitchLeft);
  const joined = unknowns === 4;
  const cosRight = joined ? cosLeft : Math.cos(pitchRight);
  const sinRight = joined ? sinLeft : Math.sin(pitchRight);

  let cost = 0;
  let bind = 0;
  let wrap = 0;
  for (let at = 0; at < table.length; at += STRIDE) {
    const form = table[at] as number;
    if (form === FORM_CENTRED) {
      const residual = y - (table[at + 8] as number) * sinRoll;
      addToMatrix(firm, 1, 0, 1, 0, 0, 3);
      addToGradient(gradient, residual, 0, 1, 0, 0, 3);
      cost += residual * residual;
      bind = Math.max(bind, Math.abs(residual));
      continue;
    }
    const isRight = table[at + 1] === 1;
    const c = isRight ? cosRight : cosLeft;
    const s = isRight ? sinRight : sinLeft;
    const column = isRight && !joined ? 4 : 3;
    const rx = table[at + 2] as number;
    const ry = table[at + 3] as number;
    const rz = table[at + 4] as number;
    const v1x = c * rx + s * rz;
    const v1z = c * rz - s * rx;
    const v2y = cosRoll * ry - sinRoll * v1z;
    const vz = sinRoll * ry + cosRoll * v1z;
    // Slope of v by pitch, before yaw: Rx (v1_z, 0, -v1_x).
    const p2y = sinRoll * v1x;
    const pz = -cosRoll * v1x;

    if (form === FORM_LEAF_PITCH) {
      const perRise = table[at + 8] as number;
      const asked = perRise * (heave + vz - rz) + (table[at + 9] as number);
      const residual = (isRight ? pitchRight : pitchLeft) - asked;
      const slope = 1 - perRise * pz;
      const scaled = residual * ANGLE_ARM;
      addToMatrix(firm, LEAF_PITCH_WEIGHT, 0, 0, 0, slope, column);
      addToGradient(gradient, LEAF_PITCH_WEIGHT * scaled, 0, 0, 0, slope, column);
      cost += LEAF_PITCH_WEIGHT * scaled * scaled;
      wrap = Math.max(wrap, Math.abs(residual));
      continue;
    }

    const vx = cosYaw * v1x - sinYaw * v2y;
    const vy = sinYaw * v1x + cosYaw * v2y;
    const px = (cosYaw * v1z - sinYaw * p2y) / ANGLE_ARM;
    const py = (sinYaw * v1z + cosYaw * p2y) / ANGLE_ARM;
    const pzScaled = pz / ANGLE_ARM;
    const wx = -vy / ANGLE_ARM;
    const wy = vx / ANGLE_ARM;
    const dx = x + vx - (table[at + 5] as number);
    const dy = y + vy - (table[at + 6] as number);
    const dz = heave + vz - (table[at + 7] as number);

    if (form === FORM_DISTANCE) {
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
      const residual = length - (table[at + 8] as number);
      const inverse = length > 0 ? 1 / length : 0;
      const jx = dx * inverse;
      const jy = dy * inverse;
      const jw = jx * wx + jy * wy;
      const jp = jx * px + jy * py + dz * inverse * pzScaled;
      addToMatrix(firm, 1, jx, jy, jw, jp, column);
      addToGradient(gradient, residual, jx, jy, jw, jp, column);
      cost += residual * residual;
      bind = Math.max(bind, Math.abs(residual));
    } else if (form === FORM_COINCIDE) {
      const weightX = table[at + 8] as number;
      const weightY = table[at + 9] as number;
      const weightZ = table[at + 10] as number;
      addToMatrix(weightX === 1 ? firm : all, weightX, 1, 0, wx, px, column);
      addToGradient(gradient, weightX * dx, 1, 0, wx, px, column);
      addToMatrix(weightY === 1 ? firm : all, weightY, 0, 1, wy, py, column);
      addToGradient(gradient, weightY * dy, 0, 1, wy, py, column);
      addToMatrix(weightZ === 1 ? firm : all, weightZ, 0, 0, 0, pzScaled, column);
      addToGradient(gradient, weightZ * dz, 0, 0, 0, pzScaled, column);
      cost += weightX * dx * dx + weightY * dy * dy + weightZ * dz * dz;
      if (weightX === 1) bind = Math.max(bind, Math.abs(dx));
      if (weightY === 1) bind = Math.max(bind, Math.abs(dy));
      if (weightZ === 1) bind = Math.max(bind, Math.abs(dz));
    }
  }
  const { rocker } = model;
  if (rocker) {
    const { halves } = model.scratch;
    halves.x = x;
    halves.y = y;
    halves.heave = heave;
    halves.cosRoll = cosRoll;
    halves.sinRoll = sinRoll;
    halves.cosYaw = cosYaw;
    halves.sinYaw = sinYaw;
    halves.cosLeft = cosLeft;
    halves.sinLeft = sinLeft;
    halves.cosRight = cosRight;
    halves.sinRight = sinRight;
    pose[POSE_ROCKER] = turnRocker(rocker, halves, pose[POSE_ROCKER] as number);
    bind = Math.max(bind, addRocker(rocker, unknowns, firm, gradient));
    const { work } = rocker;
    cost += (work[0] as number) ** 2 + (work[ROCKER_STRIDE] as number) ** 2;
  }
  for (let i = 0; i < 15; i += 1) all[i] = (all[i] as number) + (firm[i] as number);
  pose[POSE_BIND] = bind;
  pose[POSE_WRAP] = wrap;
  return cost;
}

/**
 * Whether the firm rows hold the axle in every direction: smallest singular value of their Jacobian against the
 * largest. A cheap bound settles the usual case: with D = det(JᵀJ) and T its trace, λ_min is at least
 * D ((n - 1)/T)^(n - 1), since the other eigenvalues' product is largest when they are equal. In doubt, the
 * eigenvalues decide. The leaf's pitch counts as firm: it is all that holds a leaf-sprung axle's pitch.
 */
function isHeld(model: AxleModel): boolean {
  const { firm, gradient, factors, step } = model.scratch;
  const n = model.unknowns;
  let trace = 0;
  for (let i = 0; i < n; i += 1) trace += firm[(i * (i + 1)) / 2 + i] as number;
  const determinant = solveSymmetric(n, firm, gradient, 0, factors, step);
  const share = (n - 1) / trace;
  let bound = determinant * share * share * share;
  if (n === 5) bound *= share;
  if (bound > RANK_SQUARED * trace) return true;
  const { values } = eigenSymmetric(n, firm);
  const least = Math.max(values[0] as number, 0);
  return Math.sqrt(least) >= POSE_RANK_MIN * Math.sqrt(values[n - 1] as number);
}

/**
 * Least squares from the numbers that stand in `pose`, by Gauss-Newton steps, damped (Levenberg) only where a step
 * would raise the sum of squares. Ends when the error left is below POSE_STEP_END: after a step of size d that
 * followed one of size D, it is no more than about d · d/D, as the method contracts at least linearly.
 */
function descend(model: AxleModel, heave: number, roll: number, pose: Float64Array): PoseCode {
  const { all, gradient, factors, step, best } = model.scratch;
  const n = model.unknowns;
  const cosRoll = Math.cos(roll);
  const sinRoll = Math.sin(roll);
  let cost = evaluate(model, heave, cosRoll, sinRoll, pose);
  let damping = 0;
  let before = Number.POSITIVE_INFINITY;
  for (let count = 0; count < POSE_STEPS_MAX; count += 1) {
    if (solveSymmetric(n, all, gradient, damping, factors, step) <= 0) {
      damping = Math.max(damping * 10, 1e-6);
      if (damping > 1e6) return isHeld(model) ? POSE_NO_CONVERGENCE : POSE_AXLE_FREE;
      continue;
    }
    let size = 0;
    for (let i = 0; i < n; i += 1) size = Math.max(size, Math.abs(step[i] as number));
    if (!(size < 1e7)) return isHeld(model) ? POSE_NO_CONVERGENCE : POSE_AXLE_FREE;
    for (let i = 0; i < 5; i += 1) best[i] = pose[i] as number;
    best[5] = pose[POSE_ROCKER] as number;
    pose[POSE_X] = (pose[POSE_X] as number) + (step[0] as number);
    pose[POSE_Y] = (pose[POSE_Y] as number) + (step[1] as number);
    pose[POSE_YAW] = (pose[POSE_YAW] as number) + (step[2] as number) / ANGLE_ARM;
    pose[POSE_PITCH_LEFT] = (pose[POSE_PITCH_LEFT] as number) + (step[3] as number) / ANGLE_ARM;
    pose[POSE_PITCH_RIGHT] =
      n === 4
        ? (pose[POSE_PITCH_LEFT] as number)
        : (pose[POSE_PITCH_RIGHT] as number) + (step[4] as number) / ANGLE_ARM;
    const next = evaluate(model, heave, cosRoll, sinRoll, pose);
    // Near the end rounding alone can raise the sum; a step that small is taken as it is.
    if (next > cost && size > 1e-5) {
      for (let i = 0; i < 5; i += 1) pose[i] = best[i] as number;
      pose[POSE_ROCKER] = best[5] as number;
      damping = Math.max(damping * 10, 1e-3);
      cost = evaluate(model, heave, cosRoll, sinRoll, pose);
      before = Number.POSITIVE_INFINITY;
      continue;
    }
    cost = next;
    if (
      damping === 0 &&
      (size < POSE_STEP_END || (before < POSE_STEP_PRIOR && size * (size / before) < POSE_STEP_END / 2))
    )
      return isHeld(model) ? POSE_OK : POSE_AXLE_FREE;
    before = damping === 0 ? size : Number.POSITIVE_INFINITY;
    damping = damping > 1e-4 ? damping / 10 : 0;
  }
  return isHeld(model) ? POSE_NO_CONVERGENCE : POSE_AXLE_FREE;
}

/** Puts a pose at ride height, from which every layout is solved. */
export function resetPose(pose: Float64Array): void {
  pose.fill(0);
}

/**
 * The pose that the links and springs ask of the axle at a heave and roll.
 * The sum of squares of design section 5 is least where its slopes vanish; the iteration follows `descend`, from the
 * pose that stands in `pose` (its neighbour, or ride height after `resetPose`), in steps no longer than
 * NEIGHBOUR_HEAVE and NEIGHBOUR_ROLL so that it stays on the branch that contains ride height.
 * Frame:    vehicle, ISO 8855; yaw about z, then roll about x, then pitch about y, all about A0.
 * Units:    mm, radians.
 * Shapes:   `pose` POSE_SIZE numbers, read as the start and overwritten; allocates nothing unless the rank is in doubt.
 * Outcomes: POSE_OK; POSE_AXLE_FREE; POSE_NO_CONVERGENCE. After a failure `pose` is no start for another pose.
 * Source:   own derivation, as in `evaluate`.
 * Checked:  tests/unit/pose.test.ts (a registry optimiser on the raw residuals; symmetry; closed forms of a planar link).
 */
export function solveAxle(model: AxleModel, heave: number, roll: number, pose: Float64Array): PoseCode {
  if (model.overwound) return POSE_NO_CONVERGENCE;
  const fromHeave = pose[POSE_HEAVE] as number;
  const fromRoll = pose[POSE_ROLL] as number;
  const steps = Math.max(
    1,
    Math.ceil(Math.abs(heave - fromHeave) / NEIGHBOUR_HEAVE - 1e-9),
    Math.ceil(Math.abs(roll - fromRoll) / ROLL_STEP - 1e-9),
  );
  let code: PoseCode = POSE_OK;
  for (let i = 1; i <= steps; i += 1) {
    const share = i / steps;
    const h = i === steps ? heave : fromHeave + share * (heave - fromHeave);
    const p = i === steps ? roll : fromRoll + share * (roll - fromRoll);
    code = descend(model, h, p, pose);
    if (code === POSE_NO_CONVERGENCE) return code;
    pose[POSE_HEAVE] = h;
    pose[POSE_ROLL] = p;
  }
  return code;
}
