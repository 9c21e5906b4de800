import {
  createState,
  type FrontEnd,
  type FrontEndState,
  type PoseStatus,
  poseAxle,
  solveFrontEnd,
  steerAxle,
} from '../linkage/index.ts';

/** The mean steer at ride height that bump steer is counted from, or that it is out of reach there. */
export interface RideSteer {
  readonly status: PoseStatus;
  readonly meanSteer: number;
}

/** Mean steer at heave 0, roll 0 and the given handwheel angle (rad). */
export function rideSteer(frontEnd: FrontEnd, handwheel: number, state = createState()): RideSteer {
  const status = solveFrontEnd(frontEnd, 0, 0, handwheel, state);
  return { status, meanSteer: status === 'ok' ? state.meanSteer : 0 };
}

/** One pose of a grid. `state` is reused from pose to pose: read it, do not keep it. */
export type VisitPose = (state: FrontEndState, status: PoseStatus, bumpSteer: number) => void;

/**
 * Visits the grid of all given poses, heave outermost, handwheel innermost. The axle is posed once for each heave and
 * roll and steered for each handwheel angle. `bumpSteer` is the mean steer less its value at ride height at the same
 * handwheel angle; where that pose is out of reach, so is the visited one.
 * Units: heave in mm, roll and handwheel in rad. Order: as the arrays stand.
 */
export function visitGrid(
  frontEnd: FrontEnd,
  heaves: ArrayLike<number>,
  rolls: ArrayLike<number>,
  handwheels: ArrayLike<number>,
  visit: VisitPose,
): void {
  const state = createState();
  const rides = Array.from(handwheels, (handwheel) => rideSteer(frontEnd, handwheel, state));
  for (let i = 0; i < heaves.length; i += 1)
    for (let j = 0; j < rolls.length; j += 1) {
      const posed = poseAxle(frontEnd, heaves[i] as number, rolls[j] as number, state);
      for (let k = 0; k < handwheels.length; k += 1) {
        const ride = rides[k] as RideSteer;
        const status = posed ? steerAxle(frontEnd, handwheels[k] as number, state) : state.status;
        state.handwheel = handwheels[k] as number;
        if (status === 'ok' && ride.status !== 'ok') visit(state, ride.status, 0);
        else visit(state, status, status === 'ok' ? state.meanSteer - ride.meanSteer : 0);
      }
    }
}

/** `count` evenly spaced values from `from` to `to`, both included exactly; one value where they are the same. */
export function evenly(from: number, to: number, count: number): Float64Array {
  if (count <= 1 || from === to) return Float64Array.of(from);
  const values = new Float64Array(count);
  for (let i = 0; i < count; i += 1) values[i] = (from * (count - 1 - i) + to * i) / (count - 1);
  // The weighted mean rounds; the ends are what was asked for.
  values[0] = from;
  values[count - 1] = to;
  return values;
}
