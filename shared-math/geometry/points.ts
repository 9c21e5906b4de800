/** A point or vector in vehicle axes, ISO 8855: [x forward, y left, z up], mm from the ground below the axle. */
export type Point = readonly [x: number, y: number, z: number];

/** The same point on the other side of the car's centre plane. */
export function mirrored(point: Point): Point {
  return [point[0], point[1] === 0 ? 0 : -point[1], point[2]];
}

/** How far two points are apart, mm. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}
