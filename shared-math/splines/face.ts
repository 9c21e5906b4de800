import type { RimEllipse } from './rim.ts';
import { type GreyImage, greyAt, unwrapBand } from './unwrap.ts';

/** The end's face as the picture shows it inside the teeth: its grey all around, and how grainy it is. */
export interface Face {
  /** Grey of the face at evenly spaced angles of the shaft, smooth. */
  readonly grey: Float64Array;
  /** Grey levels by which a place has to differ from the face to count half as something else. */
  readonly threshold: number;
}

const ANGLES = 120;
/** Shares of the rim where there is face whatever the count: well inside the roots, outside a centre drilling. */
const SHARES = [0.6, 0.65, 0.7, 0.75, 0.79];
/** How far around, either way, the face is taken together: dirt or a glint on less than half of it is passed over. */
const REACH = 9;
const LEAST_THRESHOLD = 6;
/** How many times the face's own graininess a place has to differ. */
const GRAINS = 2.5;

const middleOf = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1] as number;

/** The face of an end whose rim is marked. Grey levels. */
export function faceOf(image: GreyImage, rim: RimEllipse): Face {
  const rows = Array.from({ length: ANGLES }, (_, i) => {
    const [c, s] = [Math.cos((2 * Math.PI * i) / ANGLES), Math.sin((2 * Math.PI * i) / ANGLES)];
    return SHARES.map((share) =>
      greyAt(image, rim.x + share * (rim.xx * c + rim.xy * s), rim.y + share * (rim.xy * c + rim.yy * s)),
    );
  });
  const grey = Float64Array.from(rows, (_, i) =>
    middleOf(
      Array.from(
        { length: 2 * REACH + 1 },
        (_, j) => rows[(i + j - REACH + ANGLES) % ANGLES] as number[],
      ).flat(),
    ),
  );
  const grain =
    1.48 * middleOf(rows.flatMap((row, i) => row.map((value) => Math.abs(value - (grey[i] as number)))));
  return { grey, threshold: Math.max(LEAST_THRESHOLD, GRAINS * grain) };
}

/**
 * A ring of how far the picture is from the end's face: 0 on a tooth, toward 1 in a space, whether bright ground or the
 * shaft's dark side shows there. Seen off square the two change places around the rim, and a ring of plain greys would turn
 * its rhythm over between them and gain or lose a tooth. With d the difference in grey, d / (d + threshold).
 * Shapes:   `out` as of `unwrapBand`.
 */
export function unwrapAgainstFace(
  image: GreyImage,
  face: Face,
  rim: RimEllipse,
  inner: number,
  outer: number,
  rows: number,
  out: Float64Array,
): void {
  unwrapBand(image, rim, inner, outer, rows, out);
  const count = out.length;
  for (let i = 0; i < count; i += 1) {
    const at = (i * ANGLES) / count;
    const left = Math.floor(at);
    const share = at - left;
    const grey =
      (face.grey[left % ANGLES] as number) * (1 - share) + (face.grey[(left + 1) % ANGLES] as number) * share;
    const off = Math.abs((out[i] as number) - grey);
    out[i] = off / (off + face.threshold);
  }
}
