import type { AxlePoint, Point } from '../geometry/points.ts';
import type { Side } from '../layout/index.ts';
import type { AxleRow } from './rows.ts';

/** rad by which each half of the axle winds up against what holds it in pitch; above 0 the kingpin's top goes ahead. */
export type WindUp = Readonly<Record<Side, number>>;

export const NO_WIND_UP: WindUp = { left: 0, right: 0 };

/** A point of the axle turned back by an angle about the line across the car through the axle's centre. */
function turnedBack(point: Point, centre: Point, angle: number): AxlePoint {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const x = point[0] - centre[0];
  const z = point[2] - centre[2];
  return [centre[0] + c * x - s * z, point[1], centre[2] + s * x + c * z];
}

/**
 * What locates an axle, with the axle wound up in it.
 * A leaf's seat tips by the angle beside what the leaf's own travel asks: the row's `wound`. Rods and bars do not tip; where
 * an angle is given all the same, their brackets give: the axle's ends of the links are turned back about the axle's line
 * by it, so that the axle comes to stand that much further round in them. Links keep their drawn lengths.
 * Units: mm, rad, in the car's frame as drawn.
 */
export function woundRows(rows: readonly AxleRow[], windUp: WindUp, centre: Point): readonly AxleRow[] {
  if (windUp.left === 0 && windUp.right === 0) return rows;
  const byLeaf = rows.some(({ form }) => form === 'leaf-pitch');
  return rows.map((row): AxleRow => {
    if (row.form === 'centred' || row.form === 'rocker') return row;
    const angle = windUp[row.half];
    if (row.form === 'leaf-pitch') return { ...row, wound: angle };
    if (byLeaf) return row;
    const axle = turnedBack(row.axle, centre, angle);
    if (row.form === 'coincide') return { ...row, axle };
    return { ...row, axle, drawn: row.drawn ?? row.axle };
  });
}
