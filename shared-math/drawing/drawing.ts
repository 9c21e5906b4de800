import type { Point } from '../geometry/points.ts';
import type { Carrier, Side } from '../layout/index.ts';
import type { ShaftLine } from '../shaft/index.ts';
import type { View } from './views.ts';

/** A point that a part of the car carries, as drawn at ride height; mm. */
export interface CarriedPoint {
  readonly carrier: Carrier;
  readonly at: Point;
}

/** A point between others, wherever they are: a weighted sum (weights sum to 1) and a shift, mm of the frame's axes. */
export interface BlendedPoint {
  readonly of: readonly (readonly [point: number, weight: number])[];
  readonly shift: Point;
}

/** A point of the steering shaft, of that member of its line: it turns about the member's axis as the handwheel does. */
export interface TurnedPoint {
  readonly member: number;
  readonly at: Point;
}

export type DrawnPoint = CarriedPoint | BlendedPoint | TurnedPoint;

/**
 * A disc with a rounded rim, about the line from point `at` to point `tip`: the disc's radius first, then the
 * radius of the rounding around it. A ball is a disc of no radius. mm.
 */
export interface Disc {
  readonly at: number;
  readonly tip: number;
  readonly radius: number;
  readonly round: number;
}

/** One place along a band: the middle of its section, and the middles of the section's upper and outer edges. */
export interface Section {
  readonly centre: number;
  readonly up: number;
  readonly out: number;
}

/** How a shape is inked: an outline, a fine line inside one, or a broken line for what is no part. */
export type Inking = 'outline' | 'fine' | 'broken';

interface Drawn {
  readonly ink: Inking;
  /** Closed shapes may be filled: with a part's own tint, or with paper so that they cover what lies behind; what is
   * an obstacle is hatched over its tint. */
  readonly fill: 'none' | 'paper' | 'tint' | 'hatch';
  /** Drawn in these views only; in all where not given. */
  readonly views?: readonly View[];
  /** Whether the pictorial draws it; where not given it draws what is filled in all views. */
  readonly pictorial?: boolean;
}

/** The convex hull of rounded discs: a tyre, a shaft, a tapered arm, a ball. Its outline is a silhouette. */
export interface DrawnHull extends Drawn {
  readonly kind: 'body';
  readonly discs: readonly Disc[];
  /** What one can see through, between two discs: the wheel's opening in a tyre. Only the pictorial leaves it open. */
  readonly opening?: readonly [Disc, Disc];
}

/** The convex hull of points. */
export interface DrawnBlock extends Drawn {
  readonly kind: 'block';
  readonly points: readonly number[];
}

/** A bar of rectangular section along a path, mitred at its kinks. Seen along its length, the hull of its sections. */
export interface Band extends Drawn {
  readonly kind: 'band';
  readonly sections: readonly Section[];
  readonly endOn: readonly View[];
}

/** An open line. */
export interface Line extends Drawn {
  readonly kind: 'line';
  readonly points: readonly number[];
}

export type Shape = DrawnHull | DrawnBlock | Band | Line;

/** What a part is to the reader: it decides colour and weight. */
export type Role = 'ground' | 'tyre' | 'frame' | 'axle' | 'link' | 'spring' | 'box' | 'steering' | 'obstacle';

export interface Part {
  readonly id: string;
  /** What a builder calls it. */
  readonly name: string;
  readonly role: Role;
  readonly side?: Side;
  /** Ids of the hardpoints that shape it. */
  readonly hardpoints: readonly string[];
  readonly shapes: readonly Shape[];
}

/** A layout as parts made of carried points: built once for an edit, placed in any pose, outlined in any view. */
export interface Drawing {
  /** Blended points come after the points they are made of. */
  readonly points: readonly DrawnPoint[];
  readonly parts: readonly Part[];
  /** What its turned points turn with; undefined if there is no steering shaft. */
  readonly shaft?: ShaftLine | undefined;
}

/** One word for how a drawing is built: drawings of the same structure differ only in where their points are. */
export function structureOf(drawing: Drawing): string {
  return drawing.parts
    .map((part) => `${part.id}:${part.role}:${part.shapes.map((shape) => shape.kind).join(',')}`)
    .join(' ');
}
