/**
 * A stretch of a line within a convex outline, as shares of the stretch from its beginning: `enters` to `leaves`; tells
 * whether there is one. For each edge of the outline the line is on its inner side from or up to one share: the greatest of
 * the ones and the least of the others bound what is within.
 * Source: M. Cyrus, J. Beck, Generalized two- and three-dimensional clipping, Computers & Graphics 3, 1978, from memory.
 * Shapes: `ring` is right, down by turns from `from` to `to`, turning from right toward down; any unit.
 */
export function within(
  ring: ArrayLike<number>,
  from: number,
  to: number,
  x: number,
  y: number,
  dx: number,
  dy: number,
): boolean {
  let low = 0;
  let high = 1;
  if (to - from < 6) return false;
  let px = ring[to - 2] as number;
  let py = ring[to - 1] as number;
  for (let i = from; i < to; i += 2) {
    const qx = ring[i] as number;
    const qy = ring[i + 1] as number;
    // Positive inside.
    const inside = (qx - px) * (y - py) - (qy - py) * (x - px);
    const rate = (qx - px) * dy - (qy - py) * dx;
    px = qx;
    py = qy;
    if (rate === 0) {
      if (inside < 0) return false;
      continue;
    }
    const share = -inside / rate;
    if (rate > 0) {
      if (share > low) low = share;
    } else if (share < high) high = share;
    if (low >= high) return false;
  }
  span.enters = low;
  span.leaves = high;
  return true;
}

/** What `within` found last. */
export const span = { enters: 0, leaves: 0 };

/** mm² that a point may lie to the wrong side and still be on a line. */
const ON_LINE = 1e-9;

/**
 * Writes the convex hull of the places in `places` (right, down by turns, `count` of them) to `out` from 0 on, turning from
 * right toward down; gives how many numbers. From the outermost place on, the next is the one that leaves all others on
 * one side: R. A. Jarvis, Information Processing Letters 2, 1973, from memory.
 */
export function wrap(places: Float64Array, count: number, out: Float64Array): number {
  let start = 0;
  for (let i = 1; i < count; i += 1) {
    const dx = (places[2 * i] as number) - (places[2 * start] as number);
    if (dx > 0 || (dx === 0 && (places[2 * i + 1] as number) < (places[2 * start + 1] as number))) start = i;
  }
  let at = start;
  let written = 0;
  do {
    out[written] = places[2 * at] as number;
    out[written + 1] = places[2 * at + 1] as number;
    written += 2;
    let next = at === 0 ? 1 : 0;
    for (let i = 0; i < count; i += 1) {
      if (i === at) continue;
      const nx = (places[2 * next] as number) - (places[2 * at] as number);
      const ny = (places[2 * next + 1] as number) - (places[2 * at + 1] as number);
      const x = (places[2 * i] as number) - (places[2 * at] as number);
      const y = (places[2 * i + 1] as number) - (places[2 * at + 1] as number);
      const turn = nx * y - ny * x;
      if (turn < -ON_LINE || (turn <= ON_LINE && x * x + y * y > nx * nx + ny * ny)) next = i;
    }
    at = next;
  } while (at !== start && written < 2 * count && written + 2 <= out.length);
  return written;
}

/**
 * Writes what two convex outlines both enclose to `out`; gives how many numbers. The first is cut along each edge of the
 * second: I. E. Sutherland, G. W. Hodgman, Communications of the ACM 17, 1974, from memory. Shapes: right, down by turns,
 * turning from right toward down; `spare` and `out` have room for both together.
 */
export function common(a: readonly number[], b: readonly number[], spare: Float64Array, out: Float64Array) {
  let from = out;
  let into = spare;
  let count = a.length;
  for (let i = 0; i < count; i += 1) from[i] = a[i] as number;
  let px = b[b.length - 2] as number;
  let py = b[b.length - 1] as number;
  for (let i = 0; i < b.length && count > 0; i += 2) {
    const qx = b[i] as number;
    const qy = b[i + 1] as number;
    let written = 0;
    let bx = from[count - 2] as number;
    let by = from[count - 1] as number;
    let before = (qx - px) * (by - py) - (qy - py) * (bx - px);
    for (let j = 0; j < count; j += 2) {
      const x = from[j] as number;
      const y = from[j + 1] as number;
      const inside = (qx - px) * (y - py) - (qy - py) * (x - px);
      if (inside >= 0 !== before >= 0) {
        const share = before / (before - inside);
        into[written] = bx + share * (x - bx);
        into[written + 1] = by + share * (y - by);
        written += 2;
      }
      if (inside >= 0) {
        into[written] = x;
        into[written + 1] = y;
        written += 2;
      }
      bx = x;
      by = y;
      before = inside;
    }
    px = qx;
    py = qy;
    const swap = from;
    from = into;
    into = swap;
    count = written;
  }
  if (from !== out) for (let i = 0; i < count; i += 1) out[i] = from[i] as number;
  return count;
}
