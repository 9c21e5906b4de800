import { expect, test } from 'vitest';
import { checkTape, type Picture, partShown, warpPicture } from '../../../shared-math/trace/index.ts';

/** A picture whose red grows to the right and green downward. */
function ramp(width: number, height: number): Picture {
  const data = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      data.set([10 * (x + 0.5), 10 * (y + 0.5), 0, 255], 4 * (y * width + x));
  return { data, width, height };
}
const pixel = (picture: Picture, x: number, y: number) => [
  ...picture.data.slice(4 * (y * picture.width + x), 4 * (y * picture.width + x) + 4),
];
const plain = { k: 0, size: [20, 20] as const };

test('nothing to do leaves every pixel as it is', () => {
  const picture = ramp(20, 20);
  const out = warpPicture(picture, {
    matrix: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    lens: plain,
    width: 20,
    height: 20,
  });
  expect([...out.data]).toEqual([...picture.data]);
});

test('between pixels it is bilinear, in perspective too', () => {
  const matrix = [0.8, 0.1, 2, 0.05, 0.9, 1, 0.004, 0.002, 1];
  const out = warpPicture(ramp(20, 20), { matrix, lens: plain, width: 12, height: 12 });
  for (const [x, y] of [
    [3, 4],
    [7, 2],
    [10, 9],
  ] as const) {
    const d = 0.004 * (x + 0.5) + 0.002 * (y + 0.5) + 1;
    const [red = 0, green = 0] = pixel(out, x, y);
    expect(Math.abs(red - (10 * (0.8 * (x + 0.5) + 0.1 * (y + 0.5) + 2)) / d)).toBeLessThan(1.6);
    expect(Math.abs(green - (10 * (0.05 * (x + 0.5) + 0.9 * (y + 0.5) + 1)) / d)).toBeLessThan(1.6);
  }
});

test('a reduced copy is read as the original; outside, cropped off and beyond the horizon it stays clear', () => {
  const size = [40, 40] as const;
  const order = { matrix: [1, 0, 0, 0, 1, 0, 0, 0, 1], lens: { k: 0, size }, width: 60, height: 40 };
  const out = warpPicture(ramp(20, 20), order);
  expect(pixel(out, 20, 10)[0]).toBeGreaterThan(98);
  expect(pixel(out, 20, 10)[0]).toBeLessThan(108);
  expect(pixel(out, 45, 10)[3]).toBe(0);
  const cropped = warpPicture(ramp(20, 20), { ...order, crop: [10, 0, 30, 40] });
  expect([pixel(cropped, 5, 5)[3], pixel(cropped, 20, 5)[3], pixel(cropped, 35, 5)[3]]).toEqual([0, 255, 0]);
  const tipped = warpPicture(ramp(20, 20), { ...order, matrix: [1, 0, 0, 0, 1, 0, 0.05, 0, -0.5] });
  expect(pixel(tipped, 2, 5)[3]).toBe(0);
});

test('the tape and the tracing agree within what clicking at the ends and for the scale explains', () => {
  const clicked = { mmPerPixel: 1, click: 1, scaleBase: 1000 };
  expect(checkTape(1001, 1000, clicked)).toMatchObject({ difference: 1, agrees: true });
  expect(checkTape(997, 1000, clicked)).toMatchObject({ difference: -3, agrees: false });
  // As long as the scale's base, both count alike: √2 · √2.
  expect(checkTape(1000, 1000, clicked).explained).toBeCloseTo(2, 9);
  // Three times as long, the scale's own error is most of it; a photo worked with at half its size doubles all.
  expect(checkTape(3000, 3000, clicked).explained).toBeCloseTo(Math.SQRT2 * Math.sqrt(10), 9);
  expect(checkTape(1000, 1000, { ...clicked, click: 2 }).explained).toBeCloseTo(4, 9);
});

test('a stretch of the original gives what all of it would give', () => {
  const size = [60, 50] as const;
  const whole = ramp(60, 50);
  // Askew and bent by a lens, so that every edge of what is seen bows.
  const order = {
    matrix: [0.5, 0.05, 20, 0.02, 0.55, 12, 0.002, 0.001, 1],
    lens: { k: 0.12, size },
    width: 24,
    height: 20,
  };
  const part = partShown(order);
  if (!part) throw new Error('something of it is seen');
  expect(part.width * part.height).toBeLessThan(0.6 * 60 * 50);
  const data = new Uint8ClampedArray(4 * part.width * part.height);
  for (let y = 0; y < part.height; y += 1) {
    const from = 4 * ((part.top + y) * 60 + part.left);
    data.set(whole.data.slice(from, from + 4 * part.width), 4 * y * part.width);
  }
  const cut = warpPicture({ data, width: part.width, height: part.height }, order, part);
  expect([...cut.data]).toEqual([...warpPicture(whole, order).data]);
});

test('of what lies beside the photo no stretch is wanted, of what reaches the horizon all of it', () => {
  const lens = { k: 0, size: [60, 50] as const };
  const at = (x: number) => ({ matrix: [1, 0, x, 0, 1, 0, 0, 0, 1], lens, width: 10, height: 10 });
  expect(partShown(at(-100))).toBeUndefined();
  expect(partShown(at(10))).toEqual({ left: 6, top: 0, width: 18, height: 14 });
  const horizon = { ...at(0), matrix: [1, 0, 0, 0, 1, 0, 0, -0.15, 1] };
  expect(partShown(horizon)).toEqual({ left: 0, top: 0, width: 60, height: 50 });
});
