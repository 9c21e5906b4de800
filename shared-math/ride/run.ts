import { type LayoutDocument, type Refusal, resolveLayout } from '../layout/index.ts';
import { createState, poseAxle, prepareFrontEnd, steerAxle } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { rideSteer } from '../sweep/index.ts';
import type { Radians } from '../units/index.ts';
import { NO_HANDWHEEL, straightHandwheel } from './kick.ts';
import { type RideSetUp, rideParameters } from './parameters.ts';
import { prepareRide, stepRide } from './ride.ts';
import { prepareRoad, type RoadProfile, roadProblem } from './roads/index.ts';

/** How a moment of a run came out. Beyond `RUN_OK` the steering's columns hold zeros; at RUN_DIVERGED all do. */
export const RUN_OK = 0;
export const RUN_OUT_OF_REACH = 1;
export const RUN_NO_POSE = 2;
export const RUN_DIVERGED = 3;

/** What else happens at a moment, as bits. */
export const FLAG_BUMP_STOP = 1;
export const FLAG_DROOP_STOP = 2;
export const FLAG_LEFT_OFF_GROUND = 4;
export const FLAG_RIGHT_OFF_GROUND = 8;
/** No handwheel angle would hold the wheels straight here: the kick holds 0. */
export const FLAG_NO_KICK = 16;

/** A run over a road, as columns over time; mm, rad, N, s. */
export interface RideRun {
  readonly count: number;
  readonly setUp: RideSetUp;
  /** mm/s. */
  readonly speed: number;
  readonly time: Float64Array;
  readonly distance: Float64Array;
  readonly roadLeft: Float64Array;
  readonly roadRight: Float64Array;
  /** Of the axle toward the frame, and against it. */
  readonly heave: Float64Array;
  readonly roll: Float64Array;
  readonly frameRise: Float64Array;
  readonly frameRoll: Float64Array;
  readonly loadLeft: Float64Array;
  readonly loadRight: Float64Array;
  readonly leftSteer: Float64Array;
  readonly rightSteer: Float64Array;
  readonly meanSteer: Float64Array;
  /** The wheels' dart with the handwheel held: mean steer less its value at ride height. */
  readonly bumpSteer: Float64Array;
  readonly totalToeIn: Float64Array;
  /** How the handwheel would move if the road held the wheels straight. A movement, no force. */
  readonly kick: Float64Array;
  readonly status: Uint8Array;
  readonly flags: Uint8Array;
}

export interface RunOptions {
  /** mm/s. */
  readonly speed: number;
  readonly seconds: number;
  /** rad, held. */
  readonly handwheel?: Radians;
  /** Steps of the engine from one row to the next. */
  readonly every?: number;
}

/** A row each 1/500 s: a hop at 12 Hz is drawn with 40 points. */
export const RUN_EVERY = 4;
export const RUN_SECONDS_MAX = 120;
/** mm/s: 300 km/h. */
export const RUN_SPEED_MAX = 300_000 / 3.6;

function optionProblem({ speed, seconds, every = RUN_EVERY }: RunOptions): Refusal | undefined {
  if (!(speed > 0 && speed <= RUN_SPEED_MAX))
    return {
      path: 'speed',
      reason: `must be more than 0 and at most 300 km/h, found ${speed * 3.6e-3} km/h`,
    };
  if (!(seconds > 0 && seconds <= RUN_SECONDS_MAX))
    return {
      path: 'seconds',
      reason: `must be more than 0 and at most ${RUN_SECONDS_MAX}, found ${seconds}`,
    };
  if (!(Number.isInteger(every) && every >= 1))
    return { path: 'every', reason: 'expected a whole number, 1 or more' };
  return undefined;
}

/** Seconds of road between two breaths of `rideSteps`. */
const BREATH = 0.25;

/**
 * Drives a layout over a road in breaths of a quarter of a second of road, so that a worker can be called off between two.
 * The engine makes the travel; the exact kinematics make it into steer. See `runRide`.
 */
export function* rideSteps(
  document: LayoutDocument,
  profile: RoadProfile,
  options: RunOptions,
): Generator<undefined, Outcome<RideRun, Refusal>> {
  const layout = resolveLayout(document);
  const setUp = rideParameters(layout);
  if (!setUp.ok) return setUp;
  const problem = optionProblem(options) ?? roadProblem(profile, layout.car.tyreRadius);
  if (problem) return failed(problem);
  const road = prepareRoad(profile, layout.car.tyreRadius);
  const made = prepareRide(setUp.value.parameters, { road, speed: options.speed });
  if (!made.ok) return made;
  const ride = made.value;
  const every = options.every ?? RUN_EVERY;
  const rowTime = every * ride.subStep;
  const count = Math.floor(options.seconds / rowTime + 1e-9) + 1;
  const column = () => new Float64Array(count);
  const run: RideRun = {
    count,
    setUp: setUp.value,
    speed: options.speed,
    time: column(),
    distance: column(),
    roadLeft: column(),
    roadRight: column(),
    heave: column(),
    roll: column(),
    frameRise: column(),
    frameRoll: column(),
    loadLeft: column(),
    loadRight: column(),
    leftSteer: column(),
    rightSteer: column(),
    meanSteer: column(),
    bumpSteer: column(),
    totalToeIn: column(),
    kick: column(),
    status: new Uint8Array(count),
    flags: new Uint8Array(count),
  };
  const frontEnd = prepareFrontEnd(layout);
  const pose = createState();
  const handwheel = options.handwheel ?? 0;
  const atRide = rideSteer(frontEnd, handwheel, pose);
  const { state } = ride;
  const breath = Math.max(1, Math.round(BREATH / rowTime));
  let kick: number = handwheel;
  for (let row = 0; row < count; row += 1) {
    if (row > 0 && row % breath === 0) yield;
    if (row > 0) stepRide(ride, every);
    run.time[row] = row * rowTime;
    if (state.status === 'diverged') {
      run.status[row] = RUN_DIVERGED;
      continue;
    }
    run.distance[row] = state.distance;
    run.roadLeft[row] = state.roadLeft;
    run.roadRight[row] = state.roadRight;
    run.heave[row] = state.heave;
    run.roll[row] = state.roll;
    run.frameRise[row] = state.frameRise;
    run.frameRoll[row] = state.frameRoll;
    run.loadLeft[row] = state.loadLeft;
    run.loadRight[row] = state.loadRight;
    run.flags[row] =
      (state.stopLeft > 0 || state.stopRight > 0 ? FLAG_BUMP_STOP : 0) |
      (state.stopLeft < 0 || state.stopRight < 0 ? FLAG_DROOP_STOP : 0) |
      (state.loadLeft === 0 ? FLAG_LEFT_OFF_GROUND : 0) |
      (state.loadRight === 0 ? FLAG_RIGHT_OFF_GROUND : 0);
    const posed = atRide.status === 'ok' && poseAxle(frontEnd, state.heave, state.roll, pose);
    const status = posed
      ? steerAxle(frontEnd, handwheel, pose)
      : atRide.status === 'ok'
        ? 'no-pose'
        : atRide.status;
    if (status !== 'ok') {
      run.status[row] = status === 'no-pose' ? RUN_NO_POSE : RUN_OUT_OF_REACH;
      continue;
    }
    run.leftSteer[row] = pose.left.steer;
    run.rightSteer[row] = pose.right.steer;
    run.meanSteer[row] = pose.meanSteer;
    run.bumpSteer[row] = pose.meanSteer - atRide.meanSteer;
    run.totalToeIn[row] = pose.totalToeIn;
    const straight = straightHandwheel(frontEnd, pose, atRide.meanSteer, kick);
    if (straight === NO_HANDWHEEL) run.flags[row] = (run.flags[row] as number) | FLAG_NO_KICK;
    else {
      kick = straight;
      run.kick[row] = straight - handwheel;
    }
  }
  return succeeded(run);
}

/**
 * Drives a layout over a road and answers with columns over time.
 * Frame:    front view for the engine (y left, z up; heave of the axle toward the frame, roll left side up); vehicle for
 *           the steering. Sideways movement of the car is left out.
 * Units:    mm, rad, N, s; speed in mm/s.
 * Outcomes: the run, each row with a status and flags; a refusal of the ride's figures, the road, the speed or the time.
 *           A moment that the linkage cannot reach, or that runs away, is a named row. Never NaN.
 * Source:   own derivation; forces in `stepRide`, steering as `solveFrontEnd`.
 * Checked:  tests/reference/ride-modes.test.ts, tests/reference/ride-bump.test.ts, tests/unit/ride.test.ts.
 */
export function runRide(
  document: LayoutDocument,
  profile: RoadProfile,
  options: RunOptions,
): Outcome<RideRun, Refusal> {
  const steps = rideSteps(document, profile, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
