import type { Layout } from '../layout/index.ts';
import {
  createState,
  type FrontEnd,
  type FrontEndState,
  meanSteerRate,
  poseAxle,
  steerAxle,
} from '../linkage/index.ts';
import type { Radians } from '../units/index.ts';
import { toRadians } from '../units/index.ts';
import { type Ackermann, ackermannCar, ackermannOf, idealInner } from './ackermann.ts';
import { evenly } from './grid.ts';

/** What ends the turn to one side: the box's own travel, a link's reach, an arm at its dead centre, or the axle's stops. */
export type LockCause = 'sector-travel' | 'drag-link' | 'tie-rod' | 'dead-centre' | 'stop' | 'no-pose';

/** The end of the turn to one side. Angles in rad, signed as the handwheel and the wheels are. */
export interface Lock {
  readonly handwheel: number;
  readonly cause: LockCause;
  readonly leftSteer: number;
  readonly rightSteer: number;
}

/** Steps in which the turn is felt for its end, before the end is closed in on: a degree of sector or finer. */
const LOCK_STEPS = 90;

/** Why the posed axle cannot be steered to a handwheel angle, or nothing if it can. `straight`: the rate straight ahead. */
function endAt(
  frontEnd: FrontEnd,
  handwheel: number,
  straight: number,
  state: FrontEndState,
): LockCause | undefined {
  if (steerAxle(frontEnd, handwheel, state) !== 'ok')
    return state.failure === 'tie-rod' ? 'tie-rod' : 'drag-link';
  const stop = frontEnd.layout.steering.stopAngle;
  if (stop !== undefined) {
    const largest = Math.max(Math.abs(state.left.steer), Math.abs(state.right.steer));
    if (largest > toRadians(stop)) return 'stop';
  }
  // Past an arm's dead centre the wheels come back while the handwheel goes on.
  if (meanSteerRate(frontEnd, state) * straight <= 0) return 'dead-centre';
  return undefined;
}

/** The lock to one side of the posed axle, closed in to 1e-9 rad of handwheel. */
function lockOf(frontEnd: FrontEnd, side: 1 | -1, straight: number, state: FrontEndState): Lock {
  const whole = side * frontEnd.ratio * toRadians(frontEnd.layout.steering.box.sectorTravel);
  let inside = 0;
  let cause: LockCause = 'sector-travel';
  for (let i = 1; i <= LOCK_STEPS; i += 1) {
    const next = (whole * i) / LOCK_STEPS;
    const end = endAt(frontEnd, next, straight, state);
    if (!end) {
      inside = next;
      continue;
    }
    cause = end;
    let outside = next;
    while (Math.abs(outside - inside) > 1e-9) {
      const middle = (inside + outside) / 2;
      const why = endAt(frontEnd, middle, straight, state);
      if (why) {
        outside = middle;
        cause = why;
      } else inside = middle;
    }
    break;
  }
  steerAxle(frontEnd, inside, state);
  return { handwheel: inside, cause, leftSteer: state.left.steer, rightSteer: state.right.steer };
}

/**
 * Both locks of the posed axle, for those who need no more of the turn; `straight` is `meanSteerRate` straight ahead.
 * Leaves the state at one of them.
 */
export function locksFrom(
  frontEnd: FrontEnd,
  straight: number,
  state: FrontEndState,
): { readonly left: Lock; readonly right: Lock } {
  // A positive handwheel angle is to the left; where the box is mounted the wrong way round the wheels go right.
  const left = lockOf(frontEnd, 1, straight, state);
  const right = lockOf(frontEnd, -1, straight, state);
  return { left, right };
}

/** The turn from right lock to left lock at one heave and roll, as columns; rad, mm. */
export interface TurnSweep {
  readonly status: 'ok' | 'out-of-reach' | 'no-pose';
  readonly count: number;
  readonly handwheel: Float64Array;
  readonly leftSteer: Float64Array;
  readonly rightSteer: Float64Array;
  readonly meanSteer: Float64Array;
  /** d handwheel / d mean steer. */
  readonly ratio: Float64Array;
  /** d handwheel / d mean steer with the handwheel straight ahead; 0 where there is no turn. */
  readonly straightRatio: number;
  /** The outer wheel's angle less its Ackermann ideal for the inner one, static toe taken out; positive: too far. */
  readonly ackermannError: Float64Array;
  /** 100 (inner - outer) / (inner - ideal outer) at the same inner angle; undefined if the wheels are nearly straight. */
  readonly ackermannPercent: readonly (number | undefined)[];
  readonly left: Lock;
  readonly right: Lock;
}

const NO_LOCK: Lock = { handwheel: 0, cause: 'no-pose', leftSteer: 0, rightSteer: 0 };

/**
 * The whole turn at a heave (mm) and roll (rad): both locks and what sets them, wheel angles, overall ratio and the
 * error from Ackermann at `count` handwheel angles from the right lock to the left.
 * Source: own derivation (rates, locks); the Ackermann relation as in `idealOuter`.
 */
export function sweepTurn(frontEnd: FrontEnd, heave: number, roll: Radians, count = 41): TurnSweep {
  const state = createState();
  const empty = () => new Float64Array(0);
  const none = (status: 'out-of-reach' | 'no-pose'): TurnSweep => ({
    status,
    count: 0,
    handwheel: empty(),
    leftSteer: empty(),
    rightSteer: empty(),
    meanSteer: empty(),
    ratio: empty(),
    ackermannError: empty(),
    ackermannPercent: [],
    straightRatio: 0,
    left: NO_LOCK,
    right: NO_LOCK,
  });
  if (!poseAxle(frontEnd, heave, roll, state)) return none('no-pose');
  if (steerAxle(frontEnd, 0, state) !== 'ok') return none('out-of-reach');
  const straight = meanSteerRate(frontEnd, state);
  const { left, right } = locksFrom(frontEnd, straight, state);

  const handwheel = evenly(right.handwheel, left.handwheel, count);
  const rows = handwheel.length;
  const sweep = {
    leftSteer: new Float64Array(rows),
    rightSteer: new Float64Array(rows),
    meanSteer: new Float64Array(rows),
    ratio: new Float64Array(rows),
    ackermannError: new Float64Array(rows),
    ackermannPercent: new Array<number | undefined>(rows),
    straightRatio: 1 / straight,
  };
  const car = ackermannCar(frontEnd.layout);
  for (let row = 0; row < rows; row += 1) {
    steerAxle(frontEnd, handwheel[row] as number, state);
    const { left: l, right: r, meanSteer } = state;
    sweep.leftSteer[row] = l.steer;
    sweep.rightSteer[row] = r.steer;
    sweep.meanSteer[row] = meanSteer;
    sweep.ratio[row] = 1 / meanSteerRate(frontEnd, state);
    const { error, percent } = ackermannOf(l.steer, r.steer, car);
    sweep.ackermannError[row] = error;
    sweep.ackermannPercent[row] = percent;
  }
  return { status: 'ok', count: rows, handwheel, ...sweep, left, right };
}

/** Turns of the handwheel from lock to lock. */
export function turnsLockToLock(sweep: TurnSweep): number {
  return Math.abs(sweep.left.handwheel - sweep.right.handwheel) / (2 * Math.PI);
}

/**
 * The inner and outer wheel's steer at a lock, the ideal that each has for the other with static toe put back (rad,
 * positive sizes), and how the pair stands to Ackermann.
 */
export function lockAngles(
  layout: Layout,
  lock: Lock,
): { inner: number; outer: number; idealOuter: number; idealInner: number; ackermann: Ackermann } {
  const car = ackermannCar(layout);
  const toLeft = lock.leftSteer + lock.rightSteer > 0;
  const ackermann = ackermannOf(lock.leftSteer, lock.rightSteer, car);
  const innerToe = toLeft ? car.toeLeft : car.toeRight;
  return {
    inner: Math.abs(toLeft ? lock.leftSteer : lock.rightSteer),
    outer: Math.abs(toLeft ? lock.rightSteer : lock.leftSteer),
    idealOuter: Math.abs(ackermann.idealOuter),
    idealInner: idealInner(ackermann.outer, car.track, car.wheelbase) - innerToe,
    ackermann,
  };
}
