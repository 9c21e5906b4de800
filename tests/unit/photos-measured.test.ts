import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { hardpoints, type LayoutDocument, type Photo } from '../../shared-math/layout/index.ts';
import { adjustedByPhotos } from '../../src-renderer/document/photos-measured.ts';
import { withLooseTraced, withPhoto } from '../../src-renderer/places/measure/photos/photo-planes.ts';
import { photographedCar } from '../support/photo-scene.ts';
import { CLICKS_ONLY, guessedCar, lots, photoOf, RADIANS } from '../support/photo-world.ts';

// What an edit of a photo makes of the points that were traced by it, over the tests' own camera.

const TRUTH = new Map(hardpoints(photographedCar()).map(({ id, at }) => [id, at]));
const BALL = 'steering.box.pitmanBall';
const ARM = 'steering.dragLinkBall';
const shot = (view: 'side' | 'top', seed: number): Photo =>
  photoOf({ view, away: 4000, askew: 12 * RADIANS, focal: 35 }, lots(seed), { slips: CLICKS_ONLY });
const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const place = (document: LayoutDocument, id: string) =>
  hardpoints(document).find((point) => point.id === id)?.at as Point;
const adjusted = (document: LayoutDocument, stood = document) =>
  adjustedByPhotos(document, stood, document, [], new Set());
const off = (document: LayoutDocument, id: string) => apart(place(document, id), TRUTH.get(id) as Point);

const PHOTOS = [shot('side', 1), shot('top', 2)];
const traced = adjusted({ ...guessedCar(), photos: PHOTOS });

describe('changing what a photo is put to scale by', () => {
  test.each([
    ['the plane', (photo: Photo) => ({ depth: (photo.depth ?? 0) + 60 })],
    [
      'the camera’s distance',
      (photo: Photo) => ({ distance: (photo.distance ?? 0) * 1.15, distanceDoubt: 1 }),
    ],
    [
      'a side of the rectangle',
      (photo: Photo) => ({
        straighten: {
          points: (photo.straighten?.points ?? []).map(({ at, place: [x, y] }) => ({
            at,
            place: [1.04 * x, 1.04 * y] as const,
          })),
        },
      }),
    ],
  ] as const)('%s moves what was traced by it, and setting it back brings it back', (_, change) => {
    const [side] = PHOTOS as [Photo, Photo];
    // Of one photo alone, so that no other one contradicts it.
    const alone = adjusted({ ...traced, photos: [side] });
    const changed = adjusted(withPhoto(alone, 0, change(side)), alone);
    expect(apart(place(changed, BALL), place(alone, BALL))).toBeGreaterThan(3);
    const back = adjusted(
      withPhoto(changed, 0, { ...side, distanceDoubt: undefined } as Partial<Photo>),
      changed,
    );
    expect(apart(place(back, BALL), place(alone, BALL))).toBeLessThan(0.05);
  });

  test('of a photo whose camera is not known, too', () => {
    const { distance: _, ...side } = PHOTOS[0] as Photo;
    const document = { ...traced, photos: [side as Photo] };
    const first = withLooseTraced(document, 0);
    const points = (side.straighten?.points ?? []).map(({ at, place: [x, y] }) => ({
      at,
      place: [1.05 * x, y] as const,
    }));
    const next = withLooseTraced(withPhoto(first, 0, { straighten: { points } }), 0);
    expect(apart(place(next, BALL), place(first, BALL))).toBeGreaterThan(20);
  });

  test('moves nothing that is planned', () => {
    const planned: LayoutDocument = { ...traced, origins: { ...traced.origins, [BALL]: 'plan' } };
    const changed = adjusted(withPhoto(planned, 0, { depth: 900 }), planned);
    expect(place(changed, BALL)).toEqual(place(planned, BALL));
    expect(changed.origins?.[BALL]).toBe('plan');
    expect(place(changed, ARM)).not.toEqual(place(planned, ARM));
  });
});

test('a point that places a photo stays, though the other photo shows it too', () => {
  const [side, top] = PHOTOS as [Photo, Photo];
  const hub = 'axle.left.wheelCentre';
  const other = { at: top.marks[0]?.at ?? ([0, 0] as const), point: BALL, stands: place(traced, BALL) };
  const marks = [
    ...top.marks.filter(({ point }) => point !== BALL),
    { point: hub, at: top.anchor?.at ?? ([0, 0] as const) },
  ];
  const ball = top.marks.find(({ point }) => point === BALL);
  const photos = [side, { ...top, marks, anchor: { ...other, at: ball?.at ?? other.at } }];
  const next = adjusted({ ...traced, photos });
  expect(place(next, hub)).toEqual(place(traced, hub));
  expect(place(next, BALL)).toEqual(place(traced, BALL));
  expect(place(next, ARM)).not.toEqual(place(traced, ARM));
});

test('points stand where both photos have them, whichever was clicked last', () => {
  for (const { point } of PHOTOS[0]?.marks ?? []) expect(off(traced, point), point).toBeLessThan(16);
  const other = adjusted({ ...guessedCar(), photos: PHOTOS.toReversed() });
  for (const { point } of PHOTOS[0]?.marks ?? [])
    expect(apart(place(other, point), place(traced, point)), point).toBeLessThan(0.01);
  expect(traced.origins?.[BALL]).toBe('photo');
});

test('a point of which two photos contradict each other stays where it stood, and from where it came', () => {
  const [side, top] = PHOTOS as [Photo, Photo];
  const marks = top.marks.map((mark) =>
    mark.point === BALL ? { ...mark, at: [mark.at[0] + 70, mark.at[1] - 40] as const } : mark,
  );
  // As a click leaves it: put where the two sights come nearest.
  const clicked: LayoutDocument = {
    ...traced,
    photos: [side, { ...top, marks }],
    steering: { ...traced.steering, box: { ...traced.steering.box, pitmanBall: [-700, 500, 300] } },
  };
  const next = adjusted(clicked, traced);
  expect(place(next, BALL)).toEqual(place(traced, BALL));
  expect(next.origins?.[BALL]).toBe('photo');
  expect(off(next, ARM)).toBeLessThan(16);
});
