import type { FrontEnd } from '../../../shared-math/linkage/index.ts';
import { evenColumnYoke, ratioOf, type ShaftMotion } from '../../../shared-math/shaft/index.ts';
import { type TurnSweep, worstOffEven } from '../../../shared-math/sweep/index.ts';
import type { Radians } from '../../../shared-math/units/index.ts';

/** What the joints' unevenness comes to at the wheels. rad. */
export interface WheelsThroughShaft {
  /** The most that the mean steer is ahead of, or behind, what a shaft without joints would give between the locks. */
  readonly most: number;
  /** Handwheel turn over mean steer straight ahead, and what it would be without joints; signed as the turn's own. */
  readonly ratio: number;
  readonly without: number;
}

/**
 * The steering's turn at a heave (mm) and roll taken from the box to the rim, with the first yoke put on so that left and
 * right are alike. Undefined if the linkage makes no turn through the shaft.
 */
export function wheelsThroughShaft(
  frontEnd: FrontEnd,
  turn: TurnSweep,
  heave: number,
  roll: Radians,
  motion: ShaftMotion,
): WheelsThroughShaft | undefined {
  const without = turn.straightRatio;
  const most = worstOffEven(frontEnd, turn, heave, roll, motion);
  if (most === undefined || !Number.isFinite(without)) return undefined;
  return { most, ratio: without / ratioOf(motion, evenColumnYoke(motion, 'slowest'), 0), without };
}
