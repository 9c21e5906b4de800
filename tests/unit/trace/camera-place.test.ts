import { describe, expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { type PhotoCalibration, type Planar, preparePhoto } from '../../../shared-math/trace/index.ts';
import { type Pinhole, photographed } from '../../support/pinhole.ts';

// A rectangle of battens 1400 by 700 in the plane y 700, seen by the tests' own camera (yaw, pitch and roll, no homography)
// from as many degrees beside square as a builder may stand. Right in the picture is back: place [-x, -z].
const PLANE = 700;
const MIDDLE: Point = [-400, PLANE, 450];
const SIZE: readonly [number, number] = [3000, 2000];
const DIAGONAL = Math.hypot(36, 24);
const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A camera beside square by an angle to the back and one upward; focal length as for a frame of 36 by 24 mm. */
function camera(aside: number, above: number, lens: number, away: number, bend = 0): Pinhole {
  const [p, q] = [rad(aside), rad(above)];
  return {
    at: [
      MIDDLE[0] - away * Math.sin(p) * Math.cos(q),
      MIDDLE[1] + away * Math.cos(p) * Math.cos(q),
      MIDDLE[2] + away * Math.sin(q),
    ],
    lookAt: [MIDDLE[0] - 120, PLANE, MIDDLE[2] + 60],
    up: [0, 0, 1],
    roll: 0.03,
    focal: (lens / DIAGONAL) * Math.hypot(...SIZE),
    size: SIZE,
    bend,
  };
}

const CORNERS: readonly Planar[] = [
  [-300, -800],
  [1100, -800],
  [1100, -100],
  [-300, -100],
];
const inPlane = ([right, down]: Planar): Point => [-right, PLANE, -down];

function calibrated(shot: Pinhole, slip: () => number = () => 0): PhotoCalibration {
  const [a] = CORNERS as [Planar];
  const at = (point: Point): Planar => {
    const [right, down] = photographed(shot, point);
    return [right + slip(), down + slip()];
  };
  return {
    size: SIZE,
    straighten: {
      points: CORNERS.map((corner) => ({
        at: at(inPlane(corner)),
        place: [corner[0] - a[0], corner[1] - a[1]],
      })),
    },
    anchor: { at: at([0, PLANE, 330]), place: [0, -330], before: 0 },
    distance: shot.at[1] - PLANE,
  };
}

const BEHIND: readonly Point[] = [
  [-890, 350, 335],
  [-100, 500, 600],
  [0, 700, 330],
  [-700, 780, 250],
];
function worstBehind(shot: Pinhole, calibration: PhotoCalibration): number {
  const plane = preparePhoto(calibration, { middle: [0, 0], width: 3000 });
  if (!plane.ok) throw new Error(`${plane.failure.step}: ${plane.failure.why}`);
  return Math.max(
    ...BEHIND.map((point) => {
      const place = plane.value.placeBefore(photographed(shot, point), point[1] - PLANE);
      return place ? Math.hypot(place[0] + point[0], place[1] + point[2]) : Number.POSITIVE_INFINITY;
    }),
  );
}

const ASIDE = [0, 0.5, 2, 5, 8, 10, 15, 20, 25, 30, 35];
describe.each([20, 28, 50, 85, 120])('a lens of %i mm', (lens) => {
  // As far off as it takes to have the battens and something around them in the picture.
  const away = Math.max(2200, 72 * lens);

  test.each([0, 12, -8])('shows what stands before and behind the plane, %i° above square', (above) => {
    for (const aside of ASIDE)
      for (const side of [1, -1]) {
        const shot = camera(side * aside, above, lens, away);
        expect(worstBehind(shot, calibrated(shot)), `${side * aside}°`).toBeLessThan(0.05);
      }
  });
});

test('a pixel of clicking error leaves 15 mm at most of nineteen photos in twenty from 4 m and 15° off', () => {
  let seed = 5;
  const uniform = () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  const slip = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  const shot = camera(15, 4, 26, 4000);
  const worst = Array.from({ length: 200 }, () => worstBehind(shot, calibrated(shot, slip))).sort(
    (a, b) => a - b,
  );
  expect(worst[189]).toBeLessThan(15);
});

describe('what is refused', () => {
  const start = { middle: [0, 0] as Planar, width: 3000 };
  const failure = (calibration: PhotoCalibration) => {
    const plane = preparePhoto(calibration, start);
    return plane.ok ? 'ok' : `${plane.failure.step}: ${plane.failure.why}`;
  };
  const shot = camera(20, 5, 26, 4000);
  const right = calibrated(shot);

  test('a distance from which nothing looks like this', () => {
    expect(failure({ ...right, distance: 300 })).toBe('distance: no-camera');
  });

  test('sides that no camera shows like this, and the tape to the camera is not blamed', () => {
    const points = (right.straighten?.points ?? []).map(({ at, place }) => ({
      at,
      place: [place[0], place[1] * 4] as Planar,
    }));
    expect(failure({ ...right, straighten: { points } })).toBe('straighten: no-camera');
  });
});
