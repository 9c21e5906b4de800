import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arrangeSheet,
  type Box,
  fromSheet,
  moved,
  onSheet,
  project,
  type Sheet,
  unproject,
  VIEW_AXES,
  VIEWS,
  type View,
} from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';

const coordinate = fc.double({ min: -3000, max: 3000, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Point>;
const view = fc.constantFrom<View>('side', 'top', 'front');
const sheet: Sheet = { origin: { side: [0, 0], top: [0, -1700], front: [-1900, 0] } };

describe('third-angle projection', () => {
  test('shows the front of the car to the left and up as up, from the side', () => {
    expect(project('side', [100, 0, 0])).toEqual([-100, 0]);
    expect(project('side', [0, 0, 100])).toEqual([0, -100]);
    expect(project('side', [0, 100, 0])).toEqual([0, 0]);
  });

  test('shows the car’s left side below, from above, and to the right, from ahead', () => {
    expect(project('top', [0, 100, 0])).toEqual([0, 100]);
    expect(project('front', [0, 100, 0])).toEqual([100, 0]);
  });

  test('every view looks from where its two directions and the eye make a right-handed set', () => {
    for (const name of VIEWS) {
      const { right, down, toward } = VIEW_AXES[name];
      const direction = ({ axis, sign }: { axis: 0 | 1 | 2; sign: 1 | -1 }) =>
        [0, 1, 2].map((i) => (i === axis ? sign : 0)) as [number, number, number];
      const [r, d, t] = [direction(right), direction(down), direction(toward)];
      // right × up = toward the eye, and up is against down.
      const cross = [0, 1, 2].map(
        (i) =>
          -((r[(i + 1) % 3] as number) * (d[(i + 2) % 3] as number)) +
          (r[(i + 2) % 3] as number) * (d[(i + 1) % 3] as number),
      );
      expect(cross.map((value) => value + 0)).toEqual(t);
    }
  });

  test('a place on the sheet goes back to the point it came from, with the hidden coordinate kept', () => {
    fc.assert(
      fc.property(view, point, point, (name, at, other) => {
        const back = fromSheet(sheet, name, onSheet(sheet, name, at), other);
        const hidden = VIEW_AXES[name].toward.axis;
        for (const axis of [0, 1, 2] as const)
          expect(back[axis]).toBeCloseTo(axis === hidden ? other[axis] : at[axis], 9);
      }),
    );
  });

  test('no document gets a negative zero out of a view', () => {
    for (const name of VIEWS)
      for (const value of unproject(name, [0, 0], [0, 0, 0])) expect(Object.is(value, -0)).toBe(false);
  });
});

describe('the sheet', () => {
  const size = fc.double({ min: 10, max: 3000, noNaN: true });
  const box = fc
    .tuple(coordinate, coordinate, size, size)
    .map(([left, top, width, height]): Box => ({ left, top, right: left + width, bottom: top + height }));
  const boxes = fc.record({ side: box, top: box, front: box });

  test('aligns the top view over the side view and the front view beside it', () => {
    fc.assert(
      fc.property(boxes, point, (shown, at) => {
        const laid = arrangeSheet(shown, 100);
        expect(onSheet(laid, 'top', at)[0]).toBeCloseTo(onSheet(laid, 'side', at)[0], 9);
        expect(onSheet(laid, 'front', at)[1]).toBeCloseTo(onSheet(laid, 'side', at)[1], 9);
      }),
    );
  });

  test('keeps the views at least the gap apart, the top view above and the front view to the left', () => {
    fc.assert(
      fc.property(boxes, fc.double({ min: 1, max: 400, noNaN: true }), (shown, gap) => {
        const laid = arrangeSheet(shown, gap, [50, 76.2]);
        const [side, top, front] = (['side', 'top', 'front'] as const).map((name) =>
          moved(shown[name], laid.origin[name]),
        ) as [Box, Box, Box];
        expect(side.top - top.bottom).toBeGreaterThanOrEqual(gap - 1e-9);
        expect(Math.min(side.left, top.left) - front.right).toBeGreaterThanOrEqual(gap - 1e-9);
      }),
    );
  });

  test('sets origins on its raster, so that one grid runs through all views', () => {
    fc.assert(
      fc.property(boxes, (shown) => {
        const { origin } = arrangeSheet(shown, 100, [609.6, 76.2]);
        expect(Math.abs(origin.front[0] / 609.6 - Math.round(origin.front[0] / 609.6))).toBeLessThan(1e-9);
        expect(Math.abs(origin.top[1] / 76.2 - Math.round(origin.top[1] / 76.2))).toBeLessThan(1e-9);
      }),
    );
  });
});
