import type { Homography } from './homography.ts';
import type { Lens } from './lens.ts';
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

/**
 * A photo seen straight on: each pixel of the result is fetched from where the matrix and the lens say, bilinear;
 * what lies outside the photo or beyond the horizon stays clear. `picture` may be a reduced copy of the original.
 * Plain loops without allocation, for a worker: about 60 ns a pixel.
 */
export function warpPicture(picture: Picture, { matrix, lens, width, height, crop }: WarpOrder): Picture {
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
  const reduceX = picture.width / fullWidth;
  const reduceY = picture.height / fullHeight;
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
      const u = Math.min(Math.max(sx * reduceX - 0.5, 0), w - 1);
      const v = Math.min(Math.max(sy * reduceY - 0.5, 0), h - 1);
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
