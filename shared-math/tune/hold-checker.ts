import { type Locks, NeedsOf } from '../clearance/index.ts';
import { gridExtremes } from '../joints/index.ts';
import { type FrontEnd, HeldPoses, meanSteerRate, steerAxle } from '../linkage/index.ts';
import { lockAngles, locksFrom, turningCircle } from '../sweep/index.ts';
import {
  type Fineness,
  type HoldContext,
  type HoldState,
  inRadians,
  locksOf,
  missingOf,
  slackOf,
  UNIT,
} from './holds.ts';

/** Where a layout does not steer at all, reach is missing by more than any number of poses. */
const STEERS_NOT: HoldState = { name: 'reach', slack: -10_000 };

/**
 * How holds stand on front ends that differ from the drawn one in the points of the steering and the lateral bar, looked
 * at one after another: what these points leave alone is worked out once, and of the rest no more than is asked for.
 */
export class HoldChecker {
  private readonly context: HoldContext;
  private readonly fineness: Fineness;
  private readonly needs: NeedsOf;
  private readonly poses = new HeldPoses();

  constructor(drawn: FrontEnd, context: HoldContext, fineness: Fineness) {
    this.context = context;
    this.fineness = fineness;
    this.needs = new NeedsOf(drawn.layout, context.needs, fineness);
  }

  /** How every hold stands. Where the front end does not steer at all reach is missing, and the rest left out. */
  states(frontEnd: FrontEnd): HoldState[] {
    const states: HoldState[] = [];
    const cheap = this.besideClearance(frontEnd);
    let step = cheap.next();
    for (; !step.done; step = cheap.next()) states.push(step.value);
    if (step.value && this.context.holds.clearance)
      states.push({ name: 'clearance', slack: this.needs.slack(frontEnd, step.value, {}, this.poses) });
    return states;
  }

  /**
   * By how much holds are broken together, as `violationOf` has it, with pairs counting as having `margin` (mm) less to
   * spare. Exact below `settledAt`; where that is reached, what is left is not asked.
   */
  missedBy(frontEnd: FrontEnd, margin: number, settledAt: number): number {
    let missed = 0;
    const cheap = this.besideClearance(frontEnd);
    let step = cheap.next();
    for (; !step.done; step = cheap.next()) {
      missed += missingOf(step.value);
      if (missed >= settledAt) return missed;
    }
    if (!step.value || !this.context.holds.clearance) return missed;
    const enough = margin - (settledAt - missed) * UNIT.clearance;
    const spare = this.needs.slack(frontEnd, step.value, { most: margin, enough }, this.poses);
    missed += missingOf({ name: 'clearance', slack: spare - margin });
    return spare < enough ? Math.max(missed, settledAt) : missed;
  }

  /** Holds one by one, those first that cost least; clearances, which cost most, are left to the locks returned. */
  private *besideClearance(frontEnd: FrontEnd): Generator<HoldState, Locks | undefined> {
    const { holds, direction, outOfReach } = this.context;
    const { layout } = frontEnd;
    const state = this.poses.at(frontEnd, 0, 0);
    const rate =
      state && steerAxle(frontEnd, 0, state) === 'ok' ? meanSteerRate(frontEnd, state) : Number.NaN;
    if (!state || !(rate * direction > 0) || !Number.isFinite(rate)) {
      yield STEERS_NOT;
      return undefined;
    }
    if (holds.ratio) yield { name: 'ratio', slack: slackOf(Math.abs(1 / rate), holds.ratio) };

    const turn = locksFrom(frontEnd, rate, state);
    const both = [turn.left, turn.right];
    const locks = locksOf(turn);
    if (locks.left === locks.right) {
      yield STEERS_NOT;
      return undefined;
    }
    if (holds.lock) {
      const inner = Math.min(...both.map((lock) => lockAngles(layout, lock).inner));
      yield { name: 'lock', slack: slackOf(inner, inRadians(holds.lock)) };
    }
    if (holds.circle) {
      const circles = both.map((lock) => turningCircle(layout, lock)?.betweenKerbs ?? 1e6);
      yield { name: 'circle', slack: slackOf(Math.max(...circles), holds.circle) };
    }
    const { heaves, turns } = this.fineness;
    const extremes = gridExtremes(frontEnd, locks, heaves, turns, this.poses);
    yield { name: 'reach', slack: (outOfReach.get(this.fineness) ?? 0) - extremes.outOfReach };
    if (holds.tilt) {
      const tilt = Math.max(0, ...extremes.tilts.map((joint) => joint.tilt));
      yield { name: 'tilt', slack: slackOf(tilt, inRadians(holds.tilt)) };
    }
    return locks;
  }
}
