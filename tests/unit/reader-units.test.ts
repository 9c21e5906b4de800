import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analyse, findings, withClearances } from '../../shared-math/findings/index.ts';
import {
  hardpoints,
  type LayoutDocument,
  readEdited,
  resolveLayout,
  withValue,
} from '../../shared-math/layout/index.ts';
import { formatFine, formatLoad } from '../../shared-math/units/index.ts';
import { parseLoad } from '../../src-renderer/controls/plain-numbers.ts';
import { refusalSentence } from '../../src-renderer/document/refusal-sentences.ts';
import { expectClose } from '../support/close.ts';
import { DEMONSTRATIONS } from '../support/demonstration-files.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';

const root = resolve(import.meta.dirname, '../..');
const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 16 } as const;

/** A figure with a unit of the one system, or of the other: "3 1/4 in", "12.5 mm". */
const METRIC = /\d\s?(mm|cm|m|kg|N|N\/mm|N·s\/mm|N·m\/°|km\/h)\b/;
const IMPERIAL = /\d\s?(in|inch|inches|ft|lb|lb\/in|lb·s\/in|lb·ft\/°|mph|psi)\b/;

/** A value put before a unit by the source itself: `${x} mm`, `{x} mm` in markup. */
const FIXED = /\}(<\/\w+>)? (mm|cm|N|kg|lb|ft|psi|N\/mm|lb\/in)\b/;
/** The line, or the one before it, asks which unit the reader has. */
const ASKS = /unit === 'in'|unit === 'mm'|\bin: |\bmm: |METRIC_INCH/;
/** What is fixed on purpose: the trade's own names of sizes. */
const NAMES = new Set([
  'src-renderer/places/measure/photos/lens-words.ts',
  'src-renderer/panels/ends/end-sizes.ts',
]);

describe('the reader’s unit', () => {
  test('is asked for wherever the renderer puts a unit behind a value', () => {
    const lost: string[] = [];
    let looked = 0;
    for (const path of globSync('src-renderer/**/*.{ts,svelte}', { cwd: root })) {
      if (NAMES.has(path.replaceAll('\\', '/'))) continue;
      const lines = readFileSync(join(root, path), 'utf8').split('\n');
      for (const [i, line] of lines.entries()) {
        if (/^\s*(\/\/|\*|\/\*)/.test(line) || !FIXED.test(line)) continue;
        looked += 1;
        const around = lines.slice(Math.max(0, i - 3), i + 1).join('\n');
        if (!ASKS.test(around)) lost.push(`${path}:${i + 1}: ${line.trim()}`);
      }
    }
    expect(lost).toEqual([]);
    expect(looked).toBeGreaterThan(2);
  });

  test.each(DEMONSTRATIONS)('is the only one in the findings on %s', (_, document) => {
    const analysis = withClearances(analyse(resolveLayout(document)));
    // Toe is reported in one form in both units: 0.091 in (2.3 mm, 0.20°).
    for (const [style, foreign] of [
      [INCHES, METRIC],
      [MM, IMPERIAL],
    ] as const)
      for (const { sentence, limit, advice } of findings(analysis, style))
        for (const words of [sentence, limit, advice])
          expect(words.replaceAll(/\(\d[\d.]* (?:mm|in), \d[\d.]*°\)/g, '')).not.toMatch(foreign);
  });

  test('is that of a scale as well: pounds with inches, kilograms with millimetres, and of a bare number', () => {
    // 1100 lb: 0.45359237 kg each, at 9.80665 m/s² (NIST SP 811, appendix B).
    const load = 1100 * 0.45359237 * 9.80665;
    expect(formatLoad(load, 'in')).toBe('1100 lb');
    expect(formatLoad(load, 'mm')).toBe('499 kg');
    for (const [typed, unit, newtons] of [
      ['1100', 'in', load],
      ['500', 'mm', 500 * 9.80665],
      ['4900 N', 'in', 4900],
      ['500 kg', 'in', 500 * 9.80665],
      ['1100 lb', 'mm', load],
    ] as const) {
      const read = parseLoad(typed, unit);
      expectClose(read.ok ? read.value : 0, newtons, 1e-6);
    }
    expect(formatFine(1.29, 'in')).toBe('0.051 in');
    expect(formatFine(1.29, 'mm')).toBe('1.29 mm');
  });

  test('is that in which a refusal tells bound and finding', () => {
    const document = documentOf(rawLayout());
    const sentence = (path: string, value: unknown, style: typeof INCHES | typeof MM) => {
      const edited: LayoutDocument = withValue(document, path, value);
      const read = readEdited(document, edited);
      if (read.ok) throw new Error('taken');
      return refusalSentence(read.failure, hardpoints(document), document, style);
    };
    expect(sentence('car.wheelbase', -76.2, INCHES)).toBe('Wheelbase: must be more than 0 in, found -3 in');
    expect(sentence('car.wheelbase', -76.2, MM)).toBe('Wheelbase: must be more than 0.0 mm, found -76.2 mm');
    expect(sentence('travel.bump', 1524, INCHES)).toBe('Bump: must be at most 39 3/8 in, found 60 in');
    expect(sentence('car.frontAxleLoad', 300_000, INCHES)).toMatch(/found 67443 lb$/);
    expect(sentence('axle.left.camber', 60, INCHES)).toBe('Camber: must be at most 45, found 60');
    expect(sentence('steering.box.pitmanBall', [0, 0, 25_400], INCHES)).toMatch(/found 1000 in$/);
  });
});
