import type { Point } from '../geometry/points.ts';

/** The two sides of the car, named from the driver's seat. */
export type Side = 'left' | 'right';

export const SIDES: readonly Side[] = ['left', 'right'];

/** The half of the axle that carries an unlabelled point: that of its y's sign; the left half at y = 0. */
export function halfOf(point: Point): Side {
  return point[1] < 0 ? 'right' : 'left';
}
