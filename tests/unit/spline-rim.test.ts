import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RimEllipse, rimAxes, rimStretch, rimThrough } from '../../shared-math/splines/index.ts';
import {
  markedRim,
  NO_MARKS,
  nextStep,
  rimTrouble,
  withMark,
  withoutLast,
} from '../../src-renderer/panels/splines/rim-marks.ts';
import { expectClose } from '../support/close.ts';

/** A circle of radius 100 seen so many degrees off square, from far away, toward an angle; places on it by the shaft's angle. */
function seen(tilt: number, toward: number) {
  const [c, s] = [Math.cos(toward), Math.sin(toward)];
  return (angle: number): readonly [number, number] => {
    const [x, y] = [100 * Math.cos(angle), 100 * Math.sin(angle)];
    // What lies toward the camera's side is foreshortened by the cosine.
    const along = x * c + y * s;
    const less = along * (Math.cos((tilt * Math.PI) / 180) - 1);
    return [200 + x + less * c, 150 + y + less * s];
  };
}

const at = ({ x, y, xx, xy, yy }: RimEllipse, t: number) =>
  [x + xx * Math.cos(t) + xy * Math.sin(t), y + xy * Math.cos(t) + yy * Math.sin(t)] as const;

describe('the rim through clicks', () => {
  test('many exact clicks give the ellipse that an end seen off square is, and the shaft’s angles on it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 25, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (tilt, toward) => {
          const place = seen(tilt, toward);
          const clicks = Array.from({ length: 400 }, (_, i) => place((2 * Math.PI * i) / 400));
          const rim = rimThrough([200, 150], clicks)!;
          for (const t of [0, 1, 2.5, 4]) {
            // The pull toward a circle is weak against 400 clicks.
            expectClose(at(rim, t)[0], place(t)[0], 0.05);
            expectClose(at(rim, t)[1], place(t)[1], 0.05);
          }
          const { longer, shorter } = rimAxes(rim);
          expectClose(longer, 100, 0.05);
          expectClose(shorter, 100 * Math.cos((tilt * Math.PI) / 180), 0.05);
        },
      ),
      { seed: 16, numRuns: 60 },
    );
  });

  test('three clicks draw the rim toward the slant; one is a circle through it; bunched clicks make no wild ellipse', () => {
    const place = seen(15, 0.6);
    const rim = rimThrough([200, 150], [0.6, 0.6 + 2, 0.6 + 4].map(place))!;
    // Half of (1 - cos 15°)/(1 + cos 15°) = 0.0173 at the least.
    expect(rimStretch(rim)).toBeGreaterThan(0.0087);
    expectClose(
      Math.abs(Math.cos(rimAxes(rim).turn - 0.6)),
      0,
      0.25,
      'the longer axis lies across the slant',
    );
    const round = rimThrough([200, 150], [[290, 150]])!;
    expectClose(rimStretch(round), 0, 0.02);
    expectClose(round.xx, 90, 2);
    const bunched = rimThrough(
      [200, 150],
      [
        [300, 150],
        [299, 158],
        [301, 144],
      ],
    )!;
    expect(rimStretch(bunched)).toBeLessThan(0.03);
  });

  test('a centre marked off comes nearer to where it is', () => {
    const place = seen(0, 0);
    const off = (clicks: readonly number[]) => Math.abs(rimThrough([203, 150], clicks.map(place))!.x - 200);
    // Three clicks do not tell a centre off from a slant; six do.
    expect(off([0.3, 2.4, 4.5])).toBeLessThan(2.6);
    expect(off([0.3, 1.35, 2.4, 3.45, 4.5, 5.55])).toBeLessThan(0.8);
  });

  test('no click, or one at the middle, is no rim', () => {
    expect(rimThrough([200, 150], [])).toBeUndefined();
    expect(
      rimThrough(
        [200, 150],
        [
          [300, 150],
          [201, 150],
        ],
      ),
    ).toBeUndefined();
  });
});

test('marks: the middle, then the rim; the last is taken back; what is next stands in words', () => {
  let marks = NO_MARKS;
  const said = [nextStep(marks)];
  for (const spot of [
    [200, 150],
    [300, 150],
    [150, 236],
    [150, 64],
  ] as const) {
    marks = withMark(marks, spot);
    said.push(nextStep(marks));
  }
  expect(said).toEqual([
    'Click the middle of the shaft’s end.',
    'Now click the rim, over the teeth, in three places spread around it.',
    '2 more on the rim, spread around it: an end seen at a slant is not round.',
    '1 more on the rim, spread around it: an end seen at a slant is not round.',
    'Check that every mark stands at a tooth. Another click on the rim makes it surer.',
  ]);
  expectClose(rimAxes(markedRim(marks)!).longer, 100, 1.5);
  expect(withoutLast(marks).rim).toHaveLength(2);
  expect(withoutLast(withMark(NO_MARKS, [1, 2]))).toEqual(NO_MARKS);
  expect(rimTrouble(marks)).toBe('');
  expect(rimTrouble(withMark(withMark(NO_MARKS, [5, 5]), [5, 5]))).toMatch(/take the last one back/);
});
