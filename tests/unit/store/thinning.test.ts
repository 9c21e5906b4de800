import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { HISTORY_MAX, NEWEST_KEPT, thinnedOut } from '../../../src-main/store/thinning.ts';

const MINUTE = 60_000;
const DAY = 86_400_000;
const NOW = Date.UTC(2026, 2, 9, 12, 0, 0);

/** States at these ages, newest first, numbered from the newest. */
const aged = (ages: readonly number[]) => ages.map((age, index) => ({ id: index, at: NOW - age }));

test('an evening a month ago leaves the newest fifty, the last of its day and the first', () => {
  const ages = Array.from({ length: 120 }, (_, edit) => 30 * DAY + edit * MINUTE);
  const gone = new Set(thinnedOut(aged(ages), NOW));
  const kept = ages.map((_, id) => id).filter((id) => !gone.has(id));
  expect(kept).toEqual([...Array.from({ length: 50 }, (_, id) => id), 119]);
});

test('behind fifty of today stand all of today, one of each hour of the week, and one of each day before', () => {
  const today = Array.from({ length: 60 }, (_, edit) => edit * MINUTE);
  // 9 March 2026, 12:00 UTC: three days earlier, ten minutes apart over four hours; then a fortnight earlier.
  const week = Array.from({ length: 24 }, (_, edit) => 3 * DAY + edit * 10 * MINUTE);
  const before = Array.from({ length: 30 }, (_, edit) => 14 * DAY + edit * MINUTE);
  const ages = [...today, ...week, ...before];
  const gone = new Set(thinnedOut(aged(ages), NOW));
  const kept = ages.filter((_, id) => !gone.has(id));
  expect(kept.filter((age) => age < DAY)).toEqual(today);
  // 12:00 itself, then the last of 11, 10, 9 and 8 o'clock: ten to the hour.
  expect(kept.filter((age) => age >= DAY && age < 7 * DAY)).toEqual(
    [0, 10, 70, 130, 190].map((minutes) => 3 * DAY + minutes * MINUTE),
  );
  expect(kept.filter((age) => age >= 7 * DAY)).toEqual([14 * DAY, 14 * DAY + 29 * MINUTE]);
});

test('never more than three hundred stay, always the newest fifty and the first; what stayed stays', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -DAY, max: 400 * DAY }), { minLength: 1, maxLength: 700 }),
      (ages) => {
        // Any clock: set back and forth between the states as well.
        const states = aged(ages);
        const gone = new Set(thinnedOut(states, NOW));
        const kept = states.filter(({ id }) => !gone.has(id));
        expect(kept.length).toBeLessThanOrEqual(HISTORY_MAX);
        expect(kept.slice(0, NEWEST_KEPT)).toEqual(states.slice(0, NEWEST_KEPT));
        expect(kept.at(-1)).toEqual(states.at(-1));
        expect(thinnedOut(kept, NOW)).toEqual([]);
      },
    ),
    { numRuns: 200, seed: 20_260_311 },
  );
});

test('the rule stands in plain words, with the same figures, in the drawer and in README', () => {
  for (const file of ['src-renderer/shell/drawer/HistoryPage.svelte', 'README.md']) {
    const words = readFileSync(resolve(import.meta.dirname, '../../..', file), 'utf8').replaceAll(
      /\s+/g,
      ' ',
    );
    const spelled: Record<string, string> = { 50: 'fifty', 300: 'three hundred' };
    for (const figure of [NEWEST_KEPT, HISTORY_MAX])
      expect(words, file).toMatch(new RegExp(`\\b(${figure}|${spelled[figure]})\\b`, 'i'));
    expect(words, file).toMatch(/all of the last 24 hours/);
  }
});
