import { mirrored, type Point } from '../geometry/points.ts';
import type { AxleSide, LayoutDocument, Location } from './schema.ts';

/** A location with both of its sides spelled out. */
export type BothSides<Kind> = Kind extends { readonly left: infer Half; readonly right: unknown }
  ? Omit<Kind, 'right'> & { readonly right: Half }
  : Kind;

/** A layout with both sides spelled out: what the mathematics works on. Same frame and units as the document. */
export interface Layout extends Omit<LayoutDocument, 'axle' | 'location'> {
  readonly axle: Omit<LayoutDocument['axle'], 'right'> & { readonly right: AxleSide };
  readonly location: BothSides<Location>;
}

function isPoint(value: unknown): value is Point {
  return Array.isArray(value) && value.length === 3 && value.every((entry) => typeof entry === 'number');
}

/** Every point inside a side, however deep, moved to the other side of the centre plane; angles stay. */
export function mirroredSide<Value>(value: Value): Value {
  if (isPoint(value)) return mirrored(value) as Value;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, mirroredSide(entry)])) as Value;
}

function withRight<Half>(pair: { readonly left: Half; readonly right: Half | 'mirror' }): Half {
  return pair.right === 'mirror' ? mirroredSide(pair.left) : pair.right;
}

/** Spells out mirrored sides. A copy; the document stays as it is. */
export function resolveLayout(document: LayoutDocument): Layout {
  const { axle, location } = document;
  return {
    ...document,
    axle: { ...axle, right: withRight(axle) },
    location: ('right' in location
      ? { ...location, right: withRight<unknown>(location) }
      : location) as Layout['location'],
  };
}
