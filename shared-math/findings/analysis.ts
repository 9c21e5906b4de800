import { type AimOutcome, findAim, type HeldTravel, holdTravel } from '../aim/index.ts';
import { type JudgedBraking, judgeBraking } from '../brake/index.ts';
import { type Clearances, leastClearances } from '../clearance/index.ts';
import { type GridExtremes, gridExtremes } from '../joints/index.ts';
import type { Layout } from '../layout/index.ts';
import { arrangementOf, type FrontEnd, prepareFrontEnd } from '../linkage/index.ts';
import {
  effortOfTurn,
  type OneWheel,
  summariseTravel,
  sweepTravel,
  sweepTurn,
  type TravelSummary,
  type TravelSweep,
  type TurnEffort,
  type TurnSweep,
  worstOneWheel,
} from '../sweep/index.ts';
import { toRadians } from '../units/index.ts';

/** Everything that the rules look at, worked out once for a layout. Units as in its parts: mm and rad. */
export interface Analysis {
  readonly layout: Layout;
  readonly frontEnd: FrontEnd;
  readonly arrangement: 'side' | 'cross';
  readonly heave: TravelSweep;
  readonly heaveSummary: TravelSummary;
  readonly roll: TravelSweep;
  readonly rollSummary: TravelSummary;
  /** Largest bump steer with each wheel anywhere in its own travel. */
  readonly oneWheel: OneWheel;
  readonly travel: HeldTravel;
  readonly aim: AimOutcome;
  /** At ride height. */
  readonly turn: TurnSweep;
  /** Over travel and turn; undefined if the layout cannot be steered at ride height. */
  readonly extremes: GridExtremes | undefined;
  /** Undefined if there is no turn. */
  readonly effort: TurnEffort | undefined;
  /** A hard stop at ride height; undefined where masses cannot be, or it does not reach. */
  readonly braking: JudgedBraking | undefined;
  /** Undefined if they were not looked for: they take ten times as long as the rest. */
  readonly clearances: Clearances | undefined;
}

/** Works a layout out for the rules. Pure; two to four milliseconds. */
export function analyse(layout: Layout, frontEnd: FrontEnd = prepareFrontEnd(layout)): Analysis {
  const { bump, rebound: droop, roll: rollDegrees } = layout.travel;
  const fullRoll = toRadians(rollDegrees);
  const heave = sweepTravel(frontEnd, 'heave', -droop, bump, 31, 0);
  const roll = sweepTravel(frontEnd, 'roll', -fullRoll, fullRoll, 31, 0);
  const travel = holdTravel(frontEnd);
  const turn = sweepTurn(frontEnd, 0, 0);
  const steers = turn.status === 'ok' && turn.count > 1;
  return {
    layout,
    frontEnd,
    arrangement: arrangementOf(layout),
    heave,
    heaveSummary: summariseTravel(heave),
    roll,
    rollSummary: summariseTravel(roll),
    oneWheel: worstOneWheel(frontEnd),
    travel,
    aim: findAim(frontEnd, travel),
    turn,
    extremes: steers
      ? gridExtremes(frontEnd, { right: turn.right.handwheel, left: turn.left.handwheel })
      : undefined,
    effort: effortOfTurn(layout, turn),
    braking: judgeBraking(frontEnd),
    clearances: undefined,
  };
}

/** How near a part has to come to be reported, mm: four times the tyre's usual limit. */
const REPORTED_WITHIN = 100;

/**
 * An analysis with its clearances over travel and turn, twenty milliseconds or so: for a worker, or for when the hand is
 * still. Where the layout does not steer there are none.
 */
export function withClearances(analysis: Analysis): Analysis {
  const { frontEnd, turn } = analysis;
  if (turn.status !== 'ok' || turn.count < 2) return analysis;
  const locks = { right: turn.right.handwheel, left: turn.left.handwheel };
  return { ...analysis, clearances: leastClearances(frontEnd, locks, { within: REPORTED_WITHIN }) };
}
