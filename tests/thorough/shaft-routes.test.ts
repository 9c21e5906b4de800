import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLayout } from '../../shared-math/layout/index.ts';
import { failed, succeeded } from '../../shared-math/outcome.ts';
import {
  clearanceOf,
  type RouteObstacle,
  type RouteProposal,
  type RouteTask,
  rankedRoutes,
  routeObstacles,
  routeOf,
  type Suggestion,
  segmentToObstacle,
  suggestRoute,
  suggestRoutes,
  turningOf,
  WIDE_SLIDES,
} from '../../shared-math/shaft/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { layoutOf, rawLayout } from '../support/layouts.ts';

type Vector = [number, number, number];

const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const point = fc.tuple(coordinate, coordinate, coordinate);

/** Outside distance of a point from an obstacle's surface by its definition alone. */
function fromSurface(obstacle: RouteObstacle, p: Vector): number {
  if (obstacle.kind === 'cylinder') {
    const axis = obstacle.to.map((v, k) => v - obstacle.from[k]!);
    const length = Math.hypot(...axis);
    const along = axis.reduce((sum, v, k) => sum + (v / length) * (p[k]! - obstacle.from[k]!), 0);
    const out = Math.hypot(...axis.map((v, k) => p[k]! - obstacle.from[k]! - (along * v) / length));
    const [x, y] = [Math.max(-along, along - length), out - obstacle.radius];
    return x <= 0 && y <= 0 ? Math.max(x, y) : Math.hypot(Math.max(x, 0), Math.max(y, 0));
  }
  if (obstacle.kind === 'capsule') {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 400; i += 1) {
      const q = obstacle.from.map((v, k) => v + (i / 400) * (obstacle.to[k]! - v));
      least = Math.min(least, Math.hypot(p[0] - q[0]!, p[1] - q[1]!, p[2] - q[2]!));
    }
    return least - obstacle.radius;
  }
  const axes = obstacle.axes ?? [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const d = axes.map((axis, i) => {
    const along = axis.reduce((sum, v, k) => sum + v * (p[k]! - obstacle.centre[k]!), 0);
    return Math.abs(along) - obstacle.halfSizes[i]!;
  });
  return d.every((v) => v <= 0) ? Math.max(...d) : Math.hypot(...d.map((v) => Math.max(v, 0)));
}

describe('distances to what is in the way', () => {
  const turn = (angle: number): readonly [Vector, Vector, Vector] => [
    [Math.cos(angle), Math.sin(angle), 0],
    [-Math.sin(angle), Math.cos(angle), 0],
    [0, 0, 1],
  ];
  const obstacle: fc.Arbitrary<RouteObstacle> = fc.oneof(
    fc.record({
      kind: fc.constantFrom('capsule' as const, 'cylinder' as const),
      name: fc.constant('tube'),
      from: point,
      to: point,
      radius: fc.double({ min: 1, max: 60, noNaN: true }),
    }),
    fc.record({
      kind: fc.constant('box' as const),
      name: fc.constant('box'),
      centre: point,
      halfSizes: fc.tuple(
        ...[0, 1, 2].map(() => fc.double({ min: 5, max: 120, noNaN: true })),
      ) as fc.Arbitrary<Vector>,
      axes: fc.double({ min: -3, max: 3, noNaN: true }).map(turn),
    }),
  );

  test('from a stretch of line: never more than from any of its points, and met by one', () => {
    fc.assert(
      fc.property(obstacle, point, point, (body, a, b) => {
        const found = segmentToObstacle(body, a, b);
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 200; i += 1)
          least = Math.min(least, fromSurface(body, a.map((v, k) => v + (i / 200) * (b[k]! - v)) as Vector));
        // Sampling every 1/200 of the stretch is at most half a step of path off, and the tube's own samples too.
        const coarse = Math.hypot(...a.map((v, k) => b[k]! - v)) / 400 + (body.kind === 'capsule' ? 1 : 0);
        expect(found).toBeLessThanOrEqual(least + 1e-6);
        expectClose(found, least, coarse + 1e-6);
      }),
      { seed: 650, numRuns: 150 },
    );
  });

  test('parallel, crossing and zero-length stretches', () => {
    const tube = (from: Vector, to: Vector): RouteObstacle => ({
      kind: 'capsule',
      name: '',
      from,
      to,
      radius: 1,
    });
    expectClose(segmentToObstacle(tube([0, 5, 0], [10, 5, 0]), [2, 0, 0], [30, 0, 0]), 4, 1e-12);
    expectClose(segmentToObstacle(tube([0, 3, 4], [0, 3, 4]), [0, 0, 0], [0, 0, 0]), 4, 1e-12);
    expectClose(segmentToObstacle(tube([0, -5, 0], [0, 5, 0]), [-5, 0, 0], [5, 0, 0]), -1, 1e-12);
    expectClose(segmentToObstacle(tube([20, 0, 0], [30, 0, 0]), [0, 0, 0], [10, 0, 0]), 9, 1e-12);
  });

  test('the nearest of several is named, and extra room counts against it', () => {
    const near = clearanceOf([
      { kind: 'capsule', name: 'rail', from: [0, 50, 0], to: [100, 50, 0], radius: 10 },
      { kind: 'capsule', name: 'header', from: [0, -60, 0], to: [100, -60, 0], radius: 10, extra: 15 },
    ]);
    expect(near([0, 0, 0], [100, 0, 0])).toEqual({ distance: 35, name: 'header' });
    expect(clearanceOf([])([0, 0, 0], [1, 0, 0]).distance).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('what a layout has in the way', () => {
  test('rails by the stretch, boxes turned, tubes, and all of it on both sides where mirrored', () => {
    const layout = layoutOf({
      rails: [
        {
          name: 'Rail',
          path: [
            [400, 300, 430],
            [-600, 300, 430],
            [-600, -300, 430],
          ],
          height: 100,
          width: 50,
          mirrored: false,
        },
      ],
      obstacles: [
        {
          kind: 'box',
          name: 'Engine',
          role: 'engine',
          mirrored: true,
          centre: [0, 500, 800],
          size: [200, 100, 60],
          turn: 90,
        },
        {
          kind: 'cylinder',
          name: 'Header',
          role: 'header',
          mirrored: false,
          from: [0, 0, 0],
          to: [100, 0, 0],
          radius: 20,
        },
      ],
    });
    const near = clearanceOf(routeObstacles(layout));
    const at = (p: Vector) => near(p, p);
    // Beside the rail, above it, and ahead of the piece that runs across the car.
    expect(at([0, 340, 430])).toEqual({ distance: 15, name: 'Rail' });
    expect(at([0, 300, 500])).toEqual({ distance: 20, name: 'Rail' });
    expectClose(at([-560, 0, 430]).distance, 15, 1e-9);
    // Turned a quarter, the engine is 100 long and 200 wide, on both sides.
    expectClose(at([60, 500, 800]).distance, 10, 1e-9);
    expectClose(at([0, 605, 800]).distance, 5, 1e-9);
    expect(at([60, -500, 800]).name).toBe('Engine');
    expectClose(at([60, -500, 800]).distance, 10, 1e-9);
    // A quarter inch more is wanted beside a header; its end is flat.
    expectClose(at([50, 0, 40]).distance, 20 - 6.35, 1e-9);
    expectClose(at([110, 10, 0]).distance, 10 - 6.35, 1e-9);
  });
});

const TASK: RouteTask = {
  column: { end: [-1390, 330, 760], axis: [0.87, 0.05, -0.49] },
  box: { end: [-900, 400, 486], axis: [1, 0, -0.25] },
};

function found(list: readonly Suggestion[], joints: 1 | 2 | 3): RouteProposal {
  const outcome = list.find((entry) => entry.joints === joints)!.outcome;
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value;
}

/** The least worst angle of many tries, seeded; independent of the search. */
function bruteForce(
  task: RouteTask,
  joints: 2 | 3,
  obstacles: readonly RouteObstacle[],
  tries: number,
): number {
  let state = 77;
  const draw = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  const unit = (v: readonly number[]) => v.map((value) => value / Math.hypot(...v));
  const [a, b] = [unit(task.column.axis), unit(task.box.axis)];
  const near = clearanceOf(obstacles);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < tries; i += 1) {
    const [s, t] = [12 + 288 * draw(), 12 + 188 * draw()];
    const first = task.column.end.map((v, k) => v + s * a[k]!) as Vector;
    const last = task.box.end.map((v, k) => v - t * b[k]!) as Vector;
    const share = draw();
    const middle = first.map((v, k) => v + share * (last[k]! - v) + 300 * (draw() - 0.5)) as Vector;
    const centres = joints === 2 ? [first, last] : [first, middle, last];
    const pieces = centres.slice(1).map((c, k) => c.map((v, m) => v - centres[k]![m]!));
    if (pieces.some((piece) => Math.hypot(...piece) < 100)) continue;
    const line = [a, ...pieces.map(unit), b];
    const worst = Math.max(
      ...line.slice(1).map((d, k) =>
        Math.acos(
          Math.min(
            d.reduce((sum, v, m) => sum + v * line[k]![m]!, 0),
            1,
          ),
        ),
      ),
    );
    if (worst >= least) continue;
    const stops = [task.column.end, ...centres, task.box.end];
    const clear =
      stops.slice(1).every((stop, k) => near(stops[k]!, stop).distance - 9.525 >= 12.7) &&
      centres.every((centre) => near(centre, centre).distance - 22.225 >= 12.7);
    if (clear) least = worst;
  }
  return least;
}

describe('suggested routes', () => {
  const engine: RouteObstacle = {
    kind: 'box',
    name: 'engine',
    centre: [-900, 60, 640],
    halfSizes: [320, 250, 260],
  };
  const header = (z: number): RouteObstacle => ({
    kind: 'capsule',
    name: 'header',
    from: [-1130, 300, z],
    to: [-1130, 460, z - 40],
    radius: 24,
    extra: 6.35,
  });

  test.each<[string, readonly RouteObstacle[], boolean]>([
    ['in the open', [], true],
    ['past a low header', [header(520)], true],
    ['past an engine and a low header', [engine, header(540)], true],
    ['past a header in the way of two joints', [engine, header(640)], false],
  ])('%s: no worse than twenty thousand tries, on the axes, clear', (_, obstacles, twoDo) => {
    const list = suggestRoutes({ ...TASK, obstacles }, WIDE_SLIDES);
    const near = clearanceOf(obstacles);
    expect(list.find(({ joints }) => joints === 2)!.outcome.ok).toBe(twoDo);
    if (!twoDo) expect(bruteForce(TASK, 2, obstacles, 20_000)).toBe(Number.POSITIVE_INFINITY);
    for (const joints of twoDo ? ([2, 3] as const) : ([3] as const)) {
      const { shaft, worstAngle, nearest } = found(list, joints);
      const least = bruteForce(TASK, joints, obstacles, 20_000);
      expect(least).toBeLessThan(1);
      expect(worstAngle).toBeLessThanOrEqual(least + 1e-3);
      const { column, box, joints: measured } = routeOf(shaft);
      expectClose(column.off, 0, 1e-6, 'on the column');
      expectClose(box.off, 0, 1e-6, 'on the box');
      expect(column.along).toBeGreaterThanOrEqual(12 - 1e-6);
      expect(box.along).toBeGreaterThanOrEqual(12 - 1e-6);
      expectClose(Math.max(...measured.map(({ angle }) => angle)), worstAngle, 1e-12);
      const stops = [shaft.column.end, ...shaft.joints.map(({ centre }) => centre), shaft.box.end];
      for (const [i, stop] of stops.slice(1).entries())
        expect(near(stops[i]!, stop).distance).toBeGreaterThanOrEqual(9.525 + 12.7 - 1e-9);
      for (const { centre } of shaft.joints)
        expect(near(centre, centre).distance).toBeGreaterThanOrEqual(22.225 + 12.7 - 1e-9);
      if (obstacles.length > 0) expect(['engine', 'header']).toContain(nearest.name);
    }
    if (twoDo) expect(found(list, 3).worstAngle).toBeLessThanOrEqual(found(list, 2).worstAngle + 1e-3);
  });

  test('an end that must stand at one of two places, with nothing clear between, is found', () => {
    // Along the box's axis the joint touches the engine's corner everywhere but close to the box.
    const corner: RouteObstacle = {
      kind: 'box',
      name: 'engine',
      centre: [-600, 0, 650],
      halfSizes: [300, 290, 250],
    };
    const list = suggestRoutes(
      {
        column: { end: [-1150, 330, 760], axis: [0.9, 0, -0.43] },
        box: { end: [-230, 300, 560], axis: [0.9, -0.1, -0.4] },
        obstacles: [corner],
      },
      WIDE_SLIDES,
    );
    expect(found(list, 3).worstAngle / DEGREE).toBeLessThan(14.3);
  });

  test('what is proposed is a document that is taken in, with the figures told', () => {
    const fit = { kind: 'round', diameter: 19.05 } as const;
    const list = suggestRoutes({ ...TASK, column: { ...TASK.column, fit } });
    for (const joints of [2, 3] as const) {
      const proposal = found(list, joints);
      const outcome = readLayout(rawLayout({ shaft: proposal.shaft }));
      expect(outcome.ok).toBe(true);
      if (!outcome.ok) continue;
      const taken = outcome.value.shaft!;
      expect(taken.column.fit).toEqual(fit);
      const turning = turningOf(taken, routeOf(taken));
      if (!turning.ok) throw new Error('locked');
      expectClose(turning.value.motion.swing, proposal.motion.swing, 1e-9, 'clocked as told');
      expectClose(turning.value.motion.swing, turning.value.best.swing, 1e-9, 'clocked best');
      expect(proposal.support.placed).toBe(proposal.support.needed);
    }
    // Three joints: a support two and a half inches from the middle one.
    const { shaft, route } = found(list, 3);
    const [support] = shaft.supports;
    const length = route.lengths[support!.shaft]!;
    const away = support!.shaft === 0 ? (1 - support!.at) * length : support!.at * length;
    expectClose(away, 63.5, 1e-9);
  });

  test('one joint only where the axes meet, and where it can slide there', () => {
    const meeting: Vector = [-1290, 330, 700];
    const along = (end: Vector, axis: Vector, by: number) => end.map((v, i) => v + by * axis[i]!) as Vector;
    const [a, b] = [
      [0.8, 0, -0.6],
      [0.96, 0.28, 0],
    ] as [Vector, Vector];
    const task: RouteTask = {
      column: { end: along(meeting, a, -80), axis: a },
      box: { end: along(meeting, b, 60), axis: b },
    };
    const { shaft, worstAngle } = found([suggestRoute(task, 1)], 1);
    for (const [i, v] of meeting.entries()) expectClose(shaft.joints[0]!.centre[i]!, v, 1e-9);
    expectClose(worstAngle, Math.acos(0.8 * 0.96), 1e-12);
    // 39.8 degrees: a single joint does not do, a double one does, and the column's bearing has to be near.
    expect(shaft.joints[0]!.kind).toBe('double');
    const outcome = (other: RouteTask) => suggestRoute(other, 1).outcome;
    const aside: RouteTask = {
      ...task,
      box: { ...task.box, end: along(task.box.end as Vector, [0, 0, 1], 50) },
    };
    const apart = outcome(aside);
    expect(apart).toMatchObject({ ok: false, failure: { kind: 'axes-apart' } });
    expect(!apart.ok && apart.failure.kind === 'axes-apart' && apart.failure.gap).toBeGreaterThan(10);
    const parallel = { ...task, box: { end: [-900, 400, 500] as Vector, axis: a } };
    expect(outcome(parallel)).toEqual({
      ok: false,
      failure: { kind: 'axes-apart', gap: Number.POSITIVE_INFINITY },
    });
    const far = { ...task, column: { end: along(meeting, a, -700), axis: a } };
    expect(outcome(far)).toEqual({ ok: false, failure: { kind: 'out-of-slide' } });
  });

  test('where nothing is clear it says how much room lacks, and beside what', () => {
    const wall: RouteObstacle = {
      kind: 'box',
      name: 'firewall',
      centre: [-1150, 360, 600],
      halfSizes: [10, 3000, 3000],
    };
    for (const { joints, outcome } of suggestRoutes({ ...TASK, obstacles: [wall] })) {
      expect(outcome.ok).toBe(false);
      if (outcome.ok || joints === 1) continue;
      expect(outcome.failure).toMatchObject({ kind: 'not-clear', name: 'firewall' });
      expect(outcome.failure.kind === 'not-clear' && outcome.failure.lacking).toBeGreaterThan(20);
    }
  });

  test('a clearance function in place of a list gives the same routes; wishes change them', () => {
    const byList = suggestRoutes({ ...TASK, obstacles: [header(540)] }, WIDE_SLIDES);
    const byFunction = suggestRoutes({ ...TASK, clearanceOf: clearanceOf([header(540)]) }, WIDE_SLIDES);
    expect(byFunction).toEqual(byList);
    const narrow = found(
      suggestRoutes({ ...TASK, obstacles: [header(540)] }, { clearance: 2, ...WIDE_SLIDES }),
      2,
    );
    expect(narrow.worstAngle).toBeLessThanOrEqual(found(byList, 2).worstAngle + 1e-6);
    const strict = found(suggestRoutes(TASK, { limits: { single: 10 * DEGREE, double: 60 * DEGREE } }), 2);
    expect(strict.shaft.joints.some(({ kind }) => kind === 'double')).toBe(true);
  });

  test('past a single joint’s limit one double joint does, and the bend goes to it', () => {
    // The column points 66° away from the box's axis in the same plane: two singles of 30° are 60°, six too few.
    const turned = (degrees: number): Vector => [Math.cos(degrees * DEGREE), 0, Math.sin(degrees * DEGREE)];
    const task: RouteTask = {
      column: { end: [-1000, 300, 900], axis: turned(-66) },
      box: { end: [-400, 300, 500], axis: turned(0) },
    };
    const { shaft, route, worstShare, withinLimits, parts, stubs } = found(
      suggestRoutes(task, WIDE_SLIDES),
      2,
    );
    expect(withinLimits).toBe(true);
    expect(shaft.joints.map(({ kind }) => kind).sort()).toEqual(['double', 'single']);
    // In one plane the two angles make 66° together at the least; shared 30 to 70 each has 0.66 of its limit.
    expectClose(worstShare, 0.66, 0.01);
    const degrees = route.joints.map(({ angle, kind }) => [kind, angle / DEGREE] as const);
    expectClose(degrees.find(([kind]) => kind === 'single')![1], 19.8, 0.4);
    expectClose(degrees.find(([kind]) => kind === 'double')![1], 46.2, 0.4);
    const longer = stubs.reduce((sum, { bearing }) => sum + (bearing ? 3 : 2), 0);
    expect(parts).toBe(2 + 1 + shaft.shafts.length + shaft.supports.length + longer);
  });

  test('ranked: within the limits first, fewer parts before less of a limit, none last', () => {
    const route = (
      joints: 1 | 2 | 3,
      withinLimits: boolean,
      parts: number,
      worstShare: number,
    ): Suggestion => ({
      joints,
      outcome: succeeded({ withinLimits, parts, worstShare } as RouteProposal),
    });
    const none: Suggestion = { joints: 1, outcome: failed({ kind: 'locked' }) };
    const order = (list: readonly Suggestion[]) => rankedRoutes(list).map(({ joints }) => joints);
    expect(order([none, route(2, true, 4, 0.9), route(3, true, 6, 0.5)])).toEqual([2, 3, 1]);
    expect(order([none, route(2, false, 4, 1.1), route(3, true, 6, 0.5)])).toEqual([3, 2, 1]);
    expect(order([route(1, true, 4, 0.8), route(2, true, 4, 0.7), route(3, true, 6, 0.1)])).toEqual([
      2, 1, 3,
    ]);
  });
});
