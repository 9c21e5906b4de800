import type { Box, ViewPoint } from '../../../../shared-math/drawing/index.ts';

/** A closed way for a cutting table: places in order, and the radius about each where it is rounded about all of them. */
export interface CutOutline {
  readonly places: readonly ViewPoint[];
  /** mm. The outline runs at this distance around the straight line between its two places. */
  readonly around?: number;
}

/**
 * What a plasma or laser table makes of a template: a plate at full size to lay on the part. mm in the template's own
 * plane, right and down. The plate is a gauge: it is not the part, whose shape and holes are its maker's.
 */
export interface TemplateCut {
  readonly outlines: readonly CutOutline[];
  /** Centres that a punch goes through. */
  readonly centres: readonly ViewPoint[];
  /** Closed openings, as a notch. */
  readonly openings: readonly (readonly ViewPoint[])[];
  /** Where the plate is bent around the part. */
  readonly bends: readonly (readonly [ViewPoint, ViewPoint])[];
  /** Lines that are scribed only: what the plate is held by. */
  readonly marks: readonly (readonly [ViewPoint, ViewPoint])[];
  /** What each of several plates is, where it begins. */
  readonly names?: readonly (readonly [ViewPoint, string])[];
}

/** mm: the radius of a hole that a punch goes through, and how far a plate reaches around its centres. */
export const PUNCH_RADIUS = 1.5;
export const PLATE_AROUND = 18;

/** A straight line of which only what lies in a box is left; undefined if nothing does. Liang and Barsky's way. */
export function withinBox(
  [a, b]: readonly [ViewPoint, ViewPoint],
  box: Box,
): [ViewPoint, ViewPoint] | undefined {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, a[0] - box.left],
    [dx, box.right - a[0]],
    [-dy, a[1] - box.top],
    [dy, box.bottom - a[1]],
  ] as const) {
    if (p === 0 && q < 0) return undefined;
    if (p < 0) from = Math.max(from, q / p);
    if (p > 0) to = Math.min(to, q / p);
  }
  const at = (share: number): ViewPoint => [a[0] + share * dx, a[1] + share * dy];
  return from < to ? [at(from), at(to)] : undefined;
}

/** The corners of a box in order. */
export const cornersOf = ({ left, top, right, bottom }: Box): ViewPoint[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];
