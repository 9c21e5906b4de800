import { gjkDistance } from './gjk.ts';
import { type BodyTracks, displacement, type Grid, seenFromAxle, type Track, writePath } from './motion.ts';
import type { BodyPair } from './pairs.ts';
import { segmentToRing, segmentToRingAtLeast } from './ring.ts';
import { segmentToSegment } from './segments.ts';
import { coreMiddle, RING, SEGMENT, support } from './shapes.ts';

/** A rectangle of the grid, halved again and again down to a few poses; its own pose stands near its middle. */
interface PoseBlock {
  readonly pose: number;
  readonly index: number;
  readonly children: readonly PoseBlock[];
  /** All poses in it, and one of each station. */
  readonly poses: readonly number[];
  readonly stations: readonly number[];
  /** A few of them, spread over it. */
  readonly tried: readonly number[];
}

/** The grid as blocks: all of it, and one pose of each station for what the handwheel does not move. */
export interface PoseBlocks {
  readonly all: PoseBlock | undefined;
  readonly still: PoseBlock | undefined;
  readonly count: number;
  readonly places: ReadonlyMap<number, readonly [station: number, turn: number]>;
}

/** Poses. A block of no more is looked through one by one, which then costs less than halving it. */
const LOOK_THROUGH = 200;

/** Poses of a block that are tried before a frame is chosen for two parts. */
const TRIED = 12;

/** Halves the grid into blocks, down to those that are looked through. */
export function blocksOf(grid: Grid): PoseBlocks {
  const turns = grid.handwheels.length;
  const stations = grid.stations.length;
  const places = new Map<number, readonly [number, number]>();
  for (let i = 0; i < grid.poseAt.length; i += 1)
    if ((grid.poseAt[i] as number) >= 0)
      places.set(grid.poseAt[i] as number, [Math.floor(i / turns), i % turns]);
  let count = 0;
  const block = (
    middle: number,
    children: readonly PoseBlock[],
    poses: readonly number[],
    settled: readonly number[],
  ): PoseBlock => {
    count += 1;
    const pose = middle >= 0 ? middle : (poses[poses.length >> 1] as number);
    const step = Math.max(1, Math.floor(poses.length / TRIED));
    const tried = poses.filter((_, i) => i % step === 0);
    return { pose, index: count - 1, children, poses, stations: settled, tried };
  };

  const build = (s0: number, s1: number, k0: number, k1: number): PoseBlock | undefined => {
    const middle = grid.poseAt[((s0 + s1) >> 1) * turns + ((k0 + k1) >> 1)] as number;
    if ((s1 - s0) * (k1 - k0) <= LOOK_THROUGH) {
      const poses: number[] = [];
      const settled: number[] = [];
      for (let station = s0; station < s1; station += 1) {
        const before = poses.length;
        // To and fro, so that each pose is a neighbour of the one looked at before it.
        const back = (station - s0) % 2 === 1;
        for (let k = k0; k < k1; k += 1) {
          const pose = grid.poseAt[station * turns + (back ? k0 + k1 - 1 - k : k)] as number;
          if (pose >= 0) poses.push(pose);
        }
        if (poses.length > before) settled.push(poses[before] as number);
      }
      return poses.length > 0 ? block(middle, [], poses, settled) : undefined;
    }
    const tall = s1 - s0 >= k1 - k0;
    const cut = tall ? (s0 + s1) >> 1 : (k0 + k1) >> 1;
    const halves = tall
      ? [build(s0, cut, k0, k1), build(cut, s1, k0, k1)]
      : [build(s0, s1, k0, cut), build(s0, s1, cut, k1)];
    const children = halves.filter((half) => half !== undefined);
    if (children.length < 2) return children[0];
    const poses = children.flatMap((child) => child.poses);
    const firsts = new Map<number, number>();
    for (const child of children)
      for (const pose of child.stations) firsts.set((places.get(pose) as readonly [number, number])[0], pose);
    return block(middle, children, poses, [...firsts.values()]);
  };
  const all = build(0, stations, 0, turns);

  // Of each station the reachable pose nearest to straight ahead.
  const stillAt = (station: number): number => {
    for (let off = 0; off < turns; off += 1)
      for (const k of [(turns >> 1) - off, (turns >> 1) + off]) {
        const pose = k >= 0 && k < turns ? (grid.poseAt[station * turns + k] as number) : -1;
        if (pose >= 0) return pose;
      }
    return -1;
  };
  const buildStill = (from: number, to: number): PoseBlock | undefined => {
    if (to - from <= LOOK_THROUGH) {
      const poses: number[] = [];
      for (let station = from; station < to; station += 1) {
        const pose = stillAt(station);
        if (pose >= 0) poses.push(pose);
      }
      return poses.length > 0 ? block(-1, [], poses, poses) : undefined;
    }
    const cut = (from + to) >> 1;
    const children = [buildStill(from, cut), buildStill(cut, to)].filter((half) => half !== undefined);
    if (children.length < 2) return children[0];
    const poses = children.flatMap((child) => child.poses);
    return block(-1, children, poses, poses);
  };
  const still = buildStill(0, stations);
  return { all, still, count, places };
}

/** Where two bodies come nearest: mm, 0 or less where they overlap; the pose, and the parts that meet. */
export interface Nearest {
  distance: number;
  pose: number;
  a: Track | undefined;
  b: Track | undefined;
}

const points = new Float64Array(6);

/** Two parts, with their numbers in the frame in which they are looked at. */
export interface Couple {
  readonly a: Track;
  readonly b: Track;
  readonly dataA: Float64Array;
  readonly dataB: Float64Array;
  /** Of both capsules together, mm: no distance is reported below the negative of it. */
  readonly radius: number;
}

/** Two parts with their numbers in a frame: the car's, unless others are given. */
export function couple(a: Track, b: Track, dataA = a.data, dataB = b.data): Couple {
  return { a, b, dataA, dataB, radius: a.radius + b.radius };
}

/** Distance of two parts in a pose, mm, with the nearest points of their cores in `points`. */
export function distanceAt({ a, b, dataA, dataB, radius }: Couple, pose: number): number {
  const atA = (a.rowOf[pose] as number) * a.stride;
  const atB = (b.rowOf[pose] as number) * b.stride;
  let core: number;
  if (a.kind === SEGMENT && b.kind === SEGMENT) core = segmentToSegment(dataA, atA, dataB, atB, points);
  else if (a.kind === SEGMENT && b.kind === RING) core = segmentToRing(dataA, atA, dataB, atB, points);
  else if (a.kind === RING && b.kind === SEGMENT) {
    core = segmentToRing(dataB, atB, dataA, atA, points);
    for (let axis = 0; axis < 3; axis += 1) {
      const swap = points[axis] as number;
      points[axis] = points[3 + axis] as number;
      points[3 + axis] = swap;
    }
  } else core = gjkDistance(a.kind, dataA, atA, b.kind, dataB, atB, points);
  return core - radius;
}

/** Writes the direction from one part to the other, length 1, as the last exact distance had it; none where they met. */
export function rememberParting(parting: Float64Array): void {
  const x = (points[3] as number) - (points[0] as number);
  const y = (points[4] as number) - (points[1] as number);
  const z = (points[5] as number) - (points[2] as number);
  const size = Math.sqrt(x * x + y * y + z * z);
  const share = size > 0 ? 1 / size : 0;
  parting[0] = share * x;
  parting[1] = share * y;
  parting[2] = share * z;
}

const furthestA = new Float64Array(3);
const furthestB = new Float64Array(3);

/** No more than the distance of two parts: how far they stand apart along a direction that parted them before. */
export function distanceAlong(
  { a, b, dataA, dataB, radius }: Couple,
  pose: number,
  parting: Float64Array,
): number {
  const x = parting[0] as number;
  const y = parting[1] as number;
  const z = parting[2] as number;
  support(a.kind, dataA, (a.rowOf[pose] as number) * a.stride, x, y, z, furthestA, 0);
  support(b.kind, dataB, (b.rowOf[pose] as number) * b.stride, -x, -y, -z, furthestB, 0);
  return (
    x * ((furthestB[0] as number) - (furthestA[0] as number)) +
    y * ((furthestB[1] as number) - (furthestA[1] as number)) +
    z * ((furthestB[2] as number) - (furthestA[2] as number)) -
    radius
  );
}

/** No more than the distance of two parts, from their shapes: nothing is known so for most. */
function boundAt({ a, b, dataA, dataB, radius }: Couple, pose: number): number {
  const atA = (a.rowOf[pose] as number) * a.stride;
  const atB = (b.rowOf[pose] as number) * b.stride;
  if (a.kind === SEGMENT && b.kind === RING) return segmentToRingAtLeast(dataA, atA, dataB, atB) - radius;
  if (a.kind === RING && b.kind === SEGMENT) return segmentToRingAtLeast(dataB, atB, dataA, atA) - radius;
  return Number.NEGATIVE_INFINITY;
}

/** No more than the distance of two parts: that of the balls around their cores. */
export function roughDistance({ a, b, dataA, dataB, radius }: Couple, pose: number): number {
  const atA = (a.rowOf[pose] as number) * a.stride;
  const atB = (b.rowOf[pose] as number) * b.stride;
  const x = coreMiddle(a.kind, dataA, atA, 0) - coreMiddle(b.kind, dataB, atB, 0);
  const y = coreMiddle(a.kind, dataA, atA, 1) - coreMiddle(b.kind, dataB, atB, 1);
  const z = coreMiddle(a.kind, dataA, atA, 2) - coreMiddle(b.kind, dataB, atB, 2);
  return Math.sqrt(x * x + y * y + z * z) - a.reach - b.reach - radius;
}

/** How far one part moves within blocks, in one frame; worked out when it is first asked. */
class Spread {
  private readonly track: Track;
  private readonly data: Float64Array;
  private readonly known: Float64Array;
  private readonly paths: (Float64Array | undefined)[] = [];

  constructor(track: Track, data: Float64Array, blocks: number) {
    this.track = track;
    this.data = data;
    this.known = new Float64Array(blocks).fill(-1);
  }

  /** The most that any point of the part is away, in a pose of the block, from where the block's own pose has it; mm. */
  in(block: PoseBlock): number {
    const known = this.known[block.index] as number;
    if (known >= 0) return known;
    const poses = this.track.steered ? block.poses : block.stations;
    const most = displacement(this.track, this.data, block.pose, poses);
    this.known[block.index] = most;
    return most;
  }

  /** For each pose of a block the way that any point of the part has gone at most since the first of them, mm. */
  alongPoses(block: PoseBlock): Float64Array {
    let path = this.paths[block.index];
    if (!path) {
      path = new Float64Array(block.poses.length);
      writePath(this.track, this.data, block.poses, path);
      this.paths[block.index] = path;
    }
    return path;
  }
}

/** How far parts move within blocks, in the car's frame or as seen from the axle. */
export class Spreads {
  private readonly known = new Map<Float64Array, Spread>();
  private readonly count: number;

  constructor(blocks: PoseBlocks) {
    this.count = blocks.count;
  }

  /** Of a part with its numbers in either frame; undefined for a fixed one, which does not move. */
  of(track: Track, data: Float64Array): Spread | undefined {
    if (track.stride === 0) return undefined;
    let spread = this.known.get(data);
    if (!spread) {
      spread = new Spread(track, data, this.count);
      this.known.set(data, spread);
    }
    return spread;
  }
}

interface Waiting {
  readonly block: PoseBlock;
  /** No pose of the block brings the parts nearer. */
  readonly bound: number;
}

const waiting: Waiting[] = [];
const parting = new Float64Array(3);

/** Whether two parts seem to move less as seen from the axle: either frame is right, the better one is quicker. */
function moveLess(seen: Couple, plain: Couple, { pose: from, tried }: PoseBlock): boolean {
  const way = ({ a, b, dataA, dataB }: Couple) =>
    displacement(a, dataA, from, tried) + displacement(b, dataB, from, tried);
  return way(seen) < way(plain);
}

/** Looks for a pose in which two parts come nearer than `nearest` tells so far. */
function searchParts(
  motion: BodyTracks,
  a: Track,
  b: Track,
  root: PoseBlock,
  spreads: Spreads,
  nearest: Nearest,
): void {
  let parts = couple(a, b);
  let spreadA = spreads.of(a, parts.dataA);
  let spreadB = spreads.of(b, parts.dataB);
  const bothMove = spreadA !== undefined && spreadB !== undefined;
  // Most pairs are so far apart that no frame has to be chosen for them.
  const rough = roughDistance(parts, root.pose) - nearest.distance;
  if (rough >= 0 && rough >= (spreadA?.in(root) ?? 0) + (spreadB?.in(root) ?? 0)) return;
  if (bothMove) {
    const seen = couple(a, b, seenFromAxle(a, motion), seenFromAxle(b, motion));
    if (moveLess(seen, parts, root)) {
      parts = seen;
      spreadA = spreads.of(a, parts.dataA);
      spreadB = spreads.of(b, parts.dataB);
    }
  }
  const look = (pose: number): number => {
    const distance = distanceAt(parts, pose);
    rememberParting(parting);
    if (distance < nearest.distance) {
      nearest.distance = distance;
      nearest.pose = pose;
      nearest.a = a;
      nearest.b = b;
    }
    return distance;
  };
  const weigh = (block: PoseBlock): Waiting | undefined => {
    const spread = (spreadA?.in(block) ?? 0) + (spreadB?.in(block) ?? 0);
    const reach = nearest.distance + spread;
    if (roughDistance(parts, block.pose) >= reach) return undefined;
    if (distanceAlong(parts, block.pose, parting) >= reach || boundAt(parts, block.pose) >= reach)
      return undefined;
    // Cores that meet are as near as can be reported.
    const bound = Math.max(look(block.pose) - spread, -parts.radius);
    return bound < nearest.distance ? { block, bound } : undefined;
  };
  /** Looks at a block's poses one by one; returns whether the parts meet, and nothing nearer is to be found. */
  const lookThrough = (block: PoseBlock): boolean => {
    const { poses } = block;
    const pathA = spreadA?.alongPoses(block);
    const pathB = spreadB?.alongPoses(block);
    // No more than the distance was at the pose looked at last, and how far both had gone by then.
    let known = Number.NEGATIVE_INFINITY;
    let gone = 0;
    for (let i = 0; i < poses.length; i += 1) {
      const path = (pathA ? (pathA[i] as number) : 0) + (pathB ? (pathB[i] as number) : 0);
      if (known - (path - gone) >= nearest.distance) continue;
      const pose = poses[i] as number;
      gone = path;
      known = distanceAlong(parts, pose, parting);
      if (known >= nearest.distance) continue;
      known = boundAt(parts, pose);
      if (known >= nearest.distance) continue;
      known = look(pose);
      if (known <= -parts.radius) return true;
    }
    return false;
  };
  waiting.length = 0;
  const first = weigh(root);
  if (first) waiting.push(first);
  while (waiting.length > 0) {
    const { block, bound } = waiting.pop() as Waiting;
    if (bound >= nearest.distance) continue;
    if (block.children.length === 0) {
      if (lookThrough(block)) return;
      continue;
    }
    const found = block.children.map(weigh).filter((entry) => entry !== undefined);
    // The more promising half is looked into first: what it finds may rule the other out.
    found.sort((one, other) => other.bound - one.bound);
    waiting.push(...found);
  }
}

/**
 * The least distance of two bodies over all poses of the grid, no pose left out.
 * In a block of poses no point of a part is further than the part's spread from where the block's own pose has it, so
 * the distance there is at least that of the block's pose less both spreads: where this is no nearer than what is
 * found already the whole block is passed over, else it is halved. Two parts that both go with the axle are seen from
 * it, where they hardly move. Spheres around the parts are asked first; in a small block, whether the direction that
 * parted them in the pose before still parts them by enough: for convex parts that is proof. What is known of the
 * distance in one pose holds in those after it less the way that both have gone since, so that poses are passed over.
 * `nearest.distance` on entry is how near the bodies must come to be reported at all.
 * Frame:    vehicle. Units: mm. Outcomes: `nearest` filled in, or left as it was.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/clearance.test.ts (against every pose looked at one by one).
 */
export function leastDistance(
  motion: BodyTracks,
  blocks: PoseBlocks,
  spreads: Spreads,
  pair: Pick<BodyPair, 'a' | 'b'>,
  nearest: Nearest,
): void {
  const partsOf = (body: BodyPair['a']) => motion.tracks[motion.bodies.indexOf(body)] as readonly Track[];
  for (const a of partsOf(pair.a))
    for (const b of partsOf(pair.b)) {
      const root = a.steered || b.steered ? blocks.all : blocks.still;
      if (root) searchParts(motion, a, b, root, spreads, nearest);
    }
}

/** The two nearest points of what was found, on the surfaces, in the car's frame; one point of both where cores meet. */
export function nearestPoints({ a, b, pose }: Nearest): [number[], number[]] | undefined {
  if (!a || !b) return undefined;
  const core = distanceAt(couple(a, b), pose) + a.radius + b.radius;
  const along = [0, 1, 2].map((axis) =>
    core > 0 ? ((points[3 + axis] as number) - (points[axis] as number)) / core : 0,
  );
  return [
    along.map((share, axis) => (points[axis] as number) + share * a.radius),
    along.map((share, axis) => (points[3 + axis] as number) - share * b.radius),
  ];
}
