import { type ClearanceNeed, type Locks, underNeeds } from '../clearance/index.ts';
import { gridExtremes } from '../joints/index.ts';
import { createState, type FrontEnd, solveFrontEnd, steerRates } from '../linkage/index.ts';
import { lockAngles, sweepTurn, type TurnSweep, turningCircle } from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';

export type HoldName = 'ratio' | 'lock' | 'circle' | 'tilt' | 'clearance';

/** A range that a figure has to keep: degrees for angles, mm for lengths. An end left out is open. */
export interface Range {
  readonly least?: number;
  readonly most?: number;
}

/** What must hold while a tune moves things. Reach and the direction of steering always must, and are not named. */
export interface Holds {
  /** Overall ratio at the centre. */
  readonly ratio?: Range;
  /** Inner wheel at the lesser lock, degrees. */
  readonly lock?: Range;
  /** Turning circle between kerbs, mm. */
  readonly circle?: Range;
  /** Tilt of any ball, degrees. */
  readonly tilt?: Range;
  /**
   * mm that pairs of parts have to keep. Unless `strict`, a pair that is nearer than that as drawn has only to stay as
   * it is, and one that hits is left out; strict, every pair has to keep it that what is free can move.
   */
  readonly clearance?: { readonly moving: number; readonly tyre: number; readonly strict: boolean };
}

/** How a hold stands: more than 0 is to spare, less is missing; rad, mm or ratio as the hold is. */
export interface HoldState {
  readonly name: HoldName | 'reach';
  readonly slack: number;
}

/** What one unit of a violation is, so that all count alike: a tenth of a ratio, a degree, 50 mm, 1 mm, one pose. */
const UNIT: Record<HoldState['name'], number> = {
  ratio: 0.1,
  lock: toRadians(1),
  circle: 50,
  tilt: toRadians(1),
  clearance: 1,
  reach: 1,
};

/** How finely travel and turn are looked at: coarsely while searching, fully for the answer. */
export interface Fineness {
  readonly heaves: number;
  readonly turns: number;
}

export const COARSE: Fineness = { heaves: 7, turns: 9 };
export const FULL: Fineness = { heaves: 31, turns: 41 };

/** What holds are measured against that does not change while things are moved. */
export interface HoldContext {
  readonly holds: Holds;
  /** What pairs have to keep; those that nothing free can move are not in it. */
  readonly needs: readonly ClearanceNeed[];
  /** Poses out of reach as drawn, at each fineness: no more may become so. */
  readonly outOfReach: ReadonlyMap<Fineness, number>;
  /** The sign of the steering as drawn. */
  readonly direction: number;
}

function slackOf(value: number, { least, most }: Range): number {
  return Math.min(
    least === undefined ? Number.POSITIVE_INFINITY : value - least,
    most === undefined ? Number.POSITIVE_INFINITY : most - value,
  );
}

const inRadians = ({ least, most }: Range): Range => ({
  ...(least === undefined ? {} : { least: toRadians(least) }),
  ...(most === undefined ? {} : { most: toRadians(most) }),
});

export function locksOf(turn: TurnSweep): Locks {
  return { right: turn.right.handwheel, left: turn.left.handwheel };
}

/**
 * How every hold stands on a front end. Where it does not steer at all, reach is missing by more than any number of
 * poses and the rest is left out. Clearances count as having `margin` (mm) less to spare, and are left out where the
 * others together are broken by `settledAt` or more.
 */
export function holdStates(
  frontEnd: FrontEnd,
  context: HoldContext,
  fineness: Fineness,
  margin = 0,
  settledAt = Number.POSITIVE_INFINITY,
): HoldState[] {
  const { holds, needs } = context;
  const { layout } = frontEnd;
  const state = createState();
  if (solveFrontEnd(frontEnd, 0, 0, 0, state) !== 'ok') return [{ name: 'reach', slack: -10_000 }];
  const rate = steerRates(frontEnd, state).mean;
  if (!(rate * context.direction > 0) || !Number.isFinite(rate)) return [{ name: 'reach', slack: -10_000 }];
  const states: HoldState[] = [];
  if (holds.ratio) states.push({ name: 'ratio', slack: slackOf(Math.abs(1 / rate), holds.ratio) });

  const turn = sweepTurn(frontEnd, 0, 0, 2);
  if (turn.status !== 'ok' || turn.count < 2) return [{ name: 'reach', slack: -10_000 }];
  const both = [turn.left, turn.right];
  if (holds.lock) {
    const inner = Math.min(...both.map((lock) => lockAngles(layout, lock).inner));
    states.push({ name: 'lock', slack: slackOf(inner, inRadians(holds.lock)) });
  }
  if (holds.circle) {
    const circles = both.map((lock) => turningCircle(layout, lock)?.betweenKerbs ?? 1e6);
    states.push({ name: 'circle', slack: slackOf(Math.max(...circles), holds.circle) });
  }
  const locks = locksOf(turn);
  const extremes = gridExtremes(frontEnd, locks, fineness.heaves, fineness.turns);
  states.push({ name: 'reach', slack: (context.outOfReach.get(fineness) ?? 0) - extremes.outOfReach });
  if (holds.tilt) {
    const tilt = Math.max(0, ...extremes.tilts.map((joint) => joint.tilt));
    states.push({ name: 'tilt', slack: slackOf(tilt, inRadians(holds.tilt)) });
  }
  // Clearances cost several times what all else does: they are not asked where it is settled without them.
  if (holds.clearance && violationOf(states) < settledAt)
    states.push({ name: 'clearance', slack: underNeeds(frontEnd, locks, needs, fineness) - margin });
  return states;
}

/** By how much holds are broken together, 0 where none is: what is missing of each, in its own unit. */
export function violationOf(states: readonly HoldState[]): number {
  let sum = 0;
  for (const { name, slack } of states) if (slack < 0) sum -= slack / UNIT[name];
  return sum;
}
