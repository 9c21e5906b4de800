import type { Point } from '../../../geometry/points.ts';
import { add } from '../../../geometry/vectors.ts';
import type { Carrier } from '../../../layout/index.ts';
import type { DrawnHull } from '../../drawing.ts';
import type { Pen } from '../../pen.ts';

/** Share of the half beam at which rods are bolted to it. */
export const ROD_STATION = 0.7;
/** mm that a rod's bolt lies above or below the beam's middle line. */
export const ROD_SPREAD = 44;

/** The plate that holds an upper and a lower rod on the beam. */
export function bracket(pen: Pen, carrier: Carrier, at: Point): DrawnHull {
  const end = (z: number) => [
    pen.disc(carrier, add(at, [0, -6, z]), [0, 1, 0], 15),
    pen.disc(carrier, add(at, [0, 6, z]), [0, 1, 0], 15),
  ];
  return pen.hull(...end(ROD_SPREAD), ...end(-ROD_SPREAD));
}
