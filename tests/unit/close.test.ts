import { expect, test } from 'vitest';
import { expectClose } from '../support/close.ts';

test('the closeness check can fail: by distance, by NaN, by infinity', () => {
  expectClose(1.0009, 1, 0.001);
  expect(() => expectClose(1.0011, 1, 0.001)).toThrow(/more than/);
  expect(() => expectClose(Number.NaN, 1, 10)).toThrow();
  expect(() => expectClose(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 1)).toThrow();
});
