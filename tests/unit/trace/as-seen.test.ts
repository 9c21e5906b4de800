import { describe, expect, test } from 'vitest';
import type { Photo } from '../../../shared-math/layout/index.ts';
import {
  beforeOf,
  eyeOf,
  type PhotoPlane,
  planeOf,
  spotOf,
  stanceOf,
} from '../../../shared-math/trace/index.ts';
import { DEGREE } from '../../support/close.ts';
import { boardPhoto } from '../../support/photo-of-board.ts';
import { type Pinhole, photographed } from '../../support/pinhole.ts';

// A photo is put to scale by corners that an independent camera shows; then points at many depths have to be seen where
// that camera, which knows nothing of planes, shows them.

const PLANE = 760;

/** A camera so many degrees off square, toward the tail and above, at so many mm from the board. */
function cameraAt(degrees: number, far: number, bend: number): Pinhole {
  const aside = Math.tan(degrees * DEGREE) * far;
  return {
    at: [-420 - 0.9 * aside, PLANE + far, 480 + 0.43 * aside],
    lookAt: [-420, PLANE, 480],
    up: [0, 0, 1],
    roll: 0.03,
    focal: 0.75 * 4000,
    size: [4000, 3000],
    bend,
  };
}

function planeFor(photo: Photo): PhotoPlane {
  const plane = planeOf(photo);
  if (!plane.ok) throw new Error(`${plane.failure.step}: ${plane.failure.why}`);
  return plane.value;
}

const DEPTHS = [-780, -400, 0, 300, 606, 760, 900];

describe.each([2, 8, 15, 25])('a camera %d° off square', (degrees) => {
  test('shows points at every depth where they are drawn over its photo, its lens included', () => {
    const camera = cameraAt(degrees, 4000, 0.03);
    const photo = boardPhoto(camera, PLANE);
    const plane = planeFor(photo);
    let worst = 0;
    for (const y of DEPTHS)
      for (const x of [250, 0, -500, -1000])
        for (const z of [120, 330, 620]) {
          const spot = spotOf(photo, plane, [x, y, z]) ?? [Number.NaN, 0];
          const [wx, wy] = photographed(camera, [x, y, z]);
          worst = Math.max(worst, Math.hypot(spot[0] - wx, spot[1] - wy));
        }
    expect(worst).toBeLessThan(1);
    // As if all of it stood in the plane of the board it would be far off.
    const [fx, fy] = plane.toPhoto([500, -330]) ?? [0, 0];
    const [wx, wy] = photographed(camera, [-500, 0, 330]);
    expect(Math.hypot(fx - wx, fy - wy)).toBeGreaterThan(20);
  });

  test('is said to have stood as it stood', () => {
    const camera = cameraAt(degrees, 4000, 0.03);
    const photo = boardPhoto(camera, PLANE);
    const stance = stanceOf(photo, planeFor(photo));
    // From the middle of the four corners.
    const aside = camera.at[0] + 400;
    const above = camera.at[2] - 550;
    expect(stance?.distance).toBeCloseTo(4000, -1);
    expect(Math.abs((stance?.right ?? 0) + aside)).toBeLessThan(15);
    expect(Math.abs((stance?.above ?? 0) - above)).toBeLessThan(15);
    const angle = Math.atan2(Math.hypot(aside, above), 4000) / DEGREE;
    expect(Math.abs((stance?.offSquare ?? 0) / DEGREE - angle)).toBeLessThan(0.3);
  });
});

test('without the camera’s distance there is no eye, and points are taken to stand in the plane', () => {
  const photo = boardPhoto(cameraAt(8, 4000, 0.03), PLANE);
  const { distance: _, ...rest } = photo;
  const plane = planeFor(rest);
  expect(eyeOf(rest, plane)).toBeUndefined();
  expect(stanceOf(rest, plane)).toBeUndefined();
  expect(spotOf(rest, plane, [-500, 0, 330])).toEqual(plane.toPhoto([500, -330]));
});

test('a photo of the right side, mirrored into the view, has the far side of the view nearer to its camera', () => {
  // Square on from the right: the scale along the car, the middle of the picture at the foot.
  const camera: Pinhole = {
    at: [-400, -4700, 500],
    lookAt: [-400, 0, 500],
    up: [0, 0, 1],
    roll: 0,
    focal: 3000,
    size: [4000, 3000],
    bend: 0,
  };
  const seen = (x: number, y: number, z: number) => photographed(camera, [x, y, z]);
  const { straighten: _s, lens: _l, ...rest } = boardPhoto(camera, PLANE);
  const photo: Photo = {
    ...rest,
    flipped: true,
    depth: -700,
    distance: 4000,
    scale: { from: seen(0, -700, 330), to: seen(-1000, -700, 330), distance: 1000 },
    anchor: { at: seen(0, -710, 330), point: 'axle.right.wheelCentre', stands: [0, -710, 330] },
  };
  const plane = planeFor(photo);
  for (const y of [-800, -400, 0, 600])
    for (const x of [200, -900]) {
      const spot = spotOf(photo, plane, [x, y, 400]) ?? [0, 0];
      const [wx, wy] = seen(x, y, 400);
      expect(Math.hypot(spot[0] - wx, spot[1] - wy), `${x}, ${y}`).toBeLessThan(0.5);
      // And the way of tracing it back.
      const place = plane.placeBefore([wx, wy], beforeOf(photo, y)) ?? [0, 0];
      expect(Math.hypot(place[0] + x, place[1] + 400), `${x}, ${y}`).toBeLessThan(0.5);
    }
  // Looking at the right side, ahead of the car is to the right.
  expect(stanceOf(photo, plane)?.right).toBeCloseTo(100, 0);
});
