import { describe, expect, test } from 'vitest';
import { type Adjustment, adjust } from '../../../shared-math/adjust/index.ts';
import { type Eye, seenFrom } from '../../../shared-math/drawing/index.ts';
import { hardpoints, type Photo } from '../../../shared-math/layout/index.ts';
import {
  adjustedCameras,
  adjustedEye,
  eyeOf,
  type PhotoPlane,
  photosFurther,
  planeOf,
} from '../../../shared-math/trace/index.ts';
import { photographedCar } from '../../support/photo-scene.ts';
import {
  AS_DOUBTED,
  cameraOf,
  guessedCar,
  lots,
  photoOf,
  RADIANS,
  type Shooting,
  shown,
} from '../../support/photo-world.ts';

// An independent camera with another lens takes two photos; everything about them is given as well as people do it. The points as
// the adjustment finds them, drawn over the photos, have to lie where that camera really showed them, near and far.

const truth = new Map(hardpoints(photographedCar()).map(({ id, at }) => [id, at]));
const LOTS = 6;

function adjusted(photos: readonly Photo[]): Adjustment {
  const found = adjust({ ...guessedCar(), photos: [...photos] }, [], {
    further: photosFurther([]),
    pointsOnly: true,
  });
  if (!found.ok) throw new Error(found.failure.kind);
  return found.value;
}

function planeFor(photo: Photo): PhotoPlane {
  const plane = planeOf(photo);
  if (!plane.ok) throw new Error(plane.failure.step);
  return plane.value;
}

/** px by which the points as they are found are drawn beside where the camera showed them. */
function misses(photo: Photo, eye: Eye | undefined, found: Adjustment, shooting: Shooting): number[] {
  if (!eye) throw new Error('the photo has a camera');
  const camera = cameraOf(shooting);
  return photo.marks.map(({ point }) => {
    const at = found.points.get(point)?.at;
    const place = at && seenFrom(eye, photo.view, at);
    const spot = (place && planeFor(photo).toPhoto(place)) ?? [Number.NaN, 0];
    const [x, y] = shown(camera, truth.get(point) ?? [0, 0, 0]);
    return Math.hypot(spot[0] - x, spot[1] - y);
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe.each([2, 5, 15])('photos from the side %d° off square and from above', (askew) => {
  const shootings: readonly Shooting[] = [
    { view: 'side', away: 4000, askew: askew * RADIANS, focal: 26 },
    { view: 'top', away: 3500, askew: 0.05, focal: 26 },
  ];

  test('lie under the drawing within a click’s error, by the cameras that the adjustment finds', () => {
    const [own, all]: [number[], number[]] = [[], []];
    for (let lot = 0; lot < LOTS; lot += 1) {
      const off = lots(30 + lot);
      const photos = shootings.map((shooting) => photoOf(shooting, off, { slips: AS_DOUBTED }));
      const found = adjusted(photos);
      const cameras = adjustedCameras(photos, found.furtherUnknowns);
      for (const [i, photo] of photos.entries()) {
        const shooting = shootings[i] as Shooting;
        all.push(...misses(photo, adjustedEye(photo, cameras.get(i)), found, shooting));
        own.push(...misses(photo, eyeOf(photo, planeFor(photo)), found, shooting));
      }
    }
    // A click is a pixel off each way, one standard deviation: 1.25 px on average, 3.5 once in five hundred.
    expect(mean(all)).toBeLessThan(1.4);
    expect(Math.max(...all)).toBeLessThan(4);
    // By each photo's own corners alone they lie farther off.
    expect(mean(own)).toBeGreaterThan(1.3 * mean(all));
  });
});

test('cameras that were found for other photos are not taken for these', () => {
  const off = lots(3);
  const [side, top] = (['side', 'top'] as const).map((view) =>
    photoOf({ view, away: 3800, askew: 0.05, focal: 26 }, off),
  ) as [Photo, Photo];
  const found = adjusted([side, top]);
  expect([...adjustedCameras([side, top], found.furtherUnknowns).keys()]).toEqual([0, 1]);
  expect(adjustedCameras([side], found.furtherUnknowns).size).toBe(0);
  expect(adjustedEye(side, undefined)).toBeUndefined();
});
