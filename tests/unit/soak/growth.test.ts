import { describe, expect, test } from 'vitest';
import { judgeGrowth, type Reading, trend } from '../../soak/growth.ts';
import { lottery } from '../../soak/plan.ts';

const TOLERANCE = { absolute: 3, share: 0.1 };

/** Readings of one life of a thing, every ten acts. */
const life = (number: number, count: number, value: (at: number) => number): Reading[] =>
  Array.from({ length: count }, (_, index) => ({ life: number, at: index * 10, value: value(index * 10) }));

function noise(seed: number, by: number): () => number {
  const next = lottery(seed);
  return () => by * (2 * next() - 1);
}

describe('whether a figure grows', () => {
  test('a leak under noise larger than its steps is found, in a hundred lots', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const jitter = noise(seed, 4);
      const leaking = life(1, 40, (at) => 50 + 0.08 * at + jitter());
      expect(judgeGrowth(leaking, TOLERANCE).outcome, `seed ${seed}`).toBe('grows');
    }
  });

  test('a flat figure under the same noise is not called growing, in a hundred lots', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const jitter = noise(seed, 4);
      expect(
        judgeGrowth(
          life(1, 40, () => 50 + jitter()),
          TOLERANCE,
        ).outcome,
        `seed ${seed}`,
      ).toBe('steady');
    }
  });

  test('what only warms up is steady: caches that fill in the first quarter', () => {
    const warming = life(1, 40, (at) => 50 + 30 * Math.min(1, at / 90));
    expect(judgeGrowth(warming, TOLERANCE).outcome).toBe('steady');
  });

  test('single outliers, however high, are no growth', () => {
    const spiked = life(1, 40, (at) => (at === 200 || at === 390 ? 5000 : 50));
    expect(judgeGrowth(spiked, TOLERANCE).outcome).toBe('steady');
  });

  test('a steady trend within the tolerance is steady; a thousand acts and the rise are told', () => {
    const creeping = life(1, 40, (at) => 50 + 0.01 * at);
    const judged = judgeGrowth(creeping, TOLERANCE);
    expect(judged.outcome).toBe('steady');
    expect(judged.perThousand).toBeCloseTo(10, 9);
    expect(judged.z).toBeGreaterThan(5);
    expect(judged.rise).toBeLessThan(judged.allowed);
  });

  test('a leak shows over many short lives that each begin anew', () => {
    const lives = Array.from({ length: 8 }, (_, number) => life(number, 12, (at) => 50 + 0.2 * at)).flat();
    expect(judgeGrowth(lives, TOLERANCE).outcome).toBe('grows');
    // Each life higher than the one before, flat in itself: another page, not a leak of this one.
    const steps = Array.from({ length: 8 }, (_, number) => life(number, 12, () => 50 + 20 * number)).flat();
    expect(judgeGrowth(steps, TOLERANCE).outcome).toBe('steady');
  });

  test('a figure that falls is steady; too few readings are told as that, and not as steady', () => {
    expect(
      judgeGrowth(
        life(1, 40, (at) => 90 - 0.1 * at),
        TOLERANCE,
      ).outcome,
    ).toBe('steady');
    expect(
      judgeGrowth(
        life(1, 5, (at) => 50 + 9 * at),
        TOLERANCE,
      ).outcome,
    ).toBe('too few readings');
    expect(judgeGrowth([], TOLERANCE).outcome).toBe('too few readings');
  });
});

describe('the trend', () => {
  /** Every order of some values, by exchanging (B. R. Heap, 1963; from memory). */
  function* orders(values: number[], length = values.length): Generator<number[]> {
    if (length <= 1) {
      yield [...values];
      return;
    }
    for (let at = 0; at < length; at += 1) {
      yield* orders(values, length - 1);
      const other = length % 2 === 0 ? at : 0;
      [values[other], values[length - 1]] = [values[length - 1] as number, values[other] as number];
    }
  }

  test.each([[[1, 2, 3, 4, 5, 6]], [[1, 1, 2, 3, 3, 3]], [[2, 2, 2, 2, 2, 7]]])(
    'of %j in every order has the mean nought and the variance that is told',
    (values) => {
      const sums = [...orders([...values])].map((order) => trend(order).sum);
      expect(sums).toHaveLength(720);
      const mean = sums.reduce((total, sum) => total + sum, 0) / sums.length;
      const variance = sums.reduce((total, sum) => total + (sum - mean) ** 2, 0) / sums.length;
      expect(mean).toBeCloseTo(0, 12);
      expect(trend(values).variance).toBeCloseTo(variance, 9);
    },
  );
});
