import type { Layout } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, type LinkLengths, linkLengths } from '../../../shared-math/linkage/index.ts';
import {
  effortOfTurn,
  type OneWheel,
  summariseTravel,
  sweepTravel,
  sweepTurn,
  type TravelSweep,
  type TurnSweep,
  toeLength,
  turnsLockToLock,
  worstOneWheel,
} from '../../../shared-math/sweep/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { lockFigures } from '../../document/turn-figures.ts';

/**
 * What a layout is held against others by, straight ahead and over its own travel. rad, mm, N; undefined if the
 * linkage does not turn or reach.
 */
export interface VariantFigures {
  readonly worstBumpSteer: number | undefined;
  /** With each wheel anywhere in its own travel. */
  readonly oneWheel: number | undefined;
  /** rad per mm, signed. */
  readonly slope: number | undefined;
  /** rad of steer for each rad of roll, signed: above 0 is understeer. */
  readonly rollSteer: number | undefined;
  readonly ratio: number | undefined;
  readonly turns: number | undefined;
  /** The inner wheel. */
  readonly leftLock: number | undefined;
  readonly rightLock: number | undefined;
  /** Diameter between kerbs, of the wider turn. */
  readonly circle: number | undefined;
  /** At the rim, without assistance. */
  readonly rimForce: number | undefined;
  /** At the worst on the way to lock. */
  readonly rimForceMost: number | undefined;
  /** Total toe-in as drawn, over the tyres' diameter. */
  readonly toe: number;
  readonly links: LinkLengths;
}

const ROWS = 31;

/** Sweeps that are at hand already: the travel straight ahead, the turn at ride height. */
export interface SweptAlready {
  readonly heave?: TravelSweep | undefined;
  readonly roll?: TravelSweep | undefined;
  readonly oneWheel?: OneWheel | undefined;
  readonly turn?: TurnSweep | undefined;
}

/** Works the figures out: about a millisecond, or next to nothing of what has been swept already. */
export function variantFigures(layout: Layout, frontEnd: FrontEnd, swept: SweptAlready = {}): VariantFigures {
  const { bump, rebound: droop, roll } = layout.travel;
  const full = toRadians(roll);
  const heave = summariseTravel(swept.heave ?? sweepTravel(frontEnd, 'heave', -droop, bump, ROWS, 0));
  const rolled = summariseTravel(swept.roll ?? sweepTravel(frontEnd, 'roll', -full, full, ROWS, 0));
  const turn = swept.turn ?? sweepTurn(frontEnd, 0, 0);
  const oneWheel = swept.oneWheel ?? worstOneWheel(frontEnd);
  const turns = turn.count > 1;
  const [left, right] = [turn.left, turn.right].map((lock) => lockFigures(layout, lock));
  const effort = effortOfTurn(layout, turn);
  const circles = [left, right].flatMap((end) => end?.circle?.betweenKerbs ?? []);
  return {
    worstBumpSteer: heave.okCount > 0 ? heave.worstBumpSteer : undefined,
    oneWheel: oneWheel.status === 'ok' ? oneWheel.worst : undefined,
    slope: heave.okCount > 1 ? heave.slopeAtRide : undefined,
    rollSteer: rolled.okCount > 1 ? rolled.slopeAtRide : undefined,
    ratio: turns && Number.isFinite(turn.straightRatio) ? Math.abs(turn.straightRatio) : undefined,
    turns: turns ? turnsLockToLock(turn) : undefined,
    leftLock: turns ? left?.inner : undefined,
    rightLock: turns ? right?.inner : undefined,
    circle: turns && circles.length > 0 ? Math.max(...circles) : undefined,
    rimForce: effort?.centre.rimForce,
    rimForceMost: effort?.worst.rimForce,
    toe:
      toeLength(toRadians(layout.axle.left.toeIn), layout.car.tyreRadius) +
      toeLength(toRadians(layout.axle.right.toeIn), layout.car.tyreRadius),
    links: linkLengths(frontEnd),
  };
}
