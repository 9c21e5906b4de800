import type { Disc, Drawing, Section, Shape } from '../drawing/drawing.ts';

/** Numbers of one element of a solid: middle, then axis, radius and rounding of a disc, or half sides of a section. */
const ELEMENT = 9;

/** One convex solid of the picture: a whole hull or block, or a stretch of a bar between two of its kinks. */
export interface Solid {
  /** Places of its part and its shape in the drawing. */
  readonly part: number;
  readonly shape: number;
  drawn: Exclude<Shape, { kind: 'line' }>;
  /** Of a bar: the first and the last section of this stretch. */
  readonly first: number;
  readonly last: number;
  /** Where its elements begin among all. */
  readonly from: number;
  readonly elements: number;
}

/** mm that a bar's middle may be off the chord of a stretch that counts as straight. */
const STRAIGHT = 9;

/** Whether the pictorial draws a shape. */
export function inPictorial(shape: Shape): boolean {
  return shape.pictorial ?? (shape.views === undefined && shape.kind !== 'line' && shape.fill !== 'none');
}

/** Whether the sections between two of a bar lie near the chord. */
function isStraight(sections: readonly Section[], first: number, last: number, placed: Float64Array) {
  const at = (i: number, axis: number) => placed[3 * (sections[i] as Section).centre + axis] as number;
  const along = [0, 1, 2].map((axis) => at(last, axis) - at(first, axis));
  const squared = along.reduce((sum, each) => sum + each * each, 0) || 1;
  for (let i = first + 1; i < last; i += 1) {
    const off = [0, 1, 2].map((axis) => at(i, axis) - at(first, axis));
    const share = off.reduce((sum, each, axis) => sum + each * (along[axis] as number), 0) / squared;
    if (Math.hypot(...off.map((each, axis) => each - share * (along[axis] as number))) > STRAIGHT)
      return false;
  }
  return true;
}

/** The stretches of a bar from kink to kink, as placed. */
function stretches(sections: readonly Section[], placed: Float64Array): [first: number, last: number][] {
  const found: [number, number][] = [];
  let first = 0;
  while (first + 1 < sections.length) {
    let last = first + 1;
    while (last + 1 < sections.length && isStraight(sections, first, last + 1, placed)) last += 1;
    found.push([first, last]);
    first = last;
  }
  return found;
}

/** The solids of a drawing; `placed` is the drawing at ride height, by which bars are parted. */
export function solidsOf(drawing: Drawing, placed: Float64Array): Solid[] {
  const solids: Solid[] = [];
  let from = 0;
  drawing.parts.forEach((part, partIndex) => {
    part.shapes.forEach((drawn, shape) => {
      if (drawn.kind === 'line' || !inPictorial(drawn)) return;
      const add = (first: number, last: number, elements: number) => {
        solids.push({ part: partIndex, shape, drawn, first, last, from, elements });
        from += elements;
      };
      if (drawn.kind === 'body') add(0, 0, drawn.discs.length);
      else if (drawn.kind === 'block') add(0, 0, drawn.points.length);
      else for (const [first, last] of stretches(drawn.sections, placed)) add(first, last, last - first + 1);
    });
  });
  return solids;
}

/**
 * Takes the shapes of another drawing of the same car into solids; tells whether it could: not where a shape is of another
 * kind, or made of more or fewer discs, points or sections.
 */
export function takeShapes(solids: readonly Solid[], from: Drawing, to: Drawing): boolean {
  if (from === to) return true;
  if (from.parts.length !== to.parts.length || from.points.length !== to.points.length) return false;
  for (let i = 0; i < from.parts.length; i += 1) {
    const shapes = from.parts[i]?.shapes ?? [];
    const others = to.parts[i]?.shapes ?? [];
    if (shapes.length !== others.length) return false;
    for (let at = 0; at < shapes.length; at += 1)
      if (!isAlike(shapes[at] as Shape, others[at] as Shape)) return false;
  }
  for (const solid of solids) solid.drawn = to.parts[solid.part]?.shapes[solid.shape] as Solid['drawn'];
  return true;
}

/** Whether two shapes are made of as much, point by point of their drawings. */
function isAlike(a: Shape, b: Shape): boolean {
  if (a === b) return true;
  if (inPictorial(a) !== inPictorial(b)) return false;
  if (a.kind === 'body') return b.kind === 'body' && a.discs.length === b.discs.length;
  if (a.kind === 'band') return b.kind === 'band' && a.sections.length === b.sections.length;
  return a.kind === b.kind && a.points.length === b.points.length;
}

/** Room for the elements of all solids. */
export function elementsFor(solids: readonly Solid[]): Float64Array {
  return new Float64Array(ELEMENT * solids.reduce((sum, { elements }) => sum + elements, 0));
}

/** Writes where the elements of a solid stand; tells whether one of them has moved by more than `still` mm. */
export function writeElements(
  solid: Solid,
  placed: Float64Array,
  elements: Float64Array,
  still: number,
): boolean {
  const { drawn } = solid;
  let moved = false;
  for (let i = 0; i < solid.elements; i += 1) {
    const to = ELEMENT * (solid.from + i);
    const section = drawn.kind === 'band' ? (drawn.sections[solid.first + i] as Section) : undefined;
    const disc = drawn.kind === 'body' ? (drawn.discs[i] as Disc) : undefined;
    const corner = drawn.kind === 'block' ? (drawn.points[i] as number) : 0;
    const at = 3 * (section?.centre ?? disc?.at ?? corner);
    for (let axis = 0; axis < 3; axis += 1) {
      const value = placed[at + axis] as number;
      if (!(Math.abs(value - (elements[to + axis] as number)) <= still)) moved = true;
      elements[to + axis] = value;
    }
    if (section)
      for (let axis = 0; axis < 3; axis += 1) {
        const up = (placed[3 * section.up + axis] as number) - (placed[at + axis] as number);
        const out = (placed[3 * section.out + axis] as number) - (placed[at + axis] as number);
        if (
          !(
            Math.abs(up - (elements[to + 3 + axis] as number)) +
              Math.abs(out - (elements[to + 6 + axis] as number)) <=
            still
          )
        )
          moved = true;
        elements[to + 3 + axis] = up;
        elements[to + 6 + axis] = out;
      }
    else if (disc) moved = writeDisc(disc, placed, at, to, elements, still) || moved;
  }
  return moved;
}

function writeDisc(
  disc: Disc,
  placed: Float64Array,
  at: number,
  to: number,
  elements: Float64Array,
  still: number,
): boolean {
  const x = (placed[3 * disc.tip] as number) - (placed[at] as number);
  const y = (placed[3 * disc.tip + 1] as number) - (placed[at + 1] as number);
  const z = (placed[3 * disc.tip + 2] as number) - (placed[at + 2] as number);
  const length = Math.sqrt(x * x + y * y + z * z) || 1;
  const turned =
    disc.radius *
      (Math.abs(x / length - (elements[to + 3] as number)) +
        Math.abs(y / length - (elements[to + 4] as number)) +
        Math.abs(z / length - (elements[to + 5] as number))) >
    still;
  elements[to + 3] = x / length;
  elements[to + 4] = y / length;
  elements[to + 5] = z / length;
  elements[to + 6] = disc.radius;
  elements[to + 7] = disc.round;
  return turned;
}

/** The point that `reach` found last: where a solid reaches furthest. */
export const reached = new Float64Array(3);

/**
 * How far a solid reaches in a direction (nx, ny, nz) of length 1, mm from the car's origin; the point that does is left in
 * `reached`. A disc of middle c, axis a, radius r, rounded by s reaches c·n + r |n - (n·a) a| + s, a section of half sides
 * u and o reaches c·n + |u·n| + |o·n|; a convex hull reaches as far as what it is the hull of.
 */
export function reach(solid: Solid, elements: Float64Array, nx: number, ny: number, nz: number): number {
  const band = solid.drawn.kind === 'band';
  let furthest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < solid.elements; i += 1) {
    const at = ELEMENT * (solid.from + i);
    const cx = elements[at] as number;
    const cy = elements[at + 1] as number;
    const cz = elements[at + 2] as number;
    const ax = elements[at + 3] as number;
    const ay = elements[at + 4] as number;
    const az = elements[at + 5] as number;
    const along = ax * nx + ay * ny + az * nz;
    const to = cx * nx + cy * ny + cz * nz;
    if (band) {
      const ox = elements[at + 6] as number;
      const oy = elements[at + 7] as number;
      const oz = elements[at + 8] as number;
      const across = ox * nx + oy * ny + oz * nz;
      const value = to + Math.abs(along) + Math.abs(across);
      if (value <= furthest) continue;
      furthest = value;
      const u = along < 0 ? -1 : 1;
      const o = across < 0 ? -1 : 1;
      reached[0] = cx + u * ax + o * ox;
      reached[1] = cy + u * ay + o * oy;
      reached[2] = cz + u * az + o * oz;
      continue;
    }
    const radius = elements[at + 6] as number;
    const round = elements[at + 7] as number;
    const square = Math.sqrt(Math.max(0, 1 - along * along));
    const value = to + radius * square + round;
    if (value <= furthest) continue;
    furthest = value;
    const rim = square > 1e-9 ? radius / square : 0;
    reached[0] = cx + rim * (nx - along * ax) + round * nx;
    reached[1] = cy + rim * (ny - along * ay) + round * ny;
    reached[2] = cz + rim * (nz - along * az) + round * nz;
  }
  return furthest;
}

/** Writes the mean of the middles of a solid's elements, mm in the car's axes, to `out` from `to` on. */
export function writeMiddle(solid: Solid, elements: Float64Array, out: Float64Array, to: number): void {
  for (let axis = 0; axis < 3; axis += 1) {
    let sum = 0;
    for (let i = 0; i < solid.elements; i += 1) sum += elements[ELEMENT * (solid.from + i) + axis] as number;
    out[to + axis] = sum / solid.elements;
  }
}

/**
 * Writes the directions in which a solid has faces, length 1, to `out`, and gives how many: the axis of its first disc, the
 * sides of a bar's first section, the edges of a box. Two that are joined are mostly so across one of these.
 */
export function faceDirections(solid: Solid, elements: Float64Array, out: Float64Array): number {
  const { kind } = solid.drawn;
  let count = 0;
  if (kind === 'body') {
    for (let i = 0; i < solid.elements && count === 0; i += 1) {
      const at = ELEMENT * (solid.from + i);
      if (!((elements[at + 6] as number) > 0)) continue;
      for (let axis = 0; axis < 3; axis += 1) out[axis] = elements[at + 3 + axis] as number;
      count = 1;
    }
    return count;
  }
  const first = ELEMENT * solid.from;
  const ways = kind === 'band' ? 2 : solid.elements === 8 ? 3 : 0;
  for (let way = 0; way < ways; way += 1) {
    const at = kind === 'band' ? first + 3 + 3 * way : first + ELEMENT * (1 << way);
    let squared = 0;
    for (let axis = 0; axis < 3; axis += 1) {
      const value =
        (elements[at + axis] as number) - (kind === 'band' ? 0 : (elements[first + axis] as number));
      out[3 * count + axis] = value;
      squared += value * value;
    }
    const length = Math.sqrt(squared) || 1;
    for (let axis = 0; axis < 3; axis += 1)
      out[3 * count + axis] = (out[3 * count + axis] as number) / length;
    count += 1;
  }
  return count;
}
