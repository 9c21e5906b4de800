import { applied, type Homography } from './homography.ts';
import { distorted, type Lens } from './lens.ts';
import type { ShownSpot, UnbentSpot } from './photo-places.ts';

/** Four bytes a pixel, red, green, blue, opacity, row by row from the top left. */
export interface Picture {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

export interface WarpOrder {
  /** From the middles of the result's pixels to undistorted px of the original. */
  readonly matrix: Homography<ShownSpot, UnbentSpot>;
  readonly lens: Lens;
  readonly width: number;
  readonly height: number;
  /** Of the original, px, that is shown: left, top, right, bottom; all of it where absent. */
  readonly crop?: readonly [number, number, number, number] | undefined;
}

/** A stretch of the original, px. */
export interface PhotoPart {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Places of a raster across and down at which a part is looked for, and px that what lies between two of them may bow. */
const RASTER = 16;
const BOW = 4;

/**
 * The part of the original that an order shows something of, in whole px.
 *
 * @returns undefined if it shows nothing of the photo; all of it where the horizon is in sight.
 */
export function partShown({ matrix, lens, width, height, crop }: WarpOrder): PhotoPart | undefined {
  const [left, top, right, bottom] = crop ?? [0, 0, ...lens.size];
  const [, , , , , , m6 = 0, m7 = 0, m8 = 1] = matrix;
  const front = Math.sign(m6 * (width / 2) + m7 * (height / 2) + m8) || 1;
  let [x0, y0, x1, y1] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let i = 0; i <= RASTER; i += 1)
    for (let j = 0; j <= RASTER; j += 1) {
      const place: ShownSpot = [(width * i) / RASTER, (height * j) / RASTER];
      const straight = applied(matrix, place, front);
      const [x, y] = straight ? distorted(lens, straight) : [Number.NaN, Number.NaN];
      // NaN stays: a minimum with it is none.
      x0 = Math.min(x0, x);
      y0 = Math.min(y0, y);
      x1 = Math.max(x1, x);
      y1 = Math.max(y1, y);
    }
  if (Number.isNaN(x0)) [x0, y0, x1, y1] = [left, top, right, bottom];
  const from = [
    Math.max(Math.floor(left), Math.floor(x0) - BOW),
    Math.max(Math.floor(top), Math.floor(y0) - BOW),
  ] as const;
  const to = [
    Math.min(Math.ceil(right), Math.ceil(x1) + BOW),
    Math.min(Math.ceil(bottom), Math.ceil(y1) + BOW),
  ] as const;
  const part = { left: from[0], top: from[1], width: to[0] - from[0], height: to[1] - from[1] };
  return part.width > 0 && part.height > 0 ? part : undefined;
}

/**
 * A photo seen straight on: each pixel of the result is fetched from where the matrix and the lens say, bilinear;
 * what lies outside the photo or beyond the horizon stays clear. `picture` may be a reduced copy of the original, or of the
 * `part` of it that is given.
 * Plain loops without allocation, for a worker: about 60 ns a pixel.
 */
export function warpPicture(
  picture: Picture,
  { matrix, lens, width, height, crop }: WarpOrder,
  part?: PhotoPart,
): Picture {
  const out = new Uint8ClampedArray(4 * width * height);
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = matrix as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [fullWidth, fullHeight] = lens.size;
  const [left, top, right, bottom] = crop ?? [0, 0, fullWidth, fullHeight];
  const {
    left: partLeft,
    top: partTop,
    width: partWidth,
    height: partHeight,
  } = part ?? {
    left: 0,
    top: 0,
    width: fullWidth,
    height: fullHeight,
  };
  const reduceX = picture.width / partWidth;
  const reduceY = picture.height / partHeight;
  const cx = fullWidth / 2;
  const cy = fullHeight / 2;
  const unit2 = (fullWidth * fullWidth + fullHeight * fullHeight) / 4;
  const { k } = lens;
  const { data, width: w, height: h } = picture;
  const front = Math.sign(m6 * (width / 2) + m7 * (height / 2) + m8) || 1;
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const px = x + 0.5;
      const py = y + 0.5;
      const d = m6 * px + m7 * py + m8;
      if (!(d * front > 1e-12)) continue;
      let sx = (m0 * px + m1 * py + m2) / d;
      let sy = (m3 * px + m4 * py + m5) / d;
      if (k !== 0) {
        const R = Math.sqrt(((sx - cx) * (sx - cx) + (sy - cy) * (sy - cy)) / unit2);
        // Beyond the picture's corners the lens is not known, and nothing is shown.
        if (R > 1.6) continue;
        let r = R / (1 + k * Math.min(R, 1) ** 2);
        for (let step = 0; step < 4; step += 1) r -= (r * (1 + k * r * r) - R) / (1 + 3 * k * r * r);
        const shrink = R > 0 ? r / R : 1;
        sx = cx + (sx - cx) * shrink;
        sy = cy + (sy - cy) * shrink;
      }
      if (sx < left || sy < top || sx > right || sy > bottom) continue;
      const u = Math.min(Math.max((sx - partLeft) * reduceX - 0.5, 0), w - 1);
      const v = Math.min(Math.max((sy - partTop) * reduceY - 0.5, 0), h - 1);
      const u0 = Math.floor(u);
      const v0 = Math.floor(v);
      const du = u - u0;
      const dv = v - v0;
      const a = 4 * (v0 * w + u0);
      const b = u0 + 1 < w ? a + 4 : a;
      const down = v0 + 1 < h ? 4 * w : 0;
      const at = 4 * (y * width + x);
      for (let channel = 0; channel < 4; channel += 1) {
        const upper = (data[a + channel] as number) * (1 - du) + (data[b + channel] as number) * du;
        const lower =
          (data[a + down + channel] as number) * (1 - du) + (data[b + down + channel] as number) * du;
        out[at + channel] = upper * (1 - dv) + lower * dv;
      }
    }
  return { data: out, width, height };
}
