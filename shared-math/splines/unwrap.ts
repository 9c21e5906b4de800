/** A grey picture: one byte a pixel, rows from the top. */
export interface GreyImage {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** A circle marked on a picture, pixels from its top left corner, x right and y down. */
export interface MarkedCircle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Grey at a place between pixels, bilinear; beyond the edge the edge goes on. Pixel centres are whole numbers. */
export function greyAt({ data, width, height }: GreyImage, x: number, y: number): number {
  const cx = Math.min(Math.max(x, 0), width - 1);
  const cy = Math.min(Math.max(y, 0), height - 1);
  const left = Math.min(Math.floor(cx), Math.max(width - 2, 0));
  const top = Math.min(Math.floor(cy), Math.max(height - 2, 0));
  const [right, below] = [Math.min(left + 1, width - 1), Math.min(top + 1, height - 1)];
  const [u, v] = [cx - left, cy - top];
  const row = (y: number) =>
    (data[y * width + left] as number) * (1 - u) + (data[y * width + right] as number) * u;
  return row(top) * (1 - v) + row(below) * v;
}

/**
 * A ring of the picture laid straight: the mean grey over a band of radii, at evenly spaced angles from +x toward +y
 * (clockwise as seen), into `out`. Units: pixels; `inner` and `outer` as shares of the circle's radius.
 */
export function unwrapBand(
  image: GreyImage,
  circle: MarkedCircle,
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
    let sum = 0;
    for (let row = 0; row < rows; row += 1) {
      const r = circle.radius * (inner + ((outer - inner) * (row + 0.5)) / rows);
      sum += greyAt(image, circle.x + r * c, circle.y + r * s);
    }
    out[i] = sum / rows;
  }
}

/** Mean grey around a circle of so many pixels. */
export function meanAround(image: GreyImage, circle: MarkedCircle, radius: number): number {
  const out = new Float64Array(180);
  unwrapBand(image, { ...circle, radius }, 1, 1, 1, out);
  return out.reduce((sum, value) => sum + value, 0) / out.length;
}
