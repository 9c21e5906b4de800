import { distance, type Point } from '../geometry/points.ts';
import { add, cross, dot, midpoint, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import { nelderMead } from '../solve/nelder-mead.ts';
import type { Radians } from '../units/index.ts';
import type { ClearanceOf, Nearest } from './obstacles.ts';
import { angleBetween } from './route.ts';

/** What a route has to join and to keep to. mm. */
export interface RouteSpace {
  readonly columnEnd: Point;
  readonly columnAxis: Point;
  readonly boxEnd: Point;
  readonly boxAxis: Point;
  /** How far from the part's end, along its axis, the joint next to it may stand. */
  readonly columnSlide: readonly [least: number, most: number];
  readonly boxSlide: readonly [least: number, most: number];
  readonly leastShaft: number;
  readonly tubeRadius: number;
  readonly jointRadius: number;
  readonly clearance: number;
  readonly clearanceOf: ClearanceOf;
}

/** Joint centres with what they measure. rad, mm. */
export interface RouteTrial {
  readonly centres: readonly Point[];
  readonly angles: readonly Radians[];
  /** Least room between the shaft's or joints' surfaces and anything, less what is wanted; 0 or more is clear. */
  readonly spare: number;
  readonly nearest: Nearest;
}

/** mm. The search keeps this much more than is wanted, so that what it ends on is clear. */
const MARGIN = 0.05;

/** Measures joint centres. */
export function measureTrial(space: RouteSpace, centres: readonly Point[]): RouteTrial {
  const directions = [
    space.columnAxis,
    ...centres.slice(1).map((centre, i) => subtract(centre, centres[i] as Point)),
    space.boxAxis,
  ];
  const line = [space.columnEnd, ...centres, space.boxEnd];
  let nearest: Nearest = { distance: Number.POSITIVE_INFINITY, name: '' };
  let spare = Number.POSITIVE_INFINITY;
  const ask = (from: Point, to: Point, radius: number) => {
    const found = space.clearanceOf(from, to);
    const free = found.distance - radius - space.clearance;
    if (free < spare) [spare, nearest] = [free, { ...found, distance: found.distance - radius }];
  };
  for (let i = 0; i + 1 < line.length; i += 1) ask(line[i] as Point, line[i + 1] as Point, space.tubeRadius);
  for (const centre of centres) ask(centre, centre, space.jointRadius);
  return {
    centres,
    angles: centres.map((_, i) => angleBetween(directions[i] as Point, directions[i + 1] as Point)),
    spare,
    nearest,
  };
}

/**
 * rad. What a millimetre too little of room costs: little at first, so that a search finds its way around things, then
 * so much that six cost more than any angle there is.
 */
const COSTS_PER_MM = { first: 0.02, last: 0.5 } as const;
/** Share at which all angles together count beside the worst one, so that the others are small too. */
const ALL_ANGLES = 1e-4;

/** What all stretches and joints of a route lack of the room wanted and a margin, mm; exact below `enough`. */
export function lackingRoom(
  space: RouteSpace,
  centres: readonly Point[],
  enough = Number.POSITIVE_INFINITY,
): number {
  const tube = space.tubeRadius + space.clearance + MARGIN;
  const joint = space.jointRadius + space.clearance + MARGIN;
  let short = 0;
  for (let i = 0; i <= centres.length && short < enough; i += 1) {
    const from = i === 0 ? space.columnEnd : (centres[i - 1] as Point);
    const to = i === centres.length ? space.boxEnd : (centres[i] as Point);
    short += Math.max(tube - space.clearanceOf(from, to, tube).distance, 0);
    if (i > 0) short += Math.max(joint - space.clearanceOf(from, from, joint).distance, 0);
  }
  return short;
}

/**
 * What the search makes small: the worst angle as each joint weighs it, with a price on every millimetre that is lacking; exact
 * below `enough`. Angles are asked first, as room costs the more to ask.
 */
function cost(
  space: RouteSpace,
  weights: readonly number[],
  centres: readonly Point[],
  lacking: number,
  perMm: number,
  enough: number,
): number {
  let worst = 0;
  let sum = 0;
  let before = space.columnAxis;
  for (let i = 0; i < centres.length; i += 1) {
    const after =
      i + 1 < centres.length ? subtract(centres[i + 1] as Point, centres[i] as Point) : space.boxAxis;
    const angle = angleBetween(before, after) * (weights[i] as number);
    if (angle > worst) worst = angle;
    sum += angle;
    before = after;
  }
  let short = lacking;
  for (let i = 1; i < centres.length; i += 1)
    short += Math.max(space.leastShaft - distance(centres[i] as Point, centres[i - 1] as Point), 0);
  const known = worst + ALL_ANGLES * sum + perMm * short;
  if (known >= enough) return known;
  return known + perMm * lackingRoom(space, centres, (enough - known) / perMm);
}

/** How far a slide lies outside its range, and the value put inside it. */
function within(value: number, [least, most]: readonly [number, number]): [inside: number, off: number] {
  const inside = Math.min(Math.max(value, least), most);
  return [inside, Math.abs(value - inside)];
}

/** The joints of a route from the search's variables: slides on the two axes, then the middle joint if there is one. */
function placed(space: RouteSpace, x: readonly number[]): { centres: Point[]; lacking: number } {
  const [s, offColumn] = within(x[0] as number, space.columnSlide);
  const [t, offBox] = within(x[1] as number, space.boxSlide);
  const first = add(space.columnEnd, scaled(unit(space.columnAxis), s));
  const last = add(space.boxEnd, scaled(unit(space.boxAxis), -t));
  const middle = x.length > 2 ? [[x[2], x[3], x[4]] as unknown as Point] : [];
  return { centres: [first, ...middle, last], lacking: offColumn + offBox };
}

function evenly([least, most]: readonly [number, number], count: number): number[] {
  return Array.from({ length: count }, (_, i) => least + ((most - least) * i) / (count - 1));
}

/**
 * Starts for the middle joint, in nine groups by the side on which it passes the straight line from first to last: on
 * the line, and eight directions around it; in each at three places along the line and two distances from it.
 */
function middles(first: Point, last: Point): Point[][] {
  const along = subtract(last, first);
  const length = norm(along);
  if (!(length > 0)) return [[first]];
  const across = unit(cross(along, Math.abs(along[2]) < 0.9 * length ? [0, 0, 1] : [1, 0, 0]));
  const other = unit(cross(along, across));
  const places = [0.3, 0.5, 0.75].map((share) => add(first, scaled(along, share)));
  const around = Array.from({ length: 8 }, (_, i) => {
    const [c, s] = [Math.cos((Math.PI * i) / 4), Math.sin((Math.PI * i) / 4)];
    const way = add(scaled(across, c), scaled(other, s));
    return places.flatMap((place) => [0.12, 0.3].map((share) => add(place, scaled(way, share * length))));
  });
  return [places, ...around];
}

/** Starts that differ in where the last joint stands and on which side the middle one passes: one search from each. */
function startGroups(space: RouteSpace, joints: 2 | 3, value: (x: readonly number[]) => number): number[][] {
  const best = (list: readonly number[][]) => {
    const values = list.map(value);
    return list[values.indexOf(Math.min(...values))] as number[];
  };
  return evenly(space.boxSlide, joints === 2 ? 5 : 3).flatMap((t) => {
    const slides = evenly(space.columnSlide, joints === 2 ? 5 : 3).map((s) => [s, t]);
    if (joints === 2) return [best(slides)];
    const groups: number[][][] = [];
    for (const slide of slides) {
      const { centres } = placed(space, slide);
      for (const [i, group] of middles(centres[0] as Point, centres[1] as Point).entries()) {
        groups[i] ??= [];
        groups[i].push(...group.map((middle) => [...slide, ...middle]));
      }
    }
    return groups.map(best);
  });
}

/** How many of the first searches' ends are searched on from, and how many of those finely. */
const GOING_ON = 6;
const FINE = 2;

/**
 * The route of two or three joints with the least worst angle that is clear, by the simplex method from a lattice of
 * starts on every side of the obstacles. The first and last joint stay on the column's and the box's axes. Each
 * joint's angle counts by its own weight, as a joint of a kind that may bend further weighs less. No randomness.
 * Shapes:   `weights` has one entry for each joint, in order from the column; all 1 compares plain angles.
 */
export function searchRoute(
  space: RouteSpace,
  joints: 2 | 3,
  weights: readonly number[] = new Array<number>(joints).fill(1),
): RouteTrial {
  const by =
    (perMm: number) =>
    (x: readonly number[], enough = Number.POSITIVE_INFINITY) => {
      const { centres, lacking } = placed(space, x);
      return cost(space, weights, centres, lacking, perMm, enough);
    };
  const [rough, strict] = [by(COSTS_PER_MM.first), by(COSTS_PER_MM.last)];
  const spread = (range: readonly [number, number]) => Math.max((range[1] - range[0]) / 5, 5);
  const scale = [spread(space.columnSlide), spread(space.boxSlide), 40, 40, 40].slice(
    0,
    joints === 2 ? 2 : 5,
  );
  const descend = (value: typeof rough, from: readonly number[], share: number, evaluations: number) =>
    nelderMead(value, from, { scale: scale.map((step) => step * share), tolerance: 1e-3, evaluations }).at;
  const leading = (list: readonly number[][], count: number) =>
    list
      .map((at) => ({ at, value: strict(at) }))
      .sort((a, b) => a.value - b.value)
      .slice(0, count)
      .map(({ at }) => at);

  const first = startGroups(space, joints, rough).map((at) => descend(rough, at, 1, 300));
  const second = leading(first, GOING_ON).map((at) => descend(strict, at, 0.3, 800));
  // Worst angles meet on edges, where a simplex comes to rest early: on from the best, finely.
  const third = leading(second, FINE).map((at) =>
    [0.2, 0.05, 0.01].reduce((from, share) => descend(strict, from, share, 800), at),
  );
  const [best] = leading(third, 1);
  return measureTrial(space, placed(space, best as number[]).centres);
}

/**
 * Where the column's and the box's axes come nearest: the one place for a single joint, half way between them, and how
 * far apart they pass there. Nothing for parallel axes.
 */
export function meetingOfAxes(space: RouteSpace): { centre: Point; gap: number } | undefined {
  const a = unit(space.columnAxis);
  const b = unit(space.boxAxis);
  const w = subtract(space.columnEnd, space.boxEnd);
  const c = dot(a, b);
  const determinant = 1 - c * c;
  if (determinant < 1e-9) return undefined;
  const s = (c * dot(b, w) - dot(a, w)) / determinant;
  const t = (dot(b, w) - c * dot(a, w)) / determinant;
  const [onColumn, onBox] = [add(space.columnEnd, scaled(a, s)), add(space.boxEnd, scaled(b, t))];
  return { centre: midpoint(onColumn, onBox), gap: distance(onColumn, onBox) };
}
