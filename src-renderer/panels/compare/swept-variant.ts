import { type JudgedBraking, judgeBraking } from '../../../shared-math/brake/index.ts';
import { parkedDragLink } from '../../../shared-math/forces/index.ts';
import type { Layout } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, type LinkLengths, linkLengths } from '../../../shared-math/linkage/index.ts';
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
} from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { type LockFigures, lockFigures } from '../../document/turn-figures.ts';

/** A layout swept straight ahead over its own travel, and turned at ride height: what the figures are read from. */
export interface SweptVariant {
  readonly layout: Layout;
  readonly heave: TravelSummary;
  readonly roll: TravelSummary;
  /** With each wheel anywhere in its own travel. */
  readonly oneWheel: OneWheel;
  /** Undefined if the linkage does not turn. */
  readonly turn: TurnSweep | undefined;
  /** At either lock, left and right; none where the linkage does not turn. */
  readonly locks: readonly LockFigures[];
  /** A hard stop at ride height; undefined where masses cannot be, or it does not reach. */
  readonly braking: JudgedBraking | undefined;
  /** Without assistance. */
  readonly effort: TurnEffort | undefined;
  readonly links: LinkLengths;
  /** N: the most that parking on a dry floor asks of the drag link; undefined if the linkage does not turn. */
  readonly parkedDragLink: number | undefined;
}

const ROWS = 31;

/** Sweeps that are at hand already: the travel straight ahead, the turn at ride height. */
export interface SweptAlready {
  readonly heave?: TravelSweep | undefined;
  readonly roll?: TravelSweep | undefined;
  readonly oneWheel?: OneWheel | undefined;
  readonly turn?: TurnSweep | undefined;
}

/** Sweeps what is not at hand yet. */
export function sweptVariant(layout: Layout, frontEnd: FrontEnd, swept: SweptAlready): SweptVariant {
  const { bump, rebound: droop, roll } = layout.travel;
  const full = toRadians(roll);
  const turn = swept.turn ?? sweepTurn(frontEnd, 0, 0);
  const turns = turn.count > 1;
  return {
    layout,
    heave: summariseTravel(swept.heave ?? sweepTravel(frontEnd, 'heave', -droop, bump, ROWS, 0)),
    roll: summariseTravel(swept.roll ?? sweepTravel(frontEnd, 'roll', -full, full, ROWS, 0)),
    oneWheel: swept.oneWheel ?? worstOneWheel(frontEnd),
    turn: turns ? turn : undefined,
    locks: turns ? [turn.left, turn.right].map((lock) => lockFigures(layout, lock)) : [],
    braking: judgeBraking(frontEnd),
    effort: effortOfTurn(layout, turn),
    links: linkLengths(frontEnd),
    parkedDragLink: parkedDragLink(frontEnd, turn),
  };
}
