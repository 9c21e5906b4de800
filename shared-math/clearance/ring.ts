import { createSection, goldenSection } from '../solve/golden-section.ts';

/** mm. To this the nearest place on a segment is closed in. */
const RING_END = 1e-7;
const section = createSection();

/** A segment seen from a ring's axis: height h0 + h1 t, and squared distance from the axis r0 + 2 r1 t + r2 t². */
interface Seen {
  h0: number;
  h1: number;
  r0: number;
  r1: number;
  r2: number;
  half: number;
  outer: number;
  inner: number;
}

const seen: Seen = { h0: 0.5, h1: 0.5, r0: 0.5, r1: 0.5, r2: 0.5, half: 0.5, outer: 0.5, inner: 0.5 };

/** Distance of the segment's point at t from the ring, by its height and its distance from the axis. */
function gapAt(t: number): number {
  const h = Math.abs(seen.h0 + seen.h1 * t) - seen.half;
  const r = Math.sqrt(Math.max(seen.r0 + (2 * seen.r1 + seen.r2 * t) * t, 0));
  const off = r > seen.outer ? r - seen.outer : r < seen.inner ? seen.inner - r : 0;
  return h > 0 ? Math.sqrt(h * h + off * off) : off;
}

/** Writes how a ring's axis sees a segment; returns the segment's squared length. */
function see(segment: Float64Array, at: number, ring: Float64Array, to: number): number {
  const px = (segment[at] as number) - (ring[to] as number);
  const py = (segment[at + 1] as number) - (ring[to + 1] as number);
  const pz = (segment[at + 2] as number) - (ring[to + 2] as number);
  const dx = (segment[at + 3] as number) - (segment[at] as number);
  const dy = (segment[at + 4] as number) - (segment[at + 1] as number);
  const dz = (segment[at + 5] as number) - (segment[at + 2] as number);
  const ax = ring[to + 3] as number;
  const ay = ring[to + 4] as number;
  const az = ring[to + 5] as number;
  seen.h0 = px * ax + py * ay + pz * az;
  seen.h1 = dx * ax + dy * ay + dz * az;
  seen.r0 = px * px + py * py + pz * pz - seen.h0 * seen.h0;
  seen.r1 = px * dx + py * dy + pz * dz - seen.h0 * seen.h1;
  const squared = dx * dx + dy * dy + dz * dz;
  seen.r2 = Math.max(squared - seen.h1 * seen.h1, 0);
  seen.half = ring[to + 6] as number;
  seen.outer = ring[to + 7] as number;
  seen.inner = ring[to + 8] as number;
  return squared;
}

/** Pieces of a segment that are each held to their own bound. */
const PIECES = 6;

/**
 * No more than the distance of a segment from a ring, mm, and quick: over a piece of the segment the height is linear and
 * the squared distance from the axis convex, so that the piece's ends and the place of the least tell how near it can
 * come to the ring, over its ends and beyond its walls.
 * Frame:    any. Units: mm. Shapes: as `segmentToRing`. Outcomes: a bound, 0 or more.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/clearance.test.ts (against the distance itself).
 */
export function segmentToRingAtLeast(
  segment: Float64Array,
  at: number,
  ring: Float64Array,
  to: number,
): number {
  see(segment, at, ring, to);
  const { h0, h1, r0, r1, r2, half, outer, inner } = seen;
  const middle = r2 > 0 ? -r1 / r2 : 0;
  let bound = Number.POSITIVE_INFINITY;
  let [h, square] = [h0, r0];
  for (let piece = 1; piece <= PIECES; piece += 1) {
    const t = piece / PIECES;
    const nextH = h0 + h1 * t;
    const nextSquare = r0 + (2 * r1 + r2 * t) * t;
    const level = h > 0 === nextH > 0 ? Math.min(Math.abs(h), Math.abs(nextH)) : 0;
    const least = middle > t - 1 / PIECES && middle < t ? r0 + r1 * middle : Math.min(square, nextSquare);
    const over = Math.max(level - half, 0);
    const beyond = Math.sqrt(Math.max(least, 0)) - outer;
    const within = inner - Math.sqrt(Math.max(square, nextSquare, 0));
    const off = Math.max(beyond, within, 0);
    const gap = over > 0 ? Math.sqrt(over * over + off * off) : off;
    if (gap < bound) bound = gap;
    h = nextH;
    square = nextSquare;
  }
  return bound;
}

const cuts = new Float64Array(9);

/**
 * Distance of a segment from a ring (a cylinder with flat ends and a bore), and the nearest points.
 * Along the segment the height over the ring's middle is linear and the distance ρ from its axis a convex hyperbola.
 * Cut the segment where ρ is the bore's radius, where the height is the ring's half length, at the least ρ, and where
 * ρ³ = ρ_least² · s² · bore / length² (s the part of the segment square to the axis): there the squared distance from
 * the bore's edge turns from concave to convex. On each piece the distance is then convex, or concave with its least
 * value at an end; ends are looked at, and pieces closed in by golden section unless their ends rule them out (the
 * distance changes no faster than the way along the segment).
 * Frame:    any. Units: mm. Shapes: segment six numbers, ring nine, as in `shapes.ts`; writes the two points to `out`.
 * Outcomes: the distance, within RING_END; 0 where they meet.
 * Source:   own derivation, as above.
 * Checked:  tests/unit/clearance.test.ts (dense sampling of the segment).
 */
export function segmentToRing(
  segment: Float64Array,
  at: number,
  ring: Float64Array,
  to: number,
  out: Float64Array,
): number {
  const squared = see(segment, at, ring, to);
  const length = Math.sqrt(squared);

  let count = 0;
  const cut = (t: number) => {
    if (!(t > 0 && t < 1)) return;
    let i = count;
    while (i > 0 && (cuts[i - 1] as number) > t) {
      cuts[i] = cuts[i - 1] as number;
      i -= 1;
    }
    cuts[i] = t;
    count += 1;
  };
  if (Math.abs(seen.h1) > 1e-9 * length) {
    cut((seen.half - seen.h0) / seen.h1);
    cut((-seen.half - seen.h0) / seen.h1);
  }
  if (seen.r2 > 1e-18 * squared && squared > 0) {
    const middle = -seen.r1 / seen.r2;
    const least = Math.max(seen.r0 - (seen.r1 * seen.r1) / seen.r2, 0);
    cut(middle);
    const bore = (seen.inner * seen.inner - least) / seen.r2;
    if (bore > 0) {
      cut(middle - Math.sqrt(bore));
      cut(middle + Math.sqrt(bore));
    }
    const turning = Math.cbrt((least * seen.r2 * seen.inner) / squared);
    const bend = (turning * turning - least) / seen.r2;
    if (bend > 0) {
      cut(middle - Math.sqrt(bend));
      cut(middle + Math.sqrt(bend));
    }
  }

  let best = gapAt(0);
  let bestAt = 0;
  const look = (t: number, gap: number) => {
    if (gap < best) {
      best = gap;
      bestAt = t;
    }
  };
  let from = 0;
  let gapFrom = best;
  for (let i = 0; i <= count; i += 1) {
    const end = i < count ? (cuts[i] as number) : 1;
    const gapEnd = gapAt(end);
    look(end, gapEnd);
    if ((gapFrom + gapEnd - (end - from) * length) / 2 < best - RING_END) {
      const inner = goldenSection(gapAt, from, end, RING_END / length, section);
      look(inner.left, inner.atLeft);
      look(inner.right, inner.atRight);
    }
    from = end;
    gapFrom = gapEnd;
  }

  const px = (segment[at] as number) - (ring[to] as number);
  const py = (segment[at + 1] as number) - (ring[to + 1] as number);
  const pz = (segment[at + 2] as number) - (ring[to + 2] as number);
  const dx = (segment[at + 3] as number) - (segment[at] as number);
  const dy = (segment[at + 4] as number) - (segment[at + 1] as number);
  const dz = (segment[at + 5] as number) - (segment[at + 2] as number);
  const ax = ring[to + 3] as number;
  const ay = ring[to + 4] as number;
  const az = ring[to + 5] as number;
  const x = px + bestAt * dx;
  const y = py + bestAt * dy;
  const z = pz + bestAt * dz;
  const h = seen.h0 + bestAt * seen.h1;
  const nearH = Math.min(seen.half, Math.max(-seen.half, h));
  const rx = x - h * ax;
  const ry = y - h * ay;
  const rz = z - h * az;
  const r = Math.sqrt(rx * rx + ry * ry + rz * rz);
  const nearR = Math.min(seen.outer, Math.max(seen.inner, r));
  // On the axis itself every direction is as near as another: any will do, square to the axis.
  const [ux, uy, uz] = r > 0 ? [rx / r, ry / r, rz / r] : squareTo(ax, ay, az);
  out[0] = x + (ring[to] as number);
  out[1] = y + (ring[to + 1] as number);
  out[2] = z + (ring[to + 2] as number);
  out[3] = (ring[to] as number) + nearH * ax + nearR * ux;
  out[4] = (ring[to + 1] as number) + nearH * ay + nearR * uy;
  out[5] = (ring[to + 2] as number) + nearH * az + nearR * uz;
  return best;
}

function squareTo(x: number, y: number, z: number): [number, number, number] {
  const [ux, uy, uz] = Math.abs(z) < 0.9 ? [y, -x, 0] : [0, z, -y];
  const size = Math.hypot(ux, uy, uz);
  return [ux / size, uy / size, uz / size];
}
