import { describe, expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import {
  meeting,
  type PhotoCalibration,
  type PhotoPlane,
  type Planar,
  preparePhoto,
} from '../../../shared-math/trace/index.ts';
import { type Pinhole, photographed } from '../../support/pinhole.ts';

// The side of a car from its left, 4.2 m off and not square on: right in the picture is back, y 700 is the plane.
const PLANE = 700;
const camera: Pinhole = {
  at: [-700, 4900, 900],
  lookAt: [-420, PLANE, 480],
  up: [0, 0, 1],
  roll: 0.05,
  focal: 3100,
  size: [3000, 2000],
  bend: 0.05,
};
const inPlane = (right: number, down: number): Point => [-right, PLANE, -down];
const shot = (point: Point): Planar => photographed(camera, point);
const START = { middle: [0, 0] as Planar, width: 3000 };

const told: PhotoCalibration = {
  size: camera.size,
  lens: { line: [-600, -200, 200, 600, 1000, 1500].map((right) => shot(inPlane(right, -1200))) },
  straighten: {
    points: [
      { at: shot(inPlane(-300, -900)), place: [0, 0] },
      { at: shot(inPlane(1100, -900)), place: [1400, 0] },
      { at: shot(inPlane(1100, -100)), place: [1400, 800] },
      { at: shot(inPlane(-300, -100)), place: [0, 800] },
    ],
  },
  anchor: { at: shot([0, 710, 330]), place: [0, -330], before: 10 },
  distance: camera.at[1] - PLANE,
};

function prepared(calibration: PhotoCalibration): PhotoPlane {
  const plane = preparePhoto(calibration, START);
  if (!plane.ok) throw new Error(`${plane.failure.step}: ${plane.failure.why}`);
  return plane.value;
}
const off = (a: Planar | undefined, b: Planar) =>
  a ? Math.hypot(a[0] - b[0], a[1] - b[1]) : Number.POSITIVE_INFINITY;

describe('a photo taken by an independent camera', () => {
  const plane = prepared(told);

  test('gives places of its plane back within a pixel’s worth, and the way to the photo too', () => {
    for (const [right, down] of [
      [0, -330],
      [900, -346],
      [1200, -60],
      [-400, -800],
      [600, -500],
    ] as Planar[]) {
      const spot = shot(inPlane(right, down));
      expect(off(plane.toPlace(spot), [right, down])).toBeLessThan(0.05);
      expect(off(plane.toPhoto([right, down]), spot)).toBeLessThan(0.05);
    }
    expect(plane.mmPerPixel).toBeGreaterThan(1);
    expect(plane.mmPerPixel).toBeLessThan(2);
  });

  test('finds where the camera stood from its distance', () => {
    expect(off(plane.camera?.foot, [700, -900])).toBeLessThan(2);
  });

  test('corrects what stands behind or before the plane, which would be centimetres out otherwise', () => {
    for (const y of [415, 500, 606, 780]) {
      const spot = shot([-890, y, 335]);
      expect(off(plane.placeBefore(spot, y - PLANE), [890, -335])).toBeLessThan(0.1);
      expect(off(plane.toPlace(spot), [890, -335])).toBeGreaterThan(y === 415 ? 35 : 8);
    }
  });

  test('one px of clicking moves what is read by one px’s worth', () => {
    const [x, y] = shot([-872, 500, 346]);
    const read = plane.placeBefore([x, y], 500 - PLANE);
    const slipped = plane.placeBefore([x + 1, y], 500 - PLANE);
    expect(off(read, slipped as Planar)).toBeLessThan(1.3 * plane.mmPerPixel);
    expect(off(read, [872, -346])).toBeLessThan(0.1);
  });
});

describe('scale and level without a rectangle', () => {
  const square: Pinhole = { ...camera, at: [-500, 4700, 500], lookAt: [-500, 700, 500], roll: 0.12, bend: 0 };
  const seen = (right: number, down: number) => photographed(square, inPlane(right, down));
  const plain: PhotoCalibration = {
    size: square.size,
    scale: { from: seen(0, -330), to: seen(1000, -330), distance: 1000 },
    level: { from: seen(-200, 0), to: seen(1300, 0) },
    anchor: { at: seen(0, -330), place: [0, -330], before: 0 },
  };

  test('two points and their distance, a level line and a known point are enough for a square shot', () => {
    const plane = prepared(plain);
    expect(off(plane.toPlace(seen(872, -346)), [872, -346])).toBeLessThan(1e-6);
    expect(plane.mmPerPixel).toBeCloseTo(4000 / square.focal, 6);
    // A px at the end of a base of 775 px is so many at the far corner.
    const far = Math.max(
      ...[
        [0, 0],
        [3000, 0],
        [0, 2000],
        [3000, 2000],
      ].map(([x, y]) => Math.hypot((x as number) - seen(0, -330)[0], (y as number) - seen(0, -330)[1])),
    );
    expect(plane.farError).toBeCloseTo((far / 775) * plane.mmPerPixel, 4);
  });

  test('a photo from the other side is exchanged left and right', () => {
    const mirrored = ([x, y]: Planar): Planar => [square.size[0] - x, y];
    const plane = prepared({
      size: square.size,
      flipped: true,
      scale: { from: mirrored(seen(0, -330)), to: mirrored(seen(1000, -330)), distance: 1000 },
      level: { from: mirrored(seen(-200, 0)), to: mirrored(seen(1300, 0)) },
      anchor: { at: mirrored(seen(0, -330)), place: [0, -330], before: 0 },
    });
    expect(off(plane.toPlace(mirrored(seen(872, -346))), [872, -346])).toBeLessThan(1e-6);
  });

  test('a photo that nothing is known of lies where it is put, as wide as it is told', () => {
    const plane = prepared({ size: [3000, 2000] });
    expect(off(plane.toPlace([0, 1000]), [-1500, 0])).toBeLessThan(1e-9);
    expect(off(plane.toPlace([3000, 1000]), [1500, 0])).toBeLessThan(1e-9);
  });

  test('what cannot be is told with its step', () => {
    const failure = (change: Partial<PhotoCalibration>) => {
      const plane = preparePhoto({ ...told, ...change }, START);
      return plane.ok ? 'ok' : `${plane.failure.step}: ${plane.failure.why}`;
    };
    const at = shot([0, PLANE, 330]);
    expect(failure({ scale: { from: at, to: at, distance: 1000 } })).toBe('scale: zero-scale');
    expect(failure({ scale: { from: at, to: [5, 5], distance: 0 } })).toBe('scale: zero-scale');
    expect(failure({ level: { from: at, to: at } })).toBe('level: zero-length');
    expect(failure({ lens: { line: [at] } })).toBe('lens: too-few-points');
    expect(failure({ straighten: { points: (told.straighten?.points ?? []).slice(0, 3) } })).toBe(
      'straighten: too-few-points',
    );
    expect(failure({ distance: 1 })).toBe('distance: no-camera');
  });
});

test('two lines of sight meet in the point that both see', () => {
  const met = meeting(
    { through: [0, 4000, 0], toward: [-870, 500, 346] },
    { through: [0, 0, 5000], toward: [-870, 500, 346] },
  );
  expect(met?.gap).toBeLessThan(1e-9);
  for (const [axis, value] of [-870, 500, 346].entries()) expect(met?.at[axis]).toBeCloseTo(value, 9);
  expect(
    meeting({ through: [0, 0, 0], toward: [1, 0, 0] }, { through: [0, 5, 0], toward: [1, 5, 0] }),
  ).toBeUndefined();
});
