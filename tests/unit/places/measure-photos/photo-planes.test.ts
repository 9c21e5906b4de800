import { describe, expect, test } from 'vitest';
import type { Point } from '../../../../shared-math/geometry/points.ts';
import { hardpoints, type Photo } from '../../../../shared-math/layout/index.ts';
import { depthOf, planeOf, spotOf, tapeRows } from '../../../../shared-math/trace/index.ts';
import {
  closeOrder,
  pictureOrder,
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

describe('a photo from close by', () => {
  const photo = {
    ...(car.photos[0] as Photo),
    size: [8064, 6048],
    lens: undefined,
    straighten: undefined,
    scale: { from: [0, 0], to: [8000, 0], distance: 4000 },
    level: undefined,
    anchor: undefined,
    distance: undefined,
  } as unknown as Photo;
  const flat = plane(photo);
  const whole = pictureOrder(photo, flat, 2000);
  const [left, top] = whole.at;
  /** So many px of a screen of 1000 by 600 to the mm, in the middle of the photo. */
  const sight = (pxPerMm: number, right = 0, across = 1000, high = 600) => ({
    box: {
      left: left + 1500 + right,
      top: top + 1000,
      right: left + 1500 + right + across / pxPerMm,
      bottom: top + 1000 + high / pxPerMm,
    },
    pxPerMm,
  });

  test('is asked for where the whole picture is coarser than the screen, once for what is seen and a little around', () => {
    expect(closeOrder(photo, flat, whole, sight(0.4), null)).toBeUndefined();
    const close = closeOrder(photo, flat, whole, sight(2), null);
    if (!close) throw new Error('it is coarser');
    // A px of the photo is half a mm here, as one of the screen is.
    expect(close.step).toBeCloseTo(0.5, 2);
    expect(close.order.width).toBeGreaterThan(1400);
    expect(close.order.width).toBeLessThan(1600);
    expect(closeOrder(photo, flat, whole, sight(2), close)).toBeUndefined();
    expect(closeOrder(photo, flat, whole, sight(2, 100), close)).toBeUndefined();
    expect(closeOrder(photo, flat, whole, sight(2, 400), close)).toBeDefined();
    expect(closeOrder(photo, flat, whole, sight(4), close)?.step).toBeCloseTo(0.25, 2);
  });

  test('is no finer than the original, and beside the photo there is nothing', () => {
    const near = closeOrder(photo, flat, whole, sight(40), null);
    expect(near?.step).toBeCloseTo(0.25, 2);
    expect(near && closeOrder(photo, flat, whole, sight(60), near)).toBeUndefined();
    expect(closeOrder(photo, flat, whole, sight(2, 90_000), null)).toBeUndefined();
  });

  test('on a screen too large for one picture is coarser, and not asked for without end', () => {
    const large = sight(4, -1000, 5000, 3500);
    const close = closeOrder(photo, flat, whole, large, null);
    if (!close) throw new Error('it is coarser');
    expect(close.order.width * close.order.height).toBeLessThan(6.1e6);
    expect(close.step).toBeGreaterThan(0.3);
    expect(closeOrder(photo, flat, whole, large, close)).toBeUndefined();
  });
});
