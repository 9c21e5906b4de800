import type { Point } from '../geometry/points.ts';
import type { Carrier, Side } from '../layout/index.ts';
import type { RING, SEGMENT, SOLID } from './shapes.ts';

/** A point and what carries it. */
export interface Carried {
  readonly carrier: Carrier;
  readonly at: Point;
}

/**
 * A part of a body: a capsule between two carried points; a cylinder or ring about the line from one carried point to
 * another; or a block of the frame, as the numbers of `shapes.ts`.
 */
export type BodyPart =
  | { readonly kind: typeof SEGMENT; readonly radius: number; readonly from: Carried; readonly to: Carried }
  | {
      readonly kind: typeof SOLID | typeof RING;
      readonly centre: Carried;
      readonly tip: Carried;
      readonly half: number;
      readonly outer: number;
      readonly inner: number;
    }
  | { readonly kind: 1; readonly numbers: readonly number[] };

/** What a body is, as far as its pairs and their limits ask. */
export type BodyRole = 'steering' | 'tyre' | 'axle' | 'location' | 'lateral' | 'box' | 'frame' | 'obstacle';

/** Something that takes up room: it moves as one name, and may be made of several convex parts. */
export interface Body {
  readonly id: string;
  /** What a builder calls it, to stand within a sentence: "drag link", "left tyre". */
  readonly name: string;
  readonly role: BodyRole;
  readonly side?: Side;
  /** A hardpoint that shapes it; of what the frame carries, none. */
  readonly hardpoint?: string;
  readonly parts: readonly BodyPart[];
  /** True where the layout does not state where it runs or how it is shaped: it is taken as it is usually built. */
  readonly assumed?: boolean;
  /** Bodies that it is joined to by design, and is not judged against. */
  readonly joins: readonly string[];
}
