/** A point or vector in vehicle axes, ISO 8855: [x forward, y left, z up], mm from the ground below the axle. */
export type Point = readonly [x: number, y: number, z: number];

// A point that is drawn at ride height moves with what carries it, and means something else in every other pose. Which
// that is belongs to its type alone: no number more, no work more. A bare point, just worked out, may be any of them.

/** Drawn at ride height, fixed to the frame: where it is drawn it is in every pose. */
export type FramePoint = Point & { readonly carriedBy?: 'frame' };
/** Drawn at ride height, carried by its half of the axle. */
export type AxlePoint = Point & { readonly carriedBy?: 'axle' };
/** Drawn at ride height, carried by its spindle. */
export type SpindlePoint = Point & { readonly carriedBy?: 'spindle' };
/** Drawn at ride height, carried by the pitman arm. */
export type PitmanPoint = Point & { readonly carriedBy?: 'pitman' };
/** Drawn at ride height, carried by the rocker of a Watt's linkage. */
export type RockerPoint = Point & { readonly carriedBy?: 'rocker' };
/** Not from the ground but from the axle's centre, in the axes of a half of the axle, which turn with it; mm. */
export type HalfPoint = Point & { readonly carriedBy?: 'half, from the axle’s centre' };

/** The same point on the other side of the car's centre plane. */
export function mirrored(point: Point): Point {
  return [point[0], point[1] === 0 ? 0 : -point[1], point[2]];
}

/** How far two points are apart, mm. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}
