import type { Point } from '../geometry/points.ts';
import {
  carryPoint,
  type FrontEnd,
  type FrontEndState,
  HeldPoses,
  kingpinDirection,
  steerAxle,
} from '../linkage/index.ts';
import { evenly } from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';
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
  /** Poses of the grid that a link cannot reach, or in which the axle finds no place. */
  readonly outOfReach: number;
  /** The same by what fails: the drag link, the tie rod, or what locates the axle. */
  readonly missedBy: Readonly<Record<'drag-link' | 'tie-rod' | 'axle', number>>;
  readonly poses: number;
}

const p = new Float64Array(3);
const q = new Float64Array(3);
const s = new Float64Array(3);

/** Sine of a ball's tilt: |stud · link| at length 1, from centre, link's other end and a point along the stud. */
function sineOfTilt(centre: Float64Array, away: Float64Array, tip: Float64Array): number {
  const lx = (away[0] as number) - (centre[0] as number);
  const ly = (away[1] as number) - (centre[1] as number);
  const lz = (away[2] as number) - (centre[2] as number);
  const sx = (tip[0] as number) - (centre[0] as number);
  const sy = (tip[1] as number) - (centre[1] as number);
  const sz = (tip[2] as number) - (centre[2] as number);
  const size = Math.sqrt((lx * lx + ly * ly + lz * lz) * (sx * sx + sy * sy + sz * sz));
  return size > 0 ? Math.min(Math.abs(lx * sx + ly * sy + lz * sz) / size, 1) : 0;
}

/** Tilt of a ball in a solved pose, rad: the angle between its link and the plane square to its stud. */
export function tiltOf(frontEnd: FrontEnd, state: FrontEndState, joint: BallJoint): number {
  carryPoint(frontEnd, state, joint.centre.carrier, joint.centre.at, p);
  carryPoint(frontEnd, state, joint.away.carrier, joint.away.at, q);
  carryPoint(frontEnd, state, joint.studCarrier, studTip(joint), s);
  return Math.asin(sineOfTilt(p, q, s));
}

/**
 * Cosine of the angle between an arm and the link at its ball, both laid into the arm's plane of swing; folded to a
 * right angle or less, since a link pulls as it pushes. `through` is on the arm's axis, `axis` its unit direction.
 */
function cosineOfTransmission(ball: Float64Array, away: Float64Array, through: Point, axis: Point): number {
  let [ax, ay, az] = [
    (ball[0] as number) - through[0],
    (ball[1] as number) - through[1],
    (ball[2] as number) - through[2],
  ];
  let along = ax * axis[0] + ay * axis[1] + az * axis[2];
  ax -= along * axis[0];
  ay -= along * axis[1];
  az -= along * axis[2];
  let [lx, ly, lz] = [
    (away[0] as number) - (ball[0] as number),
    (away[1] as number) - (ball[1] as number),
    (away[2] as number) - (ball[2] as number),
  ];
  along = lx * axis[0] + ly * axis[1] + lz * axis[2];
  lx -= along * axis[0];
  ly -= along * axis[1];
  lz -= along * axis[2];
  const size = Math.sqrt((ax * ax + ay * ay + az * az) * (lx * lx + ly * ly + lz * lz));
  // A link that stands square to the arm's plane of swing cannot turn it at all.
  return size > 0 ? Math.min(Math.abs(ax * lx + ay * ly + az * lz) / size, 1) : 1;
}

/** The kingpin of the driven side in a pose: its lower end and upward direction. */
function drivenKingpin(frontEnd: FrontEnd, state: FrontEndState): { bottom: Point; upward: Point } {
  const side = frontEnd.driven;
  carryPoint(frontEnd, state, `axle-${side}`, frontEnd.layout.axle[side].kingpinBottom, p);
  return {
    bottom: [p[0] as number, p[1] as number, p[2] as number],
    upward: kingpinDirection(frontEnd, state, side),
  };
}

/** Transmission angles at the two ends of the drag link in a solved pose, rad, each in its arm's plane of swing. */
export function transmissionAngles(
  frontEnd: FrontEnd,
  state: FrontEndState,
): { pitman: number; steeringArm: number } {
  const { box, dragLinkBall } = frontEnd.layout.steering;
  const { bottom, upward } = drivenKingpin(frontEnd, state);
  carryPoint(frontEnd, state, 'pitman', box.pitmanBall, p);
  carryPoint(frontEnd, state, `spindle-${frontEnd.driven}`, dragLinkBall, q);
  return {
    pitman: Math.acos(cosineOfTransmission(p, q, box.sectorCentre, frontEnd.sectorAxis)),
    steeringArm: Math.acos(cosineOfTransmission(q, p, bottom, upward)),
  };
}

/** The largest of a figure so far and the pose where it was met. Sines and cosines are kept; angles come at the end. */
class Largest {
  value = -1;
  heave = 0;
  roll = 0;
  handwheel = 0;

  meet(value: number, heave: number, roll: number, handwheel: number): void {
    if (value <= this.value) return;
    this.value = value;
    this.heave = heave;
    this.roll = roll;
    this.handwheel = handwheel;
  }

  at(): GridPose {
    return { heave: this.heave, roll: this.roll, handwheel: this.handwheel };
  }
}

/**
 * The worst that travel and turn together ask of the joints: `heaves` poses of heave at no roll, and the ends and middle
 * of heave at full roll either way, each steered to `turns` handwheel angles between the locks given (rad).
 * The axle is posed once for each heave and roll; joints that the handwheel does not move are looked at once there.
 * Poses out of reach are counted and not judged. Axle poses that are `held` already are not solved again.
 */
export function gridExtremes(
  frontEnd: FrontEnd,
  locks: { readonly right: number; readonly left: number },
  heaves = 31,
  turns = 41,
  held = new HeldPoses(),
): GridExtremes {
  const { bump, rebound: droop, roll } = frontEnd.layout.travel;
  const { box } = frontEnd.layout.steering;
  const joints = ballJoints(frontEnd.layout);
  const tips = joints.map(studTip);
  // A link's two balls follow each other: at its second the first one's places are at hand, the other way round.
  const turnsBack = joints.map((joint, j) => {
    const before = joints[j - 1];
    return before !== undefined && joint.centre.at === before.away.at && joint.away.at === before.centre.at;
  });
  const tilts = joints.map(() => new Largest());
  const [pitman, arm, dragLink, tieRod] = [new Largest(), new Largest(), new Largest(), new Largest()];
  let outOfReach = 0;
  const missedBy = { 'drag-link': 0, 'tie-rod': 0, axle: 0 };
  let poses = 0;

  const handwheels = evenly(locks.right, locks.left, turns);
  const full = toRadians(roll);
  const stations: [number, number][] = [...evenly(-droop, bump, heaves)].map((heave) => [heave, 0]);
  if (full > 0) for (const heave of [-droop, 0, bump]) stations.push([heave, full], [heave, -full]);

  for (const [heave, rolled] of stations) {
    const state = held.at(frontEnd, heave, rolled);
    if (!state) {
      poses += handwheels.length;
      outOfReach += handwheels.length;
      missedBy.axle += handwheels.length;
      continue;
    }
    const kingpin = drivenKingpin(frontEnd, state);
    let first = true;
    for (let k = 0; k < handwheels.length; k += 1) {
      poses += 1;
      const handwheel = handwheels[k] as number;
      if (steerAxle(frontEnd, handwheel, state) !== 'ok') {
        outOfReach += 1;
        missedBy[state.failure === 'tie-rod' ? 'tie-rod' : 'drag-link'] += 1;
        continue;
      }
      for (let j = 0; j < joints.length; j += 1) {
        const joint = joints[j] as BallJoint;
        if (!joint.steered && !first) continue;
        const back = turnsBack[j] === true;
        if (!back) {
          carryPoint(frontEnd, state, joint.centre.carrier, joint.centre.at, p);
          carryPoint(frontEnd, state, joint.away.carrier, joint.away.at, q);
        }
        carryPoint(frontEnd, state, joint.studCarrier, tips[j] as Point, s);
        const sine = back ? sineOfTilt(q, p, s) : sineOfTilt(p, q, s);
        (tilts[j] as Largest).meet(sine, heave, rolled, handwheel);
        // The first joint is the pitman ball, whose centre and far end are the drag link's own.
        if (j === 0) {
          pitman.meet(
            cosineOfTransmission(p, q, box.sectorCentre, frontEnd.sectorAxis),
            heave,
            rolled,
            handwheel,
          );
          arm.meet(cosineOfTransmission(q, p, kingpin.bottom, kingpin.upward), heave, rolled, handwheel);
        }
      }
      first = false;
      dragLink.meet(state.dragLinkReach, heave, rolled, handwheel);
      tieRod.meet(state.tieRodReach, heave, rolled, handwheel);
    }
  }
  const angleOf = ({ value }: Largest) => Math.acos(Math.max(value, 0));
  return {
    tilts: joints.map((joint, j) => {
      const largest = tilts[j] as Largest;
      return { joint, tilt: Math.asin(Math.max(largest.value, 0)), at: largest.at() };
    }),
    pitmanTransmission: { angle: angleOf(pitman), at: pitman.at() },
    steeringArmTransmission: { angle: angleOf(arm), at: arm.at() },
    dragLinkReach: { reach: Math.max(dragLink.value, 0), at: dragLink.at() },
    tieRodReach: { reach: Math.max(tieRod.value, 0), at: tieRod.at() },
    outOfReach,
    missedBy,
    poses,
  };
}
