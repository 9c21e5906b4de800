import type { Point } from '../geometry/points.ts';
import type { Layout } from './resolve.ts';
import type { LocationKind } from './schema.ts';
import { valueAt } from './values.ts';

/** A point of a kind of axle location, on each side where it has two. */
export interface LocationPoint {
  /** Within its side, or within the location: `upper.axle`. */
  readonly path: string;
  readonly name: string;
  readonly carrier: 'axle' | 'frame';
  /** One of a left and a right. */
  readonly sided?: 'location';
}

/** What is known of a kind of axle location without solving anything. */
export interface LocationFacts {
  /** As somebody calls it who builds one. */
  readonly words: string;
  readonly points: readonly LocationPoint[];
  /** The hardpoint that stands for it where something is said of the whole. */
  readonly part: string;
  /** What its rods end in on a parts list; empty if it has bushings. */
  readonly rodEnd: string;
  /** True where a rod of each side is rigid with its half of the axle: in roll the halves have to turn apart, or the rods give. */
  readonly rigidRods?: true;
}

const sided = (path: string, name: string, carrier: LocationPoint['carrier']): LocationPoint => ({
  path,
  name,
  carrier,
  sided: 'location',
});

/** The kinds of axle location in the order in which they are offered. A new kind is one entry; the compiler asks for the rest. */
export const LOCATION_FACTS: Readonly<Record<LocationKind, LocationFacts>> = {
  hairpins: {
    words: 'hairpin rods',
    points: [sided('framePivot', 'hairpin pivot', 'frame')],
    part: 'location.left.framePivot',
    rodEnd: 'Hairpin rod end',
    rigidRods: true,
  },
  'split-rods': {
    words: 'split radius rods',
    points: [sided('framePivot', 'radius rod ball', 'frame')],
    part: 'location.left.framePivot',
    rodEnd: 'Radius rod end',
    rigidRods: true,
  },
  wishbone: {
    words: 'wishbone',
    points: [{ path: 'framePivot', name: 'wishbone pivot', carrier: 'frame' }],
    part: 'location.framePivot',
    rodEnd: 'Wishbone ball',
  },
  'four-bar': {
    words: 'four bars',
    points: [
      sided('upper.axle', 'upper bar, axle end', 'axle'),
      sided('upper.frame', 'upper bar, frame end', 'frame'),
      sided('lower.axle', 'lower bar, axle end', 'axle'),
      sided('lower.frame', 'lower bar, frame end', 'frame'),
    ],
    part: 'location.left.upper.frame',
    rodEnd: 'Four-bar rod end',
  },
  'parallel-leaf': {
    words: 'parallel leaf springs',
    points: [
      sided('fixedEye', 'spring, fixed eye', 'frame'),
      sided('seat', 'spring seat', 'axle'),
      sided('shackleEye', 'spring, shackle eye', 'frame'),
    ],
    part: 'location.left.seat',
    rodEnd: '',
  },
  'quarter-elliptic': {
    words: 'quarter-elliptics',
    points: [
      sided('butt', 'spring, thick end', 'frame'),
      sided('clamp', 'spring, end of its clamp', 'frame'),
      sided('eye', 'spring, eye', 'axle'),
      sided('rod.axle', 'radius rod, axle end', 'axle'),
      sided('rod.frame', 'radius rod, frame end', 'frame'),
    ],
    part: 'location.left.rod.frame',
    rodEnd: 'Radius rod end',
  },
};

/** Whether a rod of each side is rigid with its half of the axle. */
export function hasRigidRods({ location }: Pick<Layout, 'location'>): boolean {
  if (location.kind === 'quarter-elliptic') return location.eyes === 'sliding';
  return LOCATION_FACTS[location.kind].rigidRods === true;
}

/** Where the points of a layout's location stand that a carrier carries, on both sides. mm, as drawn. */
export function locationPointsOn({ location }: Layout, on: LocationPoint['carrier']): Point[] {
  return LOCATION_FACTS[location.kind].points
    .filter(({ carrier }) => carrier === on)
    .flatMap((point) => (point.sided ? [`left.${point.path}`, `right.${point.path}`] : [point.path]))
    .map((path) => valueAt(location, path) as Point);
}
