import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  decimalsOf,
  nextRange,
  type Range,
  STEER_LADDER,
  TOE_LADDERS,
  ticksOf,
} from '../../../src-renderer/curves/ranges.ts';
import { CASTER_LADDER } from '../../../src-renderer/places/layout/travel/travel-data.ts';

const LADDERS = [STEER_LADDER, CASTER_LADDER, TOE_LADDERS.in, TOE_LADDERS.mm];

describe('the height of a plot', () => {
  test('never zooms to noise: steer shows at least a quarter of a degree each way', () => {
    const range = nextRange(undefined, [1e-9, -1e-9], 0, STEER_LADDER, true);
    expect(range.rung.half).toBe(0.25);
  });

  test('always holds the whole curve, as far as the ladder goes', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -85, max: 85, noNaN: true }), { minLength: 1 }),
        fc.boolean(),
        (values, settled) => {
          const before = nextRange(undefined, [0.1], 0, STEER_LADDER, true);
          const range = nextRange(before, values, 0, STEER_LADDER, settled);
          for (const value of values) expect(Math.abs(value)).toBeLessThanOrEqual(range.rung.half);
        },
      ),
    );
  });

  test('grows at once and shrinks only when nothing is dragged any more', () => {
    const start = nextRange(undefined, [0.2], 0, STEER_LADDER, true);
    const grown = nextRange(start, [2.5], 0, STEER_LADDER, false);
    expect(grown.rung.half).toBe(3);
    const held = nextRange(grown, [0.1], 0, STEER_LADDER, false);
    expect(held).toBe(grown);
    expect(nextRange(held, [0.1], 0, STEER_LADDER, true).rung.half).toBe(0.25);
  });

  test('keeps its middle during a drag too', () => {
    const start = nextRange(undefined, [6], 6, CASTER_LADDER, true);
    const dragged = nextRange(start, [8.5], 9, CASTER_LADDER, false);
    expect(dragged.middle).toBe(6);
    expect(nextRange(dragged, [8.5], 9, CASTER_LADDER, true).middle).toBe(9);
  });

  test('passes over rows that are out of reach', () => {
    expect(nextRange(undefined, [null, 0.1, null], 0, STEER_LADDER, true).rung.half).toBe(0.25);
    expect(nextRange(undefined, [null], 0, STEER_LADDER, true).rung.half).toBe(0.25);
  });
});

describe('ticks', () => {
  test.each(LADDERS.map((ladder, i) => [i, ladder] as const))(
    'of ladder %i stand inside, told apart by their figures',
    (_, ladder) => {
      for (const rung of ladder)
        for (const middle of [0, 6]) {
          const range: Range = { middle, rung };
          const ticks = ticksOf(range);
          expect(ticks.length).toBeGreaterThanOrEqual(2);
          expect(ticks.length).toBeLessThanOrEqual(6);
          const figures = ticks.map((tick) => tick.toFixed(decimalsOf(range)));
          expect(new Set(figures).size).toBe(ticks.length);
          ticks.forEach((tick, i) => {
            expect(Math.abs(tick - middle)).toBeLessThan(rung.half);
            expect(Number(figures[i])).toBeCloseTo(tick, 9);
          });
        }
    },
  );

  test('ladders climb', () => {
    for (const ladder of LADDERS) {
      const halves = ladder.map(({ half }) => half);
      expect(halves).toEqual([...halves].sort((a, b) => a - b));
    }
  });
});
