import { expect, test } from 'vitest';
import { ACTS } from '../../soak/acts/index.ts';
import { type Act, drawn, type Kind, plan } from '../../soak/plan.ts';

function acts(seed: number, count: number): Act[] {
  const list: Act[] = [];
  for (const act of plan(seed)) {
    list.push(act);
    if (list.length === count) break;
  }
  return list;
}

test('the same seed gives the same acts, another seed others', () => {
  expect(acts(7, 500)).toEqual(acts(7, 500));
  expect(acts(7, 500).slice(0, 60)).toEqual(acts(7, 60));
  expect(acts(8, 60)).not.toEqual(acts(7, 60));
});

test('every act that there is comes, all but the page’s own reload in the first round', () => {
  const known = Object.keys(ACTS) as Kind[];
  const kinds = (list: Act[]) => new Set(list.map(({ kind }) => kind));
  expect([...kinds(acts(3, 70))].sort()).toEqual(known.filter((kind) => kind !== 'reload').sort());
  expect([...kinds(acts(3, 600))].sort()).toEqual([...known].sort());
});

test('of some kinds alone the acts are those kinds, numbered from one', () => {
  const next = plan(5, new Set(['map', 'tune']));
  const some = Array.from({ length: 20 }, () => next.next().value);
  expect(new Set(some.map(({ kind }) => kind))).toEqual(new Set(['map', 'tune']));
  expect(some.at(-1)?.number).toBe(20);
});

test('acts are numbered, and their lots lie from nought to one, evenly', () => {
  const list = acts(11, 1000);
  expect(list.map(({ number }) => number)).toEqual(list.map((_, index) => index + 1));
  const lots = list.flatMap((act) => act.lots);
  expect(Math.min(...lots)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...lots)).toBeLessThan(1);
  // The mean of n even lots has a standard deviation of 1/sqrt(12 n).
  const mean = lots.reduce((sum, lot) => sum + lot, 0) / lots.length;
  expect(Math.abs(mean - 0.5)).toBeLessThan(4 / Math.sqrt(12 * lots.length));
});

test('a lot draws each of a list, the last one too', () => {
  const items = ['a', 'b', 'c'];
  expect([0, 0.34, 0.67, 0.999_999_9].map((lot) => drawn(items, lot))).toEqual(['a', 'b', 'c', 'c']);
  expect(() => drawn([], 0.5)).toThrow();
});
