import type { Layout } from '../layout/index.ts';
import { type FrontEnd, HeldPoses } from '../linkage/index.ts';
import { bodiesOf, movingBodies } from './bodies.ts';
import type { Body } from './body.ts';
import { blocksOf, leastDistance, type Nearest, type PoseBlocks, Spreads } from './least-distance.ts';
import { BodyCarrier, type Grid, type Locks } from './motion.ts';

/** What a pair of bodies has to keep between them, mm; by their ids. */
export interface ClearanceNeed {
  readonly a: string;
  readonly b: string;
  readonly least: number;
}

/** mm. More than this to spare is plenty. */
export const SPARE = 100;

/** What of the worst pair's slack is of interest, mm. */
export interface SlackOfInterest {
  /** More to spare than this counts as this: a caller who asks only what is missing gives 0. */
  readonly most?: number;
  /** As soon as a pair is found with less than this, how much less another has is not looked for. */
  readonly enough?: number;
}

/** How finely travel and turn are looked at. */
interface Fineness {
  readonly heaves: number;
  readonly turns: number;
}

/**
 * How much the pair that stands worst has to spare over what it needs, for one front end after another that differ only
 * in the points of the steering and the lateral bar: what these do not move is carried once.
 */
export class NeedsOf {
  private readonly needs: ClearanceNeed[];
  private readonly bodies: readonly Body[];
  private readonly carrier: BodyCarrier;
  /** Of the grid with no pose out of reach. */
  private whole: PoseBlocks | undefined;

  constructor(drawn: Layout, needs: readonly ClearanceNeed[], { heaves, turns }: Fineness) {
    const ids = new Set(needs.flatMap(({ a, b }) => [a, b]));
    this.needs = [...needs];
    this.bodies = bodiesOf(drawn).filter(({ id }) => ids.has(id));
    this.carrier = new BodyCarrier(heaves, turns);
  }

  /**
   * mm; less than 0 where a pair is under its need, and no more than `most` (SPARE) where all have plenty. Much faster
   * than all clearances, since a pair is only looked into as far as it may be the worst. The grid of travel and turn is
   * as in `leastClearances`.
   */
  slack(
    frontEnd: FrontEnd,
    locks: Locks,
    { most = SPARE, enough = Number.NEGATIVE_INFINITY }: SlackOfInterest = {},
    held = new HeldPoses(),
  ): number {
    const moved = new Map(movingBodies(frontEnd.layout).map((body) => [body.id, body]));
    const bodies = this.bodies.map((body) => moved.get(body.id) ?? body);
    const byId = new Map(bodies.map((body) => [body.id, body]));
    const motion = this.carrier.carry(frontEnd, bodies, locks, held);
    const blocks = this.blocksOf(motion.grid);
    const spreads = new Spreads(blocks);
    let slack = most;
    for (let i = 0; i < this.needs.length; i += 1) {
      const need = this.needs[i] as ClearanceNeed;
      const nearest: Nearest = { distance: need.least + slack, pose: -1, a: undefined, b: undefined };
      const pair = { a: byId.get(need.a) as Body, b: byId.get(need.b) as Body };
      leastDistance(motion, blocks, spreads, pair, nearest);
      if (nearest.pose < 0) continue;
      slack = nearest.distance - need.least;
      // What was worst is likely to be so in the next front end: there it is asked first.
      this.needs.splice(i, 1);
      this.needs.unshift(need);
      if (slack < enough) break;
    }
    return slack;
  }

  private blocksOf(grid: Grid): PoseBlocks {
    if (grid.outOfReach > 0) return blocksOf(grid);
    this.whole ??= blocksOf(grid);
    return this.whole;
  }
}

/** As `NeedsOf` has it, of one front end alone. */
export function underNeeds(
  frontEnd: FrontEnd,
  locks: Locks,
  needs: readonly ClearanceNeed[],
  fineness: Fineness,
): number {
  return new NeedsOf(frontEnd.layout, needs, fineness).slack(frontEnd, locks);
}
