import { describe, expect, test } from 'vitest';
import { adjust, findMisfits, type SurveyRow, unknownsOf } from '../../../shared-math/adjust/index.ts';
import type { Point } from '../../../shared-math/geometry/points.ts';
import { hardpoints, type LayoutDocument, type Photo } from '../../../shared-math/layout/index.ts';
import {
  adjustedPhotos,
  movedByPhotos,
  photoObservations,
  photosFurther,
  placesByPhotos,
  withPlaces,
} from '../../../shared-math/trace/index.ts';
import { photographedCar } from '../../support/photo-scene.ts';
import {
  CLICKS_ONLY,
  cameraOf,
  guessedCar,
  lots,
  photoOf,
  RADIANS,
  type Shooting,
} from '../../support/photo-world.ts';

// Photos by the tests' own camera, whose lens bends by another formula, beside what a tape says.

const TRUTH = new Map(hardpoints(photographedCar()).map(({ id, at }) => [id, at]));
const at = (id: string) => TRUTH.get(id) as Point;
const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const PERFECT = { ...CLICKS_ONLY, click: 0 };
const SIDE: Shooting = { view: 'side', away: 4000, askew: 15 * RADIANS, focal: 35 };
const TOP: Shooting = { view: 'top', away: 4000, askew: 10 * RADIANS, focal: 35 };
const BALL = 'steering.box.pitmanBall';
const PIVOT = 'location.left.framePivot';

function shot(shooting: Shooting, slips = PERFECT, seed = 1): Photo {
  return photoOf(shooting, lots(seed), { slips });
}
function carWith(photos: Photo[], origins: LayoutDocument['origins'] = {}): LayoutDocument {
  return { ...guessedCar(), photos, origins };
}
function adjusted(document: LayoutDocument, rows: readonly SurveyRow[] = []) {
  const found = adjust(document, rows, { pointsOnly: true, further: photosFurther(rows) });
  if (!found.ok) throw new Error(found.failure.kind);
  return found.value;
}
function pointIn(document: LayoutDocument, id: string, rows: readonly SurveyRow[] = []) {
  const found = adjusted(document, rows).points.get(id);
  if (!found) throw new Error(id);
  return found;
}
const misfitsOf = (document: LayoutDocument, rows: readonly SurveyRow[] = []) => {
  const found = findMisfits(document, rows, { further: photosFurther(rows), slips: false, pointsOnly: true });
  if (!found.ok) throw new Error(found.failure.kind);
  return found.value;
};

describe('perfect clicks give the car back', () => {
  test.each([0, 2, 8, 15, 25, 35])('%d° off square', (degrees) => {
    const askew = degrees * RADIANS;
    for (const focal of [20, 28, 50, 120]) {
      const away = focal > 60 ? 9000 : 4000;
      const found = adjusted(
        carWith([shot({ ...SIDE, askew, focal, away }), shot({ ...TOP, focal: Math.min(focal, 50) })]),
      );
      for (const { point } of shot(SIDE).marks)
        expect(
          apart(found.points.get(point)?.at ?? [0, 0, 0], at(point)),
          `${focal} mm, ${point}`,
        ).toBeLessThan(
          // The other lens's formula is met by two terms to some tenths of a pixel.
          0.6,
        );
    }
  });

  test('a photo from the right side shows the right one of each pair, its rectangle and depths where they stand', () => {
    // The car is symmetrical but for its steering, so the left side's photo in a mirror is one of the right side.
    const side = shot(SIDE);
    const [width] = side.size;
    const over = ([x, y]: readonly [number, number]) => [width - x, y] as const;
    const corners = side.straighten?.points.map(({ at: spot }) => over(spot)) ?? [];
    const symmetrical = side.marks.filter(({ point }) => point.includes('.left.'));
    const right: Photo = {
      ...side,
      flipped: true,
      lens: { line: side.lens?.line.map(over) ?? [] },
      straighten: {
        points: (side.straighten?.points ?? []).map(({ place }, i) => ({
          place,
          at: corners[[1, 0, 3, 2][i] as number] as readonly [number, number],
        })),
      },
      anchor: {
        at: over(side.anchor?.at ?? [0, 0]),
        point: 'axle.right.wheelCentre',
        stands: at('axle.right.wheelCentre'),
      },
      depth: -(side.depth ?? 0),
      marks: symmetrical.map((mark) => ({ ...mark, at: over(mark.at), depth: at(mark.point)[1] })),
    };
    expect(adjustedPhotos([right])).toEqual([0]);
    const found = adjusted(carWith([right]));
    for (const { point } of symmetrical)
      expect(apart(found.points.get(point)?.at ?? [0, 0, 0], at(point)), point).toBeLessThan(1.5);
  });
});

test('derivatives are those of differences', () => {
  const side = {
    ...shot(SIDE),
    level: { from: [300, 900], to: [2000, 930] },
    focal: { px: 2300, share: 0.05 },
  } as Photo;
  const lengths = [{ from: BALL, to: PIVOT, tape: 500 }];
  const marks = side.marks.map((mark) => ({ ...mark, depth: at(mark.point)[1] + 3 }));
  const document = carWith([{ ...side, lengths, marks }, shot(TOP)]);
  const table = unknownsOf(document);
  const further = photoObservations(table, [], document.photos);
  const off = lots(4);
  const x = Float64Array.from([
    ...table.unknowns.map(({ drawn }) => drawn + off(5)),
    ...further.unknowns.map(({ start, end }) => start + off(2e4 * end)),
  ]);
  const [plus, minus] = [new Float64Array(40), new Float64Array(40)];
  let worst = 0;
  for (const row of further.rows) {
    const slopes = new Map<string, number>();
    further.take(x);
    row.addSlopes(0, (i, j, slope) => slopes.set(`${i} ${j}`, (slopes.get(`${i} ${j}`) ?? 0) + slope));
    for (let j = 0; j < x.length; j += 1) {
      const step =
        j < table.unknowns.length ? 1e-3 : (further.unknowns[j - table.unknowns.length]?.end ?? 0) * 10;
      const was = x[j] as number;
      for (const [out, by] of [
        [plus, step],
        [minus, -step],
      ] as const) {
        x[j] = was + by;
        further.take(x);
        row.compute(out, 0);
      }
      x[j] = was;
      for (const [i] of row.observed.entries()) {
        const slope = ((plus[i] as number) - (minus[i] as number)) / (2 * step);
        const given = slopes.get(`${i} ${j}`) ?? 0;
        const error = Math.abs(slope - given) / Math.max(1, Math.abs(slope));
        worst = Math.max(worst, error);
      }
    }
  }
  expect(worst).toBeLessThan(2e-4);
});

describe('photos and tape', () => {
  test('one photo alone leaves the depth unknown; a typed one holds, and its doubt is the tape’s', () => {
    const side = shot(SIDE);
    const document = carWith([side]);
    const found = adjusted(document);
    expect(found.points.get(BALL)?.free).toContain('y');
    const observations = photosFurther([])(unknownsOf(document));
    const moved = movedByPhotos(document, [], observations, new Set());
    const places = placesByPhotos(document, found, observations, moved);
    const drawn = hardpoints(document).find(({ id }) => id === BALL)?.at as Point;
    expect(places.get(BALL)?.[1]).toBeCloseTo(drawn[1], 9);
    // On the line of sight: as far from the camera as drawn, in the direction of the truth.
    const { at: eye } = cameraOf(SIDE);
    const [sx, sy, sz] = at(BALL).map((value, axis) => value - (eye[axis] as number)) as [
      number,
      number,
      number,
    ];
    const share = (drawn[1] - eye[1]) / sy;
    expect(places.get(BALL)?.[0]).toBeCloseTo(eye[0] + share * sx, 0);
    expect(places.get(BALL)?.[2]).toBeCloseTo(eye[2] + share * sz, 0);
    const marks = side.marks.map((mark) => (mark.point === BALL ? { ...mark, depth: at(BALL)[1] } : mark));
    const typed = pointIn(carWith([{ ...side, marks }]), BALL);
    expect(typed.at[1]).toBeCloseTo(at(BALL)[1], 2);
    expect(typed.doubt[1]).toBeCloseTo(1.6, 2);
    expect(apart(typed.at, at(BALL))).toBeLessThan(0.6);
  });

  test('the tape helps the photo, and the photo helps the tape', () => {
    const side = shot(SIDE, CLICKS_ONLY);
    const top = shot(TOP, CLICKS_ONLY, 2);
    const rows: SurveyRow[] = [
      { id: 'up', kind: 'up', of: PIVOT, value: at(PIVOT)[2], doubt: 0.5 },
      { id: 'back', kind: 'back', of: PIVOT, value: -at(PIVOT)[0], doubt: 0.5 },
      { id: 'out', kind: 'out', of: PIVOT, value: at(PIVOT)[1], doubt: 0.5 },
    ];
    const [without, withTape] = [[], rows].map((each) => pointIn(carWith([side, top]), BALL, each));
    // Not of the taped point but of another one: by the camera.
    expect(withTape?.doubt[2]).toBeLessThan(0.8 * (without?.doubt[2] as number));
    const length: SurveyRow[] = [
      { id: 'l', kind: 'straight', from: BALL, to: PIVOT, value: apart(at(BALL), at(PIVOT)) },
    ];
    const taped = adjust(carWith([]), length, { pointsOnly: true });
    expect(taped.ok && taped.value.points.get(BALL)?.free.length).toBe(3);
    expect(pointIn(carWith([side, top]), BALL, length).free).toEqual([]);
  });

  test('a plane whose depth nobody gave, and a camera of which nothing is known, are not taken as known', () => {
    const side = shot(SIDE);
    const { depth: _, ...loose } = side;
    const marks = side.marks.map((mark) => ({ ...mark, depth: at(mark.point)[1] }));
    const given = pointIn(carWith([{ ...side, marks }]), BALL);
    const open = pointIn(carWith([{ ...loose, marks }]), BALL);
    expect(Math.max(...open.doubt)).toBeGreaterThan(3 * Math.max(...given.doubt));
    const { distance: __, ...nowhere } = side;
    expect(adjustedPhotos([nowhere])).toEqual([]);
    expect(adjustedPhotos([{ ...nowhere, focal: { px: 2300, share: 0.05 } }])).toEqual([0]);
  });

  test('three photos count, all of them', () => {
    const two = carWith([shot(SIDE, CLICKS_ONLY, 1), shot(TOP, CLICKS_ONLY, 2)]);
    const third = shot({ ...SIDE, askew: -20 * RADIANS }, CLICKS_ONLY, 3);
    const three = carWith([...two.photos, third]);
    const [a, b] = [pointIn(two, BALL).doubt, pointIn(three, BALL).doubt];
    for (const axis of [0, 1, 2] as const) expect(b[axis]).toBeLessThan(a[axis]);
    expect(Math.hypot(...b)).toBeLessThan(0.9 * Math.hypot(...a));
  });

  test('what is planned or known by a tape stays, and its clicks move nothing of it', () => {
    const photos = [shot(SIDE), shot(TOP)];
    const document = carWith(photos, { [BALL]: 'plan', [PIVOT]: 'tape' });
    const observations = photosFurther([])(unknownsOf(document));
    expect([...observations.observed.values()].some((each) => 'point' in each && each.point === BALL)).toBe(
      false,
    );
    const found = adjusted(document);
    const moved = movedByPhotos(document, [], observations, new Set());
    expect(moved.has(BALL) || moved.has(PIVOT)).toBe(false);
    const places = placesByPhotos(document, found, observations, moved);
    const next = withPlaces(document, places, found.document.car.tyreRadius);
    const before = new Map(hardpoints(document).map((point) => [point.id, point.at]));
    for (const { id, at: place } of hardpoints(next))
      if (!moved.has(id) && !moved.has(id.replace('.right.', '.left.')))
        expect(place, id).toEqual(before.get(id));
    expect(next.origins).toMatchObject({ [BALL]: 'plan', [PIVOT]: 'tape', 'steering.dragLinkBall': 'photo' });
  });
});

describe('what does not fit is named', () => {
  const [side, top] = [shot(SIDE, CLICKS_ONLY, 5), shot(TOP, CLICKS_ONLY, 6)];
  const withMark = (photo: Photo, by: number): Photo => ({
    ...photo,
    marks: photo.marks.map((mark) =>
      mark.point === BALL ? { ...mark, at: [mark.at[0] + by, mark.at[1] + by] as const } : mark,
    ),
  });

  test('nothing where all is well', () => {
    expect(misfitsOf(carWith([side, top])).furtherMisfits).toEqual([]);
  });

  test('two photos that contradict each other in a point: both clicks, and the point stays where it stood', () => {
    const document = carWith([withMark(side, 60), top]);
    const { furtherMisfits, aside } = misfitsOf(document);
    expect(furtherMisfits.map(({ id }) => id)).toHaveLength(1);
    expect([...aside].sort()).toEqual([`photo 0 ${BALL}`, `photo 1 ${BALL}`]);
    const moved = movedByPhotos(document, [], photosFurther([])(unknownsOf(document)), aside);
    expect(moved.has(BALL)).toBe(false);
    expect(moved.has(PIVOT)).toBe(true);
  });

  test('of three photos the one that is wrong, alone', () => {
    const third = shot({ ...SIDE, askew: -20 * RADIANS }, CLICKS_ONLY, 7);
    const document = carWith([withMark(side, 60), top, third]);
    const { furtherMisfits, aside, clean } = misfitsOf(document);
    expect(furtherMisfits.map(({ id }) => id)).toEqual([`photo 0 ${BALL}`]);
    expect([...aside]).toEqual([`photo 0 ${BALL}`]);
    expect(apart(clean.points.get(BALL)?.at ?? [0, 0, 0], at(BALL))).toBeLessThan(8);
  });

  test('a corner clicked 25 pixels off', () => {
    const points = (side.straighten?.points ?? []).map((each, i) =>
      i === 2 ? { ...each, at: [each.at[0] + 25, each.at[1]] as const } : each,
    );
    const [first] = misfitsOf(carWith([{ ...side, straighten: { points } }, top])).furtherMisfits;
    expect([first?.id, ...(first?.alike ?? [])]).toContain('photo 0 corner 2');
  });

  test('a length read an inch long', () => {
    const rows: SurveyRow[] = [
      { id: 'l', kind: 'straight', from: BALL, to: PIVOT, value: apart(at(BALL), at(PIVOT)) + 25.4 },
    ];
    expect(misfitsOf(carWith([side, top]), rows).misfits.map(({ id }) => id)).toEqual(['l']);
  });

  test('a camera’s distance typed two feet short, which nothing but the others’ perspective checks', () => {
    const third = shot({ ...SIDE, askew: -20 * RADIANS }, CLICKS_ONLY, 7);
    const wrong = { ...side, distance: (side.distance ?? 0) - 609.6 };
    const { furtherMisfits } = misfitsOf(carWith([wrong, top, third]));
    expect(furtherMisfits.flatMap(({ id, alike }) => [id, ...alike])).toContain('photo 0 distance');
  });
});
