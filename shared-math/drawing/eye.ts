import type { Point } from '../geometry/points.ts';
import type { Disc, DrawnHull, Shape } from './drawing.ts';
import { directionsFor, type Outline, outlineOfPlaces, pushUnlessSame } from './outline.ts';
import { VIEW_AXES, type View, type ViewPoint } from './views.ts';

/**
 * An eye that looks at a view's plane from nearby: what stands in the plane is seen where it is, what stands before it
 * farther from the eye's foot, what stands behind it nearer. mm.
 */
export interface Eye {
  /** The foot of its perpendicular, in the view's plane. */
  readonly foot: ViewPoint;
  /** From the plane, on the side that the view is looked at from; below 0 on the other side. */
  readonly distance: number;
  /** Where the plane stands: that coordinate of the car which the view does not show. */
  readonly depth: number;
  /**
   * Where what it sees at a place of the plane is shown, in a picture that was laid flat a little otherwise than this eye
   * sees it; there itself if absent. Undefined for what the picture cannot show.
   */
  readonly onto?: ((place: ViewPoint) => ViewPoint | undefined) | undefined;
}

/** The views that are looked at by an eye; the others are seen square, from far off. */
export type Eyes = Partial<Record<View, Eye>>;

/** Share of the eye's distance that is left at the nearest place that is still drawn. */
const NEAREST = 0.02;
/** Rounds of the search for one place of a silhouette, and mm at which it ends. */
const ROUNDS = 12;
const END = 1e-7;

/**
 * How far a place is from the eye's foot as the eye sees it, times how far it is: 1 in the plane, above 1 before it;
 * undefined at the eye and behind it.
 */
export function stretchAt(eye: Eye, view: View, coordinate: number): number | undefined {
  const left = 1 - (VIEW_AXES[view].toward.sign * (coordinate - eye.depth)) / eye.distance;
  return left > NEAREST ? 1 / left : undefined;
}

/** Where the eye sees a point of the car, in the view's plane, mm; undefined at the eye and behind it. */
export function seenFrom(eye: Eye, view: View, point: Point): ViewPoint | undefined {
  const { right, down, toward } = VIEW_AXES[view];
  const stretch = stretchAt(eye, view, point[toward.axis]);
  if (stretch === undefined) return undefined;
  const place: ViewPoint = [
    eye.foot[0] + stretch * (right.sign * point[right.axis] - eye.foot[0]),
    eye.foot[1] + stretch * (down.sign * point[down.axis] - eye.foot[1]),
  ];
  return eye.onto ? eye.onto(place) : place;
}

/** Scratch: of each disc its middle from the eye's foot, its axis, its radius and its rounding. */
const KEPT = 8;
let kept = new Float64Array(4 * KEPT);

/** Writes a hull's discs to the scratch; the largest radius, or undefined if one of them reaches to the eye. */
function keepDiscs(body: DrawnHull, placed: Float64Array, view: View, eye: Eye): number | undefined {
  const axes = VIEW_AXES[view];
  if (kept.length < body.discs.length * KEPT) kept = new Float64Array(body.discs.length * KEPT);
  let largest = 0;
  for (let i = 0; i < body.discs.length; i += 1) {
    const disc = body.discs[i] as Disc;
    const way = (point: number, { axis, sign }: typeof axes.right) =>
      sign * (placed[3 * point + axis] as number);
    const to = i * KEPT;
    const x = way(disc.at, axes.right);
    const y = way(disc.at, axes.down);
    const z = way(disc.at, axes.toward);
    const ax = way(disc.tip, axes.right) - x;
    const ay = way(disc.tip, axes.down) - y;
    const az = way(disc.tip, axes.toward) - z;
    const length = Math.sqrt(ax * ax + ay * ay + az * az) || 1;
    const before = z - axes.toward.sign * eye.depth;
    const reach = disc.radius + disc.round;
    if (!(1 - before / eye.distance - Math.abs(reach / eye.distance) > NEAREST)) return undefined;
    kept[to] = x - eye.foot[0];
    kept[to + 1] = y - eye.foot[1];
    kept[to + 2] = before;
    kept[to + 3] = ax / length;
    kept[to + 4] = ay / length;
    kept[to + 5] = az / length;
    kept[to + 6] = disc.radius;
    kept[to + 7] = disc.round;
    largest = Math.max(largest, reach);
  }
  return largest;
}

/**
 * Silhouette of the convex hull of rounded discs as an eye sees it. A point q from the eye's foot is seen at q / w with
 * w = 1 - q_toward / D. In each direction d of the plane the outermost place is the greatest (q·d) / w over the hull, a
 * ratio of two linear functions. For a guess g at it, the point that makes q·d - g w greatest is the hull's outermost in
 * the direction (d, g / D) of space, and its own ratio is the next guess: it rises, quadratically in the end, to the
 * greatest ratio of all.
 * Source: W. Dinkelbach, On nonlinear fractional programming, Management Science 13, 1967, from memory.
 * Checked: tests/unit/drawing/eye.test.ts (an independent camera, points all over the surface).
 */
function seenSilhouette(body: DrawnHull, placed: Float64Array, view: View, eye: Eye, out: Outline): void {
  out.length = 0;
  const largest = keepDiscs(body, placed, view, eye);
  if (largest === undefined) return;
  const table = directionsFor(largest);
  const count = body.discs.length * KEPT;
  for (let i = 0; i < table.length; i += 2) {
    const dr = table[i] as number;
    const dd = table[i + 1] as number;
    let w = 1 - (kept[2] as number) / eye.distance;
    let x = (kept[0] as number) / w;
    let y = (kept[1] as number) / w;
    let guess = x * dr + y * dd;
    for (let turn = 0; turn < ROUNDS; turn += 1) {
      const size = Math.sqrt(1 + (guess / eye.distance) ** 2);
      const n0 = dr / size;
      const n1 = dd / size;
      const n2 = guess / eye.distance / size;
      let furthest = Number.NEGATIVE_INFINITY;
      let qx = 0;
      let qy = 0;
      let qz = 0;
      for (let from = 0; from < count; from += KEPT) {
        const a0 = kept[from + 3] as number;
        const a1 = kept[from + 4] as number;
        const a2 = kept[from + 5] as number;
        const radius = kept[from + 6] as number;
        const round = kept[from + 7] as number;
        const along = n0 * a0 + n1 * a1 + n2 * a2;
        const square = Math.sqrt(Math.max(0, 1 - along * along));
        const rim = square > 1e-9 ? radius / square : 0;
        const px = (kept[from] as number) + rim * (n0 - along * a0) + round * n0;
        const py = (kept[from + 1] as number) + rim * (n1 - along * a1) + round * n1;
        const pz = (kept[from + 2] as number) + rim * (n2 - along * a2) + round * n2;
        const reach = n0 * px + n1 * py + n2 * pz;
        if (reach > furthest) {
          furthest = reach;
          qx = px;
          qy = py;
          qz = pz;
        }
      }
      w = 1 - qz / eye.distance;
      const next = (qx * dr + qy * dd) / w;
      x = qx / w;
      y = qy / w;
      if (!(next - guess > END)) break;
      guess = next;
    }
    const place: ViewPoint = [eye.foot[0] + x, eye.foot[1] + y];
    const shown = eye.onto ? eye.onto(place) : place;
    if (!shown) {
      out.length = 0;
      return;
    }
    pushUnlessSame(out, shown[0], shown[1]);
  }
}

/**
 * Writes the outline of a shape as an eye sees it to `out` (emptied first). A body's silhouette is exact; a bar's edges
 * are those of its sections' middles and half widths as they are seen. What reaches to the eye is not drawn.
 * Frame: the view's own plane, right and down. Units: mm. Shapes: `placed` holds 3 numbers for each drawn point.
 */
export function seenOutline(shape: Shape, placed: Float64Array, view: View, eye: Eye, out: Outline): void {
  if (shape.kind === 'body') {
    seenSilhouette(shape, placed, view, eye, out);
    return;
  }
  let whole = true;
  const placeOf = (point: number): ViewPoint => {
    const at = 3 * point;
    const seen = seenFrom(eye, view, [
      placed[at] as number,
      placed[at + 1] as number,
      placed[at + 2] as number,
    ]);
    if (!seen) whole = false;
    return seen ?? eye.foot;
  };
  outlineOfPlaces(shape, placeOf, view, out);
  if (!whole) out.length = 0;
}
