import {
  type Room,
  radiusOf,
  rangeOf,
  roomOf,
  type Spot,
  type Stroke,
  sampled,
  spotAt,
  stretchOf,
  strokeRoom,
} from './stroke.ts';

/** A closed outline that hides what lies behind it, by its places in order. */
export interface Cover {
  readonly spots: readonly Spot[];
  readonly room: Room;
}

/** mm. What lies this near to a cover's edge is seen: edges that two parts share stay. */
const EDGE = 0.03;
/** mm. Shorter stretches, as between two edges that meet, go with the stretch before them. */
const SHORT = 0.05;

export function coverOf(outline: readonly Stroke[]): Cover {
  const spots = outline.flatMap(sampled);
  return { spots, room: roomOf(spots) };
}

const apart = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);

const meet = (a: Room, b: Room) =>
  a.left <= b.right && b.left <= a.right && a.bottom <= b.top && b.bottom <= a.top;

/** Where a stroke crosses the straight line from p to q: its parameters there. */
function crossings(stroke: Stroke, p: Spot, q: Spot, into: number[]): void {
  const [ex, ey] = [q[0] - p[0], q[1] - p[1]];
  if (stroke.kind === 'line') {
    const [dx, dy] = [stroke.b[0] - stroke.a[0], stroke.b[1] - stroke.a[1]];
    const det = dx * ey - dy * ex;
    // Lines that run side by side cross nowhere; an end of the edge that lies on the stroke is another edge's too.
    if (Math.abs(det) < 1e-12 * Math.hypot(dx, dy) * Math.hypot(ex, ey)) return;
    const [wx, wy] = [p[0] - stroke.a[0], p[1] - stroke.a[1]];
    const t = (wx * ey - wy * ex) / det;
    const s = (wx * dy - wy * dx) / det;
    if (t > 0 && t < 1 && s >= 0 && s <= 1) into.push(t);
    return;
  }
  // In the curve's own axes, each measured by its length, the curve is the unit circle.
  const { centre, u, v, from } = stroke;
  const [uu, vv] = [u[0] * u[0] + u[1] * u[1], v[0] * v[0] + v[1] * v[1]];
  const own = (x: number, y: number): Spot => [(x * u[0] + y * u[1]) / uu, (x * v[0] + y * v[1]) / vv];
  const [px, py] = own(p[0] - centre[0], p[1] - centre[1]);
  const [dx, dy] = own(ex, ey);
  const a = dx * dx + dy * dy;
  const b = px * dx + py * dy;
  const root = b * b - a * (px * px + py * py - 1);
  if (root < 0 || a === 0) return;
  for (const sign of [-1, 1]) {
    const s = (-b + sign * Math.sqrt(root)) / a;
    if (s < 0 || s > 1) continue;
    const [low, high] = rangeOf(stroke);
    const angle = Math.atan2(py + s * dy, px + s * dx);
    const turns = Math.ceil((Math.min(low, high) - angle) / (2 * Math.PI));
    const t = angle + 2 * Math.PI * turns;
    if (t > Math.min(low, high) && t < Math.max(low, high)) into.push(t);
    else if (from === t) into.push(t);
  }
}

/** Whether a place lies inside a cover, and not on its edge. */
function isInside([x, y]: Spot, { spots, room }: Cover): boolean {
  if (x < room.left || x > room.right || y < room.bottom || y > room.top) return false;
  let inside = false;
  for (let i = 0; i < spots.length; i += 1) {
    const [ax, ay] = spots[i] as Spot;
    const [bx, by] = spots[(i + 1) % spots.length] as Spot;
    const [ex, ey] = [bx - ax, by - ay];
    const share = Math.max(0, Math.min(1, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey || 1)));
    if (Math.hypot(x - ax - share * ex, y - ay - share * ey) < EDGE) return false;
    if (ay > y !== by > y && x < ax + ((y - ay) / ey) * ex) inside = !inside;
  }
  return inside;
}

/** A stretch of a stroke that is seen, or that covers hide. */
export interface Seen {
  readonly stroke: Stroke;
  readonly hidden: boolean;
}

/** A stroke in stretches, in its own order: what covers leave to be seen and what they hide. */
export function seenOf(stroke: Stroke, covers: readonly Cover[]): Seen[] {
  const room = strokeRoom(stroke);
  const over = covers.filter((cover) => meet(cover.room, room));
  const [from, to] = rangeOf(stroke);
  const cuts: number[] = [];
  for (const { spots } of over)
    for (let i = 0; i < spots.length; i += 1)
      crossings(stroke, spots[i] as Spot, spots[(i + 1) % spots.length] as Spot, cuts);
  const sign = Math.sign(to - from) || 1;
  // mm of the stroke for one of its parameter.
  const length = stroke.kind === 'line' ? apart(stroke.a, stroke.b) : radiusOf(stroke);
  const stops = [from, ...cuts.sort((a, b) => sign * (a - b)), to];
  const stretches: { from: number; to: number; hidden: boolean }[] = [];
  for (let i = 1; i < stops.length; i += 1) {
    const [low, high] = [stops[i - 1] as number, stops[i] as number];
    if (sign * (high - low) * length < SHORT && stops.length > 2) continue;
    const middle = spotAt(stroke, (low + high) / 2);
    const hidden = over.some((cover) => isInside(middle, cover));
    const last = stretches.at(-1);
    if (last && last.hidden === hidden) last.to = high;
    else stretches.push({ from: last?.to ?? from, to: high, hidden });
  }
  const end = stretches.at(-1);
  if (end) end.to = to;
  if (stretches.length === 0) stretches.push({ from, to, hidden: false });
  return stretches.map((each) => ({
    stroke: stretchOf(stroke, each.from, each.to),
    hidden: each.hidden,
  }));
}
