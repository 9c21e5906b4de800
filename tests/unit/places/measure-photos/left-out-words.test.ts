import { expect, test } from 'vitest';
import { hardpoints, type Photo } from '../../../../shared-math/layout/index.ts';
import { planeOf } from '../../../../shared-math/trace/index.ts';
import { leftOutWords } from '../../../../src-renderer/places/measure/photos/left-out-words.ts';
import { boardPhoto } from '../../../support/photo-of-board.ts';
import { photographedCar } from '../../../support/photo-scene.ts';
import { type Pinhole, photographed } from '../../../support/pinhole.ts';

// The figures themselves are held by tests/unit/trace/left-out.test.ts; here is that the sentences carry them.

const camera: Pinhole = {
  at: [-450, 5000, 470],
  lookAt: [-430, 860, 450],
  up: [0, 0, 1],
  roll: 0,
  focal: 3004,
  size: [4000, 3000],
  bend: 0,
};
const points = hardpoints(photographedCar()).filter(
  ({ id }) => !id.includes('.right.') && !id.startsWith('shaft.'),
);
const level = {
  from: photographed(camera, [400, 700, 30]),
  to: photographed(camera, [-1200, 700, 30]),
};
const whole = boardPhoto(camera, 860, { change: { level } });

function words(photo: Photo, unit: 'in' | 'mm'): string[] {
  const plane = planeOf(photo);
  if (!plane.ok) throw new Error(plane.failure.step);
  return leftOutWords(photo, plane.value, points, { unit, length: (mm) => `${mm.toFixed(1)} mm` });
}

test('nothing is said of what is given', () => {
  expect(words(whole, 'in')).toEqual([]);
});

test('a plane that nobody placed costs so much for each inch or centimetre that it stands elsewhere', () => {
  const { depth: _, ...photo } = whole;
  const [inch, ...others] = words(photo, 'in');
  const [centimetre] = words(photo, 'mm');
  expect(others).toEqual([]);
  const figure = (sentence: string | undefined) => Number(/off by ([\d.]+) mm/.exec(sentence ?? '')?.[1]);
  expect(inch).toContain('Each inch');
  expect(centimetre).toContain('Each centimetre');
  expect(figure(inch) / figure(centimetre)).toBeCloseTo(2.54, 0);
});

test('a rectangle that nobody checked is taken to stand level, and each degree costs so much', () => {
  const { level: _, ...photo } = whole;
  const [sentence, ...others] = words(photo, 'in');
  expect(others).toEqual([]);
  const farthest = Math.max(...points.map(({ at }) => Math.hypot(at[0], at[2] - 330)));
  const figure = Number(/off by ([\d.]+) mm/.exec(sentence ?? '')?.[1]);
  expect(Math.abs(figure - (farthest * Math.PI) / 180)).toBeLessThan(0.1);
  const levelCheck = { by: 'floor', ...level } as const;
  expect(words({ ...photo, levelCheck }, 'in')).toEqual([]);
});

test('a camera whose distance nobody took is said to cost so much at the point that suffers most', () => {
  const { distance: _, ...photo } = whole;
  const [sentence, ...others] = words(photo, 'in');
  expect(others).toEqual([]);
  // 4.14 m from the board with just the focal length that is taken for usual.
  expect(sentence).toMatch(/about 13 ft \d in/);
  expect(sentence).toMatch(
    /the (pitman ball|left hairpin pivot), [\d.]+ mm behind the plane, comes out \d+ % too small: [\d.]+ mm off/,
  );
});
