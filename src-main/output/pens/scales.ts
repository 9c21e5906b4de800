import type { LengthUnit } from '../../../shared-math/units/index.ts';

/** Scales that a ruler of the shop reads: architect's and engineer's, or ISO 5455 with its halves. */
const SCALES: Record<LengthUnit, readonly number[]> = {
  in: [1, 2, 4, 8, 10, 12, 16, 20, 24, 32, 48, 96],
  mm: [1, 2, 5, 10, 15, 20, 25, 50, 100],
};

/** The largest scale, as the number that the car is divided by, at which `width` × `height` mm of car fit a room of mm. */
export function scaleFor(
  unit: LengthUnit,
  width: number,
  height: number,
  room: { width: number; height: number },
): number {
  const list = SCALES[unit];
  return (
    list.find((scale) => width / scale <= room.width && height / scale <= room.height) ??
    Math.max(width / room.width, height / room.height)
  );
}

/** "1 : 12". */
export function scaleWords(scale: number): string {
  return `1 : ${Number.isInteger(scale) ? scale : scale.toFixed(1)}`;
}
