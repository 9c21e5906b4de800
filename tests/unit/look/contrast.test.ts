import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const TOKENS = readFileSync(join(import.meta.dirname, '../../../src-renderer/look/tokens.css'), 'utf8');

function tokensOf(ground: 'day' | 'night'): Record<string, string> {
  const [day = '', night = ''] = TOKENS.split(':root[data-ground="night"]');
  const colours = (text: string) =>
    Object.fromEntries(
      [...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name, value]) => [name, value]),
    );
  return { ...colours(day), ...(ground === 'night' ? colours(night) : {}) };
}

/** Relative luminance and contrast: WCAG 2.2, "relative luminance" and "contrast ratio" of its glossary. */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [less = 0, more = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (more + 0.05) / (less + 0.05);
}

/** What is written on what. */
const WRITTEN: readonly (readonly [string, readonly string[]])[] = [
  ['ink', ['paper', 'panel', 'field', 'shade', 'steel-wash', 'stop-wash', 'attention-wash']],
  ['ink-soft', ['paper', 'panel', 'field', 'shade', 'steel-wash']],
  ['steel', ['paper', 'panel', 'field']],
  ['steel-deep', ['paper', 'panel', 'field', 'steel-wash']],
  ['stop', ['paper', 'panel', 'stop-wash']],
  ['attention', ['panel', 'paper', 'attention-wash']],
  ['good-ink', ['paper', 'panel']],
  ['on-steel', ['steel', 'steel-deep']],
];

describe.each(['day', 'night'] as const)('by %s', (ground) => {
  const tokens = tokensOf(ground);
  const of = (name: string) => tokens[name] ?? '';

  // WCAG 2.2, 1.4.3, level AA: 4.5 to 1 for text.
  test.each(WRITTEN.flatMap(([ink, grounds]) => grounds.map((on) => [ink, on] as const)))(
    '%s can be read on %s',
    (ink, on) => {
      expect(contrast(of(ink), of(on))).toBeGreaterThanOrEqual(4.5);
    },
  );

  test('lines that carry meaning stand off the ground, and rules stay behind them', () => {
    // WCAG 2.2, 1.4.11: 3 to 1 for what is needed to understand a drawing.
    for (const line of ['ink', 'steel', 'stop', 'good'])
      for (const on of ['paper', 'panel'])
        expect(contrast(of(line), of(on)), `${line} on ${on}`).toBeGreaterThanOrEqual(3);
    expect(contrast(of('rule'), of('paper'))).toBeLessThan(2);
  });

  test('no ink is as bright or as dark as a screen can be', () => {
    for (const name of ['ink', 'paper', 'panel']) {
      expect(luminance(of(name)), name).toBeGreaterThan(0.01);
      expect(luminance(of(name)), name).toBeLessThan(0.97);
    }
  });
});

test('the night is no inversion: each colour keeps its hue, warm grounds stay warm', () => {
  const hue = (colour: string) => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
    return (Math.atan2(Math.sqrt(3) * (g - b), 2 * r - g - b) * 180) / Math.PI;
  };
  const [day, night] = [tokensOf('day'), tokensOf('night')];
  for (const name of ['paper', 'panel', 'steel', 'stop', 'attention', 'good', 'rule']) {
    const apart = Math.abs(hue(day[name] ?? '') - hue(night[name] ?? ''));
    expect(Math.min(apart, 360 - apart), name).toBeLessThan(25);
  }
});
