import type { Point } from '../geometry/points.ts';
import {
  type Hardpoint,
  type Layout,
  type LayoutDocument,
  originOf,
  resolveLayout,
  withValue,
} from '../layout/index.ts';
import { surveyedPoints } from './survey.ts';

export const AXES = ['x', 'y', 'z'] as const;
export type AxisName = (typeof AXES)[number];

/** mm. How well a coordinate is known that nobody measured: one standard deviation about where it is drawn. */
export const DRAWN_DOUBT = 250;

/** One coordinate that the document holds and the adjustment may move. */
export interface Unknown {
  /** The hardpoint as the document holds it: the left one of a mirrored pair. */
  readonly id: string;
  readonly axis: 0 | 1 | 2;
  readonly drawn: number;
}

/** Where a point's coordinates come from: an unknown's index, or -1 where it stands still; a mirrored y is negated. */
export interface PointPlace {
  readonly point: Hardpoint;
  readonly index: readonly [number, number, number];
  readonly sign: readonly [number, number, number];
  readonly drawn: Point;
  /** Placed by the user, not measured: nothing of it is adjusted. */
  readonly planned: boolean;
}

export interface UnknownTable {
  readonly document: LayoutDocument;
  readonly unknowns: readonly Unknown[];
  readonly places: ReadonlyMap<string, PointPlace>;
}

/**
 * The coordinates that an adjustment of a document may move: every one of every hardpoint of axle, location, lateral
 * and steering as the document holds it, mirrored sides once, but for planned points and the wheel centres' x.
 */
export function unknownsOf(document: LayoutDocument): UnknownTable {
  const unknowns: Unknown[] = [];
  const places = new Map<string, PointPlace>();
  for (const point of surveyedPoints(document)) {
    const planned = originOf(document, point) === 'plan';
    const held = point.twin ? places.get(point.twin) : undefined;
    if (held) {
      places.set(point.id, { point, index: held.index, sign: [1, -1, 1], drawn: point.at, planned });
      continue;
    }
    const index = ([0, 1, 2] as const).map((axis) => {
      if (planned || (axis === 0 && point.id.endsWith('.wheelCentre'))) return -1;
      return unknowns.push({ id: point.id, axis, drawn: point.at[axis] }) - 1;
    }) as [number, number, number];
    places.set(point.id, { point, index, sign: [1, 1, 1], drawn: point.at, planned });
  }
  return { document, unknowns, places };
}

/** A coordinate of a point at given unknowns, mm. */
export function coordinateAt(place: PointPlace, axis: 0 | 1 | 2, x: Float64Array): number {
  const index = place.index[axis];
  return index < 0 ? place.drawn[axis] : place.sign[axis] * (x[index] as number);
}

/** A point's place at given unknowns, mm. */
export function pointAt(place: PointPlace, x: Float64Array): Point {
  return [coordinateAt(place, 0, x), coordinateAt(place, 1, x), coordinateAt(place, 2, x)];
}

/**
 * The document with its points where the unknowns put them; the tyre's radius follows the wheel centres' mean height.
 * What is bolted to a point does not come along: every point was measured for itself. Not validated.
 */
export function documentAt(table: UnknownTable, x: Float64Array): LayoutDocument {
  let document = table.document;
  for (const [id, place] of table.places) {
    if (place.index.every((index) => index < 0) || place.sign[1] < 0) continue;
    document = withValue(document, id, pointAt(place, x));
  }
  const height = (side: 'left' | 'right') =>
    coordinateAt(table.places.get(`axle.${side}.wheelCentre`) as PointPlace, 2, x);
  return { ...document, car: { ...document.car, tyreRadius: (height('left') + height('right')) / 2 } };
}

/** The layout at given unknowns, both sides spelled out. */
export function layoutAt(table: UnknownTable, x: Float64Array): Layout {
  return resolveLayout(documentAt(table, x));
}
