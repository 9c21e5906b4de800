import { expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { fitLens, type Planar } from '../../../shared-math/trace/index.ts';
import { distorted, undistorted } from '../../../shared-math/trace/lens.ts';
import { type Pinhole, photographed } from '../../support/pinhole.ts';

const camera: Pinhole = {
  at: [0, 0, 4000],
  lookAt: [100, 50, 0],
  up: [0, 1, 0],
  roll: 0.04,
  focal: 3000,
  size: [3000, 2000],
  bend: 0.06,
};

test('a straight edge photographed by a barrel lens gives its coefficient back', () => {
  const edge: Point[] = [-1500, -1000, -300, 200, 900, 1600].map((x) => [x, 1000 + 0.05 * x, 0]);
  for (const bend of [0.06, -0.04, 0.15]) {
    const fit = fitLens(
      edge.map((point) => photographed({ ...camera, bend }, point)),
      camera.size,
    );
    expect(fit.ok && fit.value.k).toBeCloseTo(bend, 6);
  }
});

test('bending and unbending are each other’s way back, over the whole picture', () => {
  for (const k of [0.2, 0.05, -0.05, -0.25])
    for (const spot of [
      [0, 0],
      [3000, 2000],
      [1500, 1000],
      [2900, 40],
      [800, 1900],
    ] as Planar[]) {
      const lens = { k, size: camera.size };
      const [x, y] = distorted(lens, undistorted(lens, spot));
      expect(Math.hypot(x - spot[0], y - spot[1])).toBeLessThan(1e-6);
    }
});

test('lines that cannot tell are refused by name', () => {
  const line = (y: number, from: number, to: number): Planar[] =>
    [0, 1, 2, 3].map((i) => [from + ((to - from) * i) / 3, y]);
  expect(fitLens(line(100, 100, 2900).slice(0, 2), [3000, 2000])).toEqual({
    ok: false,
    failure: 'too-few-points',
  });
  expect(fitLens(line(100, 1400, 1600), [3000, 2000])).toEqual({ ok: false, failure: 'line-too-short' });
  expect(fitLens(line(1000, 100, 2900), [3000, 2000])).toEqual({
    ok: false,
    failure: 'line-through-the-middle',
  });
});
