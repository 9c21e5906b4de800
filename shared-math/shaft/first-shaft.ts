import type { Point } from '../geometry/points.ts';
import { add, scaled, unit } from '../geometry/vectors.ts';
import { driverSideOf, type LayoutDocument, type ShaftDocument, withInputTrue } from '../layout/index.ts';
import { toDegrees } from '../units/index.ts';
import { routeOf } from './route.ts';
import { turningOf } from './turning.ts';

// A steering shaft to begin from, and the clocking that leaves the least, in figures that a yoke can be set by.

const tenth = (value: number) => Math.round(value * 10) / 10 + 0;
const tidy = (point: Point): Point => [tenth(point[0]), tenth(point[1]), tenth(point[2])];

/** How far a joint's centre stands from a column's or box's end that it is pushed onto: common practice. mm. */
const ONTO_END = 18;
/** mm from the box's sector to the input's end, and from there to a usual column's: first places to be measured over. */
export const INPUT = { back: 112, up: 66 };
const COLUMN = { back: 420, up: 200, beside: 340 };

/** Forward and a little down, turned to what the box's sector shaft leaves. */
function inputAxis({ steering }: LayoutDocument): Point {
  const drawn: Point = [4, 0, -1];
  const end = { end: steering.box.sectorCentre, axis: drawn };
  const trial = { steering, shaft: { column: end, box: end, joints: [], shafts: [], supports: [] } };
  return withInputTrue(trial)?.shaft?.box.axis ?? drawn;
}

/**
 * A first shaft of two joints, from the box's input to a usual column on the driver's side; all of it to be measured
 * over on the car (common practice, no published source).
 */
export function firstShaft(document: LayoutDocument): ShaftDocument {
  const { sectorCentre } = document.steering.box;
  const columnAxis: Point = [2, 0, -1];
  const side = driverSideOf(document) === 'right' ? -1 : 1;
  const boxAxis = inputAxis(document);
  // A sector shaft along the car has its input from above or from the side, not from behind.
  const fromBehind = boxAxis[0] > 0.7 * Math.hypot(...boxAxis);
  const boxEnd = tidy(
    fromBehind
      ? [sectorCentre[0] - INPUT.back, sectorCentre[1], sectorCentre[2] + INPUT.up]
      : add(sectorCentre, scaled(unit(boxAxis), -INPUT.back)),
  );
  const columnEnd = tidy([
    Math.min(boxEnd[0] - COLUMN.back, -1000),
    side * COLUMN.beside,
    boxEnd[2] + COLUMN.up,
  ]);
  const bare: ShaftDocument = {
    column: { end: columnEnd, axis: columnAxis },
    box: { end: boxEnd, axis: boxAxis },
    joints: [
      { kind: 'single', centre: add(columnEnd, scaled(unit(columnAxis), ONTO_END)) },
      { kind: 'single', centre: add(boxEnd, scaled(unit(boxAxis), -ONTO_END)) },
    ],
    shafts: [{ clock: 0 }],
    supports: [],
  };
  return bestClocked(bare) ?? bare;
}

/** Degrees to a tenth: no yoke is set finer. In (-90, 90]. */
function clockOf(radians: number): number {
  const degrees = tenth(toDegrees(radians));
  return degrees <= -90 ? 90 : degrees;
}

/** With every intermediate shaft clocked for the least swing; undefined if a joint is locked. */
export function bestClocked(shaft: ShaftDocument): ShaftDocument | undefined {
  const turning = turningOf(shaft, routeOf(shaft));
  if (!turning.ok) return undefined;
  const { bestClocks } = turning.value;
  return {
    ...shaft,
    shafts: shaft.shafts.map((piece, i) => ({ ...piece, clock: clockOf(bestClocks[i] as number) })),
  };
}
