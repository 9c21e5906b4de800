import { expect, test } from 'vitest';
import { unproject } from '../../../shared-math/drawing/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { hardpoints, type Photo } from '../../../shared-math/layout/index.ts';
import {
  beforeOf,
  planeOf,
  USUAL_FOCAL,
  usualDistance,
  withoutDistance,
  withPlaneOff,
} from '../../../shared-math/trace/index.ts';
import { boardPhoto } from '../../support/photo-of-board.ts';
import { photographedCar } from '../../support/photo-scene.ts';
import { type Pinhole, photographed } from '../../support/pinhole.ts';

// Foretold, and then done: an independent camera photographs the car, which is traced without what was left out.

const points = hardpoints(photographedCar()).filter(
  ({ id }) => !id.includes('.right.') && !id.startsWith('shaft.'),
);
const PLANE = 860;

const camera = (distance: number, focal: number): Pinhole => ({
  at: [-450, PLANE + distance, 470],
  lookAt: [-430, PLANE, 450],
  up: [0, 0, 1],
  roll: 0.02,
  focal,
  size: [4000, 3000],
  bend: 0.02,
});

function planeFor(photo: Photo) {
  const plane = planeOf(photo);
  if (!plane.ok) throw new Error(plane.failure.step);
  return plane.value;
}

/** mm by which a point is traced beside its place, its depth known. */
function missed(photo: Photo, shot: Pinhole, at: Point): number {
  const place = planeFor(photo).placeBefore(photographed(shot, at), beforeOf(photo, at[1]));
  if (!place) return Number.NaN;
  const got = unproject('side', place, at);
  return Math.hypot(got[0] - at[0], got[2] - at[2]);
}

test.each([3000, 4500, 7000])('what leaving the distance out costs, from %d mm', (distance) => {
  const shot = camera(distance, USUAL_FOCAL * 5000);
  const { distance: _, ...photo } = boardPhoto(shot, PLANE);
  const plane = planeFor(photo);
  expect(usualDistance(photo, plane)).toBeGreaterThan(0.95 * distance);
  expect(usualDistance(photo, plane)).toBeLessThan(1.05 * distance);
  const cost = withoutDistance(photo, plane, points);
  const point = points.find(({ id }) => id === cost?.point);
  if (!cost || !point) throw new Error('no point suffers');
  expect(cost.behind).toBeCloseTo(PLANE - point.at[1], 6);
  const really = missed(photo, shot, point.at);
  expect(cost.off).toBeGreaterThan(0.8 * really);
  expect(cost.off).toBeLessThan(1.2 * really);
  // No other point is worse by more than the assumption is off.
  for (const each of points) expect(missed(photo, shot, each.at), each.id).toBeLessThan(1.2 * cost.off);
  // The share is that of a length that stands there.
  const [a, b] = [point.at, [point.at[0] - 300, point.at[1], point.at[2]] as Point].map((at) =>
    plane.toPlace(photographed(shot, at)),
  );
  const shown = Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 0), (a?.[1] ?? 0) - (b?.[1] ?? 0)) / 300;
  expect(1 - shown).toBeCloseTo(cost.share, 2);
});

test('where the photo’s own file has the focal length, what that may be out by is what it costs', () => {
  const shot = camera(4200, 3000);
  const { distance: _, ...photo } = boardPhoto(shot, PLANE);
  const by = (px: number): Photo => ({ ...photo, focal: { px, share: 0.05 } });
  const right = by(3000);
  const cost = withoutDistance(right, planeFor(right), points);
  const point = points.find(({ id }) => id === cost?.point);
  if (!cost || !point) throw new Error('no point suffers');
  expect(cost.by).toBe('file');
  expect(cost.distance).toBeGreaterThan(4150);
  expect(cost.distance).toBeLessThan(4250);
  const really = missed(by(3000 * 1.05), shot, point.at);
  expect(really).toBeGreaterThan(1);
  expect(Math.abs(cost.off - really)).toBeLessThan(0.15 * really);
});

test('what a plane costs that stands elsewhere than it is taken to', () => {
  const shot = camera(4200, 3300);
  const right = boardPhoto(shot, PLANE);
  for (const wrong of [25.4, -150]) {
    const photo: Photo = { ...right, depth: PLANE + wrong };
    const cost = withPlaneOff(right, planeFor(right), points, wrong);
    const point = points.find(({ id }) => id === cost?.point);
    if (!cost || !point) throw new Error('no point suffers');
    const really = missed(photo, shot, point.at);
    expect(really).toBeGreaterThan(2);
    expect(Math.abs(cost.off - really)).toBeLessThan(0.03 * really + 0.1);
    for (const each of points) expect(missed(photo, shot, each.at)).toBeLessThan(1.04 * cost.off + 0.1);
  }
});

test('what is given costs nothing, and what nobody can say is not said', () => {
  const photo = boardPhoto(camera(4200, 3300), PLANE);
  expect(withoutDistance(photo, planeFor(photo), points)).toBeUndefined();
  const { distance: _, ...without } = photo;
  expect(withPlaneOff(without, planeFor(without), points, 25.4)).toBeUndefined();
});
