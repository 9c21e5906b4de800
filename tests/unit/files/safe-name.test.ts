import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { safeFileName } from '../../../src-main/files/index.ts';

describe('a safe file name', () => {
  test.each([
    ['Roadster - Arm down', 'Roadster - Arm down.json'],
    ['3 1/4" drop', '3 1-4- drop.json'],
    ['../../etc/passwd', '_-..-etc-passwd.json'],
    ['C:\\cars\\a', 'C--cars-a.json'],
    ['.hidden', 'hidden.json'],
    ['ends with dots. . .', 'ends with dots.json'],
    ['line\nbreak\ttab\u0000nul', 'line break tab nul.json'],
    ['left\u202Eright', 'left right.json'],
    ['CON', '_CON.json'],
    ['con.old', '_con.old.json'],
    ['lpt1', '_lpt1.json'],
    ['COM¹', '_COM¹.json'],
    ['Console', 'Console.json'],
    ['=HYPERLINK(1)', '_=HYPERLINK(1).json'],
    ['+1 drop', '_+1 drop.json'],
    ['-rf', '_-rf.json'],
    ['@home', '_@home.json'],
    ['\u202E=1', '_=1.json'],
    ['. .-x', '_-x.json'],
    ['＝1', '_＝1.json'],
    ['', 'untitled.json'],
    [' . ', 'untitled.json'],
    ['Ångström – №7', 'Ångström – №7.json'],
    ['\uD800half', 'half.json'],
  ])('of %j is %j', (wish, name) => {
    expect(safeFileName(wish, 'json')).toBe(name);
  });

  test('is cut by bytes, never through a sign', () => {
    expect(safeFileName('x'.repeat(500), 'json')).toBe(`${'x'.repeat(120)}.json`);
    const signs = safeFileName('車'.repeat(500), 'json');
    expect(signs).toBe(`${'車'.repeat(40)}.json`);
  });

  test('is legal on every system, whatever is wished', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (wish) => {
        const name = safeFileName(wish, 'json');
        expect(name).toMatch(/^[^<>:"/\\|?*\p{Cc}]+\.json$/u);
        expect(name).not.toMatch(/^[. =+\-@]|[. ]\.json$/);
        expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)\./i);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(130);
        expect(name.isWellFormed()).toBe(true);
      }),
      { seed: 20_260_309 },
    );
  });
});
