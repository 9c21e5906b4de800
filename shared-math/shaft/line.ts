import type { Point } from '../geometry/points.ts';
import { add, cross, norm, scaled, unit } from '../geometry/vectors.ts';
import type { ShaftDocument } from '../layout/index.ts';
import { type Radians, toRadians } from '../units/index.ts';
import { type Chain, placeYokes, prepareChain } from './chain.ts';
import { evenColumnYoke, motionOf } from './motion.ts';
import { routeOf } from './route.ts';

/** A spider: the cross on which two yokes turn. A single joint has one, a double joint two. */
export interface ShaftPin {
  readonly joint: number;
  readonly centre: Point;
  /** Unit directions of the ears of its driving and its driven yoke, with the wheels straight ahead. */
  readonly driving: Point;
  readonly driven: Point;
}

/** Something that turns as one piece between two spiders: `coupling` is the middle of a double joint. */
export interface ShaftMember {
  readonly kind: 'column' | 'shaft' | 'coupling' | 'box';
  /** Of a shaft its number, of a coupling its joint's, else 0. */
  readonly index: number;
  /** A point of its axis, and its direction from column to box, length 1. */
  readonly origin: Point;
  readonly direction: Point;
}

/** A shaft as it is built, spider by spider: what is drawn and what turns. */
export interface ShaftLine {
  readonly pins: readonly ShaftPin[];
  /** One more than there are pins. */
  readonly members: readonly ShaftMember[];
  /** How the members turn, for `turnsOf`; undefined if a joint is folded so far that it passes nothing on. */
  readonly turning:
    | { readonly chain: Chain; readonly clocks: Float64Array; readonly columnYoke: Radians }
    | undefined;
}

/** mm from a double joint's centre to each of its spiders; as such joints are usually built. */
export const TO_SPIDER = 19;

/** Every double joint as two single ones, half its angle each, with a short shaft between whose ears lie in one plane. */
function spelledOut(shaft: ShaftDocument): { readonly shaft: ShaftDocument; readonly joints: number[] } {
  const { directions } = routeOf(shaft);
  const joints: number[] = [];
  const singles: ShaftDocument['joints'] = [];
  const shafts: ShaftDocument['shafts'] = [];
  for (const [i, { kind, centre }] of shaft.joints.entries()) {
    const ways = kind === 'single' ? [0] : [-TO_SPIDER, TO_SPIDER];
    for (const [half, by] of ways.entries()) {
      if (half > 0) shafts.push({ clock: 0 });
      joints.push(i);
      singles.push({ kind: 'single', centre: add(centre, scaled(directions[i + half] as Point, by)) });
    }
    const between = shaft.shafts[i];
    if (between) shafts.push(between);
  }
  return { shaft: { ...shaft, joints: singles, shafts }, joints };
}

/** Ears of a chain that does not turn, as good as any: square to both shafts, and square to that. */
function stillEars(before: Point, after: Point): [Point, Point] {
  const bend = cross(before, after);
  const across: Point = norm(bend) > 1e-9 ? bend : Math.abs(before[1]) < 0.9 ? [0, 1, 0] : [0, 0, 1];
  const driving = unit(cross(cross(before, across), before));
  return [driving, unit(cross(after, driving))];
}

/**
 * A steering shaft spider by spider, with its yokes as they stand straight ahead.
 * `columnYoke` is where the column yoke's ears stand from the normal of the first bend, rad; not given, it is set so
 * that left and right turn alike and the box turns slowest straight ahead, as there is no saying how it is put on.
 * Frame: vehicle. Units: mm, rad. Outcomes: a line; one that does not turn where a joint is at a right angle or more.
 */
export function shaftLine(drawn: ShaftDocument, columnYoke?: Radians): ShaftLine {
  const { shaft, joints } = spelledOut(drawn);
  const route = routeOf(shaft);
  const prepared = prepareChain(route);
  const clocks = Float64Array.from(shaft.shafts, ({ clock }) => toRadians(clock));
  const chain = prepared.ok ? prepared.value : undefined;
  const turning = chain && {
    chain,
    clocks,
    columnYoke: columnYoke ?? evenColumnYoke(motionOf(chain, clocks), 'slowest'),
  };
  const ears = new Float64Array(6 * joints.length);
  if (turning) placeYokes(turning.chain, clocks, turning.columnYoke, 0, ears);
  const centreOf = (pin: number) => shaft.joints[pin]?.centre as Point;
  const earAt = (at: number): Point => [ears[at] as number, ears[at + 1] as number, ears[at + 2] as number];
  const last = joints.length;
  return {
    pins: joints.map((joint, pin) => {
      const [before, after] = [route.directions[pin] as Point, route.directions[pin + 1] as Point];
      const [driving, driven] = turning ? [earAt(6 * pin), earAt(6 * pin + 3)] : stillEars(before, after);
      return { joint, centre: centreOf(pin), driving, driven };
    }),
    members: route.directions.map((direction, i): ShaftMember => {
      if (i === 0) return { kind: 'column', index: 0, origin: centreOf(0), direction };
      if (i === last) return { kind: 'box', index: 0, origin: centreOf(last - 1), direction };
      const joint = joints[i] as number;
      const origin = centreOf(i - 1);
      return joints[i - 1] === joint
        ? { kind: 'coupling', index: joint, origin, direction }
        : { kind: 'shaft', index: joint - 1, origin, direction };
    }),
    turning,
  };
}
