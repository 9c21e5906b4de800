import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { colourOf, rampColours, shadeOf } from '../../../src-renderer/look/ramp.ts';
import { mapScale, stepsWithin } from '../../../src-renderer/places/layout/map/map-scale.ts';
import { expectClose } from '../../support/close.ts';

const css = readFileSync(resolve(import.meta.dirname, '../../../src-renderer/look/tokens.css'), 'utf8');
const token = (name: string) => new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(css)?.[1] as string;
const TOKENS = { paper: token('panel'), within: token('steel'), beyond: token('attention') };

/** Relative luminance as contrast is reckoned with (WCAG 2, from memory). */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
const contrast = (a: string, b: string) => {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
};

describe('the scale of the map', () => {
  const scale = mapScale(0.5);
  const colours = rampColours(TOKENS, scale.levels.length + 1, stepsWithin(scale));

  test('gets darker by the same amount from step to step', () => {
    const lightness = colours.map((colour) => shadeOf(colour).lightness);
    const steps = lightness.slice(1).map((value, i) => (lightness[i] as number) - value);
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    expect(mean).toBeGreaterThan(0.03);
    for (const step of steps) expectClose(step, mean, 0.006, 'step of lightness');
  });

  test('is cool within the limit and warm beyond it, on the axis of blue and yellow', () => {
    const within = stepsWithin(scale);
    expect(within).toBe(3);
    colours.forEach((colour, step) => {
      const { hue, chroma } = shadeOf(colour);
      expect(Math.sign(chroma * Math.sin(hue)), colour).toBe(step < within ? -1 : 1);
    });
  });

  test('ink and the steel of moving parts stand off every step', () => {
    for (const colour of colours) {
      expect(contrast(colour, token('ink')), colour).toBeGreaterThan(4.5);
      expect(contrast(colour, token('steel')), colour).toBeGreaterThan(1.7);
    }
  });

  test('shades come back as the colours they were made of', () => {
    for (const colour of ['#2b65a8', '#f5f1e7', '#8a5c12', '#000000', '#ffffff'])
      expect(colourOf(shadeOf(colour))).toBe(colour);
  });
});

describe('levels', () => {
  test.each([
    [0.5, [0.1, 0.25, 0.5, 1, 2, 4, 8]],
    [0.7, [0.1, 0.25, 0.5, 0.7, 1, 2, 4, 8]],
    [0.3, [0.1, 0.3, 0.5, 1, 2, 4, 8]],
    [1.1, [0.1, 0.25, 0.5, 1.1, 2, 4, 8]],
    [12, [0.1, 0.25, 0.5, 1, 2, 4, 8, 12]],
  ])('with a limit of %s° are %s', (limit, levels) => {
    const scale = mapScale(limit);
    expect(scale.levels).toEqual(levels);
    expect(scale.levels).toContain(limit);
    expect(stepsWithin(scale)).toBe(levels.indexOf(limit) + 1);
  });
});
