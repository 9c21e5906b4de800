import { boxHandwheel, evenColumnYoke, type Motion, ratioOf } from '../../../shared-math/shaft/index.ts';
import type { TurnSweep } from '../../../shared-math/sweep/index.ts';
import { ratioAtCentre } from '../../document/turn-figures.ts';

/** What the joints' unevenness comes to at the wheels. rad. */
export interface WheelsThroughShaft {
  /** The most that the mean steer is ahead of, or behind, what a shaft without joints would give between the locks. */
  readonly most: number;
  /** Handwheel turn over mean steer straight ahead, and what it would be without joints; signed as the turn's own. */
  readonly ratio: number;
  readonly without: number;
}

/** Tries for every row of the turn: the joints' ripple comes twice in a turn of the handwheel. */
const FINER = 8;

/**
 * The steering's turn taken from the box to the rim: with the first yoke put on so that left and right are alike, the box
 * follows the handwheel by the shaft's motion. Over the degree or two between them the steering's ratio hardly changes,
 * so the wheels are off by that angle over the ratio where it stands. Nothing where the wheels do not turn.
 */
export function wheelsThroughShaft(turn: TurnSweep, motion: Motion): WheelsThroughShaft | undefined {
  const without = ratioAtCentre(turn);
  if (without === undefined) return undefined;
  const yoke = evenColumnYoke(motion, 'slowest');
  let most = 0;
  for (let row = 1; row < turn.count; row += 1) {
    const [from, to] = [turn.handwheel[row - 1] as number, turn.handwheel[row] as number];
    const [before, after] = [turn.ratio[row - 1] as number, turn.ratio[row] as number];
    for (let i = 0; i <= FINER; i += 1) {
      const share = i / FINER;
      const rim = from + share * (to - from);
      const rate = (1 - share) / before + share / after;
      most = Math.max(most, Math.abs((boxHandwheel(motion, yoke, rim) - rim) * rate));
    }
  }
  return { most, ratio: without / ratioOf(motion, yoke, 0), without };
}
