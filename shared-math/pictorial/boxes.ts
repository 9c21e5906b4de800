import type { DrawnBlock } from '../drawing/drawing.ts';
import { shadeOf } from './bars.ts';
import type { Strokes } from './strokes.ts';

/**
 * The corners of a box are numbered in three nested rounds: corner i stands on the far side of direction b if bit b of i is
 * set. A face is the four corners that have one bit alike.
 */
const FACES = [0, 1, 2].flatMap((bit) =>
  [0, 1].map((value) => {
    const [a, b] = [0, 1, 2].filter((other) => other !== bit) as [number, number];
    const base = value << bit;
    return [base, base | (1 << a), base | (1 << a) | (1 << b), base | (1 << b)] as const;
  }),
);

/** Scratch: which faces are seen. */
const seen = new Uint8Array(6);

/** Draws a box: the faces that are seen, the edges between two of them finely. Corners as numbered above. */
export function drawBox(
  strokes: Strokes,
  part: number,
  block: DrawnBlock,
  turned: Float64Array,
  kinds: { readonly face: number; readonly outline: number; readonly edge: number },
): void {
  const of = (corner: number, axis: number) => turned[3 * (block.points[corner] as number) + axis] as number;
  for (let face = 0; face < 6; face += 1) {
    const [a, b, , d] = FACES[face] as (typeof FACES)[number];
    // The corner across from the face: its bit the other way.
    const other = a ^ (1 << (face >> 1));
    const [u0, u1, u2] = [of(b, 0) - of(a, 0), of(b, 1) - of(a, 1), of(b, 2) - of(a, 2)];
    const [v0, v1, v2] = [of(d, 0) - of(a, 0), of(d, 1) - of(a, 1), of(d, 2) - of(a, 2)];
    const n0 = u1 * v2 - u2 * v1;
    const n1 = u2 * v0 - u0 * v2;
    const n2 = u0 * v1 - u1 * v0;
    const inward =
      n0 * (of(other, 0) - of(a, 0)) + n1 * (of(other, 1) - of(a, 1)) + n2 * (of(other, 2) - of(a, 2));
    const sign = inward > 0 ? -1 : 1;
    seen[face] = sign * n0 > 0 ? 1 : 0;
    if (!seen[face]) continue;
    strokes.begin(kinds.face, part, true, shadeOf(sign * n0, sign * n1, sign * n2));
    for (const corner of FACES[face] as (typeof FACES)[number]) strokes.add(of(corner, 1), -of(corner, 2));
  }
  for (let bit = 0; bit < 3; bit += 1)
    for (let corner = 0; corner < 8; corner += 1) {
      if (corner & (1 << bit)) continue;
      let faces = 0;
      for (let across = 0; across < 3; across += 1)
        if (across !== bit) faces += seen[2 * across + ((corner >> across) & 1)] as number;
      if (faces === 0) continue;
      strokes.begin(faces === 1 ? kinds.outline : kinds.edge, part, false);
      strokes.add(of(corner, 1), -of(corner, 2));
      strokes.add(of(corner | (1 << bit), 1), -of(corner | (1 << bit), 2));
    }
}
