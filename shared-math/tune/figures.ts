import { type Clearance, type Clearances, leastClearances } from '../clearance/index.ts';
import { analyse } from '../findings/index.ts';
import type { Layout } from '../layout/index.ts';
import { lockAngles, ROW_OK, type TravelSweep, turningCircle, turnsLockToLock } from '../sweep/index.ts';

/** What a layout comes to, for a before and an after. mm and rad; plain data. */
export interface Figures {
  /** Worst |bump steer| over heave, and over roll at ride height. */
  readonly worstHeave: number;
  readonly worstRoll: number;
  /** Worst |bump steer| with each wheel anywhere in its own travel; undefined if it is not reached everywhere. */
  readonly worstOneWheel: number | undefined;
  /** Bump steer at ride height, rad for each mm of heave. */
  readonly slope: number;
  /** How much total toe-in changes over heave: most less least. */
  readonly toeChange: number;
  /** Overall, at the centre; undefined if the layout does not steer, as all that follows. */
  readonly ratio: number | undefined;
  readonly turns: number | undefined;
  /** The inner wheel at the lesser lock. */
  readonly innerLock: number | undefined;
  /** Between kerbs, the larger of both. */
  readonly circle: number | undefined;
  readonly tilt: number | undefined;
  /** The nearest of all pairs, counted from its own limit. */
  readonly nearest: Clearance | undefined;
  /** Poses of travel and turn that a link does not reach. */
  readonly outOfReach: number | undefined;
}

/** mm: what each kind of pair has to keep. */
export interface ClearanceNeeds {
  readonly moving: number;
  readonly tyre: number;
}

/** Most less least of the total toe-in over a sweep's poses in reach. */
export function toeChangeOver(sweep: TravelSweep): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < sweep.count; i += 1) {
    if (sweep.status[i] !== ROW_OK) continue;
    least = Math.min(least, sweep.totalToeIn[i] as number);
    most = Math.max(most, sweep.totalToeIn[i] as number);
  }
  return most >= least ? most - least : 0;
}

/** The pair that is nearest to its limit, or furthest under it. */
export function tightest(clearances: Clearances, needs: ClearanceNeeds): Clearance | undefined {
  let best: Clearance | undefined;
  for (const pair of clearances.pairs)
    if (!best || pair.distance - needs[pair.limit] < best.distance - needs[best.limit]) best = pair;
  return best;
}

/** All figures of a layout, some thirty milliseconds. */
export function figuresOf(layout: Layout, needs: ClearanceNeeds): Figures {
  const { frontEnd, heave, heaveSummary, rollSummary, oneWheel, turn, extremes } = analyse(layout);
  const base = {
    worstHeave: heaveSummary.worstBumpSteer,
    worstRoll: rollSummary.worstBumpSteer,
    worstOneWheel: oneWheel.status === 'ok' ? oneWheel.worst : undefined,
    slope: heaveSummary.slopeAtRide,
    toeChange: toeChangeOver(heave),
  };
  if (turn.status !== 'ok' || turn.count < 2)
    return {
      ...base,
      ratio: undefined,
      turns: undefined,
      innerLock: undefined,
      circle: undefined,
      tilt: undefined,
      nearest: undefined,
      outOfReach: undefined,
    };
  const locks = [turn.left, turn.right];
  const circles = locks.map((lock) => turningCircle(layout, lock)?.betweenKerbs ?? Number.POSITIVE_INFINITY);
  return {
    ...base,
    ratio: turn.straightRatio,
    turns: turnsLockToLock(turn),
    innerLock: Math.min(...locks.map((lock) => lockAngles(layout, lock).inner)),
    circle: Math.max(...circles),
    tilt: Math.max(...(extremes?.tilts.map(({ tilt }) => tilt) ?? [0])),
    nearest: tightest(
      leastClearances(frontEnd, { right: turn.right.handwheel, left: turn.left.handwheel }),
      needs,
    ),
    outOfReach: extremes?.outOfReach,
  };
}
