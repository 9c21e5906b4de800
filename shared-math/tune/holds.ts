import type { ClearanceNeed, Locks } from '../clearance/index.ts';
import type { TurnSweep } from '../sweep/index.ts';
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
export const UNIT: Record<HoldState['name'], number> = {
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

export function slackOf(value: number, { least, most }: Range): number {
  return Math.min(
    least === undefined ? Number.POSITIVE_INFINITY : value - least,
    most === undefined ? Number.POSITIVE_INFINITY : most - value,
  );
}

export const inRadians = ({ least, most }: Range): Range => ({
  ...(least === undefined ? {} : { least: toRadians(least) }),
  ...(most === undefined ? {} : { most: toRadians(most) }),
});

export function locksOf(turn: Pick<TurnSweep, 'left' | 'right'>): Locks {
  return { right: turn.right.handwheel, left: turn.left.handwheel };
}

/** What is missing of a hold, in its own unit; 0 where it holds. */
export function missingOf({ name, slack }: HoldState): number {
  return slack < 0 ? -slack / UNIT[name] : 0;
}

/** By how much holds are broken together, 0 where none is: what is missing of each, in its own unit. */
export function violationOf(states: readonly HoldState[]): number {
  let sum = 0;
  for (const state of states) sum += missingOf(state);
  return sum;
}
