import { mirrored, type Point } from '../../../shared-math/geometry/points.ts';
import { cross, subtract, unit } from '../../../shared-math/geometry/vectors.ts';
import { type BallJoint, ballJoints } from '../../../shared-math/joints/index.ts';
import type { Hardpoint, Layout, LayoutDocument } from '../../../shared-math/layout/index.ts';

// Which way the stud of a ball or rod end points: the usual way for its place, or one that the person gives.

/** The ways that can be chosen in words; anything else is three numbers. */
export type StudWay = 'upright' | 'fore and aft' | 'across' | 'kingpin' | 'sector';

/** A ball of the layout and its stud: as it usually points, and as it points here. */
export interface Stud {
  readonly joint: BallJoint;
  /** Length 1. */
  readonly usual: Point;
  /** The direction that the document gives, as it was given; undefined if the usual one holds. */
  readonly own: Point | undefined;
}

/** The stud at a hardpoint; undefined if the point is no ball. */
export function studAt(layout: Layout, id: string): Stud | undefined {
  const joint = ballJoints(layout).find((each) => each.id === id);
  if (!joint) return undefined;
  const { studs: _, ...plain } = layout;
  const usual = ballJoints(plain).find((each) => each.id === id)?.stud ?? joint.stud;
  return { joint, usual, own: layout.studs?.[id] };
}

/** Length 1, to twelve decimals: a document is read by people too. */
function direction(of: Point): Point {
  return unit(of).map((value) => Math.round(value * 1e12) / 1e12 || 0) as unknown as Point;
}

/** The direction that a way means for this ball, length 1. */
export function directionOfWay(layout: Layout, joint: BallJoint, way: StudWay): Point {
  switch (way) {
    case 'upright':
      return [0, 0, 1];
    case 'fore and aft':
      return [1, 0, 0];
    case 'across':
      return [0, 1, 0];
    case 'kingpin': {
      const { kingpinTop: top, kingpinBottom: bottom } =
        layout.axle[joint.studCarrier.endsWith('right') ? 'right' : 'left'];
      return direction(subtract(top, bottom));
    }
    case 'sector':
      return direction(layout.steering.box.sectorAxis);
  }
}

/** The ways that make sense for a ball; an arm's own axis first, before a plain direction that it happens to lie along. */
export function waysFor({ studCarrier }: BallJoint): readonly StudWay[] {
  const plain = ['upright', 'fore and aft', 'across'] as const;
  if (studCarrier === 'pitman') return ['sector', ...plain];
  return studCarrier.startsWith('spindle') ? ['kingpin', ...plain] : plain;
}

/** Sine of 0.05°: below that two directions are one to anybody's eye. */
const SAME_DIRECTION = 0.0009;

function sameLine(a: Point, b: Point): boolean {
  return Math.hypot(...cross(unit(a), unit(b))) < SAME_DIRECTION;
}

/** The way that a direction is, whichever end of the stud is up; undefined if it is none of them. */
export function wayOf(layout: Layout, joint: BallJoint, direction: Point): StudWay | undefined {
  return waysFor(joint).find((way) => sameLine(directionOfWay(layout, joint, way), direction));
}

/** The document with a ball's stud turned, and its mirror image's with it; without a direction the usual one holds again. */
export function withStud(
  document: LayoutDocument,
  point: Pick<Hardpoint, 'id' | 'twin'>,
  to: Point | undefined,
): LayoutDocument {
  const { studs = {}, ...rest } = document;
  const kept = Object.fromEntries(
    Object.entries(studs).filter(([id]) => id !== point.id && id !== point.twin),
  );
  const given = to ? { [point.id]: to, ...(point.twin ? { [point.twin]: mirrored(to) } : {}) } : {};
  const next = { ...kept, ...given };
  return Object.keys(next).length > 0 ? { ...rest, studs: next } : rest;
}
