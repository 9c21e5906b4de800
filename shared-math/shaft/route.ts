import { distance, type Point } from '../geometry/points.ts';
import { cross, dot, norm, subtract, unit } from '../geometry/vectors.ts';
import type { JointKind, ShaftDocument } from '../layout/index.ts';
import { type Radians, toRadians } from '../units/index.ts';
import { type JointLimits, USUAL_JOINT_LIMITS } from './usual.ts';

/** What an angle looks like in a view; nothing in a view that looks along one of the shafts. */
export interface ApparentAngles {
  readonly side: Radians | undefined;
  readonly top: Radians | undefined;
  readonly front: Radians | undefined;
}

export interface RouteJoint {
  readonly kind: JointKind;
  readonly centre: Point;
  /** The true angle in space between the two shafts that meet; 0 when they run straight on. */
  readonly angle: Radians;
  readonly limit: Radians;
  readonly apparent: ApparentAngles;
}

/** How a column's or box's end and the joint next to it lie, mm. */
export interface RouteEnd {
  /** From the end to the joint's centre along the axis, away from the part; below 0 the joint lies inside it. */
  readonly along: number;
  /** How far the joint's centre lies off the axis. */
  readonly off: number;
}

/** A steering shaft laid out in space: vehicle axes, mm, rad. */
export interface Route {
  readonly joints: readonly RouteJoint[];
  /** Unit directions from column to box: the column's axis, each intermediate shaft, the box's axis. */
  readonly directions: readonly Point[];
  /** Centre to centre of each intermediate shaft, mm. */
  readonly lengths: readonly number[];
  readonly column: RouteEnd;
  readonly box: RouteEnd;
}

/** Angle between two directions, 0 to π, exact near both ends. */
export function angleBetween(a: Point, b: Point): Radians {
  return Math.atan2(norm(cross(a, b)), dot(a, b));
}

/** A direction seen along this little of its length points at the eye: it has no angle there. */
const SEEN_END_ON = 1e-6;

/**
 * The angle that two directions seem to make in each view: what a protractor on that drawing reads.
 * Frame: vehicle. Units: rad, 0 to π.
 */
export function apparentAngles(a: Point, b: Point): ApparentAngles {
  const seen = (i: 0 | 1 | 2, j: 0 | 1 | 2): Radians | undefined => {
    if (Math.hypot(a[i], a[j]) < SEEN_END_ON * norm(a)) return undefined;
    if (Math.hypot(b[i], b[j]) < SEEN_END_ON * norm(b)) return undefined;
    return Math.atan2(Math.abs(a[i] * b[j] - a[j] * b[i]), a[i] * b[i] + a[j] * b[j]);
  };
  return { side: seen(0, 2), top: seen(0, 1), front: seen(1, 2) };
}

/**
 * Where a joint dragged to a point goes when it slides on a column's or a box's axis: the axis' nearest point.
 * Frame: vehicle. Units: mm.
 */
export function slideOnAxis(end: Point, axis: Point, to: Point): Point {
  const u = unit(axis);
  const along = dot(subtract(to, end), u);
  return [end[0] + along * u[0], end[1] + along * u[1], end[2] + along * u[2]];
}

/**
 * A steering shaft as it lies: true and apparent angle of every joint, lengths, and how far the first and last joint
 * lie off the column's and the box's axes. The shafts that meet at the first joint are the column's axis and the
 * first intermediate shaft (or, with one joint, the box's axis); at the last, the last intermediate shaft and the
 * box's axis.
 * Frame:    vehicle, ISO 8855. Units: mm, rad.
 * Outcomes: none; a document that the layout's checks passed always has a route.
 * Source:   own derivation (a joint's angle is the angle of the directions that meet in it).
 * Checked:  tests/reference/shaft-chain.test.ts.
 */
export function routeOf(shaft: ShaftDocument, limits: JointLimits = USUAL_JOINT_LIMITS): Route {
  const { joints } = shaft;
  const centres = joints.map((joint) => joint.centre);
  const first = centres[0] as Point;
  const last = centres[centres.length - 1] as Point;
  const directions: Point[] = [
    unit(shaft.column.axis),
    ...centres.slice(1).map((centre, i) => unit(subtract(centre, centres[i] as Point))),
    unit(shaft.box.axis),
  ];
  return {
    joints: joints.map(({ kind, centre, limit }, i) => {
      const [before, after] = [directions[i] as Point, directions[i + 1] as Point];
      return {
        kind,
        centre,
        angle: angleBetween(before, after),
        limit: limit === undefined ? limits[kind] : toRadians(limit),
        apparent: apparentAngles(before, after),
      };
    }),
    directions,
    lengths: centres.slice(1).map((centre, i) => distance(centre, centres[i] as Point)),
    column: alongAndOff(subtract(first, shaft.column.end), directions[0] as Point),
    box: alongAndOff(subtract(shaft.box.end, last), directions[directions.length - 1] as Point),
  };
}

function alongAndOff(d: Point, u: Point): RouteEnd {
  return { along: dot(d, u), off: norm(cross(u, d)) };
}
