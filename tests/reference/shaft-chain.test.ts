import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLayout, type ShaftDocument } from '../../shared-math/layout/index.ts';
import {
  boxHandwheel,
  evenColumnYoke,
  outputOf,
  placeYokes,
  ratioOf,
  routeOf,
  type Turning,
  turningOf,
} from '../../shared-math/shaft/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { rawLayout } from '../support/layouts.ts';
import { measured, outputs, type VectorChain } from '../support/vector-chain.ts';

type Vector = [number, number, number];

// Outside check: the chain composed directly from vectors (tests/support/vector-chain.ts), where each spider keeps its
// two yoke axes square; nothing is shared with the closed form that is tested.

interface Bend {
  readonly kind: 'single' | 'double';
  readonly y: number;
  readonly z: number;
  readonly clock: number;
}

/** A shaft from slopes of its pieces, taken in as a document is; and the same for the vector model. */
function shaftOf(bends: readonly Bend[], start: { y: number; z: number } = { y: 0, z: 0 }) {
  const directions: Vector[] = [[1, start.y, start.z], ...bends.map(({ y, z }) => [1, y, z] as Vector)];
  const joints: { kind: 'single' | 'double'; centre: Vector }[] = [];
  for (const [i, { kind }] of bends.entries()) {
    const from = joints.at(-1)?.centre;
    const d = directions[i]!;
    joints.push({
      kind,
      centre: from ? (from.map((v, k) => v + 260 * d[k]!) as Vector) : [-1200, 320, 760],
    });
  }
  const outcome = readLayout(
    rawLayout({
      shaft: {
        column: { end: [-1260, 320, 760], axis: directions[0] },
        box: { end: [0, 320, 760], axis: directions.at(-1) },
        joints,
        shafts: bends.slice(0, -1).map(({ clock }) => ({ clock })),
        supports: [],
      },
    }),
  );
  if (!outcome.ok) throw new Error(`${outcome.failure.path}: ${outcome.failure.reason}`);
  const shaft = outcome.value.shaft as ShaftDocument;
  const vectors: VectorChain = {
    directions,
    kinds: bends.map(({ kind }) => kind),
    clocks: bends.slice(0, -1).map(({ clock }) => clock * DEGREE),
  };
  return { shaft, vectors };
}

function turned(shaft: ShaftDocument): Turning {
  const outcome = turningOf(shaft, routeOf(shaft));
  if (!outcome.ok) throw new Error(`joint ${outcome.failure.joint} is locked`);
  return outcome.value;
}

const slope = fc.double({ min: -0.55, max: 0.55, noNaN: true });
const bend = fc.record({
  kind: fc.constantFrom('single' as const, 'single' as const, 'double' as const),
  y: slope,
  z: slope,
  clock: fc.double({ min: -89.9, max: 90, noNaN: true }),
});
const chains = (most: number) => fc.array(bend, { minLength: 1, maxLength: most });

describe('a chain turns as its vectors do', () => {
  test('swing, least and greatest ratio of any chain of up to five joints', () => {
    fc.assert(
      fc.property(chains(5), fc.record({ y: slope, z: slope }), (bends, start) => {
        const { shaft, vectors } = shaftOf(bends, start);
        const { motion } = turned(shaft);
        const seen = measured(vectors, 720);
        // Sampling every half degree misses the very peak by a little; never overshoots it.
        const tolerance = 1e-4 * (1 + motion.max - motion.min);
        expectClose(seen.swing, motion.swing, tolerance, 'swing');
        expectClose(seen.min, motion.min, 4 * tolerance, 'least ratio');
        expectClose(seen.max, motion.max, 4 * tolerance * motion.max, 'greatest ratio');
        expect(seen.swing).toBeLessThanOrEqual(motion.swing + 1e-9);
      }),
      { seed: 620, numRuns: 150 },
    );
  });

  test('output for every input: the same curve, from the same start', () => {
    fc.assert(
      fc.property(chains(4), (bends) => {
        const { shaft, vectors } = shaftOf(bends);
        const { chain, motion, clocks } = turned(shaft);
        // On a column along x the vector model starts with its ears along -y.
        const [reference, start] = [chain.references[0]!, [0, -1, 0]];
        const dot = (a: readonly number[], b: readonly number[]) =>
          a.reduce((sum, value, i) => sum + value * b[i]!, 0);
        const across = [0, -reference[2], reference[1]];
        const columnYoke = Math.atan2(dot(start, across), dot(start, reference));
        const list = outputs(vectors, 48);
        for (let i = 0; i <= 48; i += 1) {
          const input = (i / 48) * 2 * Math.PI;
          expectClose(outputOf(motion, columnYoke, input), list[i]!, 1e-9, `input ${i}`);
        }
        // Its slope is the ratio.
        const step = 1e-5;
        const rate =
          (outputOf(motion, columnYoke, 1 + step) - outputOf(motion, columnYoke, 1 - step)) / (2 * step);
        expectClose(ratioOf(motion, columnYoke, 1), rate, 1e-8, 'ratio');
        expect(clocks).toHaveLength(bends.length - 1);
      }),
      { seed: 621, numRuns: 80 },
    );
  });

  test('drawn yokes: ears square to their shafts, square across each spider, at the clock along each shaft', () => {
    fc.assert(
      fc.property(chains(4), fc.double({ min: -7, max: 7, noNaN: true }), (bends, input) => {
        const { shaft } = shaftOf(bends);
        const { chain, clocks } = turned(shaft);
        const out = new Float64Array(6 * chain.count);
        placeYokes(chain, clocks, 0.3, input, out);
        const ears = (i: number) => [...out.subarray(3 * i, 3 * i + 3)] as Vector;
        const dot = (a: readonly number[], b: readonly number[]) =>
          a.reduce((sum, value, i) => sum + value * b[i]!, 0);
        const cross = (a: Vector, b: readonly number[]): Vector => [
          a[1] * b[2]! - a[2] * b[1]!,
          a[2] * b[0]! - a[0] * b[2]!,
          a[0] * b[1]! - a[1] * b[0]!,
        ];
        for (let joint = 0; joint < chain.count; joint += 1) {
          const [driving, driven] = [ears(2 * joint), ears(2 * joint + 1)];
          expectClose(dot(driving, chain.directions[joint]!), 0, 1e-12, 'square to its shaft');
          expectClose(dot(driven, chain.directions[joint + 1]!), 0, 1e-12, 'square to its shaft');
          expectClose(Math.hypot(...driven), 1, 1e-12, 'length');
          if (bends[joint]!.kind === 'single') expectClose(dot(driving, driven), 0, 1e-12, 'spider');
          if (joint + 1 < chain.count) {
            const next = ears(2 * joint + 2);
            const clock = Math.atan2(
              dot(cross(driven, next), chain.directions[joint + 1]!),
              dot(driven, next),
            );
            expectClose(Math.sin(clock - bends[joint]!.clock * DEGREE), 0, 1e-12, 'clock');
          }
        }
      }),
      { seed: 622, numRuns: 80 },
    );
  });

  test('an even column yoke makes left and right turns alike, slow or quick straight ahead', () => {
    const { shaft } = shaftOf([
      { kind: 'single', y: 0.4, z: 0.1, clock: 30 },
      { kind: 'single', y: 0.1, z: -0.4, clock: 0 },
    ]);
    const { motion } = turned(shaft);
    for (const [way, ratio] of [
      ['slowest', motion.min],
      ['quickest', motion.max],
    ] as const) {
      const yoke = evenColumnYoke(motion, way);
      expectClose(ratioOf(motion, yoke, 0), ratio, 1e-12, way);
      for (const input of [0.2, 1, 2.5, 6])
        expectClose(outputOf(motion, yoke, input), -outputOf(motion, yoke, -input), 1e-12, 'alike');
      // The steering counts both handwheels counter-clockwise for the driver: left-hand about the column.
      const quarter = yoke + 0.4;
      expectClose(boxHandwheel(motion, quarter, 0.7), -outputOf(motion, quarter, -0.7), 1e-15, 'handwheel');
      expect(Math.abs(boxHandwheel(motion, quarter, 0.7) - outputOf(motion, quarter, 0.7))).toBeGreaterThan(
        1e-3,
      );
      expectClose(outputOf(motion, yoke, 4 * Math.PI), 4 * Math.PI, 1e-12, 'two turns are two turns');
    }
  });
});

describe('the best clocking', () => {
  const swingBy = (vectors: VectorChain, clocks: readonly number[], count = 180) =>
    measured({ ...vectors, clocks }, count).swing;

  test('no search over vector chains finds less', () => {
    fc.assert(
      fc.property(chains(4), fc.record({ y: slope, z: slope }), (bends, start) => {
        const { shaft, vectors } = shaftOf(bends, start);
        const { bestClocks, best } = turned(shaft);
        const told = [...bestClocks];
        expectClose(swingBy(vectors, told, 720), best.swing, 1e-4, 'swing as told');
        // Coordinate search from several starts, over the slow model alone.
        let least = Number.POSITIVE_INFINITY;
        for (const begin of [
          told.map(() => 0),
          told.map(() => 0.8),
          told.map((_, i) => (i % 2 ? -0.6 : 0.6)),
        ]) {
          const at = [...begin];
          let value = swingBy(vectors, at);
          for (let step = 0.6; step > 0.004; step /= 2)
            for (let i = 0; i < at.length; i += 1)
              for (const way of [-step, step]) {
                const moved = at.map((clock, k) => (k === i ? clock + way : clock));
                const other = swingBy(vectors, moved);
                if (other < value) {
                  value = other;
                  at.splice(0, at.length, ...moved);
                }
              }
          least = Math.min(least, value);
        }
        expect(best.swing).toBeLessThanOrEqual(least + 1e-4);
        for (const clock of told) {
          expect(clock).toBeGreaterThan(-Math.PI / 2);
          expect(clock).toBeLessThanOrEqual(Math.PI / 2);
        }
      }),
      { seed: 623, numRuns: 40 },
    );
  });

  test('three joints none of which outweighs the others run evenly; one too large leaves its surplus', () => {
    const even = shaftOf([
      { kind: 'single', y: 0.3, z: 0.1, clock: 0 },
      { kind: 'single', y: 0.05, z: -0.3, clock: 0 },
      { kind: 'single', y: -0.2, z: 0.05, clock: 0 },
    ]);
    expectClose(turned(even.shaft).best.swing, 0, 1e-9);
    expectClose(measured({ ...even.vectors, clocks: [...turned(even.shaft).bestClocks] }).swing, 0, 1e-9);

    // 40° against 10° and 10° in one plane: what is left is acos(cos 40 / cos² 10), as one joint alone.
    const angle = (degrees: number) => Math.tan(degrees * DEGREE);
    const uneven = shaftOf([
      { kind: 'single', y: angle(40), z: 0, clock: 0 },
      { kind: 'single', y: angle(30), z: 0, clock: 0 },
      { kind: 'single', y: angle(20), z: 0, clock: 0 },
    ]);
    const { best } = turned(uneven.shaft);
    expectClose(
      best.equivalentAngle,
      Math.acos(Math.cos(40 * DEGREE) / Math.cos(10 * DEGREE) ** 2),
      1e-9,
      'left over',
    );
  });

  test('a double joint asks for no clocking, and does not spoil that of its neighbours', () => {
    const { shaft, vectors } = shaftOf([
      { kind: 'single', y: 0.35, z: 0, clock: 0 },
      { kind: 'double', y: 0.35, z: 0.9, clock: 0 },
      { kind: 'single', y: 0, z: 0.9, clock: 0 },
    ]);
    const { best, bestClocks } = turned(shaft);
    expect(bestClocks[1]).toBe(0);
    // The double turns evenly, so what is left is the difference of the two single joints alone.
    const [first, , last] = routeOf(shaft).joints.map(({ angle }) => Math.cos(angle)) as Vector;
    expectClose(best.min, Math.min(first / last, last / first), 1e-12);
    expectClose(measured({ ...vectors, clocks: [...bestClocks] }).swing, best.swing, 1e-4);
    const alone = turned(shaftOf([{ kind: 'double', y: 0.35, z: 0.9, clock: 0 }]).shaft);
    expect(alone.bestClocks).toHaveLength(0);
    expectClose(alone.motion.swing, 0, 1e-12);
  });

  test('straight joints and single joints alone: every clocking is the same, and 0 is told', () => {
    const { shaft } = shaftOf([
      { kind: 'single', y: 0, z: 0, clock: 33 },
      { kind: 'single', y: 0.3, z: 0, clock: -20 },
      { kind: 'single', y: 0.3, z: 0, clock: 0 },
    ]);
    const { bestClocks, motion, best } = turned(shaft);
    expect([...bestClocks]).toEqual([0, 0]);
    expectClose(motion.swing, best.swing, 1e-12);
  });
});

describe('a joint folded too far', () => {
  test.each([
    ['single', -0.001, 1],
    ['single', -1, 0],
  ] as const)('a %s joint at a right angle or beyond is locked: said, not NaN', (kind, x, y) => {
    const raw = rawLayout({
      shaft: {
        column: { end: [-1300, 0, 700], axis: [1, 0, 0] },
        box: { end: [-1100, 300, 700], axis: [x, y, 0.01] },
        joints: [{ kind, centre: [-1200, 0, 700] }],
        shafts: [],
        supports: [],
      },
    });
    const outcome = readLayout(raw);
    if (!outcome.ok) throw new Error(outcome.failure.reason);
    const route = routeOf(outcome.value.shaft!);
    expect(turningOf(outcome.value.shaft!, route)).toEqual({ ok: false, failure: { joint: 0 } });
    expect(route.joints[0]!.angle).toBeGreaterThan(Math.PI / 2);
  });

  test('just below a right angle it still has a finite motion', () => {
    const { shaft } = shaftOf([{ kind: 'single', y: Math.tan(89.9 * DEGREE), z: 0, clock: 0 }]);
    const { motion } = turned(shaft);
    expect(Number.isFinite(motion.max)).toBe(true);
    expectClose(motion.min, Math.cos(89.9 * DEGREE), 1e-12);
  });
});
