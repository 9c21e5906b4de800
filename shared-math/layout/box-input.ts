import type { Point } from '../geometry/points.ts';
import { toDegrees, toRadians } from '../units/index.ts';
import type { LayoutDocument } from './schema.ts';

// A steering box's input and its sector shaft: the worm lies square to the sector shaft, or at the angle that the box has.

/** Degrees between the lines of input and sector shaft where the box does not say otherwise: a worm and its sector. */
export const USUAL_INPUT_ANGLE = 90;

/** What of a document the angle is read from. */
export type BoxAndShaft = Pick<LayoutDocument, 'steering' | 'shaft'>;

const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (a: Point, by: number, b: Point, and: number): Point => [
  a[0] * by + b[0] * and,
  a[1] * by + b[1] * and,
  a[2] * by + b[2] * and,
];
function unit(a: Point): Point {
  const length = Math.hypot(a[0], a[1], a[2]);
  return [a[0] / length, a[1] / length, a[2] / length];
}

/** Degrees between the lines of input and sector shaft that this box is made with. */
export function ownInputAngle({ steering }: BoxAndShaft): number {
  return steering.box.inputAngle ?? USUAL_INPUT_ANGLE;
}

/** Degrees between the lines of input and sector shaft as drawn, 0 to 90; undefined where no steering shaft is drawn. */
export function drawnInputAngle({ steering, shaft }: BoxAndShaft): number | undefined {
  if (!shaft) return undefined;
  const share = Math.abs(dot(unit(steering.box.sectorAxis), unit(shaft.box.axis)));
  return toDegrees(Math.acos(Math.min(1, share)));
}

/** mm and shares of a direction: as precise as a document needs. */
const tidy = (value: number, to: number) => Math.round(value * to) / to + 0;

/**
 * The document with the box's input turned, by as little as it takes, to the box's own angle from its sector shaft; the
 * joint on it goes along on the axis. With s the sector shaft's direction on the input's side and p the part of the input
 * square to it, the nearest direction at angle a is cos a · s + sin a · p. Undefined if no shaft is drawn, or if the input
 * lies along the sector shaft, where nothing says which way to turn it.
 */
export function withInputTrue<Document extends BoxAndShaft>(document: Document): Document | undefined {
  const { shaft } = document;
  if (!shaft) return undefined;
  if (Math.abs((drawnInputAngle(document) as number) - ownInputAngle(document)) < 0.01) return document;
  const input = unit(shaft.box.axis);
  const sector = unit(document.steering.box.sectorAxis);
  const share = dot(input, sector);
  const aside = along(input, 1, sector, -share);
  if (Math.hypot(...aside) < 1e-3) return undefined;
  const angle = toRadians(ownInputAngle(document));
  const turned = along(sector, Math.cos(angle) * (share < 0 ? -1 : 1), unit(aside), Math.sin(angle));
  const axis: Point = [tidy(turned[0], 1e5), tidy(turned[1], 1e5), tidy(turned[2], 1e5)];
  const last = shaft.joints.length - 1;
  const joints = shaft.joints.map((joint, i) => {
    // A lone joint stands on the column's axis.
    if (i !== last || last === 0) return joint;
    const { end } = shaft.box;
    const from: Point = [joint.centre[0] - end[0], joint.centre[1] - end[1], joint.centre[2] - end[2]];
    const to = along(end, 1, unit(axis), dot(from, input));
    return { ...joint, centre: [tidy(to[0], 1e3), tidy(to[1], 1e3), tidy(to[2], 1e3)] as Point };
  });
  return { ...document, shaft: { ...shaft, box: { ...shaft.box, axis }, joints } };
}
