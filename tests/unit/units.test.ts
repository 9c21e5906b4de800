import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatDegrees,
  formatDoubt,
  formatForce,
  formatLength,
  formatRimForce,
  formatSpan,
  formatStress,
  parseAngle,
  parseLength,
  parseToe,
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
    // A decimal comma, and a plus between whole and fraction, as shops write them (common practice, no published source).
    ['24,125', 612.775],
    ['24 1/8', 612.775],
    ['24-1/8', 612.775],
    ['24+1/8', 612.775],
    ['24 + 1/8 in', 612.775],
    [',5', 12.7],
    ['610,5 mm', 610.5],
    ['61 cm', 610],
    ['2\' 1"', 635],
  ])('%s', (text, mm) => {
    expect(read(text)).toBe(mm);
  });

  test('a bare number is in the unit asked for', () => {
    expect(read('10', 'mm')).toBe(10);
    expect(read('3 1/2', 'mm')).toBe(3.5);
    expect(read('10"', 'mm')).toBe(254);
    expect(read('7”', 'mm')).toBe(177.8);
    expect(read("7''", 'mm')).toBe(177.8);
    // After feet a bare number is in inches, whatever is asked for.
    expect(read("1' 6", 'mm')).toBe(457.2);
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
    '3,2,5',
    '1,2.5',
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

  // The line that is said of each, with what was typed in it, trimmed.
  const NOT_A_LENGTH = '" is not a length; write for example 3 1/4, 3.25 in or 82.5 mm';
  test.each([
    ['', 'a length is missing'],
    ['  \t ', 'a length is missing'],
    [' abc ', `"abc${NOT_A_LENGTH}`],
    ['3 in in', `"3 in in${NOT_A_LENGTH}`],
    ['+', `"+${NOT_A_LENGTH}`],
    ['1e5', `"1e5${NOT_A_LENGTH}`],
    ['5/8/3', `"5/8/3${NOT_A_LENGTH}`],
    ['x 3', `"x 3${NOT_A_LENGTH}`],
    ['3 --4', `"3 --4${NOT_A_LENGTH}`],
    ['3 inchy', `"3 inchy${NOT_A_LENGTH}`],
    ['3 mm2', `"3 mm2${NOT_A_LENGTH}`],
    ['3.2.1', `"3.2.1${NOT_A_LENGTH}`],
    [' 3 1/0 ', '"3 1/0" divides by nothing'],
    [' 3 in 2 mm ', '"3 in 2 mm" mixes units; write one length'],
    ['2" 1\'', '"2" 1\'" mixes units; write one length'],
    ["1' 2'", '"1\' 2\'" mixes units; write one length'],
    ["1' 20 mm", '"1\' 20 mm" mixes units; write one length'],
    ['3 in 4', '"3 in 4" mixes units; write one length'],
    ['1 ft 2 in 3', '"1 ft 2 in 3" mixes units; write one length'],
    [' 99999 ', '"99999" is longer than 20 metres'],
    ['20001 mm', '"20001 mm" is longer than 20 metres'],
    ['-20001 mm', '"-20001 mm" is longer than 20 metres'],
    [`${'9'.repeat(400)} mm`, `"${'9'.repeat(59)}…" is longer than 20 metres`],
  ])('"%s" is refused in these words', (text, words) => {
    expect(read(text)).toBe(words);
  });

  test.each([
    ['20000 mm', 20_000],
    ['+ 3 in', 76.2],
    ['+3in.', 76.2],
    ['-3 in', -76.2],
    ['1 - 1/2 in', 38.1],
    ['1  1/2  in', 38.1],
    ['11/16"', 17.4625],
    ['12 11/16', 322.2625],
    ['1/ 2', 12.7],
    ['1 /2', 12.7],
    ['10/4 mm', 2.5],
    ['12.', 304.8],
    ['12.75', 323.85],
    ['.25', 6.35],
    ['1 foot', 304.8],
    ['2 ft', 609.6],
    ['2 feet', 609.6],
    ['2 inch', 50.8],
    ['2 IN', 50.8],
    ['2 Mm', 2],
    ['0', 0],
    ['-0', 0],
    ['1’ 6”', 457.2],
    ['1‘ 6“', 457.2],
    ['1′ 6″', 457.2],
    ["1' 6''", 457.2],
    ["1'-6''", 457.2],
    ["1' - 6", 457.2],
    ["1'6-1/2", 469.9],
    ["1' -6-1/2", 469.9],
    ['1 ft 6', 457.2],
    ["1'6.5", 469.9],
    ['2½"', 63.5],
    ['2¼"', 57.15],
    ['2¾"', 69.85],
    ['2⅛"', 53.975],
    ['2⅜"', 60.325],
    ['2⅝"', 66.675],
    ['2⅞"', 73.025],
    ['½', 12.7],
  ] as const)('%s is %d mm', (text, mm) => {
    expectClose(read(text) as number, mm, 1e-9);
  });

  test('a length with a sign or without is the same size the other way', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 63 }),
        fc.constantFrom('', '"', ' in', ' inches'),
        (whole, over, name) => {
          const text = `${whole} ${over}/64${name}`;
          const size = (whole + over / 64) * 25.4;
          expectClose(read(text) as number, size, 1e-9);
          expectClose(read(`-${text}`) as number, -size, 1e-9);
          expectClose(read(`+${text}`) as number, size, 1e-9);
        },
      ),
      { seed: 3, numRuns: 60 },
    );
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

describe('doubts', () => {
  test.each([
    [1.6, 'in', '1/16 in'],
    [3.2, 'in', '1/8 in'],
    [0.79375, 'in', '1/32 in'],
    [0.1, 'in', '0.004 in'],
    [2, 'in', '0.079 in'],
    [1.6, 'mm', '1.60 mm'],
  ] as const)('%d mm with %s is said as %s', (mm, unit, text) => {
    expect(formatDoubt(mm, unit)).toBe(text);
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
    expectClose(toRadians(180), Math.PI, 1e-15);
  });

  test.each([
    ['2.5 degrees', 2.5],
    ['+ 3 °', 3],
    ['-.5', -0.5],
    ['12', 12],
    ['7 1/2', 7.5],
    ['-7-1/4°', -7.25],
    ['3/4 deg', 0.75],
    ['7 1/0', '"7 1/0" is not an angle; write for example 2.5'],
    ['1/2/3', '"1/2/3" is not an angle; write for example 2.5'],
    ['− 12.25', -12.25],
    ['', 'an angle is missing'],
    ['  ', 'an angle is missing'],
    [' two ', '"two" is not an angle; write for example 2.5'],
    ['2 deg 3', '"2 deg 3" is not an angle; write for example 2.5'],
    ['x2', '"x2" is not an angle; write for example 2.5'],
    ['2 mm', '"2 mm" is not an angle; write for example 2.5'],
  ])('"%s" is %s', (text, expected) => {
    const angle = parseAngle(text);
    expect(angle.ok ? angle.value : angle.failure).toBe(expected);
  });
});

describe('what is longer than a part, and forces', () => {
  test('a pull at the rim that nobody has is told without its size', () => {
    // A pound-force is 4.4482216152605 N.
    expect(formatRimForce(250, 'in')).toBe('56 lb');
    expect(formatRimForce(8.5e6, 'in')).toBe('more than 450 lb');
    expect(formatRimForce(8.5e6, 'mm')).toBe('more than 2000 N');
  });

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

  // The yields that ASTM A36, A513 type 5, AMS 6360 and ASTM A269 give in both units, from memory.
  test.each([
    [250, '36 ksi'],
    [414, '60 ksi'],
    [517, '75 ksi'],
    [207, '30 ksi'],
  ])('a stress of %i N/mm² is %s', (value, words) => {
    expect(formatStress(value, 'in')).toBe(words);
    expect(formatStress(value, 'mm')).toBe(`${value} N/mm²`);
  });
});

describe("one wheel's toe, typed", () => {
  const toe = (text: string, unit: 'in' | 'mm' = 'in') => {
    const outcome = parseToe(text, unit, 330);
    return outcome.ok ? outcome.value : outcome.failure;
  };
  test('degrees as degrees, whatever the unit', () => {
    expect(toe('0.1')).toBe(0.1);
    expect(toe('0,1°')).toBe(0.1);
    expect(toe('-0.25 deg', 'mm')).toBe(-0.25);
  });
  // 2 · 330 mm · sin(toe) = 1.5875 mm, by Python's math module: 0.1378138°.
  test.each(['1/16"', '1/16', '1.5875 mm', '0.0625 in', '1/16 in'])('%s over a tyre of 660 mm', (text) => {
    expect(toe(text)).toBeCloseTo(0.1378138, 6);
  });
  test('what is neither is told in a line', () => {
    for (const text of ['', 'wide', '99 in']) expect(toe(text)).toBeTypeOf('string');
  });
});
