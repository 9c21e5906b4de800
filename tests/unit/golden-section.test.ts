import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createSection, goldenSection } from '../../shared-math/solve/golden-section.ts';

describe('the golden section', () => {
  test('finds the least of a valley wherever it stands, to the length asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.constantFrom(1, 1.3, 2, 4),
        (least, power) => {
          const { low, high } = goldenSection((x) => Math.abs(x - least) ** power, -50, 50, 1e-3);
          expect(high - low).toBeLessThanOrEqual(1e-3);
          // Differences of a value below its own rounding are seen no more: the fourth power is flat about its least.
          const slack = power === 4 ? 1e-2 : 1e-6;
          expect(low).toBeLessThanOrEqual(least + slack);
          expect(high).toBeGreaterThanOrEqual(least - slack);
        },
      ),
    );
  });

  test('asks one value a step, each step 0.618 of the one before', () => {
    let asked = 0;
    const count = (x: number) => {
      asked += 1;
      return (x - 0.3) ** 2;
    };
    goldenSection(count, 0, 1, 1e-4);
    // 0.6180339887^n <= 1e-4 from n = 20 on; two values to begin with.
    expect(asked).toBe(22);
  });

  test('the places inside come with their values, in the object that was given', () => {
    const into = createSection();
    const square = (x: number) => (x - 2) ** 2;
    expect(goldenSection(square, 0, 5, 0.1, into)).toBe(into);
    expect(into.atLeft).toBe(square(into.left));
    expect(into.atRight).toBe(square(into.right));
    expect(into.low < into.left && into.left < into.right && into.right < into.high).toBe(true);
  });

  test('a valley at an end is closed in at that end', () => {
    expect(goldenSection((x) => x, 0, 1, 1e-6).low).toBe(0);
    expect(goldenSection((x) => -x, 0, 1, 1e-6).high).toBe(1);
  });
});
