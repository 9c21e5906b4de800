import type { Point } from '../geometry/points.ts';
import { type Layout, type LayoutDocument, resolveLayout } from '../layout/index.ts';
import { prepareFrontEnd } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { seededRandom } from '../solve/random.ts';
import { evenly, ROW_OK, sweepTravel } from '../sweep/index.ts';

/** How bump steer spreads when every hardpoint is off by up to a tolerance. rad over heave in mm; typed arrays. */
export interface ToleranceBand {
  readonly heave: Float64Array;
  /** As drawn. */
  readonly drawn: Float64Array;
  /** Nineteen cars of twenty lie between these at each heave. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Worst |bump steer| that nineteen cars of twenty stay under. */
  readonly worst: number;
  /** Cars that were built in this way, and those among them that did not reach over the travel and are not counted. */
  readonly built: number;
  readonly unreached: number;
}

export interface ToleranceOptions {
  /** mm: each coordinate is off by this at most, all errors as likely. An eighth of an inch if absent. */
  readonly tolerance?: number;
  readonly cars?: number;
  readonly heaves?: number;
  readonly seed?: number;
}

/** Share of the cars that lie outside the band on either side. */
const TAIL = 0.025;
const WORST_SHARE = 0.95;

/** Directions are given by their own numbers and are no places that could be off. */
const NO_PLACES: ReadonlySet<string> = new Set([
  'sectorAxis',
  'rails',
  'obstacles',
  'photos',
  'studs',
  'shaft',
]);

/** A copy with every point inside moved by `off`, whatever part of the layout it belongs to. */
function scattered<Value>(value: Value, off: () => number): Value {
  if (Array.isArray(value) && value.length === 3 && value.every((entry) => typeof entry === 'number'))
    return (value as unknown as Point).map((entry) => entry + off()) as Value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, entry]) => [key, NO_PLACES.has(key) ? entry : scattered(entry, off)]),
  ) as Value;
}

/** The value below which a share of the sorted ones lie, by the straight line between neighbours. */
function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const low = Math.floor(place);
  const high = Math.min(low + 1, sorted.length - 1);
  return (sorted[low] as number) + (place - low) * ((sorted[high] as number) - (sorted[low] as number));
}

/**
 * Bump steer's spread over the travel when every hardpoint, left and right on their own, is off by up to a tolerance in
 * each direction: so many cars are drawn at random and swept. Their links are made to fit, as a builder sets toe and the
 * straight-ahead; so each car's bump steer is nothing at ride height.
 * Frame:    vehicle. Units: mm, rad. Shapes: one number for each heave. The same seed gives the same band.
 * Outcomes: a band; no-travel where the layout as drawn does not reach, or too few of its cars do.
 * Source:   own writing; even errors are an assumption, common practice has no figure.
 * Checked:  tests/unit/sensitivity.test.ts (no tolerance, no band; twice the tolerance, twice the band; against the
 *           root of the sum of squares of single steps).
 */
export function toleranceBand(
  document: LayoutDocument,
  options: ToleranceOptions = {},
): Outcome<ToleranceBand, 'no-travel'> {
  const { tolerance = 3.175, cars = 200, heaves = 31, seed = 1 } = options;
  const layout = resolveLayout(document);
  const { bump, rebound: droop } = layout.travel;
  const sweep = (of: Layout) => {
    const swept = sweepTravel(prepareFrontEnd(of), 'heave', -droop, bump, heaves, 0);
    return swept.status.every((status) => status === ROW_OK) ? swept.bumpSteer : undefined;
  };
  const drawn = sweep(layout);
  if (!drawn) return failed('no-travel');
  const random = seededRandom(seed);
  const off = () => (2 * random() - 1) * tolerance;
  const built: Float64Array[] = [];
  for (let car = 0; car < cars; car += 1) {
    const bumpSteer = sweep(scattered(layout, off));
    if (bumpSteer) built.push(bumpSteer);
  }
  if (built.length < cars / 2) return failed('no-travel');
  const columns = Array.from(drawn, (_, i) => Float64Array.from(built, (car) => car[i] as number).sort());
  const worsts = Float64Array.from(built, (car) =>
    car.reduce((most, angle) => Math.max(most, Math.abs(angle)), 0),
  ).sort();
  return succeeded({
    heave: evenly(-droop, bump, heaves),
    drawn,
    lower: Float64Array.from(columns, (column) => quantile(column, TAIL)),
    upper: Float64Array.from(columns, (column) => quantile(column, 1 - TAIL)),
    worst: quantile(worsts, WORST_SHARE),
    built: cars,
    unreached: cars - built.length,
  });
}
