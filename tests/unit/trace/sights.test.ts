import { expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { hardpoints, type Photo } from '../../../shared-math/layout/index.ts';
import { contradiction, explainedGap, type PhotoSpot, sightGaps } from '../../../shared-math/trace/index.ts';
import { photographedCar, SHOTS } from '../../support/photo-scene.ts';
import { photographed } from '../../support/pinhole.ts';

const car = photographedCar();
const points = new Map(hardpoints(car).map(({ id, at }) => [id, at]));
const pointAt = (id: string): Point => {
  const at = points.get(id);
  if (!at) throw new Error(id);
  return at;
};

/** The demonstration's two photos clicked anew on the tests' own camera, every click and distance off by `slip` of its doubt. */
function clicked(slip: () => number): Photo[] {
  return SHOTS.map(({ view, camera, frame, edge, distance }): Photo => {
    const photo = car.photos.find((each) => each.view === view);
    if (!photo?.straighten || !photo.anchor) throw new Error(view);
    const at = (point: Point): PhotoSpot => {
      const [right, down] = photographed(camera, point);
      return [right + slip(), down + slip()];
    };
    const along = (share: number): Point => [
      edge[0][0] + (edge[1][0] - edge[0][0]) * share,
      edge[0][1] + (edge[1][1] - edge[0][1]) * share,
      edge[0][2] + (edge[1][2] - edge[0][2]) * share,
    ];
    return {
      ...photo,
      lens: { line: [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => at(along(share))) },
      straighten: {
        points: photo.straighten.points.map((known, i) => ({ ...known, at: at(frame[i] as Point) })),
      },
      anchor: { ...photo.anchor, at: at(photo.anchor.stands) },
      distance: distance * (1 + 0.003 * slip()),
      marks: photo.marks.map(({ point }) => ({ point, at: at(pointAt(point)) })),
    };
  });
}

function normal(seed: number): () => number {
  let state = seed * 7919 + 17;
  const uniform = () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
  for (let i = 0; i < 5; i += 1) uniform();
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

test('sights of perfect clicks meet', () => {
  const photos = clicked(() => 0);
  const gaps = sightGaps(photos);
  expect(gaps.length).toBeGreaterThan(4);
  for (const each of gaps) {
    expect(each.gap).toBeLessThan(0.2);
    expect(explainedGap(photos, each)).toBeGreaterThan(1);
    expect(contradiction(photos, each)).toBeUndefined();
  }
  expect(sightGaps(car.photos.slice(0, 1))).toEqual([]);
});

test('a gap lies within 1.96 of its standard deviations in 93 to 97 of 100 photos clicked by lot', () => {
  let [inside, all] = [0, 0];
  for (let seed = 1; seed <= 80; seed += 1) {
    const photos = clicked(normal(seed));
    for (const each of sightGaps(photos)) {
      all += 1;
      if (each.gap < (1.96 / 3.29) * (explainedGap(photos, each) ?? 0)) inside += 1;
    }
  }
  expect(inside / all).toBeGreaterThan(0.93);
  expect(inside / all).toBeLessThan(0.97);
});

test('a mark on another part is a contradiction in that point, and in no other', () => {
  const photos = clicked(normal(4));
  const [side, top] = photos as [Photo, Photo];
  const shared = side.marks.find(({ point }) => top.marks.some((mark) => mark.point === point));
  if (!shared) throw new Error('no point is in both');
  const marks = side.marks.map((mark) =>
    mark === shared ? { ...mark, at: [mark.at[0] + 60, mark.at[1] + 60] as PhotoSpot } : mark,
  );
  const named = (list: readonly Photo[]) =>
    sightGaps(list)
      .filter((each) => contradiction(list, each) !== undefined)
      .map(({ point }) => point);
  expect(named([{ ...side, marks }, top])).toEqual([shared.point]);
  expect(named(photos)).toEqual([]);
});
