import { expect } from 'vitest';

/** The value is within `tolerance` of the expected one, both finite. The tolerance is a difference, not decimals. */
export function expectClose(actual: number, expected: number, tolerance: number, what = 'value'): void {
  expect(Number.isFinite(actual), `${what} is ${actual}`).toBe(true);
  const off = Math.abs(actual - expected);
  expect(off <= tolerance, `${what}: ${actual} is ${off} from ${expected}, more than ${tolerance}`).toBe(
    true,
  );
}

export const DEGREE = Math.PI / 180;
