import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  nearestLine,
  placeByTwo,
  placeInView,
  readDrawing,
  SnapIndex,
  spotInDrawing,
  type UnderlayPlace,
} from '../../../shared-math/underlay/index.ts';
import { pointsOfLine, simplified } from '../../../src-renderer/places/measure/drawings/taken-line.ts';
import { FRAME_DXF } from '../../support/drawing-files.ts';

const place = fc.record({
  unit: fc.double({ min: 0.01, max: 1000, noNaN: true }),
  turn: fc.double({ min: -180, max: 180, noNaN: true }),
  at: fc.tuple(
    fc.double({ min: -5000, max: 5000, noNaN: true }),
    fc.double({ min: -5000, max: 5000, noNaN: true }),
  ),
  flipped: fc.boolean(),
});
const spot = fc.tuple(
  fc.double({ min: -500, max: 500, noNaN: true }),
  fc.double({ min: -500, max: 500, noNaN: true }),
);

describe('where a drawing lies', () => {
  test('by hand: inches, turned a quarter to the left, its 0, 0 at 100 mm right and 50 mm up', () => {
    const lies: UnderlayPlace = { unit: 25.4, turn: 90, at: [100, 50] };
    // One unit to the drawing's right goes up; the view's plane counts downward.
    const [right, down] = placeInView(lies, [1, 0]);
    expect(right).toBeCloseTo(100, 9);
    expect(down).toBeCloseTo(-75.4, 9);
    expect(placeInView({ ...lies, flipped: true }, [1, 0])[1]).toBeCloseTo(-24.6, 9);
  });

  test('there and back again is where one was', () => {
    fc.assert(
      fc.property(place, spot, (lies, at) => {
        const back = spotInDrawing(lies, placeInView(lies, at));
        expect(Math.abs(back[0] - at[0])).toBeLessThan(1e-6);
        expect(Math.abs(back[1] - at[1])).toBeLessThan(1e-6);
      }),
    );
  });

  test('two known points say unit, turn and place, whatever those were', () => {
    fc.assert(
      fc.property(place, spot, spot, (lies, a, b) => {
        fc.pre(Math.hypot(a[0] - b[0], a[1] - b[1]) * lies.unit > 100);
        const found = placeByTwo(
          { spot: a, place: placeInView(lies, a) },
          { spot: b, place: placeInView(lies, b) },
          lies.flipped,
        );
        if (!found.ok) throw new Error(found.failure);
        for (const at of [a, b]) {
          const [x, y] = placeInView(found.value, at);
          const [u, v] = placeInView(lies, at);
          expect(Math.hypot(x - u, y - v)).toBeLessThan(0.01);
        }
        expect(Math.abs(found.value.unit / lies.unit - 1)).toBeLessThan(1e-6);
      }),
      { seed: 8 },
    );
  });

  test('one spot or one point is not two', () => {
    const one = { spot: [1, 1], place: [0, 0] } as const;
    expect(placeByTwo(one, { spot: [1, 1], place: [500, 0] }, false)).toMatchObject({ ok: false });
    expect(placeByTwo(one, { spot: [2, 1], place: [0, 0] }, false)).toMatchObject({ ok: false });
  });
});

describe('what draws a point to itself', () => {
  const read = readDrawing(FRAME_DXF);
  if (!read.ok) throw new Error(read.failure);
  const { layers } = read.value;
  const toView = (x: number, y: number) => placeInView({ unit: 25.4, turn: 0, at: [0, 0] }, [x, y]);
  const index = new SnapIndex(layers, toView);
  const near = (x: number, y: number, reach = 10) => index.nearest([x * 25.4, -y * 25.4], reach);

  test('ends, centres and crossings, the nearest within reach', () => {
    expect(near(20.1, 18.1)).toEqual({ kind: 'end', place: toView(20, 18) });
    expect(near(34.1, 14.2)).toMatchObject({ kind: 'centre' });
    // The two marks cross where the hole has its centre: seen with the hole's layer off.
    const marks = new SnapIndex(
      layers.filter(({ name }) => name === 'marks'),
      toView,
    );
    const crossing = marks.nearest(toView(34.1, 14.1), 10);
    expect(crossing?.kind).toBe('crossing');
    expect(crossing?.place[0]).toBeCloseTo(34 * 25.4, 9);
    expect(crossing?.place[1]).toBeCloseTo(-14 * 25.4, 9);
    expect(near(50, 10)).toBeUndefined();
    expect(near(20.5, 18.5, 10)).toBeUndefined();
    expect(near(20.5, 18.5, 25)).toBeDefined();
  });

  test('the nearest line is found by its own stretch, not by its box', () => {
    const found = nearestLine(layers, toView, toView(30, 19.1), 20);
    expect(found?.points[0]).toBe(-12);
    expect(nearestLine(layers, toView, toView(60, 30), 20)).toBeUndefined();
  });
});

describe('a line that becomes a part', () => {
  test('a rail keeps its kinks and drops what lies straight between them', () => {
    const straight = Array.from({ length: 200 }, (_, i) => [i, 0] as const);
    expect(simplified(straight, 0.5)).toEqual([
      [0, 0],
      [199, 0],
    ]);
    const kinked = pointsOfLine(
      'rail',
      [
        [-300, -450],
        [0, -450.2],
        [500, -450],
        [1000, -500],
      ],
      false,
      'side',
      380,
    );
    // Right is rearward in the side view, down is less high; the depth is y.
    expect(kinked).toEqual({
      ok: true,
      value: [
        [300, 380, 450],
        [-500, 380, 450],
        [-1000, 380, 500],
      ],
    });
  });

  test('a closed line is no rail, and one of too many kinks is none either', () => {
    expect(
      pointsOfLine(
        'rail',
        [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
        true,
        'side',
        0,
      ),
    ).toMatchObject({ ok: false });
    const zigzag = Array.from({ length: 120 }, (_, i) => [i * 10, (i % 2) * 10] as const);
    const refused = pointsOfLine('rail', zigzag, false, 'side', 0);
    expect(refused.ok ? '' : refused.failure).toBe('that line has 120 kinks, a rail 50 at the most');
    expect(pointsOfLine('engine', zigzag, true, 'top', 500).ok).toBe(true);
  });
});
