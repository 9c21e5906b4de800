import type { Point } from '../../shared-math/geometry/points.ts';

/**
 * A camera written without homographies, for tests and for the invented photos: the world is turned by yaw, pitch and
 * roll about the camera, divided by its depth, stretched by the focal length and bent by its lens. mm, rad, px.
 */
export interface Pinhole {
  readonly at: Point;
  /** A point of the world that it looks at. */
  readonly lookAt: Point;
  /** What stands upright in the picture when the camera is not rolled. */
  readonly up: Point;
  /** rad; right-hand about the line of sight. */
  readonly roll: number;
  /** px. */
  readonly focal: number;
  readonly size: readonly [number, number];
  /** Of d (1 + k |d|²) from bent to straight, d in half diagonals from the middle. */
  readonly bend: number;
}

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const inner = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const one = (a: Point): Point => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};

/** The camera's own right, down and ahead. */
export function axesOf({ at, lookAt, up, roll }: Pinhole): readonly [Point, Point, Point] {
  const ahead = one(minus(lookAt, at));
  const level = one(outer(ahead, up));
  const below = outer(ahead, level);
  const [c, s] = [Math.cos(roll), Math.sin(roll)];
  const mix = (a: Point, b: Point, p: number, q: number): Point => [
    a[0] * p + b[0] * q,
    a[1] * p + b[1] * q,
    a[2] * p + b[2] * q,
  ];
  return [mix(level, below, c, s), mix(below, level, c, -s), ahead];
}

/** Bent radius of a straight one, by halving. */
function bent(straight: number, k: number): number {
  let [low, high] = [0, 2];
  for (let i = 0; i < 80; i += 1) {
    const r = (low + high) / 2;
    if (r * (1 + k * r * r) < straight) low = r;
    else high = r;
  }
  return (low + high) / 2;
}

/** Where a point of the world shows in the photo, px right and down. Points behind the camera are the caller's mistake. */
export function photographed(camera: Pinhole, point: Point): [number, number] {
  const [right, down, ahead] = axesOf(camera);
  const d = minus(point, camera.at);
  const depth = inner(d, ahead);
  const [w, h] = camera.size;
  const half = Math.hypot(w, h) / 2;
  const u = (camera.focal * inner(d, right)) / depth / half;
  const v = (camera.focal * inner(d, down)) / depth / half;
  const straight = Math.hypot(u, v);
  const share = straight > 0 && camera.bend !== 0 ? bent(straight, camera.bend) / straight : 1;
  return [w / 2 + u * share * half, h / 2 + v * share * half];
}
