import type { Point } from '../../geometry/points.ts';
import { add, cross, dot, midpoint, scaled, subtract, unit } from '../../geometry/vectors.ts';
import type { Layout, Side } from '../../layout/index.ts';
import { toRadians } from '../../units/index.ts';
import { SIZES } from './sizes.ts';

/** +1 on the car's left, -1 on its right: y of outboard. */
export function outboard(side: Side): 1 | -1 {
  return side === 'left' ? 1 : -1;
}

/** The wheel's spin axis as drawn, pointing outboard; length 1. Toe-in and camber as design section 6 has them. */
export function outboardSpin(layout: Layout, side: Side): Point {
  const { toeIn, camber } = layout.axle[side];
  const toe = toRadians(toeIn);
  const lean = toRadians(camber);
  return [Math.sin(toe) * Math.cos(lean), outboard(side) * Math.cos(toe) * Math.cos(lean), -Math.sin(lean)];
}

/** The kingpin's middle, its upward direction (length 1) and its length, mm. */
export function kingpin(layout: Layout, side: Side): { middle: Point; upward: Point; length: number } {
  const { kingpinTop, kingpinBottom } = layout.axle[side];
  const along = subtract(kingpinTop, kingpinBottom);
  return {
    middle: midpoint(kingpinTop, kingpinBottom),
    upward: unit(along),
    length: Math.sqrt(dot(along, along)),
  };
}

/** The point of the kingpin's line at a share of the way from its bottom to its top. */
export function alongKingpin(layout: Layout, side: Side, share: number): Point {
  const { kingpinTop, kingpinBottom } = layout.axle[side];
  return add(kingpinBottom, scaled(subtract(kingpinTop, kingpinBottom), share));
}

/** The share of the way up the kingpin at which a point lies square to it, kept inside the given limits. */
export function shareOfKingpin(
  layout: Layout,
  side: Side,
  point: Point,
  least: number,
  most: number,
): number {
  const { kingpinBottom } = layout.axle[side];
  const { upward, length } = kingpin(layout, side);
  const share = dot(subtract(point, kingpinBottom), upward) / length;
  return Math.min(most, Math.max(least, share));
}

/** Some direction square to an axis of length 1; as near to `wish` as can be. */
export function squareTo(axis: Point, wish: Point, otherwise: Point): Point {
  const across = subtract(wish, scaled(axis, dot(wish, axis)));
  if (dot(across, across) > 1e-6) return unit(across);
  return unit(subtract(otherwise, scaled(axis, dot(otherwise, axis))));
}

/** A third direction to two that are square to each other. */
export function third(a: Point, b: Point): Point {
  return cross(a, b);
}

/** The height at which the middle of the beam is drawn: at what is bolted to it, else a common drop below its ends. */
export function beamHeight(layout: Layout): number {
  const { location } = layout;
  const ends = (kingpin(layout, 'left').middle[2] + kingpin(layout, 'right').middle[2]) / 2;
  if (layout.axle.beam === 'tube') return ends;
  const lowest = layout.car.tyreRadius * 0.4;
  const wanted =
    location.kind === 'four-bar'
      ? (location.left.upper.axle[2] + location.left.lower.axle[2]) / 2
      : location.kind === 'quarter-elliptic'
        ? (location.left.eye[2] + location.left.rod.axle[2]) / 2
        : location.kind === 'parallel-leaf'
          ? location.left.seat[2] - SIZES.beamUp - 12
          : ends - SIZES.beamDrop;
  return Math.min(ends, Math.max(lowest, wanted));
}

/** A point on the beam's middle line, this share of the way from the car's centre to the kingpin of a side. */
export function onBeam(layout: Layout, side: Side, share: number): Point {
  const { middle } = kingpin(layout, side);
  const low = beamHeight(layout);
  // Level in the middle, then up to the kingpin in a short bend, as a dropped beam is forged.
  const rise = Math.min(1, Math.max(0, (share - BEND_FROM) / (BEND_TO - BEND_FROM)));
  const other = kingpin(layout, side === 'left' ? 'right' : 'left').middle;
  const centre = midpoint(middle, other);
  return [
    centre[0] + (middle[0] - centre[0]) * share,
    centre[1] + (middle[1] - centre[1]) * share,
    low + (middle[2] - low) * rise,
  ];
}

/** Shares of the half beam between which a dropped beam rises. */
export const BEND_FROM = 0.76;
export const BEND_TO = 0.93;
