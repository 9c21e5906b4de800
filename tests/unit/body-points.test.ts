import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse, findings, withClearances } from '../../shared-math/findings/index.ts';
import { distance, type Point } from '../../shared-math/geometry/points.ts';
import {
  bodyAt,
  bodyName,
  bodyPoints,
  carBodies,
  holdOf,
  type LayoutDocument,
  movePoint,
  OBSTACLE_ROLES,
  type Obstacle,
  partsOfBody,
  readLayout,
  resolveLayout,
  usualObstacle,
  usualRail,
  withKind,
  withRailPoint,
} from '../../shared-math/layout/index.ts';
import { refusalSentence } from '../../src-renderer/document/refusal-sentences.ts';
import { COMBINATIONS, CROSS_STEER, documentOf, rawLayout, SIDE_STEER } from '../support/layouts.ts';

const RAIL = {
  name: 'Frame rail',
  path: [
    [430, 330, 430],
    [-240, 345, 430],
    [-2300, 470, 398],
  ],
  height: 100,
  width: 50,
  mirrored: true,
};
const ENGINE = {
  kind: 'box',
  name: 'Engine',
  role: 'engine',
  centre: [-560, 0, 640],
  size: [600, 440, 400],
  mirrored: false,
};
const HEADER = {
  kind: 'capsule',
  name: 'Header tube',
  role: 'header',
  from: [-480, 240, 600],
  to: [-1000, 280, 390],
  radius: 22,
  mirrored: true,
};

const crowded = (obstacles: unknown[] = [ENGINE, HEADER], rails: unknown[] = [RAIL]) =>
  documentOf(rawLayout({ rails, obstacles }));
const obstacleOf = (document: LayoutDocument, index: number) => document.obstacles[index] as Obstacle;
const pointOf = (document: LayoutDocument, id: string): Point => {
  const body = bodyAt(document, id);
  const point = body && bodyPoints(body).find((candidate) => candidate.id === id);
  if (!point) throw new Error(`no point ${id}`);
  return point.at;
};
const by = (at: Point, x: number, y: number, z: number): Point => [at[0] + x, at[1] + y, at[2] + z];
const taken = (document: LayoutDocument) => readLayout(document).ok;

describe('points of rails and obstacles', () => {
  test('are told with names, on the side that is written down', () => {
    const bodies = carBodies(crowded());
    expect(bodies.map(bodyName)).toEqual(['Frame rail', 'Engine', 'Header tube']);
    expect(bodies.map((body) => bodyPoints(body).map(({ id }) => id))).toEqual([
      ['rails.0.path.0', 'rails.0.path.1', 'rails.0.path.2'],
      ['obstacles.0.centre', 'obstacles.0.cornerAhead', 'obstacles.0.cornerBehind'],
      ['obstacles.1.middle', 'obstacles.1.from', 'obstacles.1.to', 'obstacles.1.wall'],
    ]);
    expect(bodies.map(partsOfBody)).toEqual([
      ['rail-0', 'rail-0-mirrored'],
      ['obstacle-0'],
      ['obstacle-1', 'obstacle-1-mirrored'],
    ]);
    expect(bodyAt(crowded(), 'obstacles.2')).toBeUndefined();
    expect(bodyAt(crowded(), 'steering.box.pitmanBall')).toBeUndefined();
  });

  test('of a rail move one by one', () => {
    const before = crowded();
    const after = movePoint(before, 'rails.0.path.1', [-200, 350, 480]);
    expect(after.rails[0]?.path).toEqual([RAIL.path[0], [-200, 350, 480], RAIL.path[2]]);
    expect(after.obstacles).toBe(before.obstacles);
    expect(before.rails[0]?.path[1]).toEqual([-240, 345, 430]);
  });

  test.each([0, 30, -75])(
    'a box turned by %s° keeps the corner opposite the dragged one, and its size follows',
    (turn) => {
      const before = crowded([{ ...ENGINE, turn }]);
      for (const [dragged, held] of [
        ['cornerAhead', 'cornerBehind'],
        ['cornerBehind', 'cornerAhead'],
      ]) {
        const to = by(pointOf(before, `obstacles.0.${dragged}`), 7, -11, 5);
        const after = movePoint(before, `obstacles.0.${dragged}`, to);
        // Sizes are kept to a thousandth of a millimetre.
        expect(distance(pointOf(after, `obstacles.0.${dragged}`), to)).toBeLessThan(2e-3);
        expect(
          distance(pointOf(after, `obstacles.0.${held}`), pointOf(before, `obstacles.0.${held}`)),
        ).toBeLessThan(2e-3);
        expect(taken(after)).toBe(true);
      }
    },
  );

  test('a corner dragged past the opposite one makes a size that is refused by its name', () => {
    const before = crowded();
    const after = movePoint(before, 'obstacles.0.cornerAhead', by([-860, -220, 440], -50, 0, 0));
    const read = readLayout(after);
    expect(read.ok ? '' : read.failure.path).toBe('obstacles[0].size[0]');
    if (read.ok) return;
    expect(refusalSentence(read.failure, [], before)).toMatch(/^Engine, length: must be more than 0/);
  });

  test('a tube is moved whole by its middle, and its wall sets the radius', () => {
    const before = crowded();
    const length = ({ from, to }: Extract<Obstacle, { kind: 'capsule' }>) => distance(from, to);
    const tube = (document: LayoutDocument) =>
      obstacleOf(document, 1) as Extract<Obstacle, { kind: 'capsule' }>;
    const moved = movePoint(
      before,
      'obstacles.1.middle',
      by(pointOf(before, 'obstacles.1.middle'), 10, 20, -30),
    );
    expect(tube(moved).from).toEqual([-470, 260, 570]);
    expect(length(tube(moved))).toBeCloseTo(length(tube(before)), 6);
    const wall = pointOf(before, 'obstacles.1.wall');
    const middle = pointOf(before, 'obstacles.1.middle');
    expect(distance(wall, middle)).toBeCloseTo(22, 6);
    const out: Point = [
      middle[0] + 1.5 * (wall[0] - middle[0]),
      middle[1] + 1.5 * (wall[1] - middle[1]),
      middle[2] + 1.5 * (wall[2] - middle[2]),
    ];
    expect(tube(movePoint(before, 'obstacles.1.wall', out)).radius).toBeCloseTo(33, 3);
    const end = movePoint(before, 'obstacles.1.to', [-900, 250, 380]);
    expect(tube(end)).toMatchObject({ from: [-480, 240, 600], to: [-900, 250, 380], radius: 22 });
  });

  test('moving a point to where it is changes no shape', () => {
    const document = crowded([{ ...ENGINE, turn: 20 }, HEADER]);
    for (const body of carBodies(document))
      for (const { id, at } of bodyPoints(body)) {
        const again = bodyAt(movePoint(document, id, at), id);
        expect(
          again &&
            bodyPoints(again).every(({ id: each, at: to }) => distance(to, pointOf(document, each)) < 2e-3),
        ).toBe(true);
      }
  });

  test('wherever a corner goes, the result is refused or is a box between the two corners', () => {
    const before = crowded([{ ...ENGINE, turn: 15 }]);
    const coordinate = fc.double({ min: -900, max: 900, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(coordinate, coordinate, coordinate), (to) => {
        const after = movePoint(before, 'obstacles.0.cornerAhead', to);
        const { size } = obstacleOf(after, 0) as Extract<Obstacle, { kind: 'box' }>;
        expect(taken(after)).toBe(size.every((value) => value > 0));
        expect(size.every(Number.isFinite)).toBe(true);
      }),
    );
  });
});

describe('what is added', () => {
  test.each(
    COMBINATIONS.flatMap(({ label, over }) =>
      [SIDE_STEER, CROSS_STEER].map((steering) => [label, { ...over, steering }] as const),
    ),
  )('fits on %s, under names of their own', (_, over) => {
    let document = documentOf(rawLayout({ ...over, rails: [RAIL] }));
    for (const role of [...OBSTACLE_ROLES, ...OBSTACLE_ROLES])
      document = { ...document, obstacles: [...document.obstacles, usualObstacle(document, role)] };
    document = { ...document, rails: [...document.rails, usualRail(document)] };
    const read = readLayout(document);
    expect(read.ok ? '' : `${read.failure.path} ${read.failure.reason}`).toBe('');
    expect(new Set(document.obstacles.map(({ name }) => name)).size).toBe(12);
    for (const body of carBodies(document)) {
      // Between the rails, off the ground, and not outside the car.
      for (const { at } of bodyPoints(body)) {
        expect(at[2]).toBeGreaterThan(100);
        expect(Math.abs(at[1])).toBeLessThan(600);
      }
      expect(holdOf(body) === undefined).toBe(body.list === 'rails');
    }
  });

  test('stands clear of an ordinary side-steer car but for what reaches over its axle', () => {
    const bare = documentOf(rawLayout({ rails: [RAIL] }));
    const told = (document: LayoutDocument) =>
      findings(withClearances(analyse(resolveLayout(document))), { unit: 'in', fraction: 16 })
        .filter(({ part }) => part.startsWith('obstacles'))
        .map(({ sentence }) => sentence);
    for (const role of ['engine', 'header', 'radiator'] as const)
      expect(told({ ...bare, obstacles: [usualObstacle(bare, role)] })).toEqual([]);
  });

  test('without rails stands where rails would be', () => {
    const bare = documentOf(rawLayout({}));
    for (const role of OBSTACLE_ROLES)
      expect(taken({ ...bare, obstacles: [usualObstacle(bare, role)] })).toBe(true);
    expect(taken({ ...bare, rails: [usualRail(bare)] })).toBe(true);
  });
});

describe('another shape', () => {
  test('takes up about the same room and comes back near what it was', () => {
    const engine = obstacleOf(crowded(), 0);
    const tube = withKind(engine, 'cylinder');
    expect(tube).toMatchObject({ kind: 'cylinder', from: [-260, 0, 640], to: [-860, 0, 640], radius: 200 });
    expect(withKind(tube, 'box')).toMatchObject({ centre: [-560, 0, 640], size: [600, 400, 400] });
    expect(withKind(tube, 'capsule')).toMatchObject({ kind: 'capsule', radius: 200 });
    expect(withKind(engine, 'box')).toBe(engine);
    for (const kind of ['cylinder', 'capsule'] as const)
      expect(taken(crowded([withKind(engine, kind)]))).toBe(true);
  });
});

describe("a rail's path", () => {
  test('gains a point midway, or beyond its last', () => {
    const rail = crowded().rails[0] as LayoutDocument['rails'][number];
    expect(withRailPoint(rail, 0).path[1]).toEqual([95, 338, 430]);
    expect(withRailPoint(rail, 0).path).toHaveLength(4);
    const longer = withRailPoint(rail, 2).path;
    expect(longer).toHaveLength(4);
    expect(longer[3]?.[0]).toBe(-3330);
    expect(taken(crowded([], [{ ...rail, path: longer }]))).toBe(true);
  });

  test('dragged onto its neighbour is refused by its name', () => {
    const before = crowded();
    const read = readLayout(movePoint(before, 'rails.0.path.1', [430, 330, 430]));
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(refusalSentence(read.failure, [], before)).toBe(
      'Frame rail, point 2: on the same spot as the point before it: the rail has no length there',
    );
  });
});
