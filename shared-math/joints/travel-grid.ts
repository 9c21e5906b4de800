import type { Point } from '../layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  poseAxle,
  steerAxle,
} from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import { type BallJoint, ballJoints, studTip } from './ball-joints.ts';

/** A pose of the grid: heave in mm, roll and handwheel in rad. */
export interface GridPose {
  readonly heave: number;
  readonly roll: number;
  readonly handwheel: number;
}

/** The most that a ball is tilted (rad) and where. */
export interface WorstTilt {
  readonly joint: BallJoint;
  readonly tilt: number;
  readonly at: GridPose;
}

/** The least transmission angle at an end of the drag link (rad; a right angle is best, nothing is dead) and where. */
export interface WorstTransmission {
  readonly angle: number;
  readonly at: GridPose;
}

export interface GridExtremes {
  readonly tilts: readonly WorstTilt[];
  readonly pitmanTransmission: WorstTransmission;
  readonly steeringArmTransmission: WorstTransmission;
  /** The most that the drag link and tie rod are stretched toward the end of their reach: |C|/R, 1 is dead. */
  readonly dragLinkReach: { readonly reach: number; readonly at: GridPose };
  readonly tieRodReach: { readonly reach: number; readonly at: GridPose };
  /** Poses of the grid that a link cannot reach. */
  readonly outOfReach: number;
  readonly poses: number;
}

const p = new Float64Array(3);
const q = new Float64Array(3);
const s = new Float64Array(3);

/** Tilt of a ball in a solved pose, rad: asin |stud · link| with both at length 1. */
export function tiltOf(
  frontEnd: FrontEnd,
  state: FrontEndState,
  joint: BallJoint,
  tip = studTip(joint),
): number {
  carryPoint(frontEnd, state, joint.centre.carrier, joint.centre.at, p);
  carryPoint(frontEnd, state, joint.away.carrier, joint.away.at, q);
  carryPoint(frontEnd, state, joint.studCarrier, tip, s);
  const lx = (q[0] as number) - (p[0] as number);
  const ly = (q[1] as number) - (p[1] as number);
  const lz = (q[2] as number) - (p[2] as number);
  const sx = (s[0] as number) - (p[0] as number);
  const sy = (s[1] as number) - (p[1] as number);
  const sz = (s[2] as number) - (p[2] as number);
  const along = Math.abs(lx * sx + ly * sy + lz * sz);
  const size = Math.sqrt((lx * lx + ly * ly + lz * lz) * (sx * sx + sy * sy + sz * sz));
  return size > 0 ? Math.asin(Math.min(along / size, 1)) : 0;
}

/**
 * Angle between a link and an arm, seen along the arm's axis: both are laid into the arm's plane of swing. Folded to
 * 0 to a right angle, since a link pulls as it pushes. rad.
 */
function transmission(
  armX: number,
  armY: number,
  armZ: number,
  linkX: number,
  linkY: number,
  linkZ: number,
  axis: Point,
): number {
  const along = linkX * axis[0] + linkY * axis[1] + linkZ * axis[2];
  const [x, y, z] = [linkX - along * axis[0], linkY - along * axis[1], linkZ - along * axis[2]];
  const size = Math.sqrt((x * x + y * y + z * z) * (armX * armX + armY * armY + armZ * armZ));
  if (!(size > 0)) return 0;
  return Math.acos(Math.min(Math.abs(x * armX + y * armY + z * armZ) / size, 1));
}

/** Transmission angles at the two ends of the drag link in a solved pose, rad, each in its arm's plane of swing. */
export function transmissionAngles(
  frontEnd: FrontEnd,
  state: FrontEndState,
): { pitman: number; steeringArm: number } {
  const { box, dragLinkBall, dragLinkTo } = frontEnd.layout.steering;
  const { kingpinTop, kingpinBottom } = frontEnd.layout.axle[dragLinkTo];
  carryPoint(frontEnd, state, 'pitman', box.pitmanBall, p);
  carryPoint(frontEnd, state, `spindle-${dragLinkTo}`, dragLinkBall, q);
  const link: Point = [
    (q[0] as number) - (p[0] as number),
    (q[1] as number) - (p[1] as number),
    (q[2] as number) - (p[2] as number),
  ];
  const axisSize = Math.hypot(...box.sectorAxis);
  const sector: Point = [
    box.sectorAxis[0] / axisSize,
    box.sectorAxis[1] / axisSize,
    box.sectorAxis[2] / axisSize,
  ];
  const pitman = swungArm(p, box.sectorCentre, sector);
  const ball: Point = [q[0] as number, q[1] as number, q[2] as number];
  carryPoint(frontEnd, state, `axle-${dragLinkTo}`, kingpinBottom, p);
  carryPoint(frontEnd, state, `axle-${dragLinkTo}`, kingpinTop, q);
  const length = Math.hypot(
    (q[0] as number) - (p[0] as number),
    (q[1] as number) - (p[1] as number),
    (q[2] as number) - (p[2] as number),
  );
  const kingpin: Point = [
    ((q[0] as number) - (p[0] as number)) / length,
    ((q[1] as number) - (p[1] as number)) / length,
    ((q[2] as number) - (p[2] as number)) / length,
  ];
  const arm = swungArm(ball, [p[0] as number, p[1] as number, p[2] as number], kingpin);
  return {
    pitman: transmission(pitman[0], pitman[1], pitman[2], link[0], link[1], link[2], sector),
    steeringArm: transmission(arm[0], arm[1], arm[2], link[0], link[1], link[2], kingpin),
  };
}

/** From the axis to the ball, square to the axis. */
function swungArm(ball: ArrayLike<number>, through: Point, axis: Point): Point {
  const d: Point = [
    (ball[0] as number) - through[0],
    (ball[1] as number) - through[1],
    (ball[2] as number) - through[2],
  ];
  const along = d[0] * axis[0] + d[1] * axis[1] + d[2] * axis[2];
  return [d[0] - along * axis[0], d[1] - along * axis[1], d[2] - along * axis[2]];
}

/**
 * The worst that travel and turn together ask of the joints: `heaves` poses of heave at no roll, and the ends and middle
 * of heave at full roll either way, each steered to `turns` handwheel angles between the locks given (rad).
 * The axle is posed once for each heave and roll. Poses out of reach are counted and not judged.
 */
export function gridExtremes(
  frontEnd: FrontEnd,
  locks: { readonly right: number; readonly left: number },
  heaves = 31,
  turns = 41,
): GridExtremes {
  const { bump, rebound, roll } = frontEnd.layout.travel;
  const joints = ballJoints(frontEnd.layout);
  const tips = joints.map(studTip);
  const tilt = new Float64Array(joints.length).fill(-1);
  const start: GridPose = { heave: 0, roll: 0, handwheel: 0 };
  const tiltAt: GridPose[] = joints.map(() => start);
  const angle = { pitman: Math.PI / 2, arm: Math.PI / 2 };
  const angleAt = { pitman: start, arm: start };
  const reach = { dragLink: 0, tieRod: 0 };
  const reachAt = { dragLink: start, tieRod: start };
  let outOfReach = 0;
  let poses = 0;

  const state = createState();
  const handwheels = evenly(locks.right, locks.left, turns);
  const full = (roll * Math.PI) / 180;
  const stations: [number, number][] = [...evenly(-rebound, bump, heaves)].map((heave) => [heave, 0]);
  if (full > 0) for (const heave of [-rebound, 0, bump]) stations.push([heave, full], [heave, -full]);

  for (const [heave, rolled] of stations) {
    if (!poseAxle(frontEnd, heave, rolled, state)) {
      poses += handwheels.length;
      outOfReach += handwheels.length;
      continue;
    }
    for (let k = 0; k < handwheels.length; k += 1) {
      poses += 1;
      const handwheel = handwheels[k] as number;
      if (steerAxle(frontEnd, handwheel, state) !== 'ok') {
        outOfReach += 1;
        continue;
      }
      for (let j = 0; j < joints.length; j += 1) {
        const joint = joints[j] as BallJoint;
        if (!joint.steered && k > 0) continue;
        const value = tiltOf(frontEnd, state, joint, tips[j] as Point);
        if (value > (tilt[j] as number)) {
          tilt[j] = value;
          tiltAt[j] = { heave, roll: rolled, handwheel };
        }
      }
      const { pitman, steeringArm } = transmissionAngles(frontEnd, state);
      if (pitman < angle.pitman) {
        angle.pitman = pitman;
        angleAt.pitman = { heave, roll: rolled, handwheel };
      }
      if (steeringArm < angle.arm) {
        angle.arm = steeringArm;
        angleAt.arm = { heave, roll: rolled, handwheel };
      }
      if (state.dragLinkReach > reach.dragLink) {
        reach.dragLink = state.dragLinkReach;
        reachAt.dragLink = { heave, roll: rolled, handwheel };
      }
      if (state.tieRodReach > reach.tieRod) {
        reach.tieRod = state.tieRodReach;
        reachAt.tieRod = { heave, roll: rolled, handwheel };
      }
    }
  }
  return {
    tilts: joints.map((joint, j) => ({
      joint,
      tilt: Math.max(tilt[j] as number, 0),
      at: tiltAt[j] as GridPose,
    })),
    pitmanTransmission: { angle: angle.pitman, at: angleAt.pitman },
    steeringArmTransmission: { angle: angle.arm, at: angleAt.arm },
    dragLinkReach: { reach: reach.dragLink, at: reachAt.dragLink },
    tieRodReach: { reach: reach.tieRod, at: reachAt.tieRod },
    outOfReach,
    poses,
  };
}
