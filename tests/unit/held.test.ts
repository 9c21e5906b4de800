import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { holdTravel, prepareMapKernel, withBallOf, worstAt } from '../../shared-math/aim/index.ts';
import {
  bodiesOf,
  type ClearanceNeed,
  leastClearances,
  NeedsOf,
  pairsOf,
} from '../../shared-math/clearance/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import {
  type Carrier,
  type LayoutDocument,
  parseLayout,
  readLayout,
  resolveLayout,
  steeringRefusal,
} from '../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  HeldPoses,
  MOTION_SIZE,
  poseAxle,
  prepareFrontEnd,
  prepareMoved,
  solveFrontEnd,
  steerAxle,
  writeMotion,
} from '../../shared-math/linkage/index.ts';
import { BumpWeigher } from '../../shared-math/propose/bump-weigher.ts';
import { nelderMead } from '../../shared-math/solve/nelder-mead.ts';
import { seededRandom } from '../../shared-math/solve/random.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { HoldChecker } from '../../shared-math/tune/hold-checker.ts';
import { contextOf } from '../../shared-math/tune/hold-context.ts';
import { violationOf } from '../../shared-math/tune/holds.ts';
import { FREEDOMS, freedomNamed } from '../../shared-math/tune/index.ts';
import { expectClose } from '../support/close.ts';
import { layoutOf, STEERED } from '../support/layouts.ts';

// What is kept from one moved layout to the next gives what is worked out from nothing for each.

const CARS = ['four-bar-cross-steer', 'hairpins-box-too-low', 'parallel-leaf-cross-steer'];

function demonstration(name: string): LayoutDocument {
  const text = readFileSync(resolve(import.meta.dirname, '../../projects', `${name}.json`), 'utf8');
  const read = parseLayout(text);
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
}

/** A document with everything moved that it has, by up to `reach` mm. */
function movedAtRandom(
  document: LayoutDocument,
  random: () => number,
  reach: number,
  axle: boolean,
): LayoutDocument {
  return FREEDOMS.filter((freedom) => freedom.absent(document) === undefined)
    .filter(({ movesAxle }) => axle || !movesAxle)
    .reduce((moved, freedom) => freedom.move(moved, reach * (2 * random() - 1)), document);
}

function locksOf(frontEnd: FrontEnd) {
  const turn = sweepTurn(frontEnd, 0, 0, 2);
  return { right: turn.right.handwheel, left: turn.left.handwheel };
}

const CARRIERS: Carrier[] = ['frame', 'pitman', 'axle-left', 'axle-right', 'spindle-left', 'spindle-right'];

test('a carrier’s motion puts points where each is carried by itself', () => {
  const random = seededRandom(31);
  const motion = new Float64Array(MOTION_SIZE);
  const expected = new Float64Array(3);
  for (const { over } of STEERED) {
    const frontEnd = prepareFrontEnd(layoutOf(over));
    const state = createState();
    for (const [heave, roll, handwheel] of [
      [0, 0, 0],
      [40, 0.03, 2],
      [-50, -0.02, -2.5],
    ] as const) {
      if (solveFrontEnd(frontEnd, heave, roll, handwheel, state) !== 'ok') continue;
      for (const carrier of CARRIERS) {
        const at: Point = [900 * (random() - 0.5), 900 * (random() - 0.5), 600 * random()];
        writeMotion(frontEnd, state, carrier, motion, 0);
        carryPoint(frontEnd, state, carrier, at, expected);
        for (let row = 0; row < 3; row += 1)
          expectClose(
            motion[3 * row]! * at[0] +
              motion[3 * row + 1]! * at[1] +
              motion[3 * row + 2]! * at[2] +
              motion[9 + row]!,
            expected[row]!,
            1e-9,
            `${carrier}, axis ${row}`,
          );
      }
    }
  }
});

describe.each(CARS)('%s, moved again and again', (name) => {
  const document = demonstration(name);
  const drawn = prepareFrontEnd(resolveLayout(document));

  test.each([false, true])(
    'front ends, held poses and kernels are those made from nothing; axle moved: %s',
    (axle) => {
      const random = seededRandom(axle ? 5 : 6);
      const poses = new HeldPoses();
      const fresh = createState();
      let kernel: ReturnType<typeof prepareMapKernel> | undefined;
      const held = holdTravel(drawn);
      for (let k = 0; k < 12; k += 1) {
        const layout = resolveLayout(movedAtRandom(document, random, 30, axle));
        const whole = prepareFrontEnd(layout);
        const moved = prepareMoved(drawn, layout, axle);
        expect({ ...moved, axle: { ...moved.axle, scratch: null } }).toEqual({
          ...whole,
          axle: { ...whole.axle, scratch: null },
        });
        for (const [heave, roll] of [
          [20, 0],
          [-30, 0.02],
          [0, 0],
        ] as const) {
          const state = poses.at(moved, heave, roll);
          expect(poseAxle(whole, heave, roll, fresh)).toBe(state !== undefined);
          if (!state) continue;
          expect(steerAxle(moved, 0.5, state)).toBe(steerAxle(whole, 0.5, fresh));
          expectClose(state.meanSteer, fresh.meanSteer, 1e-9, 'steer');
        }
        if (!axle) {
          const travel = { ...held, frontEnd: moved, ball: layout.steering.dragLinkBall };
          kernel = kernel ? withBallOf(kernel, travel) : prepareMapKernel(travel);
          const ball = layout.steering.box.pitmanBall;
          expectClose(
            worstAt(kernel, ball),
            worstAt(prepareMapKernel(holdTravel(whole)), ball),
            1e-9,
            'worst',
          );
        }
      }
    },
  );

  test('with another tie rod each time, front ends and bump steer are those made from nothing', () => {
    const random = seededRandom(8);
    const weigher = new BumpWeigher(true);
    let unlike = 0;
    let before: number | undefined;
    for (let k = 0; k < 8; k += 1) {
      const moved = movedAtRandom(document, random, 15, false);
      // The balls of both sides anywhere within an inch; every other time as they were.
      const by = k % 2 === 0 ? [0, 0, 0] : [0, 1, 2].map(() => 25.4 * (2 * random() - 1));
      const { left, right } = resolveLayout(moved).axle;
      const at = ({ tieRodBall }: typeof left, side: number) =>
        tieRodBall.map((value, i) => value + (i === 1 ? side : 1) * (by[i] as number)) as unknown as Point;
      const layout = resolveLayout({
        ...moved,
        axle: {
          ...moved.axle,
          left: { ...left, tieRodBall: at(left, 1) },
          right: { ...right, tieRodBall: at(right, -1) },
        },
      });
      const whole = prepareFrontEnd(layout);
      const held = prepareMoved(drawn, layout, false, true);
      expect(held.axle).toBe(drawn.axle);
      expect({ ...held, axle: null }).toEqual({ ...whole, axle: null });
      const worst = weigher.worst(held);
      expectClose(worst, new BumpWeigher(true).worst(whole), 1e-9, 'worst');
      if (before !== undefined && Math.abs(worst - before) > 1e-6) unlike += 1;
      before = worst;
    }
    expect(unlike).toBeGreaterThan(3);
  });

  test('what pairs have to spare is what all clearances say, however often the carrier is used again', () => {
    const random = seededRandom(9);
    const fineness = { heaves: 5, turns: 7 };
    const needs = pairsOf(bodiesOf(drawn.layout)).map(
      ({ a, b }): ClearanceNeed => ({ a: a.id, b: b.id, least: 40 * random() }),
    );
    const keeper = new NeedsOf(drawn.layout, needs, fineness);
    const poses = new HeldPoses();
    let under = 0;
    for (let k = 0; k < 10; k += 1) {
      const layout = resolveLayout(movedAtRandom(document, random, 25, k % 3 === 2));
      const frontEnd = prepareMoved(drawn, layout, k % 3 === 2);
      const locks = locksOf(frontEnd);
      const all = leastClearances(prepareFrontEnd(layout), locks, { ...fineness, within: 300 });
      const distances = new Map(all.pairs.map(({ a, b, distance }) => [`${a} ${b}`, distance]));
      const slack = Math.min(
        100,
        ...needs.map(({ a, b, least }) => (distances.get(`${a} ${b}`) ?? Number.POSITIVE_INFINITY) - least),
      );
      if (slack < 0) under += 1;
      expectClose(keeper.slack(frontEnd, locks, {}, poses), slack, 1e-6, 'slack');
      expectClose(keeper.slack(frontEnd, locks, { most: 0 }, poses), Math.min(slack, 0), 1e-6, 'missing');
      // With enough known: at least that it is under, and never less than the truth.
      const first = keeper.slack(frontEnd, locks, { most: 0, enough: 0 }, poses);
      expect(first < 0).toBe(slack < -1e-9);
      expect(first).toBeGreaterThanOrEqual(slack - 1e-6);
    }
    expect(under).toBeGreaterThan(0);
  });

  test('holds are missed by what their states say, up to where it is settled', () => {
    const random = seededRandom(14);
    const holds = {
      ratio: { least: 15, most: 20 },
      lock: { least: 30 },
      tilt: { most: 15 },
      clearance: { moving: 12, tyre: 25, strict: false },
    };
    const context = contextOf(drawn, holds, [movedAtRandom(document, random, 40, true)])!;
    const fineness = [...context.outOfReach.keys()][0]!;
    const checker = new HoldChecker(drawn, context, fineness);
    let broken = 0;
    for (let k = 0; k < 12; k += 1) {
      const layout = resolveLayout(movedAtRandom(document, random, 30, k % 4 === 3));
      const frontEnd = prepareMoved(drawn, layout, k % 4 === 3);
      const fresh = new HoldChecker(drawn, context, fineness);
      const expected = violationOf(fresh.states(prepareFrontEnd(layout)));
      expectClose(checker.missedBy(frontEnd, 0, Number.POSITIVE_INFINITY), expected, 1e-6, 'missed');
      if (expected > 0) broken += 1;
      for (const settledAt of [Number.MIN_VALUE, expected / 2, 2 * expected + 1]) {
        const missed = checker.missedBy(frontEnd, 0, settledAt);
        if (expected < settledAt) expectClose(missed, expected, 1e-6, 'below what settles');
        else expect(missed).toBeGreaterThanOrEqual(settledAt);
      }
      // Two millimetres more to keep are two millimetres more missed, of a pair that is missed already.
      expect(checker.missedBy(frontEnd, 2, Number.POSITIVE_INFINITY)).toBeGreaterThanOrEqual(expected - 1e-9);
    }
    expect(broken).toBeGreaterThan(0);
  });

  test('a moved layout is refused where the reader refuses its document', () => {
    const up = freedomNamed('box-up')!;
    const along = freedomNamed('arm-ball-along')!;
    const { sectorCentre, pitmanBall } = document.steering.box;
    const shortened = -Math.hypot(...pitmanBall.map((value, i) => value - sectorCentre[i]!));
    const [x, y, z] = document.steering.dragLinkBall;
    const onTheBall: Point = [x, y, z];
    const cases = [
      document,
      up.move(document, 40),
      up.move(document, 30_000),
      along.move(document, -25_000),
      freedomNamed('pitman-length')!.move(document, shortened),
      {
        ...document,
        steering: {
          ...document.steering,
          box: { ...document.steering.box, pitmanBall: onTheBall },
        },
      },
    ];
    const refused = cases.map((moved) => steeringRefusal(resolveLayout(moved)) !== undefined);
    expect(refused).toEqual(cases.map((moved) => !readLayout(moved).ok));
    expect(refused.filter(Boolean).length).toBeGreaterThanOrEqual(3);
  });
});

test('a simplex that is answered no more than it asks for goes the same way', () => {
  const valley = ([x, y]: readonly number[]) => (1 - x!) ** 2 + 100 * (y! - x! * x!) ** 2;
  const limits = { scale: [0.5, 0.5], tolerance: 1e-6, evaluations: 900 };
  let cut = 0;
  const whole = nelderMead(valley, [-1.2, 1], limits);
  const short = nelderMead(
    (x, enough) => {
      const value = valley(x);
      if (value < enough) return value;
      cut += 1;
      return enough + 7;
    },
    [-1.2, 1],
    limits,
  );
  expect(short).toEqual(whole);
  expect(cut).toBeGreaterThan(10);
});
