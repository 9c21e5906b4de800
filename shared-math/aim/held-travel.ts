import { distance, type Point } from '../geometry/points.ts';
import { dot } from '../geometry/vectors.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type PoseStatus,
  poseAxle,
  steerByBall,
} from '../linkage/index.ts';
import { evenly, wheelPoses, wheelTravel } from '../sweep/index.ts';

/**
 * The axle's poses over the travel, solved once so that any number of frame ends can be tried on them: nothing of the
 * steering goes back into the axle's pose.
 */
export interface HeldTravel {
  readonly frontEnd: FrontEnd;
  readonly status: PoseStatus;
  /** mm. */
  readonly heave: Float64Array;
  /** For each heave the axle's centre and turned halves, as `poseAxle` leaves them (21 numbers). */
  readonly frames: readonly Float64Array[];
  /** The steering-arm ball with the wheels held straight on the axle: 3 numbers for each heave, mm. */
  readonly ballPath: Float64Array;
  /** Where the ball is drawn. */
  readonly ball: Point;
  /** rad: mean steer as drawn. */
  readonly drawnSteer: number;
}

/** mm. A layout that states no travel is still judged over an inch each way. */
const LEAST_TRAVEL = 25.4;

export function holdTravel(frontEnd: FrontEnd, count = 31): HeldTravel {
  const { bump, rebound: droop } = frontEnd.layout.travel;
  const heave = bump + droop > 0 ? evenly(-droop, bump, count) : evenly(-LEAST_TRAVEL, LEAST_TRAVEL, count);
  const state = createState();
  const frames: Float64Array[] = [];
  const ballPath = new Float64Array(3 * heave.length);
  const { steering, axle } = frontEnd.layout;
  let status: PoseStatus = 'ok';
  for (let i = 0; i < heave.length; i += 1) {
    if (!poseAxle(frontEnd, heave[i] as number, 0, state)) {
      status = 'no-pose';
      break;
    }
    frames.push(state.work.frame.slice());
    // As the axle would carry it with the wheels held straight.
    carryPoint(frontEnd, state, `axle-${frontEnd.driven}`, steering.dragLinkBall as Point, ballPath, 3 * i);
  }
  return {
    frontEnd,
    status,
    heave,
    frames,
    ballPath,
    ball: steering.dragLinkBall,
    drawnSteer: ((axle.right.toeIn - axle.left.toeIn) * Math.PI) / 360,
  };
}

/**
 * The held travel with the axle's poses where each wheel is anywhere in its own bump and droop, beside those of the
 * heave: so that frame ends are tried on one wheel over a bump too, to a per cent; less finely with fewer heaves and rolls. Path and ball are the heave's.
 */
export function holdWheels(travel: HeldTravel, along?: number, rolls?: number): HeldTravel {
  const { frontEnd } = travel;
  if (travel.status !== 'ok') return travel;
  const state = createState();
  const poses = wheelPoses(wheelTravel(frontEnd.layout), along, rolls);
  const frames = [...travel.frames];
  for (const { heave, roll } of poses) {
    if (!poseAxle(frontEnd, heave, roll, state)) return { ...travel, status: 'no-pose' };
    frames.push(state.work.frame.slice());
  }
  return {
    ...travel,
    heave: Float64Array.from([...travel.heave, ...poses.map(({ heave }) => heave)]),
    frames,
  };
}

/**
 * Worst |bump steer| (rad) over the held travel if the frame end of the drag link were at `point` with the wheels
 * straight; infinity where the linkage cannot reach.
 */
export function worstBumpSteerAt(travel: HeldTravel, point: Point, state = createState()): number {
  const { frontEnd, frames, heave } = travel;
  const length = distance(travel.ball, point);
  const circle = frontEnd.dragLinkBall;
  const centre = frontEnd.axle.centre;
  const drawn: Point = [
    point[0] - centre[0] - circle.base[0],
    point[1] - centre[1] - circle.base[1],
    point[2] - centre[2] - circle.base[2],
  ];
  const branch = dot(drawn, circle.onward) > 0 ? -1 : 1;
  let worst = 0;
  for (let i = 0; i < frames.length; i += 1) {
    state.heave = heave[i] as number;
    const status = steerByBall(
      frontEnd,
      point[0],
      point[1],
      point[2],
      length,
      branch,
      state,
      state.work.turns,
      frames[i] as Float64Array,
    );
    if (status !== 'ok') return Number.POSITIVE_INFINITY;
    worst = Math.max(worst, Math.abs(state.meanSteer - travel.drawnSteer));
  }
  return worst;
}
