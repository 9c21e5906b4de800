import { Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import {
  axesOf,
  DIMETRIC,
  fromOtherSide,
  ISOMETRIC,
  keptTurn,
  nearnessOf,
  onPaper,
  type Turn,
  turnPoints,
} from '../../shared-math/pictorial/index.ts';

/** How long a millimetre along an axis of the car is on paper, and how far off level it lies there, degrees. */
function onPaperAlong(turn: Turn, axis: 0 | 1 | 2) {
  const unit: [number, number, number] = [0, 0, 0];
  unit[axis] = 1;
  const [right, down] = onPaper(axesOf(turn), unit);
  const slope = (Math.atan2(Math.abs(down), Math.abs(right)) * 180) / Math.PI;
  return { length: Math.hypot(right, down), slope };
}

describe('the axonometries of ISO 5456-3', () => {
  // ISO 5456-3:1996, 5.1: the three projection angles are equal; the projected axes lie at 30° to the horizontal, and the
  // ratio of true projection is √(2/3) = 0.816 on each (any textbook of descriptive geometry).
  test('isometric: all axes at √(2/3), two of them 30° off level, the third upright', () => {
    for (const axis of [0, 1, 2] as const)
      expect(onPaperAlong(ISOMETRIC, axis).length).toBeCloseTo(Math.sqrt(2 / 3), 12);
    expect(onPaperAlong(ISOMETRIC, 0).slope).toBeCloseTo(30, 10);
    expect(onPaperAlong(ISOMETRIC, 1).slope).toBeCloseTo(30, 10);
    expect(onPaperAlong(ISOMETRIC, 2).slope).toBeCloseTo(90, 10);
  });

  // ISO 5456-3:1996, 5.2: scales 1 : 1 : 1/2, axes at 7° and 42° to the horizontal (rounded there from 7°11' and 41°25').
  test('dimetric: scales 1 : 1 : 1/2, axes at 7° and 42°', () => {
    const along = onPaperAlong(DIMETRIC, 0);
    const across = onPaperAlong(DIMETRIC, 1);
    const upward = onPaperAlong(DIMETRIC, 2);
    expect(along.length).toBeCloseTo(upward.length, 12);
    expect(across.length).toBeCloseTo(along.length / 2, 12);
    expect(along.slope).toBeCloseTo(7 + 11 / 60, 1);
    expect(across.slope).toBeCloseTo(41 + 25 / 60, 1);
    expect(upward.slope).toBeCloseTo(90, 10);
  });

  // ISO 5456-3:1996, 5.1.3: a circle of diameter s in a face of the isometric cube is an ellipse; with axes at full scale its
  // axes are √(3/2) s = 1.22 s and √(1/2) s = 0.71 s, which √(2/3) of true projection makes s and s/√3.
  test('a circle in a face of the isometric cube: axes s and s/√3', () => {
    const axes = axesOf(ISOMETRIC);
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const lengths = Array.from({ length: 3600 }, (_, i) => {
        const point: [number, number, number] = [0, 0, 0];
        point[a] = 0.5 * Math.cos((i * Math.PI) / 1800);
        point[b] = 0.5 * Math.sin((i * Math.PI) / 1800);
        return Math.hypot(...onPaper(axes, point));
      });
      expect(2 * Math.max(...lengths)).toBeCloseTo(1, 5);
      expect(2 * Math.min(...lengths)).toBeCloseTo(1 / Math.sqrt(3), 5);
    }
  });

  test('from ahead and the left: the front goes left on paper, the left side right, up goes up', () => {
    const axes = axesOf(ISOMETRIC);
    expect(onPaper(axes, [1, 0, 0])[0]).toBeLessThan(0);
    expect(onPaper(axes, [0, 1, 0])[0]).toBeGreaterThan(0);
    expect(onPaper(axes, [0, 0, 1])[1]).toBeLessThan(0);
    expect(onPaper(axesOf(fromOtherSide(ISOMETRIC)), [1, 0, 0])[0]).toBeGreaterThan(0);
  });
});

/** Rotation about z by the azimuth, then about y by the elevation, multiplied by ml-matrix: rows toward, right, up. */
function rotated({ azimuth, elevation }: Turn, point: readonly number[]): number[] {
  const [ca, sa, ce, se] = [Math.cos(-azimuth), Math.sin(-azimuth), Math.cos(elevation), Math.sin(elevation)];
  const aboutZ = new Matrix([
    [ca, -sa, 0],
    [sa, ca, 0],
    [0, 0, 1],
  ]);
  const aboutY = new Matrix([
    [ce, 0, se],
    [0, 1, 0],
    [-se, 0, ce],
  ]);
  return aboutY
    .mmul(aboutZ)
    .mmul(Matrix.columnVector([...point]))
    .to1DArray();
}

test('any turn is two rotations one after the other (ml-matrix)', () => {
  for (let i = 0; i < 200; i += 1) {
    const turn = keptTurn({ azimuth: 0.37 * i, elevation: (i % 17) * 0.09 });
    const point = [100 * Math.sin(i), 900 * Math.cos(3 * i), 700 * Math.sin(5 * i)] as const;
    const [toward, right, up] = rotated(turn, point) as [number, number, number];
    const axes = axesOf(turn);
    expect(nearnessOf(axes, point)).toBeCloseTo(toward, 9);
    expect(onPaper(axes, point)[0]).toBeCloseTo(right, 9);
    expect(onPaper(axes, point)[1]).toBeCloseTo(-up, 9);
    const turned = new Float64Array(3);
    turnPoints(axes, Float64Array.from(point), turned);
    expect([...turned].map((value, at) => value - ([toward, right, up][at] as number))).toEqual(
      [0, 1, 2].map(() => expect.closeTo(0, 9)),
    );
  }
});

test('a turn is never from below the ground, and a whole turn is none', () => {
  expect(keptTurn({ azimuth: 2 * Math.PI + 0.3, elevation: -0.2 })).toEqual({
    azimuth: expect.closeTo(0.3, 12),
    elevation: 0,
  });
  expect(keptTurn({ azimuth: -0.3, elevation: 2 }).elevation).toBe(Math.PI / 2);
});
