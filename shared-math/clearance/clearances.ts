import type { Point } from '../geometry/points.ts';
import type { GridPose } from '../joints/index.ts';
import type { FrontEnd } from '../linkage/index.ts';
import { bodiesOf } from './bodies.ts';
import { blocksOf, leastDistance, type Nearest, nearestPoints, Spreads } from './least-distance.ts';
import { gridPose, type Locks, moveBodies } from './motion.ts';
import { type BodyPair, type ClearanceLimit, pairsOf } from './pairs.ts';

/** How near two bodies come over travel and turn, and where. Plain data. */
export interface Clearance {
  /** Ids of the two bodies, and what a builder calls them: "drag link", "left tyre". */
  readonly a: string;
  readonly b: string;
  readonly nameOfA: string;
  readonly nameOfB: string;
  readonly limit: ClearanceLimit;
  /** mm between their surfaces; 0 or less where they overlap. */
  readonly distance: number;
  readonly at: GridPose;
  /** The nearest points of the two surfaces in that pose, in the car's frame, mm. */
  readonly onA: Point;
  readonly onB: Point;
  /** True where the shape of one of them is a usual one, not stated by the layout. */
  readonly assumed: boolean;
  /** A hardpoint that moves one of them. */
  readonly part: string;
}

export interface Clearances {
  /** Nearest first. Pairs that never come as near as `within` are left out. */
  readonly pairs: readonly Clearance[];
  readonly within: number;
  /** Pairs that were judged. */
  readonly judged: number;
  readonly poses: number;
  readonly outOfReach: number;
}

export interface ClearanceOptions {
  /** mm. How near a pair has to come to be reported. */
  readonly within?: number;
  readonly heaves?: number;
  readonly turns?: number;
}

/** mm. Parts that keep a foot apart are of no interest to anyone. */
export const REPORTED_WITHIN = 300;

/**
 * The least distance of every pair of bodies that can meet, over travel (`heaves` poses of heave; full roll either way
 * at its ends and middle) and turn (`turns` handwheel angles between the locks).
 * Frame:    vehicle. Units: mm, rad.
 * Shapes:   bodies as `bodiesOf` has them; pairs as `pairsOf`. Distances exact to 1e-7 mm at the poses of the grid.
 * Outcomes: the pairs; none where no pose is in reach.
 * Source:   own derivation: `leastDistance`, `segmentToSegment`, `segmentToRing`, `gjkDistance`.
 * Checked:  tests/unit/clearance.test.ts.
 */
export function leastClearances(
  frontEnd: FrontEnd,
  locks: Locks,
  options: ClearanceOptions = {},
): Clearances {
  const { within = REPORTED_WITHIN, heaves = 31, turns = 41 } = options;
  const bodies = bodiesOf(frontEnd.layout);
  const pairs = pairsOf(bodies);
  const motion = moveBodies(frontEnd, bodies, locks, heaves, turns);
  const blocks = blocksOf(motion.grid);
  const spreads = new Spreads(blocks);
  const near = pairs.flatMap((pair) => {
    const nearest: Nearest = { distance: within, pose: -1, a: undefined, b: undefined };
    leastDistance(motion, blocks, spreads, pair, nearest);
    const points = nearestPoints(nearest);
    const place = blocks.places.get(nearest.pose);
    if (!points || !place) return [];
    return [tell(pair, nearest.distance, gridPose(motion.grid, ...place), points)];
  });
  return {
    pairs: near.sort((one, other) => one.distance - other.distance),
    within,
    judged: pairs.length,
    poses: motion.grid.poses,
    outOfReach: motion.grid.outOfReach,
  };
}

/** One pair of those that are the same on both sides of the car: where it is nearer. Pairs come nearest first. */
export function nearerOfBothSides(pairs: readonly Clearance[]): Clearance[] {
  const seen = new Set<string>();
  return pairs.filter(({ a, b }) => {
    const sideless = `${a} ${b}`.replaceAll(/-(left|right|mirrored)\b/g, '');
    if (seen.has(sideless)) return false;
    seen.add(sideless);
    return true;
  });
}

function tell(pair: BodyPair, distance: number, at: GridPose, points: [number[], number[]]): Clearance {
  const { a, b, limit } = pair;
  return {
    a: a.id,
    b: b.id,
    nameOfA: a.name,
    nameOfB: b.name,
    limit,
    distance,
    at,
    onA: points[0] as unknown as Point,
    onB: points[1] as unknown as Point,
    assumed: a.assumed === true || b.assumed === true,
    // One of the two moves, so one of them has a hardpoint.
    part: a.hardpoint ?? b.hardpoint ?? 'steering.box.sectorCentre',
  };
}
