import { describe, expect, test } from 'vitest';
import { leafRate, rideParameters, springRateOf } from '../../shared-math/ride/index.ts';
import { expectClose } from '../support/close.ts';
import { LOCATIONS, layoutOf } from '../support/layouts.ts';

/** N/mm², spring steel, as handbooks of springs give it (from memory). */
const E = 206_000;

/**
 * Deflection of the end of a cantilever under a load there, mm: moment over E I integrated twice by Simpson's rule, the
 * bending of beams by Euler and Bernoulli (any text on strength of materials).
 */
function cantilever(load: number, length: number, secondMoment: (fromRoot: number) => number): number {
  const count = 20_000;
  let sum = 0;
  for (let i = 0; i <= count; i += 1) {
    const x = (length * i) / count;
    const lever = length - x;
    const weight = i === 0 || i === count ? 1 : i % 2 === 1 ? 4 : 2;
    const moment = secondMoment(x);
    // At the very tip of a triangle both lever² and width vanish.
    sum += weight * (moment > 0 ? (load * lever * lever) / (E * moment) : 0);
  }
  return (sum * length) / count / 3;
}

describe('a leaf spring', () => {
  const leaf = { length: 1000, width: 45, thickness: 6, leaves: 7 };
  const one = (leaf.width * leaf.thickness ** 3) / 12;

  test('of leaves cut to a triangle bends as the integrated beam', () => {
    const tip = cantilever(100, 500, (x) => 7 * one * (1 - x / 500));
    // 200 N at the seat put 100 N on each eye.
    expectClose(leafRate(leaf, 500, 500), 200 / tip, 0.001 * (200 / tip), 'rate');
    // Handbook: 8 E n b t³/(3 L³), half elliptic, from memory.
    expectClose(leafRate(leaf, 500, 500), (8 * E * 7 * 45 * 6 ** 3) / (3 * 1000 ** 3), 1e-9, 'handbook');
  });

  test('of leaves that all run the whole length bends as an even beam', () => {
    const tip = cantilever(100, 500, () => 7 * one);
    const full = { ...leaf, fullLeaves: 7 };
    expectClose(leafRate(full, 500, 500), 200 / tip, 1e-6, 'rate');
    // F l³/(3 E I), any text.
    expectClose(tip, (100 * 500 ** 3) / (3 * E * 7 * one), 1e-9 * tip, 'closed form');
  });

  test('with its seat out of the middle sinks as the two cantilevers and the lever between them say', () => {
    const [front, rear] = [420, 580];
    const load = 1000;
    const width = (length: number) => (x: number) => 7 * one * (1 - x / length);
    const atFront = cantilever((load * rear) / 1000, front, width(front));
    const atRear = cantilever((load * front) / 1000, rear, width(rear));
    const seat = (atFront * rear + atRear * front) / 1000;
    expectClose(leafRate(leaf, front, rear), load / seat, 0.001 * (load / seat), 'rate');
  });

  test('lies along the rail as the layout splits it, or across the car with half for each side', () => {
    const along = layoutOf({ location: LOCATIONS['parallel-leaf'] });
    const told = { kind: 'leaf', lie: 'along', ...leaf, length: 1090 } as const;
    expectClose(springRateOf(told, along), leafRate(leaf, 510, 580), 1e-9, 'along');
    const across = springRateOf({ kind: 'leaf', lie: 'across', ...leaf }, layoutOf());
    expectClose(across, 100 / cantilever(100, 500, (x) => 7 * one * (1 - x / 500)), 0.01, 'across, one side');
  });
});

test('a spring that was measured is as stiff as the load that settled it', () => {
  // 890 N (200 lb) over the axle that settle the frame an inch: 17.52 N/mm each side. Arithmetic.
  const layout = layoutOf({ ride: { spring: { kind: 'measured', load: 890, settles: 25.4 } } });
  const { value } = rideParameters(layout) as Extract<ReturnType<typeof rideParameters>, { ok: true }>;
  expectClose(value.parameters.springRate, 890 / 25.4 / 2, 1e-12, 'rate');
  expect(value.origin.springRate).toBe('worked-out');
});
