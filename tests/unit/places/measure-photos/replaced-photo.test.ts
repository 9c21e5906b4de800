import { describe, expect, test } from 'vitest';
import type { Photo } from '../../../../shared-math/layout/index.ts';
import { photoSchema } from '../../../../shared-math/layout/photo-schema.ts';
import { planeOf } from '../../../../shared-math/trace/index.ts';
import {
  fitOf,
  isMarkedOn,
  withMarksKept,
  withoutMarks,
} from '../../../../src-renderer/places/measure/photos/replaced-photo.ts';
import { expectClose } from '../../../support/close.ts';

const HASH = 'a'.repeat(64);
const other = (size: readonly [number, number], page = 1) => ({
  hash: 'b'.repeat(64),
  name: 'better.jpg',
  size,
  page,
});

/** A photo of which everything that can be is specified. */
const FULL: Required<Photo> = {
  view: 'side',
  hash: HASH,
  name: 'first.jpg',
  page: 3,
  size: [4000, 3000],
  opacity: 0.6,
  shown: true,
  front: true,
  flipped: true,
  crop: [100, 200, 3900, 2800],
  lens: {
    line: [
      [200, 160],
      [2000, 100],
      [3800, 170],
    ],
  },
  straighten: {
    points: [
      { at: [1000, 800], place: [0, 0] },
      { at: [3000, 820], place: [1400, 0] },
      { at: [3020, 1900], place: [1400, 700] },
      { at: [980, 1890], place: [0, 700] },
    ],
  },
  scale: { from: [1000, 800], to: [3000, 820], distance: 1400 },
  level: { from: [500, 2500], to: [3500, 2520] },
  levelCheck: { by: 'floor', from: [400, 2600], to: [3600, 2610] },
  anchor: { at: [1500, 1800], point: 'axle.left.wheelCentre', stands: [0, 700, 330] },
  depth: 700,
  distance: 4200,
  distanceSure: true,
  distanceDoubt: 12,
  focal: { px: 3100, share: 0.02 },
  marks: [{ point: 'steering.box.pitmanBall', at: [1200, 1500] }],
  notes: [{ from: [100, 120], to: [300, 140], text: 'rail' }],
  lengths: [{ from: 'axle.left.kingpinTop', to: 'axle.left.kingpinBottom', tape: 120 }],
};

describe('how one picture fits another', () => {
  test.each<[string, readonly [number, number], readonly [number, number]]>([
    ['same', [4000, 3000], [4000, 3000]],
    ['scaled', [4000, 3000], [2000, 1500]],
    // A third of 4000 and of 3000, each rounded to whole px.
    ['scaled', [4000, 3000], [1333, 1000]],
    ['scaled', [8064, 6048], [4032, 3024]],
    ['other', [4000, 3000], [3000, 4000]],
    ['other', [4000, 3000], [4000, 2250]],
    ['other', [4000, 3000], [10, 7]],
  ])('%s', (fit, from, to) => {
    expect(fitOf(from, to)).toBe(fit);
    expect(fitOf(to, from)).toBe(fit);
  });
});

describe('a photo with another picture', () => {
  test('of the same size keeps all', () => {
    const { hash, name, page, ...kept } = FULL;
    expect(withMarksKept(FULL, other([4000, 3000]))).toEqual({
      ...kept,
      hash: 'b'.repeat(64),
      name: 'better.jpg',
    });
    expect([hash, name, page]).toEqual([HASH, 'first.jpg', 3]);
    expect(withMarksKept(FULL, other([4000, 3000], 2)).page).toBe(2);
  });

  test('of the same shape at half the size shows the same places of the car at half the px', () => {
    const half = withMarksKept(FULL, other([2000, 1500]));
    expect(photoSchema.safeParse(half).success).toBe(true);
    const [before, after] = [planeOf(FULL), planeOf(half)];
    if (!before.ok || !after.ok) throw new Error('both can be prepared');
    // Not to the last digit: a click weighs as one px against the tape, whatever a px is, and these corners are not quite square.
    expectClose(after.value.mmPerPixel, 2 * before.value.mmPerPixel, 2e-3, 'mm for a px');
    for (const [x, y] of [
      [1200, 1500],
      [3000, 820],
      [600, 2400],
    ] as const) {
      const [a = [0, 0], b = [0, 0]] = [before.value.toPlace([x, y]), after.value.toPlace([x / 2, y / 2])];
      expectClose(b[0], a[0], 2, `right of ${x}, ${y}`);
      expectClose(b[1], a[1], 2, `down of ${x}, ${y}`);
    }
    expect(half.marks[0]?.at).toEqual([600, 750]);
    expect(half.notes[0]).toEqual({ from: [50, 60], to: [150, 70], text: 'rail' });
    expect(half.crop).toEqual([50, 100, 1950, 1400]);
    expect(half.levelCheck).toEqual({ by: 'floor', from: [200, 1300], to: [1800, 1305] });
    expect(half.focal).toEqual({ px: 1550, share: 0.02 });
  });

  test('without the marks keeps how it is shown and what the tape said of the car', () => {
    const bare = withoutMarks(FULL, other([3000, 4000]));
    expect(photoSchema.parse(bare)).toEqual({
      view: 'side',
      hash: 'b'.repeat(64),
      name: 'better.jpg',
      size: [3000, 4000],
      opacity: 0.6,
      shown: true,
      front: true,
      flipped: true,
      marks: [],
      notes: [],
      lengths: FULL.lengths,
    });
    expect(isMarkedOn(bare)).toBe(false);
    expect(isMarkedOn(FULL)).toBe(true);
    expect(isMarkedOn({ ...bare, depth: 0 })).toBe(true);
  });
});
