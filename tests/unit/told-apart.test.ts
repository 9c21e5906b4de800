import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analyse, findings, LIMITS } from '../../shared-math/findings/index.ts';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { degreesBeside, formatToe, formatToeLength, lengthBeside } from '../../shared-math/units/index.ts';
import { documentOf, rawLayout } from './../support/layouts.ts';

// Rounding never makes a figure read as the limit, or as the nought, that it is not.

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 0 } as const;

test('an angle past its limit does not read as the limit', () => {
  expect(degreesBeside(28.4, [28], 0)).toBe('28.4°');
  expect(degreesBeside(28, [28], 0)).toBe('28°');
  expect(degreesBeside(0.5004, [0.5])).toBe('0.5004°');
  expect(degreesBeside(31, [28], 0)).toBe('31°');
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 60, noNaN: true }),
      fc.double({ min: 0.01, max: 60, noNaN: true }),
      (value, limit) => {
        fc.pre(Math.abs(value - limit) > 1e-3);
        expect(degreesBeside(value, [limit])).not.toBe(degreesBeside(limit, [value]));
      },
    ),
  );
});

test('a length that is not nothing does not read as nothing, in either unit', () => {
  // 0.76 mm is 0.030 in (1 in = 25.4 mm): less than half of a sixteenth.
  expect(lengthBeside(0.76, [1.5875, 0], INCHES)).toBe('0.030 in');
  expect(lengthBeside(0, [0], INCHES)).toBe('0 in');
  expect(lengthBeside(0.04, [0], MM)).toBe('0.04 mm');
  expect(lengthBeside(82.55, [0], INCHES)).toBe('3 1/4 in');
});

test('toe has one form, and two toes that a tape tells apart read apart', () => {
  // Readings of 2.30 and 2.41 mm: 0.0906 and 0.0949 in.
  expect(formatToe(2.3, 0.2, 'in')).toBe('0.091 in (2.3 mm, 0.20°)');
  expect(formatToe(2.41, 0.21, 'in')).toBe('0.095 in (2.4 mm, 0.21°)');
  expect(formatToe(2.3, 0.2, 'mm')).toBe('2.3 mm (0.091 in, 0.20°)');
});

/** The findings of one rule on a layout, in inches. */
function told(
  rule: string,
  over: Parameters<typeof rawLayout>[0],
  style: typeof INCHES | typeof MM = INCHES,
) {
  const layout = resolveLayout(documentOf(rawLayout(over)));
  return findings(analyse(layout, prepareFrontEnd(layout)), style).filter((one) => one.rule === rule);
}

test('toe beyond its band does not read as a toe within it', () => {
  // 0.29° of total toe over a tyre of 330 mm radius: 2 · 330 · sin(0.29°) = 3.341 mm, 0.132 in; the band ends at 0.125 in.
  const raw = rawLayout() as unknown as { axle: { left: { toeIn: number } } };
  const [toe] = told('toe-static', {
    axle: { ...raw.axle, left: { ...raw.axle.left, toeIn: 0.145 } },
  } as Parameters<typeof rawLayout>[0]);
  expect(toe?.advice).toMatch(/Take toe-in off/);
  const [, figure] =
    /^Toe-in ([\d.]+) in \([\d.]+ mm, 0\.29°\), front to rear of the tyres$/.exec(toe?.sentence ?? '') ?? [];
  const [, most] = /to ([\d.]+) in$/.exec(toe?.limit ?? '') ?? [];
  expect(Number(figure)).toBeGreaterThan(Number(most));
  expect(formatToeLength(LIMITS.toeMost.usual, 'in')).toBe(`${most} in`);
});

test('caster’s change says which way and from where to where, and its figures add up', () => {
  const [caster] = told('caster-change', {}, MM);
  const match = /^Caster (rises|falls) by ([\d.]+)°, from (-?[\d.]+)° at ride height to (-?[\d.]+)° at /.exec(
    caster?.sentence ?? '',
  );
  if (!match) expect(caster?.sentence).toMatch(/^Caster stays at /);
  else expect(Math.abs(Math.abs(Number(match[4]) - Number(match[3])) - Number(match[2]))).toBeLessThan(0.11);
});
