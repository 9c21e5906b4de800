import { expect, test } from 'vitest';
import { stretchesOf, unsettable } from '../../../src-main/output/pens/stretches.ts';

// Fonts that have a range of letters each.
const font = (name: string, from: number, to: number) => ({
  name,
  has: (codePoint: number) => codePoint >= from && codePoint <= to,
});
const FONTS = [font('latin', 0x20, 0x24f), font('hebrew', 0x590, 0x5ff), font('thai', 0xe00, 0xe7f)];
const words = (text: string) => stretchesOf(text, FONTS).map((stretch) => stretch.text);

test('a letter is taken from the first font that has it, and like letters stay together', () => {
  expect(stretchesOf('Ana สม', FONTS)).toEqual([
    { font: 'latin', text: 'Ana ', level: 0 },
    { font: 'thai', text: 'สม', level: 0 },
  ]);
});

test('words that run from right to left stand in that order, the rest of the line as it was (UAX #9, rule L2)', () => {
  // UAX #9, section 3.4, example of "he said THE VALUES ARE 123, 456, 789, OK": figures keep their order.
  expect(words('he said שלום עולם ok')).toEqual(['he said ', 'עולם', ' ', 'שלום', ' ok']);
  expect(words('a שלום 12 ב b').join('|')).toBe('a |ב| |12| |שלום| b');
});

test('a parenthesis in a line from right to left is mirrored (UAX #9, rule L4)', () => {
  expect(words('(שלום)')).toEqual(['(', 'שלום', ')']);
  expect(
    words('שלום (א')
      .filter((text) => /[()]/.test(text))
      .join(''),
  ).toContain(')');
});

test('letters that no font has are named, each once; what is not seen needs none', () => {
  expect(unsettable('a 山 b 山田\u200d', FONTS)).toEqual(['山', '田']);
  expect(() => stretchesOf('山', FONTS)).toThrow(/“山”: no type at hand has 山;/);
});
