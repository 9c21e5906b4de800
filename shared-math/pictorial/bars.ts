import type { Band, Section } from '../drawing/drawing.ts';
import type { Strokes } from './strokes.ts';

/** Corner k of a section is its middle ± up ± out: how often each side goes in, around the bar. */
const UP = [1, 1, -1, -1] as const;
const OUT = [1, -1, -1, 1] as const;

/** mm: a bar with a half side below this is too thin for a line on each of its edges. */
const THIN = 9;

/** Where the light comes from as the reader sees it: over his left shoulder. Toward him, right, up; length 1. */
const LIGHT = [0.56, -0.4, 0.72] as const;

/** How much a face is turned from the light, 0 to 1, by its outward normal (any length) toward the eye, right and up. */
export function shadeOf(toward: number, right: number, up: number): number {
  const length = Math.sqrt(toward * toward + right * right + up * up) || 1;
  return (1 - (toward * LIGHT[0] + right * LIGHT[1] + up * LIGHT[2]) / length) / 2;
}

/** Scratch: of each long face, then of the cap at either end, whether it is seen and how it is lit. */
const seen = new Uint8Array(6);
const shade = new Float64Array(6);
/** Scratch: path, up and out of a stretch; toward the eye, right, up. */
const way = new Float64Array(9);

const of = (turned: Float64Array, point: number, axis: number) => turned[3 * point + axis] as number;

/** Writes the normal (sign · a × b) of a face and whether it is seen to place `to`. */
function writeFace(a: number, b: number, like: number, sign: number, to: number): void {
  const [a0, a1, a2] = [way[a] as number, way[a + 1] as number, way[a + 2] as number];
  const [b0, b1, b2] = [way[b] as number, way[b + 1] as number, way[b + 2] as number];
  const n0 = a1 * b2 - a2 * b1;
  const n1 = a2 * b0 - a0 * b2;
  const n2 = a0 * b1 - a1 * b0;
  const facing =
    n0 * (way[like] as number) + n1 * (way[like + 1] as number) + n2 * (way[like + 2] as number) < 0
      ? -sign
      : sign;
  seen[to] = facing * n0 > 0 ? 1 : 0;
  shade[to] = shadeOf(facing * n0, facing * n1, facing * n2);
}

/** Looks which faces of a stretch of a bar are seen. `turned` as `turnPoints` writes it. */
function lookAt(band: Band, first: number, last: number, turned: Float64Array): void {
  const a = band.sections[first] as Section;
  const b = band.sections[last] as Section;
  for (let axis = 0; axis < 3; axis += 1) {
    way[axis] = of(turned, b.centre, axis) - of(turned, a.centre, axis);
    way[3 + axis] = of(turned, a.up, axis) - of(turned, a.centre, axis);
    way[6 + axis] = of(turned, a.out, axis) - of(turned, a.centre, axis);
  }
  writeFace(0, 6, 3, 1, 0);
  writeFace(0, 3, 6, -1, 1);
  writeFace(0, 6, 3, -1, 2);
  writeFace(0, 3, 6, 1, 3);
  writeFace(3, 6, 0, -1, 4);
  writeFace(3, 6, 0, 1, 5);
}

function addCorner(strokes: Strokes, section: Section, corner: number, turned: Float64Array): void {
  const up = UP[corner] as number;
  const out = OUT[corner] as number;
  const c1 = of(turned, section.centre, 1);
  const c2 = of(turned, section.centre, 2);
  strokes.add(
    c1 + up * (of(turned, section.up, 1) - c1) + out * (of(turned, section.out, 1) - c1),
    -(c2 + up * (of(turned, section.up, 2) - c2) + out * (of(turned, section.out, 2) - c2)),
  );
}

/** Writes the corners of the sections of a stretch as seen, right and down by turns, to `out`; gives how many corners. */
export function writeCorners(
  band: Band,
  first: number,
  last: number,
  turned: Float64Array,
  out: Float64Array,
): number {
  let count = 0;
  for (let i = first; i <= last; i += 1) {
    const section = band.sections[i] as Section;
    const c1 = of(turned, section.centre, 1);
    const c2 = of(turned, section.centre, 2);
    for (let corner = 0; corner < 4; corner += 1) {
      const up = UP[corner] as number;
      const along = OUT[corner] as number;
      out[2 * count] = c1 + up * (of(turned, section.up, 1) - c1) + along * (of(turned, section.out, 1) - c1);
      out[2 * count + 1] = -(
        c2 +
        up * (of(turned, section.up, 2) - c2) +
        along * (of(turned, section.out, 2) - c2)
      );
      count += 1;
    }
  }
  return count;
}

/**
 * Draws a stretch of a bar of rectangular section: the faces that are seen, and the edges between them. A face is seen if
 * its outward normal points to the reader, an edge if a face beside it is: with one, it is the outline there, with both a
 * line within. Where a stretch goes on in the next it has no end. `kinds` are the places of face, outline and edge among
 * the kinds of strokes.
 */
export function drawBar(
  strokes: Strokes,
  part: number,
  band: Band,
  first: number,
  last: number,
  turned: Float64Array,
  kinds: { readonly face: number; readonly outline: number; readonly edge: number },
): void {
  lookAt(band, first, last, turned);
  const { sections } = band;
  const thin =
    Math.min(
      Math.abs(way[3] as number) + Math.abs(way[4] as number) + Math.abs(way[5] as number),
      Math.abs(way[6] as number) + Math.abs(way[7] as number) + Math.abs(way[8] as number),
    ) < THIN;
  const strong = band.ink === 'fine' ? kinds.edge : kinds.outline;
  for (let face = 0; face < 4; face += 1) {
    if (!seen[face]) continue;
    strokes.begin(kinds.face, part, true, shade[face]);
    for (let i = first; i <= last; i += 1) addCorner(strokes, sections[i] as Section, face, turned);
    for (let i = last; i >= first; i -= 1) addCorner(strokes, sections[i] as Section, (face + 1) % 4, turned);
  }
  for (let end = 0; end < 2; end += 1) {
    const at = end === 0 ? first : last;
    if (!seen[4 + end] || at !== (end === 0 ? 0 : sections.length - 1)) continue;
    strokes.begin(kinds.face, part, true, shade[4 + end]);
    for (let corner = 0; corner < 4; corner += 1) addCorner(strokes, sections[at] as Section, corner, turned);
  }
  for (let corner = 0; corner < 4; corner += 1) {
    const faces = (seen[corner] as number) + (seen[(corner + 3) % 4] as number);
    if (faces === 0 || (faces === 2 && thin)) continue;
    strokes.begin(faces === 1 ? strong : kinds.edge, part, false);
    for (let i = first; i <= last; i += 1) addCorner(strokes, sections[i] as Section, corner, turned);
  }
  for (let end = 0; end < 2; end += 1) {
    const at = end === 0 ? first : last;
    if (at !== (end === 0 ? 0 : sections.length - 1)) continue;
    for (let face = 0; face < 4; face += 1) {
      const faces = (seen[face] as number) + (seen[4 + end] as number);
      if (faces === 0 || (faces === 2 && thin)) continue;
      strokes.begin(faces === 1 ? strong : kinds.edge, part, false);
      addCorner(strokes, sections[at] as Section, face, turned);
      addCorner(strokes, sections[at] as Section, (face + 1) % 4, turned);
    }
  }
}
