import { expect, test } from 'vitest';
import { resolveLayout } from '../../../../shared-math/layout/index.ts';
import { needsOf } from '../../../../shared-math/shelf/index.ts';
import { demonstration, jobOf, printed } from '../../../support/printed.ts';

// What locates and carries the axle stands in the parts list; what is not given of it is said to be missing.

test.each([
  ['hairpins-side-steer.json', /4 × Hairpin, one of its two tubes: .* measured to the axle’s brackets/],
  ['wishbone-side-steer.json', /2 × Wishbone rod: .* measured to the axle’s brackets/],
  ['parallel-leaf-cross-steer.json', /[12] × Leaf spring, .* 2 × Spring shackle/],
])('%s', async (name, words) => {
  const { texts } = await printed(jobOf({ document: demonstration(name) }));
  expect(texts.map(({ text }) => text).join(' ')).toMatch(words);
});

test('springs: their size where it is given, in the customer’s unit, else that it is not', () => {
  const document = { ...demonstration('hairpins-side-steer.json'), ride: null };
  const lines = (over: object, unit: 'in' | 'mm' = 'mm') =>
    needsOf(resolveLayout({ ...document, ...over } as typeof document), {
      unit,
      fraction: unit === 'mm' ? 0 : 16,
    })
      .map(({ words }) => words)
      .filter((words) => /spring/i.test(words));
  expect(lines({})[0]).toMatch(/Spring across the car, .* not given in this layout$/);
  const bar = { kind: 'bar', axle: [-40, -400, 340], frame: [-40, 400, 350] };
  expect(lines({ lateral: bar })[0]).toMatch(/^Front springs, the set; .* not given in this layout$/);
  // 25 N/mm is 142.75 pounds-force to the inch (NIST SP 811: 1 lbf = 4.448 222 N, 1 in = 25.4 mm).
  const ride = { spring: { kind: 'rate', rate: 25 } };
  expect(lines({ ride })[0]).toMatch(/25\.0 N\/mm each side$/);
  expect(lines({ ride }, 'in')[0]).toMatch(/143 lb\/in each side$/);
});
