import type { Point } from '../geometry/points.ts';
import { withWheelCentreAt } from './axle-group.ts';
import { placeHardpoint } from './place-hardpoint.ts';
import type { LayoutDocument } from './schema.ts';
import type { Side } from './sides.ts';

/**
 * A copy of the document with one hardpoint moved. A mirrored right point moves its left twin; the steering box
 * takes its pitman ball along, as the arm is bolted to it, and the box end of the shaft; a wheel centre its half of the
 * axle as `withWheelCentreAt` has it; the shaft's own points as `withShaftPoint` has it. The result is not validated.
 */
export function moveHardpoint(document: LayoutDocument, id: string, to: Point): LayoutDocument {
  const wheel = WHEEL_CENTRE.exec(id);
  if (wheel) return withWheelCentreAt(document, wheel[1] as Side, to);
  return placeHardpoint(document, id, to);
}

const WHEEL_CENTRE = /^axle\.(left|right)\.wheelCentre$/;
