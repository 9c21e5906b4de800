import { describe, expect, test } from 'vitest';
import { stockFor } from '../../../shared-math/shaft/index.ts';
import { identifySpline } from '../../../shared-math/splines/index.ts';
import { MM_PER_INCH } from '../../../shared-math/units/index.ts';
import { END_KINDS, type Fit, SIDE_KINDS, STOCK_KINDS } from '../../../src-renderer/panels/ends/end-forms.ts';
import { usualSizeOf, usualSizes, withSize } from '../../../src-renderer/panels/ends/end-sizes.ts';
import { expectClose } from '../../support/close.ts';

const FITS: readonly (readonly [string, Fit])[] = [END_KINDS, SIDE_KINDS, STOCK_KINDS].flatMap((kinds, i) =>
  Object.values(kinds).map(
    ({ usual }) => [`${['end', 'joint', 'stock'][i]} ${usual.kind}`, usual as Fit] as const,
  ),
);

describe.each(FITS)('usual sizes of %s', (_, fit) => {
  test('are what they say once taken, and leave the rest alone', () => {
    for (const size of usualSizes(fit)) {
      const sized = withSize(fit, size);
      expect(usualSizeOf(sized)?.words).toBe(size.words);
      for (const key of Object.keys(fit))
        if (!(key in size.size)) expect(sized[key as keyof Fit]).toEqual(fit[key as keyof Fit]);
    }
  });

  test('hold the one that its kind begins with', () => {
    expect(usualSizeOf(fit)).toBeDefined();
  });
});

test('flats and bores are cut in proportion: a joint of a size takes the shaft of that size', () => {
  const { usual } = SIDE_KINDS['double-d-pinch-bolt'];
  for (const size of usualSizes(usual)) {
    const stock = stockFor(withSize(usual, size));
    if (stock.kind !== 'double-d') throw new Error('double-D goes into double-D');
    expect(`for ${usualSizeOf(stock)?.words}`).toBe(size.words);
    expect(stock.acrossFlats).toBeLessThan(stock.diameter);
  }
});

// ANSI B92.1 / SAE J498: an external spline's major diameter is (N + 1)/P inches.
test('every splined one is as large as its standard has it, and is found again by what a caliper reads on it', () => {
  const splined = FITS.filter(([, fit]) => 'teeth' in fit);
  expect(splined.length).toBeGreaterThanOrEqual(4);
  for (const [, fit] of splined)
    for (const { size } of [...usualSizes(fit), { size: fit as unknown as Record<string, never> }]) {
      const { form, teeth, pitch, diameter } = size as {
        form: string;
        teeth: number;
        pitch: number;
        diameter: number;
      };
      expectClose(diameter, ((teeth + 1) / pitch) * MM_PER_INCH, 1e-9);
      const found = identifySpline(
        { outsideDiameter: diameter, counted: teeth, over: 'circle', missing: 0, uncertainty: 0.05 },
        { unit: 'mm', fraction: 0 },
      );
      if (!found.ok) throw new Error(found.failure);
      expect(['match', 'choose']).toContain(found.value.verdict);
      const own = found.value.candidates.find((each) => each.form === form && each.pitch === pitch);
      expect(own).toMatchObject({ teeth, fit: 'fits' });
    }
});

test('a size of its own is none of them', () => {
  expect(usualSizeOf({ kind: 'round', diameter: 20.3 })).toBeUndefined();
});
