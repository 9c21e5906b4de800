import { expect, test } from 'vitest';
import { trustRates, trustRows } from '../support/spline-trust.ts';

// Photos of ends drawn by lot: 17 to 48 teeth, a missing tooth or a filled space, blur, glare, dirt, seen 0° to 15° off
// square, dark and bright, marked by a hand that is a hundredth of the radius off. The rates over many more photos stand in
// the developers' page, made by `npm run spline-trust`.
test('a count that is called clear is right, and no blank is called that is not there', () => {
  const rates = trustRates([...trustRows(90_000, 24)]);
  expect(rates.wrong).toEqual([]);
  expect(rates.rightOfClear).toBe(rates.clear);
  // Not by calling nothing clear and no blank at all.
  expect(rates.clear).toBeGreaterThanOrEqual(15);
  expect(rates.blanks).toBe(8);
  expect(rates.blanksCalled).toBeGreaterThanOrEqual(4);
  expect(rates.blanksCalled + rates.blanksUnread).toBeGreaterThanOrEqual(5);
}, 240_000);
