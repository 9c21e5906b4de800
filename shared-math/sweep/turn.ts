import type { Layout } from '../layout/index.ts';
import {
  createState,
  type FrontEnd,
  type FrontEndState,
  groundOffsets,
  poseAxle,
  steerAxle,
  steerRates,
} from '../linkage/index.ts';
import type { Radians } from '../units/index.ts';
import { idealInner, idealOuter } from './ackermann.ts';
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
    if (largest > (stop * Math.PI) / 180) return 'stop';
  }
  // Past an arm's dead centre the wheels come back while the handwheel goes on.
  if (steerRates(frontEnd, state).mean * straight <= 0) return 'dead-centre';
  return undefined;
}

/** The lock to one side of the posed axle, closed in to 1e-9 rad of handwheel. */
function lockOf(frontEnd: FrontEnd, side: 1 | -1, straight: number, state: FrontEndState): Lock {
  const whole = side * frontEnd.ratio * (frontEnd.layout.steering.box.sectorTravel * (Math.PI / 180));
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
  /** The outer wheel's angle less its Ackermann ideal for the inner one; positive: the outer wheel turns too far. */
  readonly ackermannError: Float64Array;
  /** 100 (inner - outer) / (inner - ideal outer) at the same inner angle; 0 where the wheels are nearly straight. */
  readonly ackermannPercent: Float64Array;
  readonly left: Lock;
  readonly right: Lock;
}

/** Between the kingpins' lines at the height of the wheel centres, mm. */
export function kingpinTrack(layout: Layout): number {
  const at = (side: 'left' | 'right') => {
    const { kingpinTop: top, kingpinBottom: bottom, wheelCentre } = layout.axle[side];
    const share = (wheelCentre[2] - bottom[2]) / (top[2] - bottom[2]);
    return bottom[1] + share * (top[1] - bottom[1]);
  };
  return at('left') - at('right');
}

/** rad. Below this inner angle a percentage of Ackermann divides rounding and toe by next to nothing. */
const PERCENT_FROM = (5 * Math.PI) / 180;

/** Two wheel angles held against the Ackermann ideal. rad. */
export interface Ackermann {
  /** What the outer wheel should be at for the inner one, signed as the wheels are. */
  readonly idealOuter: number;
  /** How much further the outer wheel turns than that; positive: too far. */
  readonly error: number;
  /** 100 (inner - outer) / (inner - ideal outer) at equal inner angle; nothing where the wheels are nearly straight. */
  readonly percent: number | undefined;
}

/** How a left and a right wheel's steer (rad) stand to the Ackermann ideal; lengths in one unit. */
export function ackermannOf(left: number, right: number, track: number, wheelbase: number): Ackermann {
  const side = Math.sign(left + right);
  const inner = Math.abs(side > 0 ? left : right);
  const outer = (side > 0 ? right : left) * side;
  const ideal = idealOuter(inner, track, wheelbase);
  return {
    idealOuter: side * ideal,
    error: outer - ideal,
    percent: inner > PERCENT_FROM ? (100 * (inner - outer)) / (inner - ideal) : undefined,
  };
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
    ackermannPercent: empty(),
    left: NO_LOCK,
    right: NO_LOCK,
  });
  if (!poseAxle(frontEnd, heave, roll, state)) return none('no-pose');
  if (steerAxle(frontEnd, 0, state) !== 'ok') return none('out-of-reach');
  const straight = steerRates(frontEnd, state).mean;
  // A positive handwheel angle is to the left; where the box is mounted the wrong way round the wheels go right.
  const left = lockOf(frontEnd, 1, straight, state);
  const right = lockOf(frontEnd, -1, straight, state);

  const handwheel = evenly(right.handwheel, left.handwheel, count);
  const rows = handwheel.length;
  const sweep = {
    leftSteer: new Float64Array(rows),
    rightSteer: new Float64Array(rows),
    meanSteer: new Float64Array(rows),
    ratio: new Float64Array(rows),
    ackermannError: new Float64Array(rows),
    ackermannPercent: new Float64Array(rows),
  };
  const track = kingpinTrack(frontEnd.layout);
  const { wheelbase } = frontEnd.layout.car;
  for (let row = 0; row < rows; row += 1) {
    steerAxle(frontEnd, handwheel[row] as number, state);
    const { left: l, right: r, meanSteer } = state;
    sweep.leftSteer[row] = l.steer;
    sweep.rightSteer[row] = r.steer;
    sweep.meanSteer[row] = meanSteer;
    sweep.ratio[row] = 1 / steerRates(frontEnd, state).mean;
    const { error, percent } = ackermannOf(l.steer, r.steer, track, wheelbase);
    sweep.ackermannError[row] = error;
    sweep.ackermannPercent[row] = percent ?? 0;
  }
  return { status: 'ok', count: rows, handwheel, ...sweep, left, right };
}

/** Turns of the handwheel from lock to lock. */
export function turnsLockToLock(sweep: TurnSweep): number {
  return Math.abs(sweep.left.handwheel - sweep.right.handwheel) / (2 * Math.PI);
}

/** Diameters of the turning circle at a lock, mm. */
export interface TurningCircle {
  /** Of the outer front tyre's outer edge. */
  readonly betweenKerbs: number;
  /** Of the foremost outer corner: of the nose where the layout tells it, else of the outer front tyre. */
  readonly betweenWalls: number;
}

/**
 * The turning circle at a lock. The car rolls about a point on the rear axle's line; by the outer wheel's angle that
 * point lies wheelbase / tan(outer) inboard of the outer kingpin, which itself runs on wheelbase / sin(outer); the
 * tyre's middle stands the scrub radius further out, its edge half a tyre more. Nothing where the lock does not steer.
 */
export function turningCircle(layout: Layout, lock: Lock): TurningCircle | undefined {
  const { wheelbase, tyreWidth, tyreRadius, noseAhead, noseWidth } = layout.car;
  const toLeft = lock.leftSteer + lock.rightSteer > 0;
  const outer = Math.abs(toLeft ? lock.rightSteer : lock.leftSteer);
  if (!(outer > 0.01)) return undefined;
  const { scrubRadius } = groundOffsets(layout, toLeft ? 'right' : 'left');
  const kingpin = wheelbase / Math.sin(outer);
  const edge = kingpin + scrubRadius + tyreWidth / 2;
  // From the turning point: inboard to the outer kingpin, then out by the tyre or the nose, and ahead by it.
  const inboard = wheelbase / Math.tan(outer);
  const tyreCorner = Math.hypot(edge, tyreRadius);
  const half = kingpinTrack(layout) / 2;
  const corner =
    noseAhead === undefined
      ? 0
      : Math.hypot(wheelbase + noseAhead, inboard - half + (noseWidth ?? 2 * half) / 2);
  return { betweenKerbs: 2 * edge, betweenWalls: 2 * Math.max(tyreCorner, corner) };
}

/** The inner and outer wheel's angle at a lock, and the ideal that each has for the other. rad, positive. */
export function lockAngles(
  layout: Layout,
  lock: Lock,
): { inner: number; outer: number; idealOuter: number; idealInner: number } {
  const toLeft = lock.leftSteer + lock.rightSteer > 0;
  const inner = Math.abs(toLeft ? lock.leftSteer : lock.rightSteer);
  const outer = Math.abs(toLeft ? lock.rightSteer : lock.leftSteer);
  const track = kingpinTrack(layout);
  const { wheelbase } = layout.car;
  return {
    inner,
    outer,
    idealOuter: idealOuter(inner, track, wheelbase),
    idealInner: idealInner(outer, track, wheelbase),
  };
}
