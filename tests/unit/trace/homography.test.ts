import { describe, expect, test } from 'vitest';
import {
  applied,
  fitHomography,
  inverted,
  type Pair as PairOf,
  type Planar,
} from '../../../shared-math/trace/index.ts';

type Pair = PairOf<Planar, Planar>;

const H = [1.1, -0.08, 240, 0.05, 0.94, 130, 0.00021, -0.00013, 1];
const through = (spots: readonly Planar[], h: readonly number[] = H): Pair[] =>
  spots.map((from) => ({ from, to: applied(h, from) as Planar }));
const CORNERS: Planar[] = [
  [100, 80],
  [1900, 140],
  [1750, 1300],
  [220, 1210],
];
const MORE: Planar[] = [...CORNERS, [900, 600], [400, 1000], [1500, 300]];

function fitted(pairs: readonly Pair[]) {
  const fit = fitHomography(pairs);
  if (!fit.ok) throw new Error(fit.failure);
  return fit.value;
}

describe('the normalised direct linear transformation', () => {
  test('meets four corners exactly, and exact data with any number', () => {
    for (const spots of [CORNERS, MORE]) {
      const fit = fitted(through(spots));
      expect(fit.worst).toBeLessThan(1e-8);
      for (const [i, entry] of H.entries())
        expect((fit.matrix[i] as number) / (fit.matrix[8] as number)).toBeCloseTo(entry, 7);
    }
  });

  // Hartley and Zisserman, 4.4.4: the result does not depend on the frames in which the points are given.
  test('gives the same mapping whatever similarity the points come through', () => {
    const jitter = MORE.map(([x, y], i): Planar => [x + 3 * Math.sin(7 * i), y + 3 * Math.cos(5 * i)]);
    const pairs = jitter.map((from, i): Pair => ({ from, to: applied(H, MORE[i] as Planar) as Planar }));
    const plain = fitted(pairs);
    const turn = ([x, y]: Planar): Planar => [
      0.003 * (0.8 * x - 0.6 * y) + 9,
      0.003 * (0.6 * x + 0.8 * y) - 4,
    ];
    const grow = ([x, y]: Planar): Planar => [250 * x - 1e5, 250 * y + 3e4];
    const moved = fitted(pairs.map(({ from, to }) => ({ from: turn(from), to: grow(to) })));
    expect(moved.worst / 250).toBeCloseTo(plain.worst, 6);
    for (const spot of CORNERS) {
      const [x, y] = grow(applied(plain.matrix, spot) as Planar);
      const got = applied(moved.matrix, turn(spot)) as Planar;
      expect(Math.hypot(got[0] - x, got[1] - y) / 250).toBeLessThan(1e-6);
    }
  });

  test('with noise on more than four, the residual tells of it', () => {
    const noisy = through(MORE).map(
      ({ from, to }, i): Pair => ({ from, to: [to[0] + (i % 2 ? 2 : -2), to[1]] }),
    );
    const fit = fitted(noisy);
    expect(fit.worst).toBeGreaterThan(0.5);
    expect(fit.worst).toBeLessThan(4);
    expect(fit.rms).toBeLessThanOrEqual(fit.worst);
  });

  test('there and back is where one began', () => {
    const back = inverted(H) as number[];
    const [x, y] = applied(back, applied(H, [321, 654]) as Planar) as Planar;
    expect(x).toBeCloseTo(321, 8);
    expect(y).toBeCloseTo(654, 8);
    expect(inverted([1, 2, 3, 2, 4, 6, 1, 1, 1])).toBeUndefined();
  });

  test('what cannot be is told by its name', () => {
    const line: Planar[] = [
      [0, 0],
      [100, 1],
      [200, 0],
      [90, 300],
    ];
    const square: Planar[] = [
      [0, 0],
      [1000, 0],
      [1000, 500],
      [0, 500],
    ];
    const onto = (from: readonly Planar[], to: readonly Planar[]) =>
      fitHomography(from.map((spot, i) => ({ from: spot, to: to[i] as Planar })));
    expect(fitHomography(through(CORNERS.slice(0, 3)))).toEqual({ ok: false, failure: 'too-few-points' });
    expect(onto(line, square)).toEqual({ ok: false, failure: 'points-on-a-line' });
    expect(onto(square, line)).toEqual({ ok: false, failure: 'points-on-a-line' });
    expect(onto([square[0], square[0], square[0], square[0]] as Planar[], square)).toEqual({
      ok: false,
      failure: 'points-on-a-line',
    });
    const crossed = [square[0], square[2], square[1], square[3]] as Planar[];
    expect(onto(crossed, square)).toEqual({ ok: false, failure: 'crossed' });
  });
});
