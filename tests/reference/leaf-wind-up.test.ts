import { describe, expect, test } from 'vitest';
import { brakeLoads, windUpStiffness } from '../../shared-math/brake/index.ts';
import { leafRate } from '../../shared-math/ride/index.ts';
import { type Beam, displacements } from '../support/beam-frame.ts';
import { expectClose } from '../support/close.ts';

// A leaf pack as a beam of finite elements (tests/support/beam-frame.ts), held as a car holds it, against the closed form.

/** N/mm², spring steel, as handbooks of springs give it (from memory). */
const E = 206_000;
const PACK = { width: 57, thickness: 6.4, leaves: 5, fullLeaves: 1 };
const ONE = (PACK.width * PACK.thickness ** 3) / 12;

const ELEMENTS = 160;

/**
 * A pack from its front eye (first node) over the seat to its rear eye (last node), halves in mm, eyes that far above the
 * seat on parabolas. `second`: second moment of area at a share of the half's length from the seat.
 */
function leaf(front: number, rear: number, rise: number, second: (share: number) => number): Beam {
  const nodes: [number, number][] = [];
  const bending: number[] = [];
  for (let i = -ELEMENTS; i <= ELEMENTS; i += 1) {
    const share = Math.abs(i) / ELEMENTS;
    nodes.push([i < 0 ? share * front : -share * rear, rise * share * share]);
    if (i < ELEMENTS) bending.push(E * second(Math.abs(i + 0.5) / ELEMENTS));
  }
  return { nodes, bending, stretch: bending.map(() => E * PACK.width * PACK.thickness * PACK.leaves) };
}

const SEAT = 3 * ELEMENTS;
const LAST = 3 * 2 * ELEMENTS;
/** Front eye pinned, rear eye on a long shackle: held up and down alone. */
const EYES = [0, 1, LAST + 1];

/** The turn of the seat that takes the kingpin's top ahead: x ahead and z up turn the other way about. */
const tipped = (found: readonly number[]) => -(found[SEAT + 2] as number);

const even = () => PACK.leaves * ONE;
const triangle = (share: number) => PACK.leaves * ONE * (1 - share);

describe('a clamped leaf wound up with its height held', () => {
  test.each([
    ['in the middle, even section', 545, 545, even],
    ['off the middle, even section', 519.5, 570.5, even],
    ['well off the middle, even section', 420, 670, even],
    ['in the middle, cut to a triangle', 545, 545, triangle],
    ['off the middle, cut to a triangle', 519.5, 570.5, triangle],
  ])('%s, is as stiff as the elements say', (_, front, rear, second) => {
    const beam = leaf(front, rear, 0, second);
    const rate = leafRate(
      { ...PACK, length: front + rear, fullLeaves: second === even ? 5 : 0 },
      front,
      rear,
    );
    // The rate by the elements too, since the closed form builds on it.
    const sunk = displacements(beam, new Map([[SEAT + 1, -1000]]), EYES);
    expectClose(1000 / -(sunk[SEAT + 1] as number), rate, 0.002 * rate, 'rate');
    const moment = 1e5;
    const wound = displacements(beam, new Map([[SEAT + 2, -moment]]), [...EYES, SEAT + 1]);
    const stiffness = windUpStiffness(rate, front, rear);
    // A triangle's tip has no section: the elements come within two thousandths of it.
    expectClose(moment / tipped(wound), stiffness, 0.002 * stiffness, 'stiffness');
  });

  test('is less stiff where its height is free and the halves are unlike, as the two equations say', () => {
    const [front, rear] = [420, 670];
    const beam = leaf(front, rear, 0, even);
    const wound = displacements(beam, new Map([[SEAT + 2, -1e5]]), EYES);
    const held = windUpStiffness(
      leafRate({ ...PACK, length: 1090, fullLeaves: 5 }, front, rear),
      front,
      rear,
    );
    // (1/b² - 1/a²)²/((1/a + 1/b)(1/a³ + 1/b³)) off: the docstring's equations with F = 0.
    const [a, b] = [1 / front, 1 / rear];
    const share = 1 - (b * b - a * a) ** 2 / ((a + b) * (a ** 3 + b ** 3));
    expectClose(1e5 / tipped(wound), held * share, 0.002 * held, 'stiffness, height free');
    expect(share).toBeLessThan(0.9);
  });

  test('an arch of a tenth of the half takes a third of its rise off the lever of a push at the seat', () => {
    const [front, rear, rise] = [519.5, 570.5, 50];
    const push = 2000;
    // The road's push back on the axle at the seat's height above the road, made of a force and a moment at the seat.
    const height = 330;
    const beam = leaf(front, rear, rise, triangle);
    const found = displacements(
      beam,
      new Map([
        [SEAT, -push],
        [SEAT + 2, -push * height],
      ]),
      [...EYES, SEAT + 1],
    );
    const stiffness = windUpStiffness(
      leafRate({ ...PACK, length: 1090, fullLeaves: 0 }, front, rear),
      front,
      rear,
    );
    expectClose(tipped(found), (push * (height - rise / 3)) / stiffness, 0.03 * tipped(found), 'angle');
  });
});

describe('loads under braking', () => {
  const car = { frontAxleLoad: 7600, frontShare: 0.52, gravityHeight: 540, wheelbase: 2950 };
  const weight = 7600 / 0.52;

  test('are those of the moments about each contact', () => {
    for (const grip of [0, 0.3, 0.55, 0.9]) {
      const { frontLoad, brakeForce, deceleration, rearLifts } = brakeLoads(car, grip);
      // About the rear contact: the weight behind the front axle by (1 - share) L, and the mass's push ahead at its height.
      const rearArm = 0.52 * 2950;
      expectClose(frontLoad * 2950, weight * rearArm + weight * grip * 540, 1e-6, 'about the rear contact');
      expectClose(brakeForce, grip * frontLoad, 1e-9, 'at the limit of grip');
      expect([deceleration, rearLifts]).toEqual([grip, false]);
    }
  });

  test('end where the rear wheels lift: the front then carries the car and no more', () => {
    const tall = { ...car, gravityHeight: 2000 };
    const { frontLoad, brakeForce, deceleration, rearLifts } = brakeLoads(tall, 0.9);
    expect(rearLifts).toBe(true);
    expectClose(frontLoad, weight, 1e-9, 'all of the weight');
    // About the front contact: the weight at (1 - share) L behind it against the push at 2000 mm.
    expectClose(deceleration * 2000, 0.48 * 2950, 1e-9, 'about the front contact');
    expectClose(brakeForce, deceleration * weight, 1e-9, 'force');
  });
});
