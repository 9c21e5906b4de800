import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatDegrees,
  formatForce,
  formatLength,
  formatSpan,
  parseAngle,
  parseLength,
  toDegrees,
  toRadians,
} from '../../shared-math/units/index.ts';
import { expectClose } from '../support/close.ts';

function read(text: string, unit: 'in' | 'mm' = 'in'): number | string {
  const outcome = parseLength(text, unit);
  return outcome.ok ? outcome.value : outcome.failure;
}

describe('lengths as people write them (an inch is 25.4 mm exactly, international yard and pound agreement 1959)', () => {
  test.each([
    ['3 1/4', 82.55],
    ['3-1/4"', 82.55],
    ['5/8', 15.875],
    ['82.55 mm', 82.55],
    ['1\' 6 1/2"', 469.9],
    ["1'6", 457.2],
    ['1\'-6 1/2"', 469.9],
    ['-2', -50.8],
    ['− 5/8 in', -15.875],
    ['.5', 12.7],
    ['3.25 inches', 82.55],
    ['12 ft', 3657.6],
    ['2 feet 3 inches', 685.8],
    ['3½', 88.9],
    ['3 ⁵⁄₈'.replace('⁵⁄₈', '5⁄8'), 92.075],
    ['25mm', 25],
    ['10 cm', 100],
    ['1.5 m', 1500],
    ['  7”  ', 177.8],
  ])('%s', (text, mm) => {
    expect(read(text)).toBe(mm);
  });

  test('a bare number is in the unit asked for', () => {
    expect(read('10', 'mm')).toBe(10);
    expect(read('3 1/2', 'mm')).toBe(3.5);
    expect(read('10"', 'mm')).toBe(254);
  });

  test.each([
    '',
    '   ',
    'abc',
    '3 1/0',
    '5/8/3',
    '1 2',
    '3 in 2 mm',
    '2" 1\'',
    '1e5',
    '--3',
    '3,25',
    '1.2.3',
    '30 metres',
    '99999',
    'NaN',
    'Infinity',
    '3 1/4 1/2',
    '/8',
  ])('"%s" is told in a line, never a number', (text) => {
    const outcome = read(text);
    expect(outcome).toBeTypeOf('string');
    expect(outcome).not.toMatch(/\n|undefined/);
  });

  test('what is shown reads back to within half of the last fraction', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3000, max: 3000, noNaN: true }),
        fc.constantFrom(0, 16, 32, 64) as fc.Arbitrary<0 | 16 | 32 | 64>,
        fc.constantFrom('in', 'mm') as fc.Arbitrary<'in' | 'mm'>,
        (mm, fraction, unit) => {
          const text = formatLength(mm, { unit, fraction });
          const step = unit === 'mm' ? 0.1 : fraction === 0 ? 0.0254 : 25.4 / fraction;
          expectClose(read(text, unit) as number, mm, step / 2 + 1e-9, text);
          expect(text).not.toMatch(/-0 |-0\.0+ /);
        },
      ),
      { seed: 20265 },
    );
  });

  test.each([
    [82.55, 16, '3 1/4 in'],
    [15.875, 16, '5/8 in'],
    [25.4 * 2.999, 64, '3 in'],
    [-0.1, 16, '0 in'],
    [-50.8, 32, '-2 in'],
    [82.55, 0, '3.250 in'],
  ] as const)('%d mm to 1/%d: %s', (mm, fraction, text) => {
    expect(formatLength(mm, { unit: 'in', fraction })).toBe(text);
  });
});

describe('angles', () => {
  test('read, shown and turned', () => {
    expect(parseAngle(' -1.5 deg')).toEqual({ ok: true, value: -1.5 });
    expect(parseAngle('2°')).toEqual({ ok: true, value: 2 });
    expect(parseAngle('two').ok).toBe(false);
    expect(formatDegrees(-0.001, 2)).toBe('0.00°');
    expect(formatDegrees(2.64)).toBe('2.6°');
    expectClose(toDegrees(toRadians(33)), 33, 1e-12);
  });
});

describe('what is longer than a part, and forces', () => {
  test('is told in feet and inches or in metres', () => {
    expect(formatSpan(11_074.4, 'in')).toBe('36 ft 4 in');
    expect(formatSpan(11_074.4, 'mm')).toBe('11.07 m');
    // Eleven and a half inches and a bit round up to the next foot, not to twelve inches.
    expect(formatSpan(304.8 * 3 - 5, 'in')).toBe('3 ft 0 in');
    expect(formatSpan(130, 'in')).toBe('5 in');
    expect(formatSpan(-130, 'in')).toBe('-5 in');
    expect(formatSpan(-3, 'in')).toBe('0 in');
  });

  test('is told in pounds or in newtons', () => {
    expect(formatForce(158, 'in')).toBe('36 lb');
    expect(formatForce(158, 'mm')).toBe('158 N');
    expect(formatForce(4.4482216152605 * 100, 'in')).toBe('100 lb');
  });
});
