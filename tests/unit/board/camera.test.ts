import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  between,
  type Camera,
  fitted,
  panned,
  SCALE_LEAST,
  SCALE_MOST,
  toScreen,
  toSheet,
  zoomedAt,
} from '../../../src-renderer/board/camera.ts';

const px = fc.double({ min: -4000, max: 4000, noNaN: true });
const camera: fc.Arbitrary<Camera> = fc.record({
  scale: fc.double({ min: 0.05, max: 8, noNaN: true }),
  x: px,
  y: px,
});
const place = fc.tuple(px, px);

describe('the camera', () => {
  test('takes a place to the screen and back', () => {
    fc.assert(
      fc.property(camera, place, (from, at) => {
        const back = toSheet(from, toScreen(from, at));
        expect(back[0]).toBeCloseTo(at[0], 6);
        expect(back[1]).toBeCloseTo(at[1], 6);
      }),
    );
  });

  test('zooms about the pointer: what lies under it stays there', () => {
    fc.assert(
      fc.property(camera, place, fc.double({ min: 0.2, max: 5, noNaN: true }), (from, at, factor) => {
        const under = toSheet(from, at);
        const after = toScreen(zoomedAt(from, at, factor), under);
        expect(after[0]).toBeCloseTo(at[0], 4);
        expect(after[1]).toBeCloseTo(at[1], 4);
      }),
    );
  });

  test('zooms no further than its limits, however hard the wheel is turned', () => {
    const start: Camera = { scale: 1, x: 10, y: 20 };
    expect(zoomedAt(start, [50, 50], 1e9).scale).toBe(SCALE_MOST);
    expect(zoomedAt(start, [50, 50], 1e-9).scale).toBe(SCALE_LEAST);
  });

  test('pans by what the hand moves', () => {
    expect(toScreen(panned({ scale: 2, x: 1, y: 1 }, 5, -7), [3, 4])).toEqual([12, 2]);
  });

  test('fits a box inside the margins, touching two of them', () => {
    const margins = { left: 30, top: 50, right: 30, bottom: 40 };
    fc.assert(
      fc.property(
        fc.record({
          left: px,
          top: px,
          width: fc.double({ min: 200, max: 6000, noNaN: true }),
          height: fc.double({ min: 200, max: 6000, noNaN: true }),
        }),
        ({ left, top, width, height }) => {
          const box = { left, top, right: left + width, bottom: top + height };
          const fit = fitted(box, { width: 1000, height: 620 }, margins);
          const [x1, y1] = toScreen(fit, [box.left, box.top]);
          const [x2, y2] = toScreen(fit, [box.right, box.bottom]);
          const room = [x1 - 30, y1 - 50, 970 - x2, 580 - y2];
          for (const free of room) expect(free).toBeGreaterThan(-1e-6);
          expect(Math.min(...room)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test('flies from one sight to another and arrives exactly', () => {
    const from: Camera = { scale: 0.25, x: 500, y: 400 };
    const to: Camera = { scale: 2, x: -900, y: 120 };
    expect(between(from, to, 1)).toBe(to);
    expect(between(from, to, 0)).toEqual(from);
    const half = between(from, to, 0.5);
    expect(half.scale).toBeCloseTo(Math.sqrt(0.25 * 2), 12);
    // The place that both sights show at one spot of the screen does not move on the way.
    const fixed = (from.x - to.x) / (to.scale - from.scale);
    expect(fixed * half.scale + half.x).toBeCloseTo(fixed * from.scale + from.x, 9);
  });
});
