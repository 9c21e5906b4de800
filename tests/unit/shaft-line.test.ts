import { describe, expect, test } from 'vitest';
import type { ShaftDocument } from '../../shared-math/layout/index.ts';
import { lag, placeYokes, prepareChain, turnsOf } from '../../shared-math/shaft/chain.ts';
import {
  boxHandwheel,
  evenColumnYoke,
  outputOf,
  ratioOf,
  routeOf,
  turningOf,
} from '../../shared-math/shaft/index.ts';
import { shaftLine, TO_SPIDER } from '../../shared-math/shaft/line.ts';
import { halfTurn } from '../../shared-math/shaft/motion.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { shaftOf } from '../support/shafts.ts';

type Vector = readonly [number, number, number];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const between = (a: Vector, b: Vector): Vector => [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
const unit = (a: Vector): Vector => a.map((v) => v / Math.hypot(...a)) as unknown as Vector;

const COLUMN: Vector = [2, 0, -1];
const BOX: Vector = [1, 0.3, 0];
const CENTRES: readonly Vector[] = [
  [-1350, 330, 740],
  [-1150, 380, 600],
  [-1000, 452, 486],
];
/** A double joint between two single ones, clocked differently on both sides. */
const mixed = (kinds: readonly ('single' | 'double')[] = ['single', 'double', 'single']) =>
  shaftOf({
    column: { end: [-1390, 330, 760], axis: COLUMN },
    box: { end: [-960, 464, 486], axis: BOX },
    joints: kinds.map((kind, i) => ({ kind, centre: CENTRES[i] })),
    shafts: [{ clock: 35 }, { clock: -20 }],
  });

/** A yoke's ears are square to the shaft that holds them, and a spider's two pairs square to each other. */
function expectBuilt(shaft: ShaftDocument): ReturnType<typeof shaftLine> {
  const line = shaftLine(shaft);
  expect(line.members).toHaveLength(line.pins.length + 1);
  for (const [i, { driving, driven }] of line.pins.entries()) {
    expectClose(Math.hypot(...driving), 1, 1e-12, 'driving');
    expectClose(Math.hypot(...driven), 1, 1e-12, 'driven');
    expectClose(dot(driving, line.members[i]!.direction), 0, 1e-9, 'driving ears on their shaft');
    expectClose(dot(driven, line.members[i + 1]!.direction), 0, 1e-9, 'driven ears on their shaft');
    expectClose(dot(driving, driven), 0, 1e-9, 'spider');
  }
  return line;
}

describe('a shaft spider by spider', () => {
  const line = expectBuilt(mixed());
  const directions = [COLUMN, between(CENTRES[0]!, CENTRES[1]!), between(CENTRES[1]!, CENTRES[2]!), BOX].map(
    unit,
  );

  test('a double joint is two spiders, 19 mm from its centre along each shaft, and a coupling', () => {
    expect(TO_SPIDER).toBe(19);
    expect(line.pins.map(({ joint }) => joint)).toEqual([0, 1, 1, 2]);
    const along = (way: Vector, by: number) => CENTRES[1]!.map((v, i) => v + by * way[i]!);
    const wanted = [CENTRES[0]!, along(directions[1]!, -19), along(directions[2]!, 19), CENTRES[2]!];
    for (const [i, { centre }] of line.pins.entries())
      for (const k of [0, 1, 2]) expectClose(centre[k]!, wanted[i]![k]!, 1e-9, `spider ${i}`);
    expect(line.members.map(({ kind, index }) => `${kind} ${index}`)).toEqual([
      'column 0',
      'shaft 0',
      'coupling 1',
      'shaft 1',
      'box 0',
    ]);
  });
  test('every piece lies on its axis', () => {
    const at = (i: number) => line.pins[i]!.centre;
    const ways = [COLUMN, between(at(0), at(1)), between(at(1), at(2)), between(at(2), at(3)), BOX].map(unit);
    for (const [i, { origin, direction }] of line.members.entries()) {
      for (const k of [0, 1, 2]) expectClose(direction[k]!, ways[i]![k]!, 1e-12, `direction ${i}`);
      expect(origin).toEqual(at(Math.max(i - 1, 0)));
    }
  });
  test('each shaft is clocked as drawn, and the ears of the coupling lie in one plane', () => {
    for (const [i, clock] of [
      [0, 35],
      [1, 0],
      [2, -20],
    ] as const) {
      const [a, b] = [line.pins[i]!.driven, line.pins[i + 1]!.driving];
      const turned = Math.atan2(dot(cross(a, b), line.members[i + 1]!.direction), dot(a, b));
      // Ears are alike after half a turn.
      expectClose(Math.sin(turned - clock * DEGREE), 0, 1e-9, `member ${i + 1}`);
    }
    expect([...line.turning!.clocks].map((clock) => Math.round(clock / DEGREE))).toEqual([35, 0, -20]);
  });
  test('a column yoke that is given stands where it is put', () => {
    expect(shaftLine(mixed(), 0.4).turning!.columnYoke).toBe(0.4);
    const normal = unit(cross(line.members[0]!.direction, line.members[1]!.direction));
    const ears = shaftLine(mixed(), 0.4).pins[0]!.driving;
    const angle = Math.atan2(dot(cross(normal, ears), line.members[0]!.direction), dot(normal, ears));
    expectClose(angle, 0.4, 1e-9, 'from the normal of the first bend, right-hand about the column');
  });
  test('one that is not given turns the box slowest straight ahead, left and right alike', () => {
    const { chain, clocks, columnYoke } = line.turning!;
    const out = new Float64Array(chain.count + 1);
    const box = (input: number) => {
      turnsOf(chain, clocks, columnYoke, input, out);
      return out[chain.count]!;
    };
    for (const input of [0.2, 0.9, 2]) expectClose(box(input), -box(-input), 1e-9, `input ${input}`);
    const rate = (input: number) => (box(input + 0.01) - box(input - 0.01)) / 0.02;
    for (const input of [0.5, 1.2, Math.PI / 2]) expect(rate(0)).toBeLessThan(rate(input));
  });
  test('no joint at all kinds of ends: one joint, and one double joint', () => {
    for (const kind of ['single', 'double'] as const) {
      const alone = expectBuilt(
        shaftOf({
          column: { end: [-1390, 330, 760], axis: COLUMN },
          box: { end: [-1300, 330, 740], axis: BOX },
          joints: [{ kind, centre: CENTRES[0] }],
          shafts: [],
        }),
      );
      expect(alone.members.map((member) => `${member.kind} ${member.index}`)).toEqual(
        kind === 'single' ? ['column 0', 'box 0'] : ['column 0', 'coupling 0', 'box 0'],
      );
    }
  });
});

describe('a chain that cannot turn', () => {
  /** Bent in the car's plane y = 0 from a level column by so many degrees, by one joint. */
  const bent = (degrees: number, kind: 'single' | 'double' = 'single') =>
    shaftOf({
      column: { end: [-1390, 330, 760], axis: [1, 0, 0] },
      box: { end: [-1300, 330, 700], axis: [Math.cos(degrees * DEGREE), 0, -Math.sin(degrees * DEGREE)] },
      joints: [{ kind, centre: [-1350, 330, 760] }],
      shafts: [],
    });
  const chainOf = (shaft: ShaftDocument) => prepareChain(routeOf(shaft));

  test('a single joint at a right angle is locked, one short of it turns; a double one only folded back', () => {
    expect(chainOf(bent(89.9)).ok).toBe(true);
    for (const degrees of [90, 120])
      expect(chainOf(bent(degrees))).toMatchObject({ ok: false, failure: { joint: 0 } });
    for (const degrees of [90, 120, 179]) expect(chainOf(bent(degrees, 'double')).ok).toBe(true);
    expect(chainOf(bent(180, 'double'))).toMatchObject({ ok: false, failure: { joint: 0 } });
  });
  test('it is drawn all the same, and does not turn', () => {
    for (const degrees of [90, 120]) {
      const line = shaftLine(bent(degrees));
      expect(line.turning).toBeUndefined();
      // Both shafts lie in y = 0: the ears that are square to both point along y.
      expectClose(Math.abs(line.pins[0]!.driving[1]), 1, 1e-12, 'driving');
      expectBuilt(bent(degrees));
    }
    expectBuilt(mixed(['double', 'single', 'double']));
    // From ahead to the left: both lie in the plane of the road, and the ears stand upright.
    const flat = shaftLine(
      shaftOf({
        column: { end: [-1390, 330, 760], axis: [1, 0, 0] },
        box: { end: [-1350, 400, 760], axis: [0, 1, 0] },
        joints: [{ kind: 'single', centre: [-1350, 330, 760] }],
        shafts: [],
      }),
    );
    expectClose(Math.abs(flat.pins[0]!.driving[2]), 1, 1e-12, 'upright');
    // Folded right back, there is no bend to be square to: any ears that are square to the shaft.
    for (const axis of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0.3, 0.94, 0.1],
    ]) {
      const line = shaftLine(
        shaftOf({
          column: { end: [-1390, 330, 760], axis },
          box: { end: [-1300, 330, 700], axis: axis.map((v) => -v) },
          joints: [{ kind: 'single', centre: [-1350, 330, 760] }],
          shafts: [],
        }),
      );
      const { driving, driven } = line.pins[0]!;
      for (const ears of [driving, driven]) {
        expectClose(Math.hypot(...ears), 1, 1e-9, 'length');
        expectClose(dot(ears, unit(axis as unknown as Vector)), 0, 1e-9, 'square to the shaft');
      }
      expectClose(dot(driving, driven), 0, 1e-9, 'spider');
    }
  });
  test('a straight joint turns evenly, whichever way the shaft runs', () => {
    for (const axis of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, -1],
      [0.1, 0.95, 0.2],
      [0.4, -0.89, 0.2],
    ]) {
      const line = expectBuilt(
        shaftOf({
          column: { end: [-1390, 330, 760], axis },
          box: { end: [-1300, 330, 700], axis },
          joints: [{ kind: 'single', centre: [-1350, 330, 760] }],
          shafts: [],
        }),
      );
      expect([...line.turning!.chain.cosines]).toEqual([1]);
      expect([...line.turning!.chain.bends]).toEqual([0]);
    }
  });
});

describe('the turning of one joint, by the handbook', () => {
  // tan(driven) = tan(driving) cos b, from ears that lie in the plane square to the bend (Mechanical Engineer's Data
  // Handbook, sec. 2.4.3).
  test.each([0.05, 0.4, 0.9])('bend %s rad', (bend) => {
    const cosine = Math.cos(bend);
    for (let angle = -3.1; angle < 3.2; angle += 0.1) {
      const driven = angle - lag(cosine, angle);
      expectClose(Math.sin(driven) * Math.cos(angle), cosine * Math.sin(angle) * Math.cos(driven), 1e-12);
      expect(Math.abs(lag(cosine, angle))).toBeLessThan(bend);
    }
    expect(lag(cosine, 0)).toBe(0);
    expect(lag(cosine, 0.3)).toBeGreaterThan(0);
  });
});

test('every piece turns from 0 at input 0, as its ears are carried; the last as the box', () => {
  const shaft = mixed(['single', 'single', 'single']);
  const turning = turningOf(shaft, routeOf(shaft));
  if (!turning.ok) throw new Error('it turns');
  const { chain, clocks, motion } = turning.value;
  const [yoke, out] = [0.3, new Float64Array(chain.count + 1)];
  turnsOf(chain, clocks, yoke, 0, out);
  expect([...out]).toEqual([0, 0, 0, 0]);
  const ears = (input: number) => {
    const drawn = new Float64Array(6 * chain.count);
    placeYokes(chain, clocks, yoke, input, drawn);
    return (at: number): Vector => [drawn[at]!, drawn[at + 1]!, drawn[at + 2]!];
  };
  const before = ears(0);
  for (const input of [-2.5, -0.4, 0.7, 1.9, 3]) {
    turnsOf(chain, clocks, yoke, input, out);
    expect(out[0]).toBe(input);
    expectClose(out[3]!, outputOf(motion, yoke, input), 1e-9, 'box');
    const after = ears(input);
    for (let piece = 1; piece <= 3; piece += 1) {
      const at = 6 * (piece - 1) + 3;
      const turned = Math.atan2(
        dot(cross(before(at), after(at)), chain.directions[piece]!),
        dot(before(at), after(at)),
      );
      expectClose(Math.sin((turned - out[piece]!) / 2), 0, 1e-9, `piece ${piece}`);
    }
    expectClose(boxHandwheel(motion, yoke, input), -outputOf(motion, yoke, -input), 1e-15);
    expect(ratioOf(motion, evenColumnYoke(motion, 'slowest'), 0)).toBeCloseTo(motion.min, 12);
    expect(ratioOf(motion, evenColumnYoke(motion, 'quickest'), 0)).toBeCloseTo(motion.max, 12);
  }
});

test.each([
  [0, 0],
  [3, 3 - Math.PI],
  [-3, Math.PI - 3],
  [Math.PI / 2, Math.PI / 2],
  [-Math.PI / 2, Math.PI / 2],
  [-Math.PI / 2 + 1e-13, Math.PI / 2],
  [-Math.PI / 2 + 1e-9, -Math.PI / 2 + 1e-9],
  [-1.5, -1.5],
  [9 * Math.PI + 0.25, 0.25],
])('ears at %s are the same at %s, within half a turn', (angle, same) => {
  expectClose(halfTurn(angle), same, 1e-11);
});
