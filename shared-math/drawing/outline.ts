import type { Band, Disc, DrawnHull, Shape } from './drawing.ts';
import { type Box, VIEW_AXES, type View, type ViewPoint } from './views.ts';

/** Outlines are flat lists of right, down, right, down … in the view's own plane, mm; closed ones are not repeated. */
export type Outline = number[];

/** Directions in which a silhouette is asked for its outermost point: half a degree of arc is off by 1e-4 radius. */
const DIRECTIONS_ROUND = 96;
/** For bodies of no more than this radius, mm, fewer serve. */
const SMALL = 60;
const DIRECTIONS_SMALL = 32;

/** So many directions all around, right and down by turns; the first is `off` of a step from the right. */
export function compass(count: number, off = 0): Float64Array {
  const table = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    const angle = ((i + off) / count) * 2 * Math.PI;
    table[2 * i] = Math.cos(angle);
    table[2 * i + 1] = Math.sin(angle);
  }
  return table;
}
const ROUND = compass(DIRECTIONS_ROUND);
const FEW = compass(DIRECTIONS_SMALL);

/** The directions, right and down by turns, in which the silhouette of a body of this radius, mm, is asked for. */
export function directionsFor(radius: number): Float64Array {
  return radius > SMALL ? ROUND : FEW;
}

/** Scratch: of each disc its middle and its axis as the view sees them, its radius and its rounding. */
const SEEN = 6;
let seen = new Float64Array(4 * SEEN);

/** mm. Neighbouring points of an outline nearer than this are one. */
const SAME = 1e-6;

export function pushUnlessSame(out: Outline, right: number, down: number): void {
  const last = out.length;
  if (
    last >= 2 &&
    Math.abs((out[last - 2] as number) - right) < SAME &&
    Math.abs((out[last - 1] as number) - down) < SAME
  )
    return;
  out.push(right, down);
}

/**
 * Silhouette of the convex hull of rounded discs. In each direction d of the view, the outermost point of a disc of
 * centre c, radius r and axis a, rounded by s, is c + r (d - (d·a) a) / |d - (d·a) a| + s d; the hull's outermost
 * point is that of the disc that reaches furthest. Taken around the compass these are its outline, in order.
 * Frame: the view's own plane. Units: mm. Shapes: `placed` holds 3 numbers for each point of the drawing; `directions`
 * are those of the compass that it is asked for in, right and down by turns.
 */
export function silhouette(
  body: Pick<DrawnHull, 'discs'>,
  placed: Float64Array,
  view: View,
  out: Outline,
  directions?: Float64Array,
): void {
  const { right, down } = VIEW_AXES[view];
  const count = body.discs.length;
  if (seen.length < count * SEEN) seen = new Float64Array(count * SEEN);
  let largest = 0;
  for (let i = 0; i < count; i += 1) {
    const disc = body.discs[i] as Disc;
    const at = 3 * disc.at;
    const tip = 3 * disc.tip;
    const x = (placed[tip] as number) - (placed[at] as number);
    const y = (placed[tip + 1] as number) - (placed[at + 1] as number);
    const z = (placed[tip + 2] as number) - (placed[at + 2] as number);
    // A ball has no axis, and needs none.
    const length = Math.sqrt(x * x + y * y + z * z) || 1;
    const to = i * SEEN;
    seen[to] = right.sign * (placed[at + right.axis] as number);
    seen[to + 1] = down.sign * (placed[at + down.axis] as number);
    seen[to + 2] =
      (right.sign * ((placed[tip + right.axis] as number) - (placed[at + right.axis] as number))) / length;
    seen[to + 3] =
      (down.sign * ((placed[tip + down.axis] as number) - (placed[at + down.axis] as number))) / length;
    seen[to + 4] = disc.radius;
    seen[to + 5] = disc.round;
    largest = Math.max(largest, disc.radius + disc.round);
  }
  const table = directions ?? directionsFor(largest);
  out.length = 0;
  for (let i = 0; i < table.length; i += 2) {
    const dr = table[i] as number;
    const dd = table[i + 1] as number;
    let furthest = Number.NEGATIVE_INFINITY;
    let bestRight = 0;
    let bestDown = 0;
    for (let from = 0; from < count * SEEN; from += SEEN) {
      const round = seen[from + 5] as number;
      const radius = seen[from + 4] as number;
      let pr = (seen[from] as number) + round * dr;
      let pd = (seen[from + 1] as number) + round * dd;
      if (radius > 0) {
        const ar = seen[from + 2] as number;
        const ad = seen[from + 3] as number;
        const along = dr * ar + dd * ad;
        const square = Math.sqrt(Math.max(0, 1 - along * along));
        if (square > 1e-9) {
          pr += (radius * (dr - along * ar)) / square;
          pd += (radius * (dd - along * ad)) / square;
        }
      }
      const reach = pr * dr + pd * dd;
      if (reach > furthest) {
        furthest = reach;
        bestRight = pr;
        bestDown = pd;
      }
    }
    pushUnlessSame(out, bestRight, bestDown);
  }
}

/** The convex hull of places, in order around it: Andrew's two chains. Fewer than three places are given back as they are. */
export function convexHull(places: readonly ViewPoint[]): ViewPoint[] {
  if (places.length < 3) return [...places];
  const sorted = [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (ordered: readonly ViewPoint[]): ViewPoint[] => {
    const kept: ViewPoint[] = [];
    for (const place of ordered) {
      for (;;) {
        const a = kept.at(-2);
        const b = kept.at(-1);
        if (!a || !b) break;
        const turn = (b[0] - a[0]) * (place[1] - a[1]) - (b[1] - a[1]) * (place[0] - a[0]);
        if (turn > 0) break;
        kept.pop();
      }
      kept.push(place);
    }
    kept.pop();
    return kept;
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

/** Where a drawn point is seen in the view's own plane, mm. */
export type PlaceOf = (point: number) => ViewPoint;

function placesIn(placed: Float64Array, view: View): PlaceOf {
  const { right, down } = VIEW_AXES[view];
  return (point) => [
    right.sign * (placed[3 * point + right.axis] as number),
    down.sign * (placed[3 * point + down.axis] as number),
  ];
}

function writeHull(places: readonly ViewPoint[], out: Outline): void {
  out.length = 0;
  for (const place of convexHull(places)) out.push(place[0], place[1]);
}

/** Sharper mitres than this share of the half width are cut back. */
const MITRE_MAX = 2.5;

/** Edges of a band, mitred: each node is moved square to the path by half of what its section measures that way. */
function bandEdges(band: Band, placeOf: PlaceOf, out: Outline): void {
  const { sections } = band;
  const count = sections.length;
  const centre = sections.map((section) => placeOf(section.centre));
  const normal: ViewPoint[] = [];
  for (let i = 0; i + 1 < count; i += 1) {
    const [a, b] = [centre[i] as ViewPoint, centre[i + 1] as ViewPoint];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    // A stretch seen end-on has no direction of its own: it takes its neighbour's.
    normal.push(
      length > SAME ? [-(b[1] - a[1]) / length, (b[0] - a[0]) / length] : (normal.at(-1) ?? [0, 1]),
    );
  }
  const far: number[] = [];
  out.length = 0;
  for (let i = 0; i < count; i += 1) {
    const section = sections[i] as Band['sections'][number];
    const before = normal[Math.max(0, i - 1)] as ViewPoint;
    const after = normal[Math.min(count - 2, i)] as ViewPoint;
    const c = centre[i] as ViewPoint;
    const up = placeOf(section.up);
    const across = placeOf(section.out);
    const halfWidth = (n: ViewPoint) =>
      Math.abs(n[0] * (up[0] - c[0]) + n[1] * (up[1] - c[1])) +
      Math.abs(n[0] * (across[0] - c[0]) + n[1] * (across[1] - c[1]));
    const half = (halfWidth(before) + halfWidth(after)) / 2;
    const sum: ViewPoint = [before[0] + after[0], before[1] + after[1]];
    const squared = sum[0] * sum[0] + sum[1] * sum[1];
    // before + after has the bisector's direction; 2/|sum|² of it reaches the mitre's corner.
    const stretch = Math.min(2 / Math.max(squared, SAME), MITRE_MAX);
    const offset: ViewPoint = [half * stretch * sum[0], half * stretch * sum[1]];
    out.push(c[0] + offset[0], c[1] + offset[1]);
    far.push(c[0] - offset[0], c[1] - offset[1]);
  }
  for (let i = far.length - 2; i >= 0; i -= 2) out.push(far[i] as number, far[i + 1] as number);
}

/** The four corners of a section in a view. */
function corners(section: Band['sections'][number], placeOf: PlaceOf): ViewPoint[] {
  const c = placeOf(section.centre);
  const u = placeOf(section.up);
  const o = placeOf(section.out);
  const [ux, uy, ox, oy] = [u[0] - c[0], u[1] - c[1], o[0] - c[0], o[1] - c[1]];
  return [
    [c[0] + ux + ox, c[1] + uy + oy],
    [c[0] + ux - ox, c[1] + uy - oy],
    [c[0] - ux - ox, c[1] - uy - oy],
    [c[0] - ux + ox, c[1] - uy + oy],
  ];
}

/** Whether a shape's outline is closed. */
export function isClosed(shape: Shape): boolean {
  return shape.kind !== 'line';
}

/** Whether a shape is drawn in a view. */
export function isShown(shape: Shape, view: View): boolean {
  return shape.views === undefined || shape.views.includes(view);
}

/** Writes the outline of a shape that goes by where its points are seen: of all but hulls. */
export function outlineOfPlaces(
  shape: Exclude<Shape, DrawnHull>,
  placeOf: PlaceOf,
  view: View,
  out: Outline,
): void {
  if (shape.kind === 'block') writeHull(shape.points.map(placeOf), out);
  else if (shape.kind === 'line') {
    out.length = 0;
    for (const point of shape.points) out.push(...placeOf(point));
  } else if (shape.endOn.includes(view))
    writeHull(
      shape.sections.flatMap((section) => corners(section, placeOf)),
      out,
    );
  else bandEdges(shape, placeOf, out);
}

/**
 * Writes the outline of a shape in a view to `out` (emptied first): what there is to draw, and nothing about how.
 * Frame: the view's own plane, right and down. Units: mm. Shapes: `placed` holds 3 numbers for each drawn point.
 */
export function outline(shape: Shape, placed: Float64Array, view: View, out: Outline): void {
  if (shape.kind === 'body') silhouette(shape, placed, view, out);
  else outlineOfPlaces(shape, placesIn(placed, view), view, out);
}

/** What an outline covers. */
export function boxOf(line: Outline): Box {
  let left = Number.POSITIVE_INFINITY;
  let top = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  for (let i = 0; i + 1 < line.length; i += 2) {
    left = Math.min(left, line[i] as number);
    right = Math.max(right, line[i] as number);
    top = Math.min(top, line[i + 1] as number);
    bottom = Math.max(bottom, line[i + 1] as number);
  }
  return { left, top, right, bottom };
}
