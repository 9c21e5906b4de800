import type { Point } from '../geometry/points.ts';
import { cross, dot, unit } from '../geometry/vectors.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import type { Radians } from '../units/index.ts';
import type { Route } from './route.ts';

/**
 * A route made ready for turning.
 *
 * Every yoke is the direction of its ears: the line through the two cross-pin ends that it holds, square to its shaft.
 * A spider keeps the ears of its two yokes square to each other. Directions square to a shaft are given by an angle,
 * right-hand about the shaft from column to box, from a reference that is carried along the chain: at each joint it is
 * turned with the least rotation that takes one shaft's direction into the next. That rotation leaves the normal of
 * the bend, n = before × after, where it is, so the normal has the same angle on both sides of its joint.
 */
export interface Chain {
  readonly count: number;
  /** Cosine of each single joint's angle; 1 for a double joint, whose halves cancel, and for a straight one. */
  readonly cosines: Float64Array;
  /** Angle of each joint's bend normal from the reference, rad; 0 where there is no bend. */
  readonly bends: Float64Array;
  /** What a joint adds to the angle of the ears beyond its motion: a quarter turn across one spider, none across two. */
  readonly quarter: Float64Array;
  /** Unit directions of the shafts, column to box, and the reference beside each: square to it, length 1. */
  readonly directions: readonly Point[];
  readonly references: readonly Point[];
}

/** Why a chain does not turn: the joint that is folded to a right angle or, if double, back on itself. */
export interface Locked {
  readonly joint: number;
}

/** Cosine. A single joint this near to a right angle passes no turning on. */
const LOCKED_BELOW = 1e-6;

/** Sine. Below this a joint is straight: its bend has no direction that doubles can tell. */
const STRAIGHT_BELOW = 1e-9;

/** A direction square to a shaft where no bend gives one: the car's y, or z for a shaft that runs across the car. */
function anySquare(direction: Point): Point {
  const from: Point = Math.abs(direction[1]) < 0.9 ? [0, 1, 0] : [0, 0, 1];
  return unit(cross(cross(direction, from), direction));
}

/** A vector carried by the least rotation that takes the unit direction a into b; they are not opposite. */
function carried(v: Point, a: Point, b: Point): Point {
  const k = cross(a, b);
  const c = dot(a, b);
  const turned = cross(k, v);
  const along = dot(k, v) / (1 + c);
  return [
    v[0] * c + turned[0] + k[0] * along,
    v[1] * c + turned[1] + k[1] * along,
    v[2] * c + turned[2] + k[2] * along,
  ];
}

/**
 * Makes a route ready for turning.
 * Frame:    vehicle. Units: rad.
 * Outcomes: ok; locked, with the joint, where a single joint is at a right angle or more, or a double one folded back.
 * Source:   own derivation, as given at `Chain`.
 * Checked:  tests/reference/shaft-chain.test.ts (composed directly from vectors).
 */
export function prepareChain(route: Route): Outcome<Chain, Locked> {
  const { joints, directions } = route;
  const count = joints.length;
  const cosines = new Float64Array(count).fill(1);
  const bends = new Float64Array(count);
  const quarter = new Float64Array(count);
  const references: Point[] = [];
  const first = cross(directions[0] as Point, directions[1] as Point);
  const bent = Math.hypot(...first) > STRAIGHT_BELOW;
  let reference = bent ? unit(first) : anySquare(directions[0] as Point);
  references.push(reference);
  for (let i = 0; i < count; i += 1) {
    const before = directions[i] as Point;
    const after = directions[i + 1] as Point;
    const normal = cross(before, after);
    const cosine = dot(before, after);
    const single = joints[i]?.kind === 'single';
    if (single ? cosine < LOCKED_BELOW : cosine < LOCKED_BELOW - 1) return failed({ joint: i });
    const isBent = Math.hypot(...normal) > STRAIGHT_BELOW;
    if (isBent) bends[i] = Math.atan2(dot(before, cross(reference, normal)), dot(reference, normal));
    if (single) {
      quarter[i] = Math.PI / 2;
      if (isBent) cosines[i] = cosine;
    }
    reference = carried(reference, before, after);
    references.push(reference);
  }
  return succeeded({ count, cosines, bends, quarter, directions, references });
}

/**
 * How far a single joint's driven yoke is behind its driving one, when the driving ears stand at `angle` from the
 * normal of the bend: tan(driven) = tan(angle) · cos b. Rises and falls twice a turn; exact and continuous.
 */
export function lag(cosine: number, angle: Radians): Radians {
  const s = Math.sin(angle);
  const c = Math.cos(angle);
  return Math.atan2((1 - cosine) * s * c, c * c + cosine * s * s);
}

/**
 * The ears of every yoke with the handwheel turned, for drawing: along the chain, per joint the driving yoke's ears and
 * the driven one's, 3 numbers each, length 1, into `out` (6 per joint).
 * Frame: vehicle. Units: rad. `clocks` one per intermediate shaft; `columnYoke` the column yoke's ears from the first
 * reference (the normal of the first bend) at input 0; `input` the column's turn, right-hand about its axis.
 */
export function placeYokes(
  chain: Chain,
  clocks: ArrayLike<number>,
  columnYoke: Radians,
  input: Radians,
  out: Float64Array,
): void {
  let ears = columnYoke + input;
  for (let i = 0; i < chain.count; i += 1) {
    writeEars(chain, i, ears, out, 6 * i);
    const bend = chain.bends[i] as number;
    ears += (chain.quarter[i] as number) - lag(chain.cosines[i] as number, ears - bend);
    writeEars(chain, i + 1, ears, out, 6 * i + 3);
    if (i < chain.count - 1) ears += clocks[i] as number;
  }
}

/**
 * How far every shaft has turned from input 0, right-hand about its direction: the column, each intermediate shaft, the
 * box's input, into `out` (one more than there are joints). Allocates nothing. Units and angles as for `placeYokes`.
 */
export function turnsOf(
  chain: Chain,
  clocks: ArrayLike<number>,
  columnYoke: Radians,
  input: Radians,
  out: Float64Array,
): void {
  let ears = columnYoke + input;
  let before = columnYoke;
  out[0] = input;
  for (let i = 0; i < chain.count; i += 1) {
    const cosine = chain.cosines[i] as number;
    const bend = chain.bends[i] as number;
    const quarter = chain.quarter[i] as number;
    ears += quarter - lag(cosine, ears - bend);
    before += quarter - lag(cosine, before - bend);
    out[i + 1] = ears - before;
    if (i === chain.count - 1) return;
    ears += clocks[i] as number;
    before += clocks[i] as number;
  }
}

function writeEars(chain: Chain, shaft: number, angle: number, out: Float64Array, at: number): void {
  const r = chain.references[shaft] as Point;
  const d = chain.directions[shaft] as Point;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  out[at] = c * r[0] + s * (d[1] * r[2] - d[2] * r[1]);
  out[at + 1] = c * r[1] + s * (d[2] * r[0] - d[0] * r[2]);
  out[at + 2] = c * r[2] + s * (d[0] * r[1] - d[1] * r[0]);
}
