import { faceDirections, reach, reached, type Solid, writeMiddle } from './solids.ts';

/** Steps of the search for a plane between two solids. */
const STEPS = 14;
/** mm that two solids may be into one another and still be parted: what touches. */
export const TOUCHING = 1;

/** Scratch: the middles of two solids, and the directions of a solid's faces. */
const middles = new Float64Array(6);
const ways = new Float64Array(9);
/** The direction that was found last: the first solid lies ahead along it, the second behind. Length 1. */
export const parting = new Float64Array(3);

/** mm between two solids along a direction of length 1, the first ahead; below 0 they overlap along it. */
export function roomAlong(
  first: Solid,
  second: Solid,
  elements: Float64Array,
  x: number,
  y: number,
  z: number,
): number {
  return -reach(first, elements, -x, -y, -z) - reach(second, elements, x, y, z);
}

/** Tries a direction, and keeps it if it leaves more room than the best so far. */
function tried(
  first: Solid,
  second: Solid,
  elements: Float64Array,
  x: number,
  y: number,
  z: number,
  best: number,
) {
  const room = roomAlong(first, second, elements, x, y, z);
  if (room <= best) return best;
  parting[0] = x;
  parting[1] = y;
  parting[2] = z;
  return room;
}

/**
 * Looks for the direction along which two convex solids have most room between them, and leaves it in `parting`; gives
 * that room, mm: above -`TOUCHING` a plane square to it parts them, and whichever lies on the plane's near side can cover
 * the other but never be covered by it, from wherever one looks. For solids that are into one another the direction is
 * that of the least overlap among those tried.
 *
 * The difference of the solids, all a - b, is convex, and its point nearest to 0 is the direction. From a point v of it the
 * search goes to the nearest point of the stretch from v to the one that reaches furthest against v.
 * Source: E. G. Gilbert, An iterative procedure for computing the minimum of a quadratic form on a convex set, SIAM J.
 * Control 4, 1966, from memory. Checked: tests/unit/pictorial/depth-order.test.ts (rays, point by point).
 */
export function findParting(first: Solid, second: Solid, elements: Float64Array): number {
  writeMiddle(first, elements, middles, 0);
  writeMiddle(second, elements, middles, 3);
  let vx = (middles[0] as number) - (middles[3] as number);
  let vy = (middles[1] as number) - (middles[4] as number);
  let vz = (middles[2] as number) - (middles[5] as number);
  let best = Number.NEGATIVE_INFINITY;
  for (let step = 0; step < STEPS; step += 1) {
    const length = Math.sqrt(vx * vx + vy * vy + vz * vz);
    if (length < 1e-6) break;
    const x = vx / length;
    const y = vy / length;
    const z = vz / length;
    const near = -reach(first, elements, -x, -y, -z);
    const ax = reached[0] as number;
    const ay = reached[1] as number;
    const az = reached[2] as number;
    const room = near - reach(second, elements, x, y, z);
    if (room > best) {
      best = room;
      parting[0] = x;
      parting[1] = y;
      parting[2] = z;
    }
    if (best > 0) return best;
    const wx = ax - (reached[0] as number) - vx;
    const wy = ay - (reached[1] as number) - vy;
    const wz = az - (reached[2] as number) - vz;
    const squared = wx * wx + wy * wy + wz * wz;
    if (squared < 1e-9) break;
    const share = Math.min(1, Math.max(0, -(vx * wx + vy * wy + vz * wz) / squared));
    vx += share * wx;
    vy += share * wy;
    vz += share * wz;
  }
  if (best > -TOUCHING) return best;
  for (let which = 0; which < 2; which += 1) {
    const count = faceDirections(which === 0 ? first : second, elements, ways);
    for (let at = 0; at < 3 * count; at += 3) {
      const x = ways[at] as number;
      const y = ways[at + 1] as number;
      const z = ways[at + 2] as number;
      best = tried(first, second, elements, x, y, z, best);
      best = tried(first, second, elements, -x, -y, -z, best);
    }
  }
  return best;
}
