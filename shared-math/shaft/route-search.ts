import { add, cross, dot, midpoint, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import { distance, type Point } from '../layout/index.ts';
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

/** rad. What a millimetre too little of room costs in a search: far more than any millimetre could save in angle. */
const COST_PER_MM = 0.05;
/** Share at which all angles together count beside the worst one, so that the others are small too. */
const ALL_ANGLES = 1e-4;
/** mm. The search keeps this much more than is wanted, so that what it ends on is clear. */
const MARGIN = 0.05;

/** What the search makes small: the worst angle, with a price on every millimetre that is lacking. */
function cost(space: RouteSpace, centres: readonly Point[], lacking: number): number {
  const { angles, spare } = measureTrial(space, centres);
  let short = lacking + Math.max(MARGIN - spare, 0);
  for (let i = 1; i < centres.length; i += 1)
    short += Math.max(space.leastShaft - distance(centres[i] as Point, centres[i - 1] as Point), 0);
  return (
    Math.max(...angles) + ALL_ANGLES * angles.reduce((sum, angle) => sum + angle, 0) + COST_PER_MM * short
  );
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
  return Array.from({ length: count }, (_, i) => least + ((most - least) * (i + 0.5)) / count);
}

/** Starts for the middle joint: on the straight line and beside it, all around. */
function middles(first: Point, last: Point): Point[] {
  const along = subtract(last, first);
  const length = norm(along);
  const mean = midpoint(first, last);
  if (!(length > 0)) return [mean];
  const across = unit(cross(along, Math.abs(along[2]) < 0.9 * length ? [0, 0, 1] : [1, 0, 0]));
  const other = unit(cross(along, across));
  return [-1, 0, 1].flatMap((i) =>
    [-1, 0, 1].map((j) => add(mean, add(scaled(across, 0.2 * i * length), scaled(other, 0.2 * j * length)))),
  );
}

/** The best few starts are searched from; more found nothing better on the routes that were tried. */
const STARTS = 6;

/**
 * The route of two or three joints with the least worst angle that is clear, by the simplex method from the best of a
 * lattice of starts. The first and last joint stay on the column's and the box's axes. No randomness.
 */
export function searchRoute(space: RouteSpace, joints: 2 | 3): RouteTrial {
  const slides = evenly(space.columnSlide, joints === 2 ? 7 : 4).flatMap((s) =>
    evenly(space.boxSlide, joints === 2 ? 7 : 4).map((t) => [s, t]),
  );
  const starts =
    joints === 2
      ? slides
      : slides.flatMap((slide) => {
          const { centres } = placed(space, slide);
          return middles(centres[0] as Point, centres[1] as Point).map((middle) => [...slide, ...middle]);
        });
  const value = (x: readonly number[]) => {
    const { centres, lacking } = placed(space, x);
    return cost(space, centres, lacking);
  };
  const ordered = starts.map((at) => ({ at, value: value(at) })).sort((a, b) => a.value - b.value);
  const spread = (range: readonly [number, number]) => Math.max((range[1] - range[0]) / 5, 5);
  const scale = [spread(space.columnSlide), spread(space.boxSlide), 40, 40, 40].slice(
    0,
    joints === 2 ? 2 : 5,
  );
  const ends = ordered
    .slice(0, STARTS)
    .map(({ at }) =>
      nelderMead(value, at, { scale, tolerance: 1e-5, evaluations: joints === 2 ? 500 : 2500 }),
    );
  const best = ends.reduce((least, end) => (end.value < least.value ? end : least));
  return measureTrial(space, placed(space, best.at).centres);
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
