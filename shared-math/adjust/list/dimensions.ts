import { distance, type Point } from '../../geometry/points.ts';
import type { Dimension, ListView } from './list-row.ts';

/** A length's dimension. */
export function length(from: Point, to: Point): Dimension {
  return { kind: 'length', from, to };
}

/** Below a point, on the floor. */
export function onFloor(point: Point): Point {
  return [point[0], point[1], 0];
}

/** Where the square from a point meets a line. */
export function footOn(a: Point, b: Point, point: Point): Point {
  const along = (from: Point, to: Point) => [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
  const v = along(a, b);
  const d = along(a, point);
  const square = distance(a, b) ** 2;
  const share = square === 0 ? 0 : (v[0] * d[0] + v[1] * d[1] + v[2] * d[2]) / square;
  return [a[0] + share * v[0], a[1] + share * v[1], a[2] + share * v[2]];
}

/** The view that shows a length the longest; ties by the order side, top, front. */
export function longestView(from: Point, to: Point): ListView {
  const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const shown: [ListView, number][] = [
    ['side', Math.hypot(x, z)],
    ['top', Math.hypot(x, y)],
    ['front', Math.hypot(y, z)],
  ];
  return shown.reduce((best, each) => (each[1] > best[1] + 1e-9 ? each : best))[0];
}
