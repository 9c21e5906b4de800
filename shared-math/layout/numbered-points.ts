import type { Hardpoint } from './hardpoint.ts';
import { hardpoints } from './hardpoints.ts';
import type { LayoutDocument } from './schema.ts';

/** A hardpoint with the number that it has on the board, on every page and in every drawing; a mirrored one has its twin's. */
export interface NumberedPoint extends Hardpoint {
  readonly number: number;
}

/**
 * A document's hardpoints, numbered from 1 in the order of the car: axle, location, lateral, steering, and last the
 * shaft, so that a shaft drawn later leaves the other numbers as they were. Both points of a mirrored pair have one
 * number. Positions are those of ride height, mm, vehicle axes.
 */
export function numberedPoints(document: LayoutDocument): NumberedPoint[] {
  const numbers = new Map<string, number>();
  let last = 0;
  return hardpoints(document).map((point) => {
    const twin = point.twin === undefined ? undefined : numbers.get(point.twin);
    if (twin === undefined) last += 1;
    const number = twin ?? last;
    numbers.set(point.id, number);
    return { ...point, number };
  });
}

/** The number of each hardpoint, by its id. */
export function pointNumbers(document: LayoutDocument): ReadonlyMap<string, number> {
  return new Map(numberedPoints(document).map(({ id, number }) => [id, number]));
}
