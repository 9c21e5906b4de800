import { clamp } from '../../shared-math/clamp.ts';
import type { Layout } from '../../shared-math/layout/index.ts';
import {
  createState,
  type FrontEnd,
  type FrontEndState,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { toRadians } from '../../shared-math/units/index.ts';
import { BRAKING_LIMITS, brakedOf } from './braked-car.ts';

/**
 * Where the car stands: heave in mm (up is bump), roll and handwheel in degrees, and the grip that its brakes use, as a share
 * of the load; absent, they are off. All zero is ride height.
 */
export interface Pose {
  readonly heave: number;
  readonly roll: number;
  readonly handwheel: number;
  readonly braking?: number;
}

export const RIDE_HEIGHT: Required<Pose> = { heave: 0, roll: 0, handwheel: 0, braking: 0 };

/** What each control may be set to, from the layout's own travel. */
export interface PoseLimits {
  readonly heave: readonly [least: number, most: number];
  readonly roll: readonly [least: number, most: number];
  readonly handwheel: readonly [least: number, most: number];
  readonly braking: readonly [least: number, most: number];
}

export function poseLimits(layout: Layout): PoseLimits {
  const { bump, rebound: droop, roll } = layout.travel;
  const turn = layout.steering.box.ratio * layout.steering.box.sectorTravel;
  return { heave: [-droop, bump], roll: [-roll, roll], handwheel: [-turn, turn], braking: BRAKING_LIMITS };
}

/** Within a range, its ends given; never below 0 by a sign alone. */
const within = (value: number, [least, most]: readonly [number, number]) => clamp(value, least, most) || 0;

export function withinLimits(pose: Pose, limits: PoseLimits): Required<Pose> {
  return {
    heave: within(pose.heave, limits.heave),
    roll: within(pose.roll, limits.roll),
    handwheel: within(pose.handwheel, limits.handwheel),
    braking: within(pose.braking ?? 0, limits.braking),
  };
}

function solveInto(frontEnd: FrontEnd, pose: Pose, state: FrontEndState) {
  const standing = brakedOf(frontEnd, pose.braking ?? 0);
  return solveFrontEnd(standing, pose.heave, toRadians(pose.roll), toRadians(pose.handwheel), state);
}

/** Solves one pose into a fresh state, so that whoever watches it sees that it changed. */
export function solvePose(frontEnd: FrontEnd, pose: Pose): FrontEndState {
  const state = createState();
  solveInto(frontEnd, pose, state);
  return state;
}

/** Where a move ended: at its goal, or where the linkage stopped it and what did. */
export interface Reached {
  readonly pose: Pose;
  readonly stoppedBy: FrontEndState['failure'];
}

const between = (from: Pose, to: Pose, share: number): Pose => ({
  heave: from.heave + (to.heave - from.heave) * share,
  roll: from.roll + (to.roll - from.roll) * share,
  handwheel: from.handwheel + (to.handwheel - from.handwheel) * share,
  braking: (from.braking ?? 0) + ((to.braking ?? 0) - (from.braking ?? 0)) * share,
});

/** Steps of the way that are tried before the end of the reach is closed in on by halving. */
const STEPS = 24;
/** Halvings inside one such step: the stop is found to a millionth of the way. */
const HALVINGS = 16;

/**
 * The goal if the linkage reaches it; otherwise the last pose on the straight way there that it does reach.
 * `from` must be a pose that solves; it is given back where nothing beyond it does.
 */
export function reachToward(frontEnd: FrontEnd, from: Pose, to: Pose): Reached {
  const state = createState();
  const reaches = (pose: Pose) => solveInto(frontEnd, pose, state) === 'ok';
  if (reaches(to)) return { pose: to, stoppedBy: '' };

  let stoppedBy = state.failure;
  let good = 0;
  let bad = 1;
  for (let step = 1; step < STEPS; step += 1) {
    if (!reaches(between(from, to, step / STEPS))) {
      bad = step / STEPS;
      stoppedBy = state.failure;
      break;
    }
    good = step / STEPS;
  }
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (good + bad) / 2;
    if (reaches(between(from, to, middle))) good = middle;
    else {
      bad = middle;
      stoppedBy = state.failure;
    }
  }
  return { pose: between(from, to, good), stoppedBy };
}

/** The part of the travel that the linkage reaches from ride height at this roll and handwheel, mm. */
export function heaveReach(
  frontEnd: FrontEnd,
  limits: PoseLimits,
  pose: Pose,
): [least: number, most: number] {
  const end = (heave: number) => reachToward(frontEnd, pose, { ...pose, heave }).pose.heave;
  return [end(limits.heave[0]), end(limits.heave[1])];
}
