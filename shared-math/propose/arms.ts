import type { Point } from '../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { Layout, Side } from '../layout/index.ts';
import type { BoxKind } from './boxes.ts';

/** The kingpin's axis at a height, mm. */
export function kingpinAt(layout: Layout, side: Side, z: number): Point {
  const { kingpinTop: top, kingpinBottom: bottom } = layout.axle[side];
  const share = (z - bottom[2]) / (top[2] - bottom[2]);
  return [bottom[0] + share * (top[0] - bottom[0]), bottom[1] + share * (top[1] - bottom[1]), z];
}

/** mm that the ball of an arm moves along the link for each rad that the arm turns about an axis through `on`. */
export function leverAbout(on: Point, axis: Point, ball: Point, link: Point): number {
  return dot(cross(unit(axis), subtract(ball, on)), unit(link));
}

/**
 * The sector shaft's direction that makes left of left: a right-hand turn about the sector shaft moves the pitman ball
 * along the link as a right-hand turn about the upright kingpin moves the arm's. Either direction is a line of the same
 * shaft; the box is one that turns so.
 */
export function sectorAxisForLeft(
  layout: Layout,
  driven: Side,
  arm: Point,
  pitman: Point,
  centre: Point,
  axis: Point,
): Point {
  const { kingpinTop, kingpinBottom } = layout.axle[driven];
  const link = subtract(arm, pitman);
  const ofArm = leverAbout(kingpinBottom, subtract(kingpinTop, kingpinBottom), arm, link);
  const ofPitman = leverAbout(centre, axis, pitman, link);
  return ofArm * ofPitman >= 0 ? axis : scaled(axis, -1);
}

/** How many times further the sector turns than the driven wheel, straight ahead, by the two levers alone. */
export function leverage({ axle, steering }: Layout): number {
  const { box, dragLinkBall: arm, dragLinkTo } = steering;
  const { kingpinTop, kingpinBottom } = axle[dragLinkTo];
  const link = subtract(arm, box.pitmanBall);
  const ofArm = leverAbout(kingpinBottom, subtract(kingpinTop, kingpinBottom), arm, link);
  const ofPitman = leverAbout(box.sectorCentre, box.sectorAxis, box.pitmanBall, link);
  return Math.abs(ofArm / ofPitman);
}

/** How a box's sector turns, seen on the arm's end, where its axis points so for a handwheel turned left. */
export function turnsOf(centre: Point, axis: Point, pitman: Point): BoxKind['turns'] {
  const along = dot(subtract(pitman, centre), unit(axis));
  return along >= 0 ? 'counter-clockwise' : 'clockwise';
}

/** A direction square to both the link and the sector's axis, on the side of `toward`: where an arm stands square to its link. */
export function squareTo(link: Point, axis: Point, toward: Point): Point {
  const way = cross(unit(axis), unit(link));
  const size = norm(way);
  if (size < 1e-6) return unit(toward);
  const square = scaled(way, 1 / size);
  return dot(square, toward) >= 0 ? square : scaled(square, -1);
}

/** A direction turned about an axis of length 1 by an angle, rad (Rodrigues). */
export function turnedAbout(axis: Point, angle: number, way: Point): Point {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return add(add(scaled(way, c), scaled(cross(axis, way), s)), scaled(axis, dot(axis, way) * (1 - c)));
}
