/**
 * Convex bodies as flat numbers, so that a pose moves them without allocating. Each is a core and a radius around it:
 *
 * | kind    | numbers |
 * | ---     | --- |
 * | segment | one end (3), other end (3): the core of a capsule; both the same, of a ball |
 * | box     | centre (3), three half edges (9), not necessarily square to one another |
 * | solid   | a cylinder with flat ends: centre (3), axis of length 1 (3), half length, radius |
 * | ring    | the same with a bore, the radius of which follows: a tyre on its rim. Not convex, see `segmentToRing` |
 *
 * Frame: the car's, in one pose. Units: mm.
 */
export const SEGMENT = 0;
export const BOX = 1;
export const SOLID = 2;
export const RING = 3;
export type ShapeKind = typeof SEGMENT | typeof BOX | typeof SOLID | typeof RING;

/** Numbers kept for each body's core. */
export const SHAPE_SIZE = 12;

/** Half the longest way through a core, about its middle. */
export function coreRadius(kind: ShapeKind, data: Float64Array, at: number): number {
  const n = (i: number) => data[at + i] as number;
  switch (kind) {
    case SEGMENT:
      return Math.hypot(n(3) - n(0), n(4) - n(1), n(5) - n(2)) / 2;
    case BOX: {
      let most = 0;
      for (const [i, j] of [
        [1, 1],
        [1, -1],
        [-1, 1],
        [-1, -1],
      ] as const)
        most = Math.max(
          most,
          Math.hypot(n(3) + i * n(6) + j * n(9), n(4) + i * n(7) + j * n(10), n(5) + i * n(8) + j * n(11)),
        );
      return most;
    }
    default:
      return Math.hypot(n(6), n(7));
  }
}

/** The middle of a core. */
export function coreMiddle(kind: ShapeKind, data: Float64Array, at: number, axis: 0 | 1 | 2): number {
  return kind === SEGMENT
    ? ((data[at + axis] as number) + (data[at + 3 + axis] as number)) / 2
    : (data[at + axis] as number);
}

/** The point of a core furthest along (dx, dy, dz), which need not have length 1. Writes three numbers. */
export function support(
  kind: ShapeKind,
  data: Float64Array,
  at: number,
  dx: number,
  dy: number,
  dz: number,
  out: Float64Array,
  to: number,
): void {
  if (kind === SEGMENT) {
    const px = data[at] as number;
    const py = data[at + 1] as number;
    const pz = data[at + 2] as number;
    const qx = data[at + 3] as number;
    const qy = data[at + 4] as number;
    const qz = data[at + 5] as number;
    const far = (qx - px) * dx + (qy - py) * dy + (qz - pz) * dz > 0;
    out[to] = far ? qx : px;
    out[to + 1] = far ? qy : py;
    out[to + 2] = far ? qz : pz;
    return;
  }
  let x = data[at] as number;
  let y = data[at + 1] as number;
  let z = data[at + 2] as number;
  if (kind === BOX) {
    for (let k = at + 3; k < at + 12; k += 3) {
      const hx = data[k] as number;
      const hy = data[k + 1] as number;
      const hz = data[k + 2] as number;
      const sign = hx * dx + hy * dy + hz * dz > 0 ? 1 : -1;
      x += sign * hx;
      y += sign * hy;
      z += sign * hz;
    }
  } else {
    const ax = data[at + 3] as number;
    const ay = data[at + 4] as number;
    const az = data[at + 5] as number;
    const along = ax * dx + ay * dy + az * dz;
    const half = along > 0 ? (data[at + 6] as number) : -(data[at + 6] as number);
    let ox = dx - along * ax;
    let oy = dy - along * ay;
    let oz = dz - along * az;
    // Looking nearly along the axis, what is left is rounding that leans along it: taken off once more.
    const rest = ox * ax + oy * ay + oz * az;
    ox -= rest * ax;
    oy -= rest * ay;
    oz -= rest * az;
    const across = Math.sqrt(ox * ox + oy * oy + oz * oz);
    const share = across > 1e-12 * Math.abs(along) ? (data[at + 7] as number) / across : 0;
    x += half * ax + share * ox;
    y += half * ay + share * oy;
    z += half * az + share * oz;
  }
  out[to] = x;
  out[to + 1] = y;
  out[to + 2] = z;
}
