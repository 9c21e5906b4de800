import { describe, expect, test } from 'vitest';
import type { Point } from '../../../shared-math/geometry/points.ts';
import {
  adjustBundle,
  type Bundle,
  type BundleCamera,
  type BundleRow,
  type BundleTask,
  misfitsOf,
} from '../../../shared-math/trace/bundle.ts';
import type { PhotoSpot } from '../../../shared-math/trace/index.ts';
import { axesOf, type Pinhole, photographed } from '../../support/pinhole.ts';

// A rectangle in the plane y 700, marks behind it, a plumb post and a straight rail, seen by the tests' own camera. Its lens
// bends by another formula than the adjustment knows: straight to bent, with a fourth power. Everything that is observed or
// known is drawn by lot in its own doubt, and what comes out is held against the truth.
const PLANE = 700;
const SIZE: PhotoSpot = [3000, 2000];

function bent([x, y]: PhotoSpot): PhotoSpot {
  const [u, v] = [x - SIZE[0] / 2, y - SIZE[1] / 2];
  const square = (u * u + v * v) / (Math.hypot(...SIZE) / 2) ** 2;
  const share = 1 - 0.03 * square + 0.004 * square ** 2;
  return [SIZE[0] / 2 + u * share, SIZE[1] / 2 + v * share];
}
const shown = (camera: Pinhole, point: Point): PhotoSpot => bent(photographed(camera, point));

const CORNERS: Readonly<Record<string, Point>> = {
  'upper left': [300, PLANE, 800],
  'upper right': [-1100, PLANE, 800],
  'lower right': [-1100, PLANE, 100],
  'lower left': [300, PLANE, 100],
};
const MARKS: Readonly<Record<string, Point>> = {
  ball: [-150, 560, 310],
  pivot: [-900, 420, 380],
  arm: [-380, 640, 520],
  box: [-620, 330, 700],
  hub: [0, 720, 330],
};
const TRUTH: Readonly<Record<string, Point>> = { ...CORNERS, ...MARKS };

const camera = (at: Point, up: Point, focal: number): Pinhole => ({
  at,
  lookAt: [-420, PLANE, 430],
  up,
  roll: 0.02,
  focal,
  size: [SIZE[0], SIZE[1]],
  bend: 0,
});
const away = 4000;
const angle = (15 * Math.PI) / 180;
const side = camera([-400 - away * Math.sin(angle), PLANE + away * Math.cos(angle), 900], [0, 0, 1], 2600);
const above = camera([-600, 900, 4300], [0, -1, 0], 2500);

function lots(seed: number) {
  let state = seed * 7919 + 17;
  const uniform = () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
  for (let i = 0; i < 5; i += 1) uniform();
  return (doubt: number) => doubt * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A start as a person's rough word of it would be: 8 % off in focal length, 150 mm off in place, 2° off in direction. */
function start(shot: Pinhole): BundleCamera {
  const [x, y, z] = shot.at;
  const lookAt: Point = [shot.lookAt[0] + 140, shot.lookAt[1], shot.lookAt[2] - 60];
  const turn = Float64Array.from(axesOf({ ...shot, lookAt }).flat());
  return { size: SIZE, start: { focal: shot.focal * 1.08, turn, at: [x + 150, y - 120, z - 90] }, terms: 2 };
}

const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
];
const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const at = (id: string) => TRUTH[id] as Point;

/** What a builder would give of the car, with a pixel of clicking error; marks' depth from the drawing unless a second photo sees them. */
function scene(seed: number, second: boolean): BundleTask {
  const off = lots(seed);
  const near = (point: Point, doubt: Point): Point => [
    point[0] + (doubt[0] > 0 && Number.isFinite(doubt[0]) ? off(doubt[0]) : 0),
    point[1] + (doubt[1] > 0 && Number.isFinite(doubt[1]) ? off(doubt[1]) : 0),
    point[2] + (doubt[2] > 0 && Number.isFinite(doubt[2]) ? off(doubt[2]) : 0),
  ];
  const shots = second ? [side, above] : [side];
  const known: Point = [0.7, 0.7, 0.7];
  const free = Number.POSITIVE_INFINITY;
  const weak: Point = [free, second ? free : 6, free];
  const points = Object.entries(TRUTH).map(([id, point]) => {
    const doubt = id in CORNERS ? known : id === 'hub' ? ([2, 2, 2] as Point) : weak;
    const from = near(point, doubt);
    const rough: Point =
      doubt === weak ? [from[0] + 60, second ? from[1] - 50 : from[1], from[2] - 40] : from;
    return { id, at: rough, doubt };
  });
  const rows: BundleRow[] = [];
  const click = (shot: Pinhole, point: Point): PhotoSpot => {
    const [right, down] = shown(shot, point);
    return [right + off(1), down + off(1)];
  };
  for (const [index, shot] of shots.entries()) {
    for (const [id, point] of Object.entries(TRUTH))
      rows.push({
        kind: 'click',
        id: `${id} ${index}`,
        camera: index,
        point: id,
        at: click(shot, point),
        doubt: 1,
      });
    const edge = (a: Point, b: Point) =>
      Array.from({ length: 7 }, (_, i) => click(shot, between(a, b, i / 6)));
    rows.push({
      kind: 'line',
      id: `rail ${index}`,
      camera: index,
      spots: edge([700, PLANE, index === 0 ? 1150 : 700], [-1500, PLANE, index === 0 ? 1100 : 650]),
      doubt: 1,
    });
  }
  // The post leans as its doubt allows, toward the side that shows.
  const lean = off(0.002);
  rows.push({
    kind: 'line',
    id: 'post',
    camera: 0,
    spots: Array.from({ length: 5 }, (_, i) => click(side, [500 + lean * 250 * i, 400, 100 + 250 * i])),
    along: { toward: [0, 0, 1], doubt: 0.002 },
    doubt: 1,
  });
  const tape = (from: string, to: string) =>
    rows.push({
      kind: 'length',
      id: `${from} to ${to}`,
      from,
      to,
      length: apart(at(from), at(to)) + off(1.5),
      doubt: 1.5,
    });
  tape('ball', 'pivot');
  tape('arm', 'box');
  rows.push({
    kind: 'distance',
    id: 'camera from the rectangle',
    camera: 0,
    plane: { through: [0, PLANE, 0], normal: [0, 1, 0] },
    distance: side.at[1] - PLANE + off(12),
    doubt: 12,
  });
  return { cameras: shots.map(start), points, rows };
}

function adjusted(task: BundleTask): Bundle {
  const bundle = adjustBundle(task);
  if (!bundle.ok) throw new Error(bundle.failure);
  return bundle.value;
}

const RUNS = 250;
// 95 of a hundred of a normal distribution lie within this many standard deviations.
const NINETY_FIVE = 1.959964;

describe.each([
  ['one photo, depths from the drawing', false],
  ['two photos, depths from both', true],
] as const)('%s', (_, second) => {
  const bundles = Array.from({ length: RUNS }, (__, seed) => adjusted(scene(seed + 1, second)));

  test('the doubt holds the truth in 93 to 97 of 100 cases, of every axis', () => {
    for (const axis of [0, 1, 2] as const) {
      let [inside, all] = [0, 0];
      for (const { points } of bundles)
        for (const id of Object.keys(MARKS)) {
          const point = points.get(id);
          if (!point) throw new Error(id);
          all += 1;
          if (Math.abs(point.at[axis] - at(id)[axis]) < NINETY_FIVE * point.doubt[axis]) inside += 1;
        }
      expect(inside / all, `axis ${axis}`).toBeGreaterThan(0.93);
      expect(inside / all, `axis ${axis}`).toBeLessThan(0.97);
    }
  });

  test('the cameras’ own doubts hold too, and the sum of squares is what its freedom says', () => {
    let inside = 0;
    let sum = 0;
    for (const { cameras, sum: squares } of bundles) {
      const [first] = cameras;
      if (!first) throw new Error('no camera');
      if (Math.abs(Math.log(first.focal / side.focal)) < NINETY_FIVE * first.focalDoubt) inside += 1;
      sum += squares;
    }
    expect(inside / RUNS).toBeGreaterThan(0.91);
    expect(inside / RUNS).toBeLessThan(0.985);
    // The mean of so many sums of squares, in standard deviations of it: a chi-square's variance is twice its freedom. The
    // lens's terms are known to be about 0 by nobody's lot, and may shift it a little.
    const freedom = bundles[0]?.freedom ?? 0;
    expect(Math.abs(sum / RUNS - freedom)).toBeLessThan(4 * Math.sqrt((2 * freedom) / RUNS) + 2);
  });

  test('standardised residuals are one on average, of every kind of row', () => {
    const squares = new Map<string, number[]>();
    for (const { rows } of bundles)
      for (const { id, w } of rows) if (w !== null) squares.set(id, [...(squares.get(id) ?? []), w * w]);
    for (const [id, list] of squares) {
      const mean = list.reduce((sum, each) => sum + each, 0) / list.length;
      expect(Math.abs(mean - 1), id).toBeLessThan(0.45);
    }
  });

  test('points come out within 15 mm in nineteen of twenty photos', () => {
    const worst = bundles
      .map(({ points }) =>
        Math.max(...Object.keys(MARKS).map((id) => apart(points.get(id)?.at ?? [0, 0, 0], at(id)))),
      )
      .sort((a, b) => a - b);
    expect(worst[Math.floor(0.95 * RUNS)]).toBeLessThan(15);
  });
});

describe('what does not fit is named first', () => {
  const changed = (change: (row: BundleRow) => BundleRow) => {
    const task = scene(3, true);
    return misfitsOf(adjusted({ ...task, rows: task.rows.map(change) }));
  };

  test('nothing where all is well', () => {
    expect(changed((row) => row)).toEqual([]);
  });

  test('a corner clicked 12 pixels off', () => {
    const named = changed((row) =>
      row.id === 'lower right 0' && row.kind === 'click' ? { ...row, at: [row.at[0] + 12, row.at[1]] } : row,
    );
    expect(named[0]).toBe('lower right 0');
  });

  test('a taped length read half an inch long', () => {
    const named = changed((row) =>
      row.id === 'ball to pivot' && row.kind === 'length' ? { ...row, length: row.length + 12.7 } : row,
    );
    expect(named[0]).toBe('ball to pivot');
  });
});

test('what cannot be adjusted says why', () => {
  const task = scene(1, false);
  const click: BundleRow = { kind: 'click', id: 'x', camera: 0, point: 'nowhere', at: [1, 1], doubt: 1 };
  expect(adjustBundle({ ...task, rows: [click] })).toEqual({ ok: false, failure: 'not-computable' });
  expect(adjustBundle({ ...task, rows: task.rows.filter(({ kind }) => kind === 'length') })).toEqual({
    ok: false,
    failure: 'undetermined',
  });
});
