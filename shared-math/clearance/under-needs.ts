import type { FrontEnd } from '../linkage/index.ts';
import { bodiesOf } from './bodies.ts';
import type { Body } from './body.ts';
import { blocksOf, leastDistance, type Nearest, Spreads } from './least-distance.ts';
import { type Locks, moveBodies } from './motion.ts';

/** What a pair of bodies has to keep between them, mm; by their ids. */
export interface ClearanceNeed {
  readonly a: string;
  readonly b: string;
  readonly least: number;
}

/** mm. More than this to spare is plenty. */
export const SPARE = 100;

/**
 * How much the pair that stands worst has to spare over what it needs, mm; less than 0 where it is under it, and no more
 * than SPARE where all have plenty. Much faster than all clearances, since a pair is only looked into as far as it may
 * be the worst. The grid of travel and turn is as in `leastClearances`.
 */
export function underNeeds(
  frontEnd: FrontEnd,
  locks: Locks,
  needs: readonly ClearanceNeed[],
  fineness: { readonly heaves: number; readonly turns: number },
): number {
  const ids = new Set(needs.flatMap(({ a, b }) => [a, b]));
  const bodies = bodiesOf(frontEnd.layout).filter(({ id }) => ids.has(id));
  const byId = new Map(bodies.map((body) => [body.id, body]));
  const motion = moveBodies(frontEnd, bodies, locks, fineness.heaves, fineness.turns);
  const blocks = blocksOf(motion.grid);
  const spreads = new Spreads(blocks);
  let slack = SPARE;
  for (const { a, b, least } of needs) {
    const nearest: Nearest = { distance: least + slack, pose: -1, a: undefined, b: undefined };
    const pair = { a: byId.get(a) as Body, b: byId.get(b) as Body };
    leastDistance(motion, blocks, spreads, pair, nearest);
    slack = nearest.distance - least;
  }
  return slack;
}
