import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { hardpoints, type Photo } from '../../../../shared-math/layout/index.ts';
import { depthOf, planeOf, spotOf, tapeRows } from '../../../../shared-math/trace/index.ts';
import {
  tracedPoint,
  withPhoto,
  withTraced,
} from '../../../../src-renderer/places/measure/photos/photo-planes.ts';
import { photographedCar } from '../../../support/photo-scene.ts';

const car = photographedCar();
const points = hardpoints(car);
const apart = (a: Point | undefined, b: Point) =>
  a ? Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) : Number.POSITIVE_INFINITY;

function plane(photo: Photo) {
  const prepared = planeOf(photo);
  if (!prepared.ok) throw new Error(prepared.failure.step);
  return prepared.value;
}

describe('the photographed demonstration', () => {
  test('is traced back to within a millimetre from its own marks, though every depth is wrong before', () => {
    for (const [index, photo] of car.photos.entries())
      for (const mark of photo.marks) {
        const point = points.find(({ id }) => id === mark.point);
        if (!point) throw new Error(mark.point);
        const [x, y, z] = point.at;
        const misplaced = { ...point, at: [x + 90, y - 70, z + 80] as Point };
        expect(apart(tracedPoint(car.photos, index, misplaced, mark.at), point.at), mark.point).toBeLessThan(
          1,
        );
      }
  });

  test('alone, a photo sets the two coordinates of its view and keeps the depth', () => {
    const [side] = car.photos as [Photo, Photo];
    for (const mark of side.marks) {
      const { at, ...point } = points.find(({ id }) => id === mark.point) as (typeof points)[number];
      const got = tracedPoint([side], 0, { ...point, at }, mark.at);
      expect(apart(got, at), mark.point).toBeLessThan(1);
      expect(got?.[1]).toBe(at[1]);
    }
  });

  test('shows every marked point where the photo shows it', () => {
    for (const photo of car.photos)
      for (const mark of photo.marks) {
        const at = points.find(({ id }) => id === mark.point)?.at as Point;
        const spot = spotOf(photo, plane(photo), at);
        expect(Math.hypot((spot?.[0] ?? 0) - mark.at[0], (spot?.[1] ?? 0) - mark.at[1])).toBeLessThan(1);
      }
  });

  test('has its planes where they were told, and a tape that agrees or not', () => {
    const [side] = car.photos as [Photo, Photo];
    expect(depthOf(side)).toBe(860);
    expect(depthOf({ ...side, depth: undefined } as unknown as Photo)).toBe(710);
    const corners = side.straighten?.points.map(({ at }) => at) ?? [];
    const [a = [0, 0] as const, b = [0, 0] as const] = corners;
    const lengths = [{ from: 'steering.box.pitmanBall', to: 'steering.dragLinkBall', tape: 640 }];
    const rows = tapeRows(
      { ...side, notes: [{ from: a, to: b, text: 'Batten', tape: 1400 }], lengths },
      plane(side),
      points,
    );
    expect(rows.map(({ words, check }) => [words, check?.agrees])).toEqual([
      ['Batten', true],
      ['Pitman ball to steering arm ball', false],
    ]);
  });
});

test('the box is traced by itself and leaves its arm where it was seen; taking a value away takes its key away', () => {
  const box = points.find(({ id }) => id === 'steering.box.sectorCentre') as (typeof points)[number];
  const moved = withTraced(car, box, [-650, 450, 430]);
  expect(moved.steering.box.pitmanBall).toEqual(car.steering.box.pitmanBall);
  expect(moved.steering.box.sectorCentre).toEqual([-650, 450, 430]);
  expect(Object.keys(withPhoto(car, 0, { distance: undefined }).photos[0] ?? {})).not.toContain('distance');
});
