import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convexHull, type Outline, type ViewPoint } from '../../../shared-math/drawing/index.ts';
import { addSpan, isSpeck, thinned, UnionOutline } from '../../../shared-math/swept/union-outline.ts';

const BOX = { left: -60, top: -60, right: 60, bottom: 60 };

/** Unsigned area of outlines, holes taken off by the way they run around: the shoelace formula. */
function areaOf(outlines: readonly Outline[]): number {
  let sum = 0;
  for (const line of outlines)
    for (let i = 0; i < line.length; i += 2) {
      const j = (i + 2) % line.length;
      sum += (line[i]! * line[j + 1]! - line[j]! * line[i + 1]!) / 2;
    }
  return Math.abs(sum);
}

const disc = (x: number, y: number, radius: number, count = 256): Outline =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  }).flat();

const rectangle = (left: number, top: number, right: number, bottom: number): Outline => [
  left,
  top,
  right,
  top,
  right,
  bottom,
  left,
  bottom,
];

function union(shapes: readonly Outline[], step = 0.5): Outline[] {
  const whole = new UnionOutline(BOX, step);
  for (const shape of shapes) whole.add(shape);
  return whole.outlines();
}

describe('the union of convex shapes', () => {
  test('of one shape is that shape', () => {
    const [line, ...others] = union([disc(3, -7, 30)]);
    expect(others).toEqual([]);
    for (let i = 0; i < (line?.length ?? 0); i += 2)
      expect(Math.abs(Math.hypot(line![i]! - 3, line![i + 1]! + 7) - 30)).toBeLessThan(0.01);
  });

  // Outside check: two circles of radius r, d apart, cover 2 π r² less the lens 2 r² acos(d / 2r) - (d / 2) √(4r² - d²),
  // as in any table of plane figures.
  test('of two discs has the area that plane geometry gives', () => {
    const [r, d] = [25, 30];
    const lens = 2 * r * r * Math.acos(d / (2 * r)) - (d / 2) * Math.sqrt(4 * r * r - d * d);
    const found = union([disc(-15, 0, r), disc(15, 0, r)], 0.25);
    expect(found).toHaveLength(1);
    expect(areaOf(found) / (2 * Math.PI * r * r - lens)).toBeCloseTo(1, 3);
  });

  test('that lie apart has an outline for each, and one around a hole', () => {
    expect(union([disc(-30, 0, 10), disc(30, 0, 10)])).toHaveLength(2);
    const frame = [
      rectangle(-40, -40, 40, -20),
      rectangle(-40, 20, 40, 40),
      rectangle(-40, -40, -20, 40),
      rectangle(20, -40, 40, 40),
    ];
    const found = union(frame);
    expect(found).toHaveLength(2);
    // The hole runs the other way round, so that their areas are taken off one another: corners are cut by less than a cell.
    expect(Math.abs(areaOf(found) - (80 * 80 - 40 * 40))).toBeLessThan(8 * 0.5 * 0.5);
  });

  test('has the area that counting points gives, whatever the shapes', () => {
    const place = fc.tuple(
      fc.double({ min: -55, max: 55, noNaN: true }),
      fc.double({ min: -55, max: 55, noNaN: true }),
    );
    const shape = fc.array(place, { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(fc.array(shape, { minLength: 1, maxLength: 6 }), (shapes) => {
        const hulls = shapes
          .map((places) => convexHull(places as ViewPoint[]))
          .filter((hull) => hull.length > 2);
        const within = (x: number, y: number) =>
          hulls.some((hull) => {
            const sides = hull.map(([ax, ay], i) => {
              const [bx, by] = hull[(i + 1) % hull.length]!;
              return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
            });
            return sides.every((side) => side >= 0) || sides.every((side) => side <= 0);
          });
        // A sliver thinner than a step may be passed over, and points are counted to a step as well.
        let counted = 0;
        const each = 0.8;
        for (let x = -59.6; x < 60; x += each)
          for (let y = -59.6; y < 60; y += each) if (within(x, y)) counted += each * each;
        const around = hulls.reduce(
          (sum, hull) =>
            sum +
            hull.reduce(
              (length, [x, y], i) =>
                length + Math.hypot(hull[(i + 1) % hull.length]![0] - x, hull[(i + 1) % hull.length]![1] - y),
              0,
            ),
          0,
        );
        expect(Math.abs(areaOf(union(hulls.map((hull) => hull.flat()))) - counted)).toBeLessThan(
          5 + 0.3 * around,
        );
      }),
      { numRuns: 20, endOnFailure: true },
    );
  });

  test('has its own area where an edge lies along the lines of the grid but for rounding', () => {
    const outline = [
      -54.99999999999994, -1e-323, -8.4e-323, -54.999999999999865, 54.9999999999999, -1.0185606943210846e-13,
      2.5e-323, 6e-323,
    ];
    expect(Math.abs(areaOf(union([outline])) - 55 * 55)).toBeLessThan(1);
  });

  test('leaves out what is flat', () => {
    expect(union([[0, 0, 10, 10]])).toEqual([]);
    expect(union([])).toEqual([]);
  });
});

describe('spans', () => {
  test('that touch become one, in order', () => {
    const spans: number[] = [];
    for (const [from, to] of [
      [10, 12],
      [1, 2],
      [5, 6],
      [2, 3],
      [5.5, 5.6],
      [2.5, 5],
    ] as const)
      addSpan(spans, from, to);
    expect(spans).toEqual([1, 6, 10, 12]);
    addSpan(spans, 0, 20);
    expect(spans).toEqual([0, 20]);
  });
});

describe('an outline with fewer places', () => {
  test('stays as near as asked, and keeps its corners', () => {
    const many: Outline = [];
    for (let i = 0; i < 40; i += 1) many.push(i, 0);
    for (let i = 0; i < 40; i += 1) many.push(40, i);
    for (let i = 40; i > 0; i -= 1) many.push(i, 40);
    for (let i = 40; i > 0; i -= 1) many.push(0, i);
    const few = thinned(many, 0.1);
    expect(few.length).toBeLessThan(14);
    for (const corner of [
      [0, 0],
      [40, 0],
      [40, 40],
      [0, 40],
    ])
      expect(few.some((_, i) => i % 2 === 0 && few[i] === corner[0] && few[i + 1] === corner[1])).toBe(true);
    const round = disc(0, 0, 30, 720);
    const thin = thinned(round, 0.2);
    expect(thin.length).toBeLessThan(round.length / 8);
    // Every chord left stays within what was asked of the arc.
    for (let i = 0; i < thin.length; i += 2) {
      const j = (i + 2) % thin.length;
      expect(Math.hypot((thin[i]! + thin[j]!) / 2, (thin[i + 1]! + thin[j + 1]!) / 2)).toBeGreaterThan(
        30 - 0.21,
      );
    }
  });

  test('is a speck where it is smaller than a few cells', () => {
    expect(isSpeck(rectangle(0, 0, 1, 1), 1)).toBe(true);
    expect(isSpeck(rectangle(0, 0, 3, 3), 1)).toBe(false);
  });
});
