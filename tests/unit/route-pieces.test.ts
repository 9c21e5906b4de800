import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { routeObstacles } from '../../shared-math/shaft/layout-obstacles.ts';
import {
  betweenSegments,
  clearanceOf,
  type RouteObstacle,
  segmentToObstacle,
} from '../../shared-math/shaft/obstacles.ts';
import { routeOf } from '../../shared-math/shaft/route.ts';
import {
  lackingRoom,
  measureTrial,
  meetingOfAxes,
  type RouteSpace,
  searchRoute,
} from '../../shared-math/shaft/route-search.ts';
import {
  rankedRoutes,
  type Suggestion,
  suggestRoute,
  supportsFor,
  WIDE_SLIDES,
} from '../../shared-math/shaft/suggest.ts';
import { goldenSection } from '../../shared-math/solve/golden-section.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { layoutOf } from '../support/layouts.ts';
import { shaftOf } from '../support/shafts.ts';

// The pieces of the search for a route, each by figures worked out by hand.

describe('two stretches of line', () => {
  test.each<[string, Point, Point, Point, Point, number]>([
    ['crossing square, 3 apart', [-5, 0, 0], [5, 0, 0], [0, -5, 3], [0, 5, 3], 3],
    ['crossing off the middle', [-5, 0, 0], [5, 0, 0], [4, -1, 3], [4, 9, 3], 3],
    ['askew, both within', [0, 0, 0], [10, 0, 0], [2, -2, 4], [6, 2, 4], 4],
    ['past the end of the first', [0, 0, 0], [10, 0, 0], [13, 0, 4], [13, 9, 4], 5],
    ['before its beginning', [0, 0, 0], [10, 0, 0], [-3, 0, 4], [-3, 9, 4], 5],
    ['past the end of the second', [-5, 0, 0], [5, 0, 0], [0, 9, 4], [0, 3, 4], 5],
    ['before its beginning', [-5, 0, 0], [5, 0, 0], [0, 3, 4], [0, 9, 4], 5],
    ['past the ends of both', [0, 0, 0], [10, 0, 0], [12, 1, 2], [20, 9, 2], 3],
    ['parallel, side by side', [0, 0, 0], [10, 0, 0], [4, 3, 4], [6, 3, 4], 5],
    ['parallel, one after the other', [0, 0, 0], [10, 0, 0], [13, 0, 4], [20, 0, 4], 5],
    ['parallel, the other way round', [0, 0, 0], [10, 0, 0], [20, 0, 4], [13, 0, 4], 5],
    ['a point beside a stretch', [3, 3, 4], [3, 3, 4], [0, 0, 0], [10, 0, 0], 5],
    ['a stretch beside a point', [0, 0, 0], [10, 0, 0], [3, 3, 4], [3, 3, 4], 5],
    ['a point past a stretch', [13, 0, 4], [13, 0, 4], [0, 0, 0], [10, 0, 0], 5],
    ['two points', [1, 2, 3], [1, 2, 3], [4, 2, 7], [4, 2, 7], 5],
  ])('%s', (_, a, b, c, d, apart) => {
    expectClose(betweenSegments(a, b, c, d), apart, 1e-12);
    expectClose(betweenSegments(c, d, a, b), apart, 1e-12);
    expectClose(betweenSegments(b, a, d, c), apart, 1e-12);
  });
});

describe('a stretch and a body', () => {
  const box: RouteObstacle = { kind: 'box', name: 'box', centre: [10, 20, 30], halfSizes: [5, 6, 7] };
  const turned: RouteObstacle = {
    ...box,
    axes: [
      [0, 1, 0],
      [0, 0, 1],
      [1, 0, 0],
    ],
  };
  const tube = { name: 'tube', from: [0, 0, 0], to: [0, 0, 40], radius: 6 } as const;
  const at = (body: RouteObstacle, p: Point) => segmentToObstacle(body, p, p);
  test.each<[string, RouteObstacle, Point, number]>([
    ['ahead of a box', box, [18, 20, 30], 3],
    ['behind it', box, [2, 20, 30], 3],
    ['to the left', box, [10, 30, 30], 4],
    ['to the right', box, [10, 10, 30], 4],
    ['above', box, [10, 20, 39], 2],
    ['below', box, [10, 20, 21], 2],
    ['off an edge', box, [18, 30, 30], 5],
    ['off a corner', box, [17, 29, 43], 7],
    ['in its middle', box, [10, 20, 30], -5],
    ['nearest to a side', box, [10, 24, 30], -2],
    ['by its own axes', turned, [10, 20 + 5 + 3, 30], 3],
    ['by its own second axis', turned, [10, 20, 30 + 6 + 2], 2],
    ['by its own third axis', turned, [10 + 7 + 4, 20, 30], 4],
    ['beside a flat-ended tube', { kind: 'cylinder', ...tube }, [10, 0, 20], 4],
    ['past its end', { kind: 'cylinder', ...tube }, [3, 0, 45], 5],
    ['before its end', { kind: 'cylinder', ...tube }, [3, 0, -5], 5],
    ['off its rim', { kind: 'cylinder', ...tube }, [9, 0, 44], 5],
    ['in it, near the side', { kind: 'cylinder', ...tube }, [4, 0, 20], -2],
    ['in it, near the end', { kind: 'cylinder', ...tube }, [1, 0, 39], -1],
    ['beside a round-ended tube', { kind: 'capsule', ...tube }, [10, 0, 20], 4],
    ['past its round end', { kind: 'capsule', ...tube }, [6, 0, 48], 4],
  ])('%s', (_, body, p, distance) => {
    expectClose(at(body, p), distance, 1e-12);
    // Along a line that comes no nearer, and along one on the way to it.
    const away = p.map(
      (v, i) => v + 3 * (v - (body.kind === 'box' ? body.centre[i]! : i === 2 ? 20 : 0)),
    ) as unknown as Point;
    if (distance > 0) expectClose(segmentToObstacle(body, p, away), distance, 1e-6);
    if (distance > 0) expectClose(segmentToObstacle(body, away, p), distance, 1e-6);
  });
  test('the nearest place of a stretch lies within it', () => {
    expectClose(segmentToObstacle(box, [-50, 30, 30], [70, 30, 30]), 4, 1e-6);
    expectClose(segmentToObstacle(box, [-50, 30, 30], [-5, 30, 30]), Math.hypot(10, 4), 1e-6);
    expectClose(segmentToObstacle(box, [10, 20, -80], [10, 20, 80]), -5, 1e-5);
    expectClose(segmentToObstacle({ kind: 'cylinder', ...tube }, [-30, 9, 20], [50, 9, 20]), 3, 1e-6);
    expectClose(segmentToObstacle({ kind: 'cylinder', ...tube }, [-30, 0, 45], [50, 0, 45]), 5, 1e-6);
    expectClose(segmentToObstacle({ kind: 'capsule', ...tube }, [-30, 9, 20], [50, 9, 20]), 3, 1e-9);
    // A disc, as of a tube of no length.
    const disc: RouteObstacle = { kind: 'cylinder', ...tube, to: [0, 0, 0] };
    expectClose(at(disc, [0, 9, 0]), 3, 1e-12);
    expectClose(at(disc, [0, 0, 5]), 5, 1e-12);
  });
  test('a stretch and a box: as the golden section finds it, wherever the stretch lies', () => {
    const random = seededRandom(3);
    const within = (size: number) => size * (2 * random() - 1);
    let inside = 0;
    for (let run = 0; run < 3000; run += 1) {
      // Far off, near by, inside; on some axes along a face, or of no length.
      const size = [300, 40, 12][run % 3] as number;
      const place = () => [within(size), within(size), within(size)] as [number, number, number];
      const [a, b] = [place(), place()];
      for (const axis of [0, 1, 2] as const) if (random() < 0.15) b[axis] = a[axis];
      const halfSizes: Point = [5 + 30 * random(), 5 + 30 * random(), 5 + 30 * random()];
      const body: RouteObstacle = { kind: 'box', name: '', centre: [0, 0, 0], halfSizes };
      // Signed distance of a place: from its nearest point on the box, or to the nearest face.
      const signed = (t: number) => {
        const past = a.map((v, i) => Math.abs(v + t * (b[i]! - v)) - halfSizes[i]!);
        return Math.max(...past) <= 0 ? Math.max(...past) : Math.hypot(...past.map((v) => Math.max(v, 0)));
      };
      const { atLeft, atRight } = goldenSection(signed, 0, 1, 1e-9);
      const least = Math.min(atLeft, atRight, signed(0), signed(1));
      if (least < 0) inside += 1;
      expectClose(segmentToObstacle(body, a, b), least, 1e-6);
    }
    expect(inside).toBeGreaterThan(500);
  });
  test('what is certain to be beyond the room asked for is told as no nearer than that', () => {
    for (const body of [box, turned, { kind: 'cylinder', ...tube }] as RouteObstacle[])
      for (const limit of [1, 8, 30, 200]) {
        const exact = segmentToObstacle(body, [60, 50, 80], [40, 90, 60]);
        const told = segmentToObstacle(body, [60, 50, 80], [40, 90, 60], limit);
        if (exact < limit) expectClose(told, exact, 1e-9);
        else expect(told).toBeGreaterThanOrEqual(limit);
        expect(told).toBeLessThanOrEqual(exact + 1e-9);
      }
  });
  test('the nearest of several, whichever comes first, with its own extra room', () => {
    const list: RouteObstacle[] = [
      { kind: 'capsule', name: 'far', from: [0, 90, 0], to: [9, 90, 0], radius: 10 },
      { kind: 'box', name: 'near', centre: [0, -50, 0], halfSizes: [5, 20, 5] },
      { kind: 'cylinder', name: 'hot', from: [0, 0, 60], to: [0, 0, 99], radius: 5, extra: 35 },
    ];
    for (const order of [list, [...list].reverse()]) {
      expect(clearanceOf(order)([0, 0, 0], [0, 0, 0])).toEqual({ distance: 25, name: 'hot' });
      const without = order.filter(({ name }) => name !== 'hot');
      expect(clearanceOf(without)([0, 0, 0], [0, 0, 0])).toEqual({ distance: 30, name: 'near' });
    }
    expect(clearanceOf([])([0, 0, 0], [1, 0, 0])).toEqual({ distance: Number.POSITIVE_INFINITY, name: '' });
  });
  test('of many, turned and not: the least of all, and no less than what is of interest', () => {
    const random = seededRandom(5);
    const place = (size: number): Point => [size * random(), size * random(), size * random()];
    const list = Array.from({ length: 40 }, (_, i): RouteObstacle => {
      const [name, extra] = [`body ${i}`, i % 5 === 0 ? 30 : 0];
      if (i % 2 === 0)
        return {
          kind: i % 4 === 0 ? 'capsule' : 'cylinder',
          name,
          from: place(900),
          to: place(900),
          radius: 20,
          extra,
        };
      const [c, s] = [Math.cos(i), Math.sin(i)];
      const axes: [Point, Point, Point] = [
        [c, s, 0],
        [-s, c, 0],
        [0, 0, 1],
      ];
      return { kind: 'box', name, centre: place(900), halfSizes: [20, 90, 60], axes, extra };
    });
    const near = clearanceOf(list);
    for (let run = 0; run < 400; run += 1) {
      const [from, to] = [place(900), place(900)];
      const least = Math.min(...list.map((body) => segmentToObstacle(body, from, to) - (body.extra ?? 0)));
      expectClose(near(from, to).distance, least, 1e-9);
      const asked = near(from, to, 25).distance;
      if (least < 25) expectClose(asked, least, 1e-9);
      else expect(asked).toBeGreaterThanOrEqual(25);
    }
  });
});

describe('what a layout has in the way', () => {
  const rail = (path: Point[], mirrored = false) => ({
    name: 'Rail',
    path,
    height: 100,
    width: 50,
    mirrored,
  });
  const bodies = (over: object) => routeObstacles(layoutOf({ ...over }));
  test.each<[string, Point[], Point, Point, Point]>([
    // Along the car it is 50 across and 100 high; across it 50 along the car; standing 50 across and 100 along.
    [
      'along the car',
      [
        [0, 300, 400],
        [-1000, 300, 400],
      ],
      [-500, 300, 400],
      [0, 1, 0],
      [500, 25, 50],
    ],
    [
      'across the car',
      [
        [0, 300, 400],
        [0, -300, 400],
      ],
      [0, 0, 400],
      [1, 0, 0],
      [300, 25, 50],
    ],
    [
      'standing',
      [
        [0, 300, 0],
        [0, 300, 400],
      ],
      [0, 300, 200],
      [0, 1, 0],
      [200, 25, 50],
    ],
    [
      'rising forward',
      [
        [0, 300, 0],
        [300, 300, 400],
      ],
      [150, 300, 200],
      [0, 1, 0],
      [250, 25, 50],
    ],
  ])('a rail %s', (_, path, centre, across, halfSizes) => {
    const [box, ...others] = bodies({ rails: [rail(path)] });
    expect(others).toEqual([]);
    if (box?.kind !== 'box') throw new Error('a box');
    expect(box).toMatchObject({ name: 'Rail', centre, halfSizes });
    expect('extra' in box).toBe(false);
    const [along, wide, high] = box.axes!;
    const way = path[1]!.map((v, i) => v - path[0]![i]!);
    for (const i of [0, 1, 2]) {
      expectClose(along[i]!, way[i]! / Math.hypot(...way), 1e-12);
      expectClose(Math.abs(wide[i]!), Math.abs(across[i]!), 1e-12);
      const [j, k] = [(i + 1) % 3, (i + 2) % 3];
      expectClose(high[i]!, along[j]! * wide[k]! - along[k]! * wide[j]!, 1e-12);
    }
  });
  test('a rail that bends is a box for each stretch, on both sides where it is mirrored', () => {
    const path: Point[] = [
      [0, 300, 400],
      [-500, 350, 400],
      [-900, 350, 440],
    ];
    expect(bodies({ rails: [rail(path)] })).toHaveLength(2);
    const both = bodies({ rails: [rail(path, true)] });
    expect(both.map((body) => (body.kind === 'box' ? body.centre : undefined))).toEqual([
      [-250, 325, 400],
      [-700, 350, 420],
      [-250, -325, 400],
      [-700, -350, 420],
    ]);
  });
  test('bodies as drawn, mirrored ones with their turn the other way; a quarter inch more beside headers', () => {
    const box = {
      kind: 'box',
      name: 'Tank',
      role: 'other',
      centre: [10, 500, 300],
      size: [80, 60, 40],
      turn: 30,
    };
    const pipe = { name: 'Pipe', from: [0, 100, 0], to: [50, 200, 10], radius: 20 };
    const c = Math.cos(30 * DEGREE);
    const found = bodies({
      obstacles: [
        { ...box, mirrored: true },
        { ...box, turn: undefined, mirrored: false },
        { ...pipe, kind: 'capsule', role: 'header', mirrored: true },
        { ...pipe, kind: 'cylinder', role: 'engine', mirrored: false },
      ],
    });
    const near = (axes: readonly (readonly number[])[]) =>
      axes.map((axis) => axis.map((value) => expect.closeTo(value, 12)));
    const upright = [0, 0, 1];
    expect(found).toEqual([
      {
        kind: 'box',
        name: 'Tank',
        centre: [10, 500, 300],
        halfSizes: [40, 30, 20],
        axes: near([[c, 0.5, 0], [-0.5, c, 0], upright]),
      },
      {
        kind: 'box',
        name: 'Tank',
        centre: [10, -500, 300],
        halfSizes: [40, 30, 20],
        axes: near([[c, -0.5, 0], [0.5, c, 0], upright]),
      },
      {
        kind: 'box',
        name: 'Tank',
        centre: [10, 500, 300],
        halfSizes: [40, 30, 20],
        axes: near([[1, 0, 0], [0, 1, 0], upright]),
      },
      { kind: 'capsule', ...pipe, extra: 6.35 },
      { kind: 'capsule', ...pipe, from: [0, -100, 0], to: [50, -200, 10], extra: 6.35 },
      { kind: 'cylinder', ...pipe },
    ]);
  });
});

const SPACE: RouteSpace = {
  columnEnd: [0, 0, 0],
  columnAxis: [1, 0, 0],
  boxEnd: [1000, 0, -300],
  boxAxis: [1, 0, 0],
  columnSlide: [50, 250],
  boxSlide: [60, 200],
  leastShaft: 100,
  tubeRadius: 10,
  jointRadius: 22,
  clearance: 12,
  clearanceOf: clearanceOf([]),
};

describe('a trial route', () => {
  const centres: Point[] = [
    [100, 0, 0],
    [500, 0, -300],
  ];
  test('angles between what meets in each joint', () => {
    const { angles, spare, nearest } = measureTrial(SPACE, centres);
    for (const angle of angles) expectClose(angle, Math.atan2(300, 400), 1e-12);
    expect([spare, lackingRoom(SPACE, centres)]).toEqual([Number.POSITIVE_INFINITY, 0]);
    expect(nearest).toEqual({ distance: Number.POSITIVE_INFINITY, name: '' });
  });
  const beside = (z: number): RouteSpace => ({
    ...SPACE,
    // A wall above, parallel to the column and the box.
    clearanceOf: (from, to) => ({ distance: Math.min(z - from[2], z - to[2]), name: 'floor' }),
  });
  test('room: what is left beside tube and joints, less the clearance wanted', () => {
    // The column's stretch and the first joint are at z 0, 50 below the wall: the joint's 22 and 12 leave 16.
    const told = measureTrial(beside(50), centres);
    expectClose(told.spare, 16, 1e-12);
    expect(told.nearest).toEqual({ distance: 28, name: 'floor' });
    expect(lackingRoom(beside(50), centres)).toBe(0);
    // At 30 the joint lacks 4 and its margin of 0.05; the tube's two stretches have 8 to spare.
    expectClose(measureTrial(beside(30), centres).spare, -4, 1e-12);
    expectClose(lackingRoom(beside(30), centres), 4.05, 1e-9);
    // At 20 both stretches that touch z 0 lack 2 each, and the joint 14.
    expectClose(lackingRoom(beside(20), centres), 2.05 + 2.05 + 14.05, 1e-9);
    // Where so much is of no interest, no less than that.
    for (const enough of [0.5, 2.05, 3, 18])
      expect(lackingRoom(beside(20), centres, enough)).toBeGreaterThanOrEqual(enough);
  });
});

describe('where two axes meet', () => {
  test('half way between their nearest places, with the gap', () => {
    const space = {
      ...SPACE,
      boxEnd: [400, 300, 8] as Point,
      boxAxis: [0, 2, 0] as Point,
      columnAxis: [5, 0, 0] as Point,
    };
    expect(meetingOfAxes(space)).toEqual({ centre: [400, 0, 4], gap: 8 });
    const askew = meetingOfAxes({ ...space, boxEnd: [400 + 30, 40, 0], boxAxis: [0.6, 0.8, 0] })!;
    for (const [i, value] of [400, 0, 0].entries()) expectClose(askew.centre[i]!, value, 1e-9);
    expectClose(askew.gap, 0, 1e-9);
  });
  test('nowhere for parallel ones, either way round', () => {
    expect(meetingOfAxes(SPACE)).toBeUndefined();
    expect(meetingOfAxes({ ...SPACE, boxAxis: [-1, 0, 0] })).toBeUndefined();
    expect(meetingOfAxes({ ...SPACE, boxAxis: [1, 1e-3, 0] })).toBeDefined();
  });
});

describe('the search', () => {
  test('two joints in one plane, axes parallel: as far apart as the slides let them, and equal angles', () => {
    const { centres, angles, spare } = searchRoute(SPACE, 2);
    // From 50 on the column to 60 before the box: 890 along, 300 down.
    for (const angle of angles) expectClose(angle / DEGREE, Math.atan2(300, 890) / DEGREE, 0.02);
    expectClose(centres[0]![0], 50, 0.5);
    expectClose(centres[1]![0], 940, 0.5);
    expect(spare).toBe(Number.POSITIVE_INFINITY);
  });
  test('a body in the straight way: past it with the room that is wanted', () => {
    // A tube across the way of the shaft, from above down to z -170 at x 500: the straight way passes at -152.
    const tube: RouteObstacle = {
      kind: 'capsule',
      name: 'tube',
      from: [500, 0, 900],
      to: [500, 0, -120],
      radius: 20,
    };
    const { spare, angles, nearest } = searchRoute({ ...SPACE, clearanceOf: clearanceOf([tube]) }, 3);
    expect(spare).toBeGreaterThanOrEqual(0);
    expect(nearest.name).toBe('tube');
    expect(Math.max(...angles)).toBeLessThan(22 * DEGREE);
  });
  test('a joint that weighs less takes more of the bend', () => {
    // Level column, box 60° down, both in one plane: two angles of 60° together, shared as the weights say.
    const space = {
      ...SPACE,
      boxEnd: [600, 0, -500] as Point,
      boxAxis: [0.5, 0, -Math.sqrt(3) / 2] as Point,
      columnSlide: [10, 500] as const,
      boxSlide: [10, 500] as const,
    };
    for (const angle of searchRoute(space, 2).angles) expectClose(angle / DEGREE, 30, 0.2);
    const [first, second] = searchRoute(space, 2, [1, 0.5]).angles;
    expectClose(first! / DEGREE, 20, 0.2);
    expectClose(second! / DEGREE, 40, 0.2);
  });
  test('joints no nearer than a shaft between them needs', () => {
    const near = { ...SPACE, boxEnd: [260, 0, -90] as Point };
    const { centres } = searchRoute(near, 2);
    expect(Math.hypot(...centres[1]!.map((v, i) => v - centres[0]![i]!))).toBeGreaterThan(99.9);
  });
});

describe('one joint', () => {
  const along = (end: Point, axis: Point, by: number) =>
    end.map((v, i) => v + by * axis[i]!) as unknown as Point;
  const [a, meeting]: Point[] = [
    [1, 0, 0],
    [0, 300, 700],
  ];
  const bent = (degrees: number, fromColumn = 80, fromBox = 60) => {
    const b: Point = [Math.cos(degrees * DEGREE), Math.sin(degrees * DEGREE), 0];
    const end = { end: along(meeting!, a!, -fromColumn), axis: a! };
    return suggestRoute({ column: end, box: { end: along(meeting!, b, fromBox), axis: b } }, 1).outcome;
  };
  test.each([
    [20, 'single', true],
    [29.9, 'single', true],
    [30.1, 'double', true],
    [69.9, 'double', true],
    // Past what either may bend it is a single one, and said to be past it.
    [75, 'single', false],
  ])('bent by %s degrees: %s', (degrees, kind, withinLimits) => {
    const outcome = bent(degrees);
    if (!outcome.ok) throw new Error(outcome.failure.kind);
    const { shaft, worstAngle, worstShare, parts, support, motion, stubs } = outcome.value;
    expect(shaft.joints.map((joint) => joint.kind)).toEqual([kind]);
    expect([shaft.shafts, shaft.supports]).toEqual([[], []]);
    expectClose(worstAngle / DEGREE, degrees, 1e-9);
    expectClose(worstShare, degrees / (kind === 'single' ? 30 : 70), 1e-9);
    expect(outcome.value.withinLimits).toBe(withinLimits);
    // 80 and 60 mm out, where a joint pushed home stands 12: the column's shaft is 68 mm longer and in a bearing, the box's 48.
    expect(stubs.map(({ part, bearing }) => [part, bearing])).toEqual([
      ['column', true],
      ['box', false],
    ]);
    expectClose(stubs[0]!.longer, 68, 1e-9);
    expectClose(stubs[1]!.longer, 48, 1e-9);
    expect(parts).toBe((kind === 'single' ? 1 : 2) + 3 + 2);
    expect(support.byColumnBearing).toBe(kind === 'double');
    expectClose(motion.min, kind === 'single' ? Math.cos(degrees * DEGREE) : 1, 1e-9);
    expect('fit' in shaft.column).toBe(false);
  });
  test('its place has to be within both slides: 12 to 300 of the column, 12 to 200 of the box', () => {
    for (const [fromColumn, fromBox, ok] of [
      [12.001, 60, true],
      [11.9, 60, false],
      [299.9, 60, true],
      [300.1, 60, false],
      [80, 12.001, true],
      [80, 11.9, false],
      [80, 199.9, true],
      [80, 200.1, false],
    ] as const) {
      const outcome = bent(20, fromColumn, fromBox);
      expect(outcome.ok, `${fromColumn}, ${fromBox}`).toBe(ok);
      if (!outcome.ok) expect(outcome.failure).toEqual({ kind: 'out-of-slide' });
    }
  });
  test('axes a millimetre apart can be brought to meet, further ones not', () => {
    const gap = (z: number) =>
      suggestRoute(
        {
          column: { end: [-80, 300, 700], axis: [1, 0, 0] },
          box: { end: [54, 322, 700 + z], axis: [0.9, 0.4, 0] },
        },
        1,
      ).outcome;
    expect(gap(0.9).ok).toBe(true);
    const level = { end: [-80, 300, 700], axis: [1, 0, 0] } as const;
    const parallel = suggestRoute(
      { column: level, box: { end: [500, 300, 650], axis: [1, 0, 0] } },
      1,
    ).outcome;
    expect(parallel).toEqual({ ok: false, failure: { kind: 'axes-apart', gap: Number.POSITIVE_INFINITY } });
    const apart = gap(1.5);
    expect(!apart.ok && apart.failure).toEqual({ kind: 'axes-apart', gap: expect.closeTo(1.5, 9) });
  });
  test('folded to a right angle it does not turn; blocked it says by how much and what', () => {
    const right = bent(90);
    expect(!right.ok && right.failure).toEqual({ kind: 'locked' });
    const wall: RouteObstacle = {
      kind: 'box',
      name: 'wall',
      centre: [0, 350, 700],
      halfSizes: [500, 20, 500],
    };
    const blocked = suggestRoute(
      {
        column: { end: [-80, 300, 700], axis: [1, 0, 0] },
        box: { end: [60, 300 - 60 * Math.tan(0.3), 700], axis: [Math.cos(0.3), -Math.sin(0.3), 0] },
        obstacles: [wall],
      },
      1,
    ).outcome;
    // 30 mm from the middle of the joint, 22.225 of it and 12.7 of room: 4.925 too little.
    expect(!blocked.ok && blocked.failure).toEqual({
      kind: 'not-clear',
      lacking: expect.closeTo(4.925, 9),
      name: 'wall',
    });
  });
});

describe('supports', () => {
  const chain = (kinds: ('single' | 'double')[], xs: number[]) => {
    const shaft = shaftOf({
      column: { end: [-50, 0, 500], axis: [1, 0, 0] },
      box: { end: [xs.at(-1)! + 50, 0, 500], axis: [1, 0, 0] },
      joints: kinds.map((kind, i) => ({ kind, centre: [xs[i], 0, 500] })),
      shafts: kinds.slice(1).map(() => ({ clock: 0 })),
    });
    return supportsFor(shaft, routeOf(shaft));
  };
  // 63.5 mm, 2 1/2 in, from the joint (common practice), or in the middle of a shaft shorter than twice that.
  test.each<[string, ('single' | 'double')[], number[], object[]]>([
    ['two single joints hold their shaft', ['single', 'single'], [0, 400], []],
    [
      'three: beside the middle one, on the longer shaft before it',
      ['single', 'single', 'single'],
      [0, 635, 1000],
      [{ shaft: 0, at: 0.9 }],
    ],
    ['or after it', ['single', 'single', 'single'], [0, 365, 1000], [{ shaft: 1, at: 0.1 }]],
    [
      'short shafts have it in the middle',
      ['single', 'single', 'single'],
      [0, 100, 180],
      [{ shaft: 0, at: 0.5 }],
    ],
    ['a double one at the column', ['double', 'single'], [0, 635], [{ shaft: 0, at: 0.1 }]],
    ['a double one at the box', ['single', 'double'], [0, 635], [{ shaft: 0, at: 0.9 }]],
    ['a double one alone has no shaft to carry it', ['double'], [0], []],
    [
      'a double one in the middle counts twice: on both shafts',
      ['single', 'double', 'single'],
      [0, 635, 1000],
      [
        { shaft: 0, at: 0.9 },
        { shaft: 1, at: 63.5 / 365 },
      ],
    ],
  ])('%s', (_, kinds, xs, wanted) => {
    const found = chain(kinds, xs);
    expect(found.map(({ shaft }) => shaft)).toEqual(wanted.map((one) => (one as { shaft: number }).shaft));
    for (const [i, { at }] of found.entries()) expectClose(at, (wanted[i] as { at: number }).at, 1e-9);
  });
});

test('ranked: within limits by parts, then by share; past limits by share, then by parts; none last', () => {
  const route = (withinLimits: boolean, parts: number, worstShare: number) =>
    ({
      joints: 2,
      outcome: { ok: true, value: { withinLimits, parts, worstShare } },
    }) as unknown as Suggestion;
  const none = { joints: 1, outcome: { ok: false, failure: { kind: 'locked' } } } as Suggestion;
  const wanted = [
    route(true, 3, 0.9),
    route(true, 4, 0.5),
    route(true, 4, 0.6),
    route(false, 6, 1.1),
    route(false, 3, 1.2),
    route(false, 4, 1.2),
    none,
  ];
  for (const order of [[...wanted].reverse(), [3, 6, 0, 5, 2, 4, 1].map((i) => wanted[i]!)])
    expect(rankedRoutes(order)).toEqual(wanted);
});

test('one double joint where two single ones do not do, clocked best, with its figures', () => {
  // 66° in one plane: two singles of 30° are six too few.
  const way = (degrees: number): Point => [Math.cos(degrees * DEGREE), 0, Math.sin(degrees * DEGREE)];
  const fit = { kind: 'round', diameter: 19.05 } as const;
  const { outcome, joints } = suggestRoute(
    { column: { end: [-1000, 300, 900], axis: way(-66), fit }, box: { end: [-400, 300, 500], axis: way(0) } },
    2,
    WIDE_SLIDES,
  );
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  const { shaft, worstShare, withinLimits, parts, worstAngle } = outcome.value;
  expect(joints).toBe(2);
  expect(shaft.joints.map(({ kind }) => kind).sort()).toEqual(['double', 'single']);
  expectClose(worstShare, 0.66, 0.01);
  expectClose(worstAngle / DEGREE, 46.2, 0.4);
  expect(withinLimits).toBe(true);
  // Two joints, one of them twice, a shaft and its support; and what an end that is made longer takes.
  const longer = outcome.value.stubs.reduce((sum, { bearing }) => sum + (bearing ? 3 : 2), 0);
  expect(parts).toBe(5 + longer);
  expect([shaft.column.fit, 'fit' in shaft.box]).toEqual([fit, false]);
  expect(shaft.supports).toHaveLength(1);
});

describe('ends as they are before ends made longer', () => {
  // Column falling 30°, the input level, 100 mm aside and 200 lower over 500 mm: on the ends both bend by less than 20°.
  const column = { end: [-1200, 330, 760], axis: [Math.cos(30 * DEGREE), 0, -0.5] } as const;
  const level = { end: [-700, 400, 560], axis: [1, 0, 0] } as const;

  test('where joints on the ends stay within their limits, no end is made longer, though that would bend them less', () => {
    const { outcome } = suggestRoute({ column, box: level }, 2);
    const { outcome: wide } = suggestRoute({ column, box: level }, 2, WIDE_SLIDES);
    if (!outcome.ok || !wide.ok) throw new Error('no route');
    expect(outcome.value.withinLimits).toBe(true);
    expect(outcome.value.stubs).toEqual([]);
    // A joint pushed home stands 12 mm out; one that holds by a 3/4 in end's diameter, 44 - 19.05.
    for (const { along } of [outcome.value.route.column, outcome.value.route.box]) {
      expect(along).toBeGreaterThanOrEqual(12 - 1e-6);
      expect(along).toBeLessThanOrEqual(24.95 + 1e-6);
    }
    expect(wide.value.worstAngle).toBeLessThan(outcome.value.worstAngle);
    expect(wide.value.stubs.length).toBeGreaterThan(0);
  });

  test('where none on the ends does, the ends that have to be longer are named', () => {
    // It hangs half way down to the straight line between the ends: below it is room, on the column's line carried on.
    const beam: RouteObstacle = {
      kind: 'box',
      name: 'beam',
      centre: [-930, 365, 705],
      halfSizes: [10, 100, 45],
    };
    const { outcome } = suggestRoute({ column, box: level, obstacles: [beam] }, 2);
    if (!outcome.ok) throw new Error(outcome.failure.kind);
    const { stubs, route } = outcome.value;
    expect(stubs.length).toBeGreaterThan(0);
    for (const { part, longer } of stubs) expectClose(longer, route[part].along - 12, 1e-9);
  });
});
