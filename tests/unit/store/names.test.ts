import { describe, expect, test } from 'vitest';
import { copyName, distinctName } from '../../../src-main/store/names.ts';

describe('a distinct name', () => {
  test('is the wish itself where nobody has it', () => {
    expect(distinctName('Arm down', [])).toBe('Arm down');
    expect(distinctName('Arm down', ['Arm up', 'Arm down 2'])).toBe('Arm down');
  });

  test('counts past those taken, letter case aside', () => {
    expect(distinctName('Arm down', ['Arm down'])).toBe('Arm down 2');
    expect(distinctName('Arm down', ['ARM DOWN', 'Arm down 2', 'arm down 3'])).toBe('Arm down 4');
  });
});

describe("a copy's name", () => {
  test('counts on, also from the copy of a copy', () => {
    expect(copyName('Arm down', ['Arm down'])).toBe('Arm down copy');
    expect(copyName('Arm down', ['Arm down', 'Arm down copy'])).toBe('Arm down copy 2');
    expect(copyName('Arm down copy', ['Arm down', 'Arm down copy'])).toBe('Arm down copy 2');
    expect(copyName('Arm down copy 7', ['Arm down copy'])).toBe('Arm down copy 2');
  });

  test('leaves names alone that only look like copies', () => {
    expect(copyName('Photocopy', [])).toBe('Photocopy copy');
    expect(copyName('copy', [])).toBe('copy copy');
  });

  test('never outgrows what a name may be, nor splits a sign in two', () => {
    const long = 'x'.repeat(200);
    expect(copyName(long, [long])).toBe(`${'x'.repeat(195)} copy`);
    const signs = '𝔸'.repeat(100);
    const copy = copyName(signs, [signs]);
    expect(copy.length).toBeLessThanOrEqual(200);
    expect(copy.isWellFormed()).toBe(true);
    expect(distinctName(long, [long])).toHaveLength(200);
  });
});
