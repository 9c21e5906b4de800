import fc from 'fast-check';
import { Box, Distance, DistanceInput, DistanceOutput, SimplexCache, Transform, Vec2 } from 'planck';
import { describe, expect, test } from 'vitest';
import { gjkDistance } from '../../shared-math/clearance/gjk.ts';
import {
  bodiesOf,
  type Clearances,
  leastClearances,
  pairsOf,
  underNeeds,
} from '../../shared-math/clearance/index.ts';
import { moveBodies, type Track } from '../../shared-math/clearance/motion.ts';
import { segmentToRing, segmentToRingAtLeast } from '../../shared-math/clearance/ring.ts';
import { segmentToSegment } from '../../shared-math/clearance/segments.ts';
import { BOX, RING, SEGMENT, SHAPE_SIZE, type ShapeKind, SOLID } from '../../shared-math/clearance/shapes.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { type Layout, readLayout } from '../../shared-math/layout/index.ts';
import { carryPoint, createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, LOCATIONS, layoutOf, rawLayout, SIDE_STEER } from '../support/layouts.ts';

const points = new Float64Array(6);

function shape(...numbers: number[]): Float64Array {
  const data = new Float64Array(SHAPE_SIZE);
  data.set(numbers);
  return data;
}

const between = () => Math.hypot(points[0]! - points[3]!, points[1]! - points[4]!, points[2]! - points[5]!);

/** Distance by the general method, whatever the kinds; its two points are as far apart as it says. */
function general(kindA: ShapeKind, a: Float64Array, kindB: ShapeKind, b: Float64Array): number {
  const distance = gjkDistance(kindA, a, 0, kindB, b, 0, points);
  expectClose(between(), distance, 1e-6, 'its points');
  return distance;
}

const coordinate = (size: number) => fc.double({ min: -size, max: size, noNaN: true });
const place = (size: number) => fc.tuple(coordinate(size), coordinate(size), coordinate(size));
const size = fc.double({ min: 0.5, max: 60, noNaN: true });
const direction = place(1)
  .filter((d) => Math.hypot(...d) > 0.1)
  .map((d): Point => {
    const length = Math.hypot(...d);
    return [d[0] / length, d[1] / length, d[2] / length];
  });

const upright = (c: readonly number[], h: readonly number[]) =>
  shape(...c, h[0]!, 0, 0, 0, h[1]!, 0, 0, 0, h[2]!);

/** Three directions square to one another, from one and an angle about it. */
function triad(axis: Point, angle: number): [Point, Point, Point] {
  const other: Point = Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const cross = (a: Point, b: Point): Point => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  const raw = cross(axis, other);
  const long = Math.hypot(...raw);
  const u: Point = [raw[0] / long, raw[1] / long, raw[2] / long];
  const v = cross(axis, u);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const mix = (i: 0 | 1 | 2) => [c * u[i] + s * v[i], c * v[i] - s * u[i]] as const;
  const [x, y, z] = [mix(0), mix(1), mix(2)];
  return [axis, [x[0], y[0], z[0]], [x[1], y[1], z[1]]];
}

const RUNS = { seed: 4417, numRuns: 400 };

describe('distances of convex bodies in closed form', () => {
  test('segments: crossing, parallel, end to end, a point', () => {
    const cases: [number[], number[], number][] = [
      [[-5, 0, 0, 5, 0, 0], [0, -3, 4, 0, 3, 4], 4],
      [[0, 0, 0, 10, 0, 0], [2, 3, 4, 8, 3, 4], 5],
      [[0, 0, 0, 10, 0, 0], [13, 4, 0, 20, 4, 0], 5],
      [[0, 0, 0, 1, 0, 0], [4, 0, 0, 9, 0, 0], 3],
      [[2, 2, 2, 2, 2, 2], [2, 2, 9, 2, 2, 9], 7],
      [[0, 0, 0, 10, 10, 0], [10, 0, 0, 0, 10, 0], 0],
      // Nearly parallel: the lines meet far away, the segments do not.
      [[0, 0, 0, 1000, 0, 0], [0, 1, 0, 1000, 1 + 1e-7, 0], 1],
    ];
    for (const [a, b, expected] of cases) {
      expectClose(segmentToSegment(shape(...a), 0, shape(...b), 0, points), expected, 1e-9);
      expectClose(between(), expected, 1e-9, 'points');
      expectClose(general(SEGMENT, shape(...a), SEGMENT, shape(...b)), expected, 1e-6);
    }
  });

  test('segments: the closed form is the general method, parallel or not', () => {
    fc.assert(
      fc.property(
        place(100),
        place(100),
        place(100),
        place(100),
        fc.integer({ min: 0, max: 12 }),
        (p, q, r, s, n) => {
          const a = shape(...p, ...q);
          // From fully skew to parallel within rounding.
          const lean = 10 ** -n;
          const end = r.map((value, i) => value + (q[i]! - p[i]!) * 0.8 + lean * s[i]!);
          const b = shape(...r, ...end);
          expectClose(segmentToSegment(a, 0, b, 0, points), general(SEGMENT, a, SEGMENT, b), 2e-7);
        },
      ),
      RUNS,
    );
  });

  test('a ball and a box; two boxes square to the axes; a ball and a cylinder', () => {
    fc.assert(
      fc.property(
        place(120),
        place(60),
        fc.tuple(size, size, size),
        fc.tuple(size, size, size),
        (p, c, h, g) => {
          const off = (i: number, more: number) => Math.max(Math.abs(p[i]! - c[i]!) - h[i]! - more, 0);
          const ball = shape(...p, ...p);
          expectClose(
            general(SEGMENT, ball, BOX, upright(c, h)),
            Math.hypot(off(0, 0), off(1, 0), off(2, 0)),
            1e-6,
          );
          expectClose(
            general(BOX, upright(p, g), BOX, upright(c, h)),
            Math.hypot(off(0, g[0]), off(1, g[1]), off(2, g[2])),
            1e-6,
          );
        },
      ),
      RUNS,
    );
    fc.assert(
      fc.property(place(150), place(40), direction, size, size, (p, c, axis, half, radius) => {
        const d = p.map((value, i) => value - c[i]!);
        const h = d[0]! * axis[0] + d[1]! * axis[1] + d[2]! * axis[2];
        const r = Math.sqrt(Math.max(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2 - h * h, 0));
        const expected = Math.hypot(Math.max(Math.abs(h) - half, 0), Math.max(r - radius, 0));
        const cylinder = shape(...c, ...axis, half, radius);
        expectClose(general(SEGMENT, shape(...p, ...p), SOLID, cylinder), expected, 1e-6);
        expectClose(general(SOLID, cylinder, SEGMENT, shape(...p, ...p)), expected, 1e-6);
      }),
      RUNS,
    );
  });

  test('looking straight along a cylinder, and from its axis', () => {
    const cylinder = shape(0, 0, 0, 0, 0, 1, 10, 30);
    expectClose(general(SEGMENT, shape(0, 0, 50, 0, 0, 50), SOLID, cylinder), 40, 1e-6);
    expectClose(general(SEGMENT, shape(5, 0, 50, -5, 0, 50), SOLID, cylinder), 40, 1e-6);
    expectClose(general(SOLID, shape(0, 0, 100, 0, 0, 1, 10, 5), SOLID, cylinder), 80, 1e-6);
    expectClose(general(SOLID, shape(100, 0, 0, 0, 1, 0, 10, 5), SOLID, cylinder), 65, 1e-6);
  });

  test('bodies that meet are 0 apart, and the point told is in both', () => {
    fc.assert(
      fc.property(place(20), place(20), fc.tuple(size, size, size), (p, q, h) => {
        // A segment through a point of the box's inside.
        const inside = h.map((value, i) => value * 0.9 * Math.sin(p[i]!));
        const from = p.map((value, i) => inside[i]! + 5 * value);
        const to = p.map((value, i) => inside[i]! - 5 * value);
        const box = upright(q, h);
        const distance = gjkDistance(
          SEGMENT,
          shape(...from.map((value, i) => value + q[i]!), ...to.map((value, i) => value + q[i]!)),
          0,
          BOX,
          box,
          0,
          points,
        );
        expect(distance).toBe(0);
        expectClose(between(), 0, 1e-5, 'one point');
        for (let i = 0; i < 3; i += 1) expect(Math.abs(points[i]! - q[i]!)).toBeLessThan(h[i]! + 1e-6);
      }),
      RUNS,
    );
  });
});

describe('distances against others', () => {
  test('upright prisms are as far apart as their plans are by the physics engine', () => {
    const input = new DistanceInput();
    input.useRadii = false;
    const [cache, output] = [new SimplexCache(), new DistanceOutput()];
    const plan = fc.tuple(coordinate(9), coordinate(9), fc.double({ min: -3, max: 3, noNaN: true }));
    const half = fc.tuple(
      fc.double({ min: 0.3, max: 3, noNaN: true }),
      fc.double({ min: 0.3, max: 3, noNaN: true }),
    );
    let apart = 0;
    fc.assert(
      fc.property(plan, plan, half, half, ([ax, ay, at], [bx, by, bt], [aw, ah], [bw, bh]) => {
        input.proxyA.set(new Box(aw, ah), 0);
        input.proxyB.set(new Box(bw, bh), 0);
        input.transformA.set(Transform.identity());
        input.transformA.set(new Vec2(ax, ay), at);
        input.transformB.set(new Vec2(bx, by), bt);
        cache.count = 0;
        Distance(output, cache, input);
        const prism = (x: number, y: number, turn: number, w: number, h: number, z: number) => {
          const [c, s] = [Math.cos(turn), Math.sin(turn)];
          return shape(x, y, z, w * c, w * s, 0, -h * s, h * c, 0, 0, 0, 4);
        };
        const ours = general(BOX, prism(ax, ay, at, aw, ah, 0), BOX, prism(bx, by, bt, bw, bh, 1.5));
        if (output.distance > 0.01) apart += 1;
        expectClose(ours, output.distance, 1e-6, 'distance in plan');
      }),
      RUNS,
    );
    expect(apart).toBeGreaterThan(80);
  });

  /** Distance of a point from a box with square edges. */
  function fromBox(
    p: readonly number[],
    c: readonly number[],
    edges: readonly Point[],
    h: readonly number[],
  ): number {
    const d = p.map((value, i) => value - c[i]!);
    return Math.hypot(
      ...edges.map((e, k) => Math.max(Math.abs(d[0]! * e[0] + d[1]! * e[1] + d[2]! * e[2]) - h[k]!, 0)),
    );
  }

  test('capsules and turned boxes: dense sampling along the capsule never finds less, nor much more', () => {
    fc.assert(
      fc.property(
        place(120),
        place(120),
        place(40),
        fc.tuple(size, size, size),
        direction,
        fc.double({ min: 0, max: 6, noNaN: true }),
        (p, q, c, h, axis, turn) => {
          const edges = triad(axis, turn);
          const box = shape(...c, ...edges.flatMap((e, k) => e.map((value) => value * h[k]!)));
          const distance = general(SEGMENT, shape(...p, ...q), BOX, box);
          const step = Math.hypot(...p.map((value, i) => q[i]! - value)) / 4000;
          let least = Number.POSITIVE_INFINITY;
          for (let i = 0; i <= 4000; i += 1)
            least = Math.min(
              least,
              fromBox(
                p.map((value, k) => value + (i / 4000) * (q[k]! - value)),
                c,
                edges,
                h,
              ),
            );
          expect(distance).toBeLessThanOrEqual(least + 1e-6);
          expect(distance).toBeGreaterThanOrEqual(least - step - 1e-9);
        },
      ),
      { seed: 91, numRuns: 60 },
    );
  });

  test('cylinders and boxes: dense sampling of the box never finds less, nor much more', () => {
    fc.assert(
      fc.property(
        place(150),
        direction,
        size,
        size,
        place(30),
        fc.tuple(size, size, size),
        (c, axis, half, radius, m, h) => {
          const distance = general(SOLID, shape(...c, ...axis, half, radius), BOX, upright(m, h));
          const n = 24;
          let least = Number.POSITIVE_INFINITY;
          for (let i = 0; i <= n; i += 1)
            for (let j = 0; j <= n; j += 1)
              for (let k = 0; k <= n; k += 1) {
                const d = [i, j, k].map((at, x) => m[x]! + h[x]! * ((2 * at) / n - 1) - c[x]!);
                const along = d[0]! * axis[0] + d[1]! * axis[1] + d[2]! * axis[2];
                const off = Math.sqrt(Math.max(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2 - along * along, 0));
                least = Math.min(
                  least,
                  Math.hypot(Math.max(Math.abs(along) - half, 0), Math.max(off - radius, 0)),
                );
              }
          expect(distance).toBeLessThanOrEqual(least + 1e-6);
          expect(distance).toBeGreaterThanOrEqual(least - Math.hypot(...h) / n - 1e-9);
        },
      ),
      { seed: 92, numRuns: 40 },
    );
  });

  test('a segment and a ring: dense sampling along the segment never finds less, nor more than a step', () => {
    let bore = 0;
    fc.assert(
      fc.property(
        place(90),
        place(90),
        direction,
        fc.double({ min: 2, max: 40, noNaN: true }),
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        (p, q, axis, half, inner, wall) => {
          const ring = shape(3, -2, 5, ...axis, half, inner + wall, inner);
          const segment = shape(...p, ...q);
          const distance = segmentToRing(segment, 0, ring, 0, points);
          expectClose(between(), distance, 1e-6, 'its points');
          let least = Number.POSITIVE_INFINITY;
          for (let i = 0; i <= 6000; i += 1) {
            const d = [3, -2, 5].map((c, k) => p[k]! + (i / 6000) * (q[k]! - p[k]!) - c);
            const along = d[0]! * axis[0] + d[1]! * axis[1] + d[2]! * axis[2];
            const off = Math.sqrt(Math.max(d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2 - along * along, 0));
            const gap = Math.hypot(
              Math.max(Math.abs(along) - half, 0),
              Math.max(off - inner - wall, inner - off, 0),
            );
            least = Math.min(least, gap);
          }
          const solid = gjkDistance(SEGMENT, segment, 0, SOLID, ring, 0, points);
          expect(distance).toBeGreaterThanOrEqual(solid - 1e-6);
          if (distance > solid + 1) bore += 1;
          expect(distance).toBeLessThanOrEqual(least + 1e-6);
          expect(distance).toBeGreaterThanOrEqual(
            least - Math.hypot(...p.map((value, i) => q[i]! - value)) / 6000 - 1e-9,
          );
        },
      ),
      { seed: 93, numRuns: 150 },
    );
    expect(bore).toBeGreaterThan(10);
  });

  test('the quick bound of a segment and a ring is never more than their distance, and near it far away', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -400, max: 400, noNaN: true }), { minLength: 6, maxLength: 6 }),
        fc.double({ min: 10, max: 120, noNaN: true }),
        fc.double({ min: 20, max: 350, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        (ends, half, outer, bore, lean) => {
          const segment = Float64Array.from(ends);
          const axis = [Math.sin(lean), 0, Math.cos(lean)];
          const ring = Float64Array.from([5, -3, 8, ...axis, half, outer, bore * outer]);
          const exact = segmentToRing(segment, 0, ring, 0, new Float64Array(6));
          const bound = segmentToRingAtLeast(segment, 0, ring, 0);
          expect(bound).toBeGreaterThanOrEqual(0);
          expect(bound).toBeLessThanOrEqual(exact + 1e-6);
          // What a sixth of the way along can hide.
          const length = Math.hypot(...[0, 1, 2].map((i) => ends[i + 3]! - ends[i]!));
          expect(bound).toBeGreaterThanOrEqual(exact - (2 * length) / 6 - 1e-6);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('a segment on the axis of a ring keeps the bore’s radius from it', () => {
    const ring = shape(0, 0, 0, 0, 1, 0, 40, 100, 60);
    expectClose(segmentToRing(shape(0, -90, 0, 0, 90, 0), 0, ring, 0, points), 60, 1e-9);
    expectClose(between(), 60, 1e-9);
    expectClose(segmentToRing(shape(0, 0, 0, 0, 0, 0), 0, ring, 0, points), 60, 1e-9);
    expectClose(segmentToRing(shape(30, 70, 0, -30, 70, 0), 0, ring, 0, points), Math.hypot(30, 30), 1e-6);
  });
});

const OBSTACLES = [
  {
    name: 'Engine block',
    role: 'engine',
    kind: 'box',
    centre: [-420, 0, 640],
    size: [620, 320, 420],
    mirrored: false,
  },
  {
    name: 'Sump',
    role: 'sump',
    kind: 'box',
    centre: [-430, 30, 390],
    size: [480, 220, 130],
    turn: 7,
    mirrored: false,
  },
  {
    name: 'Header',
    role: 'header',
    kind: 'cylinder',
    from: [-300, 240, 560],
    to: [-900, 330, 340],
    radius: 24,
    mirrored: true,
  },
  {
    name: 'Pipe',
    role: 'header',
    kind: 'capsule',
    from: [-100, 560, 640],
    to: [-500, 590, 560],
    radius: 30,
    mirrored: false,
  },
];
const RAIL = {
  name: 'Frame rail',
  path: [
    [430, 330, 430],
    [-240, 345, 430],
    [-560, 380, 398],
    [-2300, 470, 398],
  ],
  height: 100,
  width: 50,
  mirrored: true,
};
const FULL = { rails: [RAIL], obstacles: OBSTACLES, travel: { bump: 60, rebound: 75, roll: 3 } };

function locksOf(layout: Layout) {
  const turn = sweepTurn(prepareFrontEnd(layout), 0, 0, 2);
  return { right: turn.right.handwheel, left: turn.left.handwheel };
}

const told = ({ pairs }: Clearances, a: string, b: string) =>
  pairs.find((pair) => pair.a === a && pair.b === b);

describe('least clearances over travel and turn', () => {
  const cases = {
    'hairpins, side steer': { ...FULL, steering: { ...SIDE_STEER, stopAngle: 30 } },
    'four bars, cross steer, tube': {
      ...FULL,
      axle: { ...(rawLayout()['axle'] as object), beam: 'tube' },
      location: LOCATIONS['four-bar'],
      lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 316, 370] },
      steering: CROSS_STEER,
    },
    'leaves, cross steer': { ...FULL, location: LOCATIONS['parallel-leaf'], steering: CROSS_STEER },
    'wishbone, side steer': { ...FULL, location: LOCATIONS.wishbone, steering: SIDE_STEER },
  };

  test.each(Object.entries(cases))('no pose is left out, and no pair: %s', (_, over) => {
    const layout = layoutOf(over);
    const frontEnd = prepareFrontEnd(layout);
    const locks = locksOf(layout);
    const [heaves, turns, within] = [9, 11, 200];
    const found = leastClearances(frontEnd, locks, { heaves, turns, within });
    const bodies = bodiesOf(layout);
    const pairs = pairsOf(bodies);
    expect(found.judged).toBe(pairs.length);
    const motion = moveBodies(frontEnd, bodies, locks, heaves, turns);
    expect(found.poses).toBe(motion.grid.poses);
    const apart = (a: Track, b: Track, pose: number): number => {
      const [atA, atB] = [(a.rowOf[pose] as number) * a.stride, (b.rowOf[pose] as number) * b.stride];
      const core =
        a.kind === SEGMENT && b.kind === RING
          ? segmentToRing(a.data, atA, b.data, atB, points)
          : a.kind === RING && b.kind === SEGMENT
            ? segmentToRing(b.data, atB, a.data, atA, points)
            : gjkDistance(a.kind, a.data, atA, b.kind, b.data, atB, points);
      return core - a.radius - b.radius;
    };
    let near = 0;
    for (const { a, b } of pairs) {
      let least = Number.POSITIVE_INFINITY;
      for (const first of motion.tracks[bodies.indexOf(a)]!)
        for (const second of motion.tracks[bodies.indexOf(b)]!)
          for (let pose = 0; pose < motion.grid.poses; pose += 1)
            least = Math.min(least, apart(first, second, pose));
      const pair = told(found, a.id, b.id);
      if (least < within) {
        near += 1;
        expectClose(pair!.distance, least, 1e-6, `${a.id}, ${b.id}`);
      } else expect(pair).toBeUndefined();
    }
    expect(near).toBe(found.pairs.length);
    expect(near).toBeGreaterThan(20);
    // Nearest first.
    const distances = found.pairs.map(({ distance }) => distance);
    expect(distances).toEqual([...distances].sort((one, other) => one - other));
  });

  test('where it happens: put there, the two points are that far apart and lie on the two bodies', () => {
    const layout = layoutOf(cases['four bars, cross steer, tube']);
    const frontEnd = prepareFrontEnd(layout);
    const found = leastClearances(frontEnd, locksOf(layout), { heaves: 9, turns: 11 });
    const state = createState();
    const bodies = new Map(bodiesOf(layout).map((body) => [body.id, body]));
    let checked = 0;
    for (const { a, b, distance, at, onA, onB } of found.pairs) {
      expect(solveFrontEnd(frontEnd, at.heave, at.roll, at.handwheel, state)).toBe('ok');
      if (distance > 0)
        expectClose(Math.hypot(onA[0] - onB[0], onA[1] - onB[1], onA[2] - onB[2]), distance, 1e-6);
      for (const [id, point] of [
        [a, onA],
        [b, onB],
      ] as const) {
        const off = bodies.get(id)!.parts.flatMap((part) => {
          if (part.kind !== SEGMENT) return [];
          const segment = new Float64Array(SHAPE_SIZE);
          carryPoint(frontEnd, state, part.from.carrier, part.from.at, segment, 0);
          carryPoint(frontEnd, state, part.to.carrier, part.to.at, segment, 3);
          return [segmentToSegment(segment, 0, shape(...point, ...point), 0, points) - part.radius];
        });
        if (off.length === 0 || distance <= 0) continue;
        checked += 1;
        expectClose(Math.min(...off.map(Math.abs)), 0, 1e-6, `${id} in ${a}, ${b}`);
      }
    }
    expect(checked).toBeGreaterThan(60);
  });

  test('a rod beside a tube, standing still: what a ruler says', () => {
    // The drag link runs along x at y 484 and z 395; a tube above it, square to it, 60 mm from middle to middle.
    const layout = layoutOf({
      steering: {
        ...SIDE_STEER,
        box: { ...SIDE_STEER.box, pitmanBall: [-800, 484, 395], sectorCentre: [-800, 484, 535] },
      },
      travel: { bump: 0, rebound: 0, roll: 0 },
      diameters: { dragLink: 30 },
      obstacles: [
        {
          name: 'Tube',
          role: 'other',
          kind: 'capsule',
          from: [-400, 300, 455],
          to: [-400, 600, 455],
          radius: 12,
          mirrored: false,
        },
        {
          name: 'Bar',
          role: 'other',
          kind: 'box',
          centre: [-500, 484, 300],
          size: [20, 20, 100],
          turn: 45,
          mirrored: false,
        },
        {
          name: 'Drum',
          role: 'other',
          kind: 'cylinder',
          from: [-600, 484, 440],
          to: [-600, 484, 500],
          radius: 50,
          mirrored: false,
        },
      ],
    });
    const still = { right: 0, left: 0 };
    const found = leastClearances(prepareFrontEnd(layout), still, { heaves: 1, turns: 1 });
    expect(found.poses).toBe(1);
    expectClose(told(found, 'drag-link', 'obstacle-0')!.distance, 60 - 12 - 15, 1e-6);
    expectClose(told(found, 'drag-link', 'obstacle-1')!.distance, 395 - 350 - 15, 1e-6);
    expectClose(told(found, 'drag-link', 'obstacle-2')!.distance, 440 - 395 - 15, 1e-6);
    expect(told(found, 'drag-link', 'obstacle-0')!.onA).toEqual([-400, 484, 410]);
  });

  test('a mirrored obstacle is as near on its side as the drawn one on its own', () => {
    const layout = layoutOf({
      ...FULL,
      location: LOCATIONS['four-bar'],
      obstacles: [
        {
          name: 'Pipe',
          role: 'header',
          kind: 'box',
          centre: [-300, 300, 520],
          size: [200, 60, 80],
          turn: 30,
          mirrored: true,
        },
      ],
      rails: [],
    });
    const found = leastClearances(prepareFrontEnd(layout), { right: 0, left: 0 }, { heaves: 11, turns: 1 });
    const [left, right] = [
      told(found, 'bar-upper-left', 'obstacle-0')!,
      told(found, 'bar-upper-right', 'obstacle-0-mirrored')!,
    ];
    expectClose(left.distance, right.distance, 1e-6);
    expectClose(left.onA[1], -right.onA[1], 1e-5);
  });

  test('a tyre turned at lock comes nearer: by the wheel’s own geometry', () => {
    // Upright kingpin through the wheel's middle line, no toe or camber: the tyre turns about z in its place.
    const half = {
      kingpinTop: [0, 640, 400],
      kingpinBottom: [0, 640, 260],
      wheelCentre: [0, 700, 330],
      camber: 0,
      toeIn: 0,
      tieRodBall: [-150, 600, 330],
    };
    const layout = layoutOf({
      axle: { beam: 'tube', left: half, right: 'mirror' },
      steering: { ...SIDE_STEER, dragLinkBall: [0, 490, 395], stopAngle: 28 },
      travel: { bump: 0, rebound: 0, roll: 0 },
      obstacles: [
        // A wall beside the tyre, far below everything else that turns.
        {
          name: 'Wall',
          role: 'other',
          kind: 'box',
          centre: [0, 400, 330],
          size: [3000, 100, 20],
          mirrored: false,
        },
      ],
    });
    const frontEnd = prepareFrontEnd(layout);
    const locks = locksOf(layout);
    const state = createState();
    const found = leastClearances(frontEnd, locks, { heaves: 1, turns: 41 });
    const pair = told(found, 'tyre-left', 'obstacle-0')!;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 40; i += 1) {
      solveFrontEnd(frontEnd, 0, 0, locks.right + (i / 40) * (locks.left - locks.right), state);
      const turn = Math.abs(state.left.steer);
      const inward = state.left.steer;
      // Middle on a circle of 60 about the kingpin; from it half the width square to the wheel, and its radius along it.
      const middle = 640 + 60 * Math.cos(inward);
      least = Math.min(least, middle - 75 * Math.cos(turn) - 330 * Math.sin(turn) - 450);
    }
    expectClose(pair.distance, least, 1e-5);
    expect(pair.limit).toBe('tyre');
    expect(Math.abs(pair.at.handwheel)).toBe(Math.max(Math.abs(locks.right), Math.abs(locks.left)));
  });
});

describe('the pairs that are judged', () => {
  const ids = (over: Record<string, unknown>) =>
    pairsOf(bodiesOf(layoutOf({ ...FULL, ...over }))).map(({ a, b }) => `${a.id} ${b.id}`);

  test('not what is joined by design, nor what never moves to one another', () => {
    const found = ids({ lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 316, 370] } });
    for (const joined of [
      'drag-link pitman-arm',
      'drag-link steering-arm',
      'tie-rod tie-rod-arm-left',
      'pitman-arm box',
      'steering-arm tie-rod-arm-left',
      'tyre-left beam',
      'beam lateral-bar',
      'beam hairpin-left',
      'hairpin-left hairpin-right',
      'rail-0 obstacle-0',
      'box rail-0',
      // The hairpin and the bar are bolted to the rail beside their frame end.
      'hairpin-left rail-0',
      'lateral-bar rail-0',
    ]) {
      expect(found).not.toContain(joined);
      expect(found).not.toContain(joined.split(' ').reverse().join(' '));
    }
    for (const judged of [
      'drag-link tyre-left',
      'drag-link hairpin-left',
      'drag-link rail-0',
      'tie-rod beam',
      'pitman-arm rail-0',
      'tyre-left rail-0',
      'beam rail-0',
      'lateral-bar rail-0-mirrored',
      'hairpin-left rail-0-mirrored',
      'lateral-bar hairpin-left',
      'tyre-left hairpin-left',
      'drag-link obstacle-2-mirrored',
    ])
      expect(found).toContain(judged);
    expect(new Set(found).size).toBe(found.length);
  });

  test('a link whose frame end stands on a crossmember is bolted to it, and to no other', () => {
    const member = (z: number, role: string) => ({
      lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 316, 370] },
      obstacles: [
        {
          name: 'Member',
          role,
          kind: 'cylinder',
          from: [-72, -380, z],
          to: [-72, 380, z],
          radius: 25,
          mirrored: false,
        },
      ],
    });
    expect(ids(member(440, 'crossmember'))).not.toContain('lateral-bar obstacle-0');
    expect(ids(member(440, 'other'))).toContain('lateral-bar obstacle-0');
    expect(ids(member(700, 'crossmember'))).toContain('lateral-bar obstacle-0');
  });

  test('tyres keep an inch, but from the links that turn with them', () => {
    const pairs = pairsOf(bodiesOf(layoutOf(FULL)));
    const limit = (a: string, b: string) => pairs.find((pair) => pair.a.id === a && pair.b.id === b)?.limit;
    expect(limit('tyre-left', 'rail-0')).toBe('tyre');
    expect(limit('tyre-left', 'hairpin-left')).toBe('tyre');
    expect(limit('drag-link', 'tyre-left')).toBe('moving');
    expect(limit('drag-link', 'tyre-right')).toBe('tyre');
    expect(limit('tie-rod', 'tyre-right')).toBe('moving');
    expect(limit('drag-link', 'rail-0')).toBe('moving');
  });
});

describe('needs', () => {
  test('the worst of several pairs is told, and plenty is plenty', () => {
    const layout = layoutOf(FULL);
    const frontEnd = prepareFrontEnd(layout);
    const locks = { right: -3, left: 3 };
    const fineness = { heaves: 9, turns: 7 };
    const { pairs } = leastClearances(frontEnd, locks, fineness);
    const needs = pairs.slice(2, 20).map(({ a, b, distance }, i) => ({ a, b, least: distance - 5 - i }));
    expectClose(underNeeds(frontEnd, locks, needs, fineness), 5, 1e-6);
    expectClose(
      underNeeds(frontEnd, locks, [{ ...needs[3]!, least: needs[3]!.least + 20 }, ...needs], fineness),
      -12,
      1e-6,
    );
    expect(underNeeds(frontEnd, locks, [], fineness)).toBe(100);
  });
});

describe('obstacles in the document', () => {
  const refusal = (over: Record<string, unknown>) => {
    const read = readLayout(rawLayout(over));
    return read.ok ? '' : `${read.failure.path}: ${read.failure.reason}`;
  };
  const box = OBSTACLES[0]!;
  const tube = OBSTACLES[3]!;

  test('are taken as they are', () => {
    expect(refusal(FULL)).toBe('');
    expect(refusal({ diameters: { dragLink: 25.4, rods: 22 } })).toBe('');
  });

  test.each([
    [{ obstacles: [{ ...box, size: [0, 10, 10] }] }, 'obstacles[0].size[0]: must be more than 0, found 0'],
    [{ obstacles: [{ ...box, size: [10, 10] }] }, /^obstacles\[0\]\.size/],
    [{ obstacles: [{ ...box, turn: 400 }] }, 'obstacles[0].turn: must be at most 180, found 400'],
    [{ obstacles: [{ ...box, colour: 1 }] }, 'obstacles[0]: unknown key "colour"'],
    [{ obstacles: [{ ...box, kind: 'cone' }] }, /^obstacles\[0\].*not a known kind|expected/],
    [{ obstacles: [{ ...box, role: 'wall' }] }, /^obstacles\[0\]\.role: expected "engine" or/],
    [{ obstacles: [{ ...tube, radius: -1 }] }, 'obstacles[0].radius: must be more than 0, found -1'],
    [{ obstacles: [{ ...tube, name: ' ' }] }, 'obstacles[0].name: must not be empty'],
    [
      { obstacles: [box, { ...tube, to: tube.from }] },
      'obstacles[1].to: on the same spot as from: the capsule has no length',
    ],
    [
      { rails: [{ ...RAIL, path: [RAIL.path[0], RAIL.path[0]] }] },
      'rails[0].path[1]: on the same spot as the point before it: the rail has no length there',
    ],
    [{ diameters: { dragLink: 0 } }, 'diameters.dragLink: must be more than 0, found 0'],
  ])('%j is refused plainly', (over, line) => {
    if (typeof line === 'string') expect(refusal(over)).toBe(line);
    else expect(refusal(over)).toMatch(line);
  });

  test('a stated diameter is the one that is judged', () => {
    const gap = (diameter: number) =>
      told(
        leastClearances(
          prepareFrontEnd(layoutOf({ ...FULL, diameters: { tieRod: diameter } })),
          { right: 0, left: 0 },
          { heaves: 5, turns: 1 },
        ),
        'tie-rod',
        'obstacle-0',
      )!.distance;
    expectClose(gap(20) - gap(32), 6, 1e-6);
  });

  test('degrees are degrees: a turned box stands as it is said', () => {
    const layout = layoutOf({ obstacles: [{ ...box, size: [100, 20, 20], turn: 90 }] });
    const part = bodiesOf(layout).find(({ id }) => id === 'obstacle-0')!.parts[0]!;
    if (part.kind !== BOX) throw new Error('no box');
    expectClose(part.numbers[3]!, 50 * Math.cos(90 * DEGREE), 1e-9);
    expectClose(part.numbers[4]!, 50, 1e-9);
  });
});
