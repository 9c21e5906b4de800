import { createState, type FrontEnd, poseAxle, steerAxle, steerRates } from '../linkage/index.ts';
import { boxHandwheel, evenColumnYoke, ratioOf, type ShaftMotion } from '../shaft/index.ts';
import type { Radians } from '../units/index.ts';
import type { TurnSweep } from './turn.ts';

/** The turn as the rim of the handwheel sees it, with the shaft's fluctuation between rim and box; columns, rad. */
export interface ShaftTurn {
  /** Of the column yoke's ears from the normal of the first bend. */
  readonly columnYoke: Radians;
  /** At the rim: the handwheel angles of the even turn. */
  readonly handwheel: Float64Array;
  /** What the box sees; held at the locks, where the turn ends. */
  readonly boxHandwheel: Float64Array;
  readonly leftSteer: Float64Array;
  readonly rightSteer: Float64Array;
  readonly meanSteer: Float64Array;
  /** d handwheel / d mean steer. */
  readonly ratio: Float64Array;
  /** Mean steer less what an even shaft gives at the same handwheel angle. */
  readonly off: Float64Array;
}

/**
 * Carries a turn through the steering shaft: rim to box input to sector to wheels.
 * `columnYoke`, where the first yoke is put on the column, is nobody's to know from the drawing; not given, it is set so
 * that left and right turn alike, slowest straight ahead.
 * Frame:    vehicle; handwheel counter-clockwise for the driver. Units: mm, rad.
 * Outcomes: columns; empty where the turn has none.
 * Source:   own derivation: the joints' motion (shaft/motion.ts) before the linkage, d rim / d wheels by the chain rule.
 * Checked:  tests/unit/shaft-turn.test.ts (differences of the solved linkage; an even shaft changes nothing).
 */
export function turnThroughShaft(
  frontEnd: FrontEnd,
  sweep: TurnSweep,
  heave: number,
  roll: Radians,
  motion: ShaftMotion,
  columnYoke: Radians = evenColumnYoke(motion, 'slowest'),
): ShaftTurn {
  const state = createState();
  const rows = poseAxle(frontEnd, heave, roll, state) ? sweep.count : 0;
  const column = () => new Float64Array(rows);
  const turn = {
    columnYoke,
    handwheel: sweep.handwheel.slice(0, rows),
    boxHandwheel: column(),
    leftSteer: column(),
    rightSteer: column(),
    meanSteer: column(),
    ratio: column(),
    off: column(),
  };
  const [least, most] = [sweep.right.handwheel, sweep.left.handwheel];
  for (let row = 0; row < rows; row += 1) {
    const rim = turn.handwheel[row] as number;
    const box = Math.min(most, Math.max(least, boxHandwheel(motion, columnYoke, rim)));
    steerAxle(frontEnd, box, state);
    turn.boxHandwheel[row] = box;
    turn.leftSteer[row] = state.left.steer;
    turn.rightSteer[row] = state.right.steer;
    turn.meanSteer[row] = state.meanSteer;
    turn.ratio[row] = 1 / (steerRates(frontEnd, state).mean * ratioOf(motion, columnYoke, -rim));
    turn.off[row] = state.meanSteer - (sweep.meanSteer[row] as number);
  }
  return turn;
}

/** Tries for every row of the turn: the joints' ripple comes twice in a turn of the handwheel. */
const FINER = 8;
/** rad of handwheel that count as straight ahead. */
const STRAIGHT = 1e-9;

/**
 * The most that the mean steer is ahead of, or behind, what a shaft without joints would give at the same turn of the
 * rim, rad; both solved. Turns that the linkage cannot make, where rim or box would be past a lock, are left out; undefined
 * if none is left but straight ahead.
 */
export function worstOffEven(
  frontEnd: FrontEnd,
  sweep: TurnSweep,
  heave: number,
  roll: Radians,
  motion: ShaftMotion,
  columnYoke: Radians = evenColumnYoke(motion, 'slowest'),
): number | undefined {
  const state = createState();
  if (sweep.count < 2 || !poseAxle(frontEnd, heave, roll, state)) return undefined;
  const [least, most] = [sweep.right.handwheel, sweep.left.handwheel].sort((a, b) => a - b) as [
    number,
    number,
  ];
  const mean = (handwheel: number): number | undefined =>
    steerAxle(frontEnd, handwheel, state) === 'ok' ? state.meanSteer : undefined;
  let worst: number | undefined;
  const tries = FINER * (sweep.count - 1);
  for (let i = 0; i <= tries; i += 1) {
    const rim = least + ((most - least) * i) / tries;
    const box = boxHandwheel(motion, columnYoke, rim);
    if (Math.abs(rim) < STRAIGHT || box < least || box > most) continue;
    const [even, through] = [mean(rim), mean(box)];
    if (even !== undefined && through !== undefined) worst = Math.max(worst ?? 0, Math.abs(through - even));
  }
  return worst;
}
