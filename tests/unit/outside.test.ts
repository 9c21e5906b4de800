import { describe, expect, test } from 'vitest';
import { parseLayout, readLayout, refusalLine } from '../../shared-math/layout/index.ts';
import {
  DEPTH_MOST,
  listed,
  oneLine,
  parseJson,
  quoted,
  SHOWN_MOST,
  shownEnd,
  shownText,
  VALUES_MOST,
} from '../../shared-math/outside/index.ts';
import { parseRoadTable } from '../../shared-math/ride/index.ts';
import { parseLength } from '../../shared-math/units/index.ts';
import { readImport, readShelfCsv } from '../../src-main/files/index.ts';
import { sampleLayout } from '../support/host-sample.ts';

/**
 * What must not reach a sentence: C0 and C1 controls (ECMA-48, with ESC and CSI), every sign of UAX #9 that turns the
 * direction of writing, line and paragraph separators, signs without width, halves of pairs (the Unicode Standard).
 */
const HARMFUL = [
  '\u001b[31mred\u001b[0m',
  '\u009b31m',
  '\u0007\u0000\u007f',
  'a\r\nb\u2028c\u2029d\u0085e\u000bf',
  '\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069\u200e\u200f\u061c',
  '\u200b\u200c\u200d\u2060\ufeff\u00ad\u3164',
  '\ud800 \udfff',
];
const FOUND =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\u3164\ufeff]|\p{Cs}/u;

describe('a text from outside, shown', () => {
  test.each(HARMFUL)('keeps none of the signs that act or hide: %#', (text) => {
    for (const shown of [shownText(text), shownEnd(text), quoted(text), oneLine(text), listed([text])])
      expect(shown).not.toMatch(FOUND);
    expect(shownText(`before${text}after`)).toMatch(/^before.*after$/);
  });

  test('is left as it is where it is plain', () => {
    for (const text of ['Side steer, arm down', 'Größe 3 1/4″', 'Привет', 'שלום', '🔧 wrench'])
      expect(shownText(text)).toBe(text);
    expect(quoted('x')).toBe('"x"');
  });

  test.each([59, 60, 61, 200, 100_000])(
    'is at most sixty characters long, told by the sign of cutting: %d',
    (n) => {
      for (const sign of ['a', '🔧', '\u0301', ' a']) {
        const text = sign.repeat(Math.ceil(n / sign.length));
        for (const shown of [shownText(text), shownEnd(text)]) {
          expect(shown.length).toBeLessThanOrEqual(SHOWN_MOST);
          expect(shown).not.toMatch(/\p{Cs}/u);
          expect(shown.includes('…')).toBe(oneLine(text).length > SHOWN_MOST);
        }
      }
      expect(SHOWN_MOST).toBe(60);
    },
  );

  test('of a path the end is kept', () => {
    expect(shownEnd(`/${'folder/'.repeat(20)}car.json`)).toMatch(/^….*\/car\.json$/);
  });

  test('three of many are named', () => {
    expect(listed(['a', 'b', 'c'])).toBe('"a", "b", "c"');
    expect(listed(['a', 'b', 'c', 'd'])).toBe('"a", "b", "c" and 1 more');
  });
});

describe('every reader of outside text', () => {
  const READERS: Record<string, (text: string) => string> = {
    'a layout': (text) => line(parseLayout(text)),
    "a layout's key": (text) => line(readLayout({ ...sampleLayout(), [text]: 1 })),
    "a layout's name": (text) => line(readLayout({ ...sampleLayout(), axle: text })),
    "a key of a layout's origins": (text) => line(readLayout({ ...sampleLayout(), origins: { [text]: 1 } })),
    'a car file': (text) =>
      line(readImport(JSON.stringify({ format: 'toeboard-car', version: 1, [text]: 1 }))),
    'a broken car file': (text) => line(readImport(`{"format": "toeboard-car", ${text}`)),
    "a shelf's heading": (text) => line(readShelfCsv(`kind,name,"${text}"\r\n`)),
    "a shelf's cell": (text) => line(readShelfCsv(`kind,name\r\n"${text}",x\r\n`)),
    'a road': (text) => line(parseRoadTable(`0,0,0\n1,"${text}",0\n`)),
    'a length': (text) => line(parseLength(`x${text}`, 'in')),
  };

  function line(outcome: { ok: true } | { ok: false; failure: string | { path: string; reason: string } }) {
    if (outcome.ok) throw new Error('this was taken and should have been refused');
    return typeof outcome.failure === 'string' ? outcome.failure : refusalLine(outcome.failure);
  }

  test.each(Object.entries(READERS))('refuses in one harmless line: %s', (_, refusal) => {
    for (const text of [...HARMFUL, 'x'.repeat(5000)]) {
      expect(refusal(`x${text}`)).not.toMatch(FOUND);
      expect(refusal(`x${text}`)).not.toContain('x'.repeat(SHOWN_MOST + 1));
    }
  });
});

const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);

describe('JSON from outside', () => {
  test('is read as any parser reads it', () => {
    const value = { a: [1, -2.5e3, true, null], 'b"\\': '[{"\\"[', c: { d: [[], {}] } };
    expect(parseJson(JSON.stringify(value))).toEqual({ ok: true, value });
    expect(parseJson(`\uFEFF${JSON.stringify(value, null, 2)}`)).toEqual({ ok: true, value });
    for (const text of ['', '{', '"', '"\\', '{"a": }', '\u001b[31m', '[1,]']) {
      const read = parseJson(text);
      expect(read.ok ? '' : read.failure).toMatch(/^not JSON: \P{Cc}+$/u);
    }
  });

  test('is refused where brackets stand deeper in one another than sixty-four, however they are hidden', () => {
    expect(parseJson(nested(DEPTH_MOST)).ok).toBe(true);
    expect(DEPTH_MOST).toBe(64);
    const deep = 'brackets stand in one another more than 64 deep';
    for (const text of [
      nested(DEPTH_MOST + 1),
      '{"a":'.repeat(65),
      '[{"a":'.repeat(33),
      `{"a": "\\\\", "b": ${nested(64)}}`,
      `{"a\\"]]]": ${nested(64)}}`,
      '['.repeat(9_000_000),
    ])
      expect(parseJson(text)).toEqual({ ok: false, failure: deep });
    // Brackets in a text are no brackets.
    expect(parseJson(`["${'['.repeat(1000)}", "\\"${'{'.repeat(1000)}"]`).ok).toBe(true);
  });

  test('is refused where it holds more values than any file of ours', () => {
    expect(parseJson(`[${'1,'.repeat(VALUES_MOST)}1]`)).toEqual({
      ok: false,
      failure: 'more than 4 million values in it',
    });
  });

  test.each([
    ['a layout', (text: string) => parseLayout(text), ''],
    ['a car file', (text: string) => readImport(text), 'car file: '],
  ])('too deep is refused by its own words: %s', (_, read, before) => {
    const text = `{"format": "toeboard-car", "notes": ${nested(65)}}`;
    const outcome = read(text);
    expect(outcome.ok ? '' : refusalLine(outcome.failure)).toBe(
      `${before}brackets stand in one another more than 64 deep`,
    );
  });
});

test('a million unknown keys are told by three of them, in a time that grows as the text does', () => {
  const strays = (count: number) => Array.from({ length: count }, (_, i) => `"key${i}":${i}`).join(',');
  const file = (count: number) =>
    `{"format": "toeboard-car", "version": 1, "name": "x", "layouts": [], ${strays(count)}}`;
  const told = (text: string) => {
    const read = readImport(text);
    return read.ok ? '' : refusalLine(read.failure);
  };
  expect(told(file(1_000_000))).toBe('car file: unknown keys "key0", "key1", "key2" and 999997 more');
  // Beside the engine's own parser on the same text, which any reader of it has to wait for. Three passes over every key
  // would be three times as long; each key held against every other, thousands of times.
  const least = (work: () => unknown) =>
    Math.min(
      ...[1, 2, 3].map(() => {
        const begun = performance.now();
        work();
        return performance.now() - begun;
      }),
    );
  const many = file(160_000);
  expect(least(() => told(many)) / least(() => JSON.parse(many))).toBeLessThan(20);
  expect(told(file(3))).toBe('car file: unknown keys "key0", "key1", "key2"');
  const layout = readLayout({ ...sampleLayout(), ...(JSON.parse(`{${strays(1000)}}`) as object) });
  expect(layout.ok ? '' : layout.failure.reason).toMatch(/"key2" and 997 more$/);
}, 120_000);
