import { expect, test } from 'vitest';
import { sectionAcross } from '../../../src-renderer/board/road-ground.ts';
import { LEVEL, placeFrame } from '../../../src-renderer/document/frame-pose.ts';

test('a frame that stands level leaves its points where they are', () => {
  const points = Float64Array.of(1, 2, 3);
  placeFrame(points, LEVEL);
  expect([...points]).toEqual([1, 2, 3]);
});

test('a frame that has risen and rolled takes its points along as a rigid body, the left side up', () => {
  const points = Float64Array.of(10, 700, 480, 10, -700, 480, 5, 0, 480);
  placeFrame(points, { rise: 20, roll: 0.02, about: 480 });
  const at = (i: number) => [...points.subarray(3 * i, 3 * i + 3)] as [number, number, number];
  expect(at(0)[2]).toBeCloseTo(480 + 20 + 700 * Math.sin(0.02), 9);
  expect(at(1)[2]).toBeCloseTo(480 + 20 - 700 * Math.sin(0.02), 9);
  expect(at(2)).toEqual([5, 0, 500]);
  expect(Math.hypot(at(0)[1] - at(1)[1], at(0)[2] - at(1)[2])).toBeCloseTo(1400, 9);
});

test('only the points asked for are taken along', () => {
  const points = Float64Array.of(0, 0, 1, 0, 0, 1);
  placeFrame(points, { rise: 5, roll: 0, about: 0 }, 3);
  expect([...points]).toEqual([0, 0, 1, 0, 0, 6]);
});

test('the road across the car is level under each wheel, and steps beside the lane that is higher', () => {
  const line = sectionAcross([
    { y: 700, half: 100, height: 50 },
    { y: -700, half: 100, height: 0 },
  ]);
  expect(line.slice(1, -1)).toEqual([
    [-800, 0],
    [-600, 0],
    [600, 0],
    [600, 50],
    [600, 50],
    [800, 50],
  ]);
});
