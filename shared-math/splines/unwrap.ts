import type { RimEllipse } from './rim.ts';

/** A grey picture: one byte a pixel, rows from the top. */
export interface GreyImage {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Grey at a place between pixels, bilinear; beyond the edge the edge goes on. Pixel centres are whole numbers. */
export function greyAt({ data, width, height }: GreyImage, x: number, y: number): number {
  const cx = Math.min(Math.max(x, 0), width - 1);
  const cy = Math.min(Math.max(y, 0), height - 1);
  const left = Math.min(Math.floor(cx), Math.max(width - 2, 0));
  const top = Math.min(Math.floor(cy), Math.max(height - 2, 0));
  const right = Math.min(left + 1, width - 1);
  const below = Math.min(top + 1, height - 1);
  const [u, v] = [cx - left, cy - top];
  const upper = (data[top * width + left] as number) * (1 - u) + (data[top * width + right] as number) * u;
  const lower =
    (data[below * width + left] as number) * (1 - u) + (data[below * width + right] as number) * u;
  return upper * (1 - v) + lower * v;
}

/**
 * A ring of the picture laid straight: the mean grey over a band of the rim's size, at evenly spaced angles of the shaft
 * from +x toward +y (clockwise as seen), into `out`. Units: pixels; `inner` and `outer` as shares of the rim.
 */
export function unwrapBand(
  image: GreyImage,
  rim: RimEllipse,
  inner: number,
  outer: number,
  rows: number,
  out: Float64Array,
): void {
  const count = out.length;
  for (let i = 0; i < count; i += 1) {
    const angle = (2 * Math.PI * i) / count;
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const dx = rim.xx * c + rim.xy * s;
    const dy = rim.xy * c + rim.yy * s;
    let sum = 0;
    for (let row = 0; row < rows; row += 1) {
      const share = inner + ((outer - inner) * (row + 0.5)) / rows;
      sum += greyAt(image, rim.x + share * dx, rim.y + share * dy);
    }
    out[i] = sum / rows;
  }
}

/** Mean grey around the rim at a share of its size. */
export function meanAround(image: GreyImage, rim: RimEllipse, share: number): number {
  const out = new Float64Array(180);
  unwrapBand(image, rim, share, share, 1, out);
  return out.reduce((sum, value) => sum + value, 0) / out.length;
}
