import type { Radians } from '../units/index.ts';
import type { Chain } from './chain.ts';
import { halfTurn } from './motion.ts';

/**
 * The clocking of each intermediate shaft that leaves the least fluctuation, for any number of joints.
 *
 * The 2 × 2 matrices of `motionOf`, up to scale, move a hyperbolic plane: a joint is a step of length -ln cos b, and
 * from a joint to the next the way turns by twice the angle s between the driven ears as carried on and the driving
 * ears of the next, each from its own bend's normal. What is left in the end is how far the steps have led from
 * their start. Clockings set the turns freely, so:
 *  - one step longer than all others together: lay the others straight against it (s a quarter turn beside it, none
 *    elsewhere); the rest, their difference, is the least there is. Two joints are always of this kind;
 *  - otherwise the steps close to a triangle and nothing is left. The steps are laid straight in three groups, none
 *    longer than half of the whole, and the turns between follow from the hyperbolic law of cosines. Of the triangle
 *    and its mirror image, the one whose clockings are smaller.
 * Straight and double joints are no steps; a shaft whose clocking changes nothing gets 0, ears in one plane.
 * Frame:    that of the chain; a clock is right-hand about its shaft from column to box.
 * Units:    rad, in (-π/2, π/2].
 * Outcomes: none.
 * Source:   own derivation; for two joints it is the trade's rule that both yokes reach their bend planes together.
 * Checked:  tests/reference/shaft-chain.test.ts (against a search over vector chains).
 */
export function bestClocks(chain: Chain): Float64Array {
  const steps: { joint: number; length: number }[] = [];
  for (let joint = 0; joint < chain.count; joint += 1) {
    const cosine = chain.cosines[joint] as number;
    if (cosine < 1) steps.push({ joint, length: -Math.log(cosine) });
  }
  if (steps.length < 2) return new Float64Array(Math.max(chain.count - 1, 0));
  const joints = steps.map((step) => step.joint);
  const plans = turnsThatCancel(steps.map((step) => step.length));
  const clocks = plans.map((turns) => clocksFor(chain, joints, turns));
  const size = (list: Float64Array) => list.reduce((sum, clock) => sum + Math.abs(clock), 0);
  return clocks.reduce((best, other) => (size(other) < size(best) - 1e-9 ? other : best));
}

/** Angles s between each step and the next, for the least rest: one plan, or a triangle and its mirror image. */
function turnsThatCancel(lengths: readonly number[]): number[][] {
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const longest = lengths.indexOf(Math.max(...lengths));
  if ((lengths[longest] as number) >= total / 2)
    return [lengths.slice(1).map((_, i) => (i === longest || i + 1 === longest ? Math.PI / 2 : 0))];

  // The step across the middle of the way stands alone; what is before and after it is less than half each.
  let middle = 0;
  let before = 0;
  while (before + (lengths[middle] as number) < total / 2) {
    before += lengths[middle] as number;
    middle += 1;
  }
  const across = lengths[middle] as number;
  const after = total - before - across;
  // Half-angle form of the law of cosines, whose differences stay exact for small steps.
  const half = total / 2;
  const rise = (length: number) => Math.sinh(Math.max(half - length, 0));
  const outOf = (side: number, other: number, opposite: number) =>
    Math.atan2(Math.sqrt(Math.sinh(half) * rise(opposite)), Math.sqrt(rise(side) * rise(other)));
  const into = outOf(before, across, after);
  const from = outOf(across, after, before);
  const plan = lengths.slice(1).map((_, i) => (i + 1 === middle ? into : i === middle ? from : 0));
  return [plan, plan.map((turn) => -turn)];
}

/** The clockings that give those angles: each in the first shaft between two steps, none in any other. */
function clocksFor(chain: Chain, joints: readonly number[], turns: readonly number[]): Float64Array {
  const clocks = new Float64Array(chain.count - 1);
  for (const [i, turn] of turns.entries()) {
    const from = joints[i] as number;
    const to = joints[i + 1] as number;
    let carried: Radians = (chain.bends[from] as number) - (chain.bends[to] as number);
    for (let joint = from; joint < to; joint += 1) carried += chain.quarter[joint] as number;
    clocks[from] = halfTurn(turn - carried);
  }
  return clocks;
}
