import { describe, expect, test } from 'vitest';
import type { JointSide, ShaftEnd, ShaftStock, SplineForm } from '../../shared-math/layout/index.ts';
import {
  endForSide,
  endWords,
  flatsWords,
  sideForEnd,
  sideWords,
  sizeWords,
  splineWords,
  stockWords,
  toothSizeWords,
} from '../../shared-math/shaft/words.ts';

// The words themselves, written out as a tradesperson orders by them: 3/4 in is 19.05 mm.

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 0 } as const;

const spline = { form: 'involute-45', teeth: 36, pitch: 48, diameter: 19.05 } as const;
const DD = { diameter: 19.05, acrossFlats: 14.224 } as const;
const BORED = { bore: 19.05, acrossFlats: 14.224 } as const;

test.each([
  [19.05, '3/4 in', '19.05 mm'],
  [25.4, '1 in', '25.4 mm'],
  [0, '0 in', '0 mm'],
  // A hundredth of a millimetre from the fraction, on both sides.
  [19.059, '3/4 in', '19.06 mm'],
  [19.061, '0.750 in', '19.06 mm'],
  [19.041, '3/4 in', '19.04 mm'],
  [19.039, '0.750 in', '19.04 mm'],
  [14.224, '0.560 in', '14.22 mm'],
  // A sixty-fourth is a size, whatever the drawing is read in.
  [(25.4 * 49) / 64, '49/64 in', '19.45 mm'],
  [(25.4 * 99) / 64, '1 35/64 in', '39.29 mm'],
])('%s mm is %s, or %s', (mm, inches, metric) => {
  expect(sizeWords(mm, INCHES)).toBe(inches);
  expect(sizeWords(mm, { unit: 'in', fraction: 0 })).toBe(inches);
  expect(sizeWords(mm, MM)).toBe(metric);
});

test('the size of teeth: diametral pitch, module, or not said', () => {
  expect(toothSizeWords({ pitch: 48 })).toBe('48/96 pitch');
  expect(toothSizeWords({ pitch: 10 })).toBe('10/20 pitch');
  expect(toothSizeWords({ module: 0.5 })).toBe('module 0.5');
  expect(toothSizeWords({ pitch: 48, module: 0.5 })).toBe('48/96 pitch');
  expect(toothSizeWords({})).toBe('');
});

test.each<[SplineForm, string]>([
  ['involute-30', 'involute 30°'],
  ['involute-37.5', 'involute 37.5°'],
  ['involute-45', 'involute 45°'],
  ['metric-30', 'metric involute 30°'],
  ['metric-37.5', 'metric involute 37.5°'],
  ['metric-45', 'metric involute 45°'],
  ['reference-30', 'involute 30° to a reference diameter'],
  ['serrated', 'serrated'],
  ['unidentified', 'form not identified'],
])('a spline of form %s is called %s', (form, words) => {
  expect(splineWords({ ...spline, form }, INCHES)).toBe(
    `spline of 36 teeth on 3/4 in, 48/96 pitch, ${words}`,
  );
  expect(splineWords({ form, teeth: 17, diameter: 16 }, MM)).toBe(`spline of 17 teeth on 16 mm, ${words}`);
});

test('flats are told by diameter first, then across the flats', () => {
  expect(flatsWords(25.4, 20.32, INCHES)).toBe('double-D 1 in, 0.800 in across the flats');
  expect(flatsWords(25.4, 20.32, MM)).toBe('double-D 25.4 mm, 20.32 mm across the flats');
});

test.each<[ShaftEnd, string, string]>([
  [{ kind: 'round', diameter: 19.05 }, 'round 3/4 in', 'a round bore 3/4 in to weld'],
  [
    { kind: 'double-d', ...DD },
    'double-D 3/4 in, 0.560 in across the flats',
    'a double-D 3/4 in, 0.560 in across the flats, with set screw or pinch bolt',
  ],
  [
    { kind: 'spline', ...spline },
    'spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45°',
    'a spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45°, with pinch bolt',
  ],
])('a shaft’s end of kind %o, and the joint’s end that takes it', (end, words, taker) => {
  expect(endWords(end, INCHES)).toBe(words);
  expect(sideForEnd(end, INCHES)).toBe(taker);
  const metric = (text: string) => text.replaceAll('3/4 in', '19.05 mm').replaceAll('0.560 in', '14.22 mm');
  expect(endWords(end, MM)).toBe(metric(words));
  expect(sideForEnd(end, MM)).toBe(metric(taker));
});

test.each<[JointSide, string, string]>([
  [{ kind: 'weld', bore: 19.05 }, 'round bore 3/4 in to weld', 'a round end 3/4 in'],
  [
    { kind: 'double-d-set-screw', ...BORED },
    'double-D 3/4 in, 0.560 in across the flats, with set screw',
    'a double-D 3/4 in, 0.560 in across the flats end',
  ],
  [
    { kind: 'double-d-pinch-bolt', ...BORED },
    'double-D 3/4 in, 0.560 in across the flats, with pinch bolt',
    'a double-D 3/4 in, 0.560 in across the flats end',
  ],
  [
    { kind: 'spline-pinch-bolt', ...spline },
    'spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45°, with pinch bolt',
    'a spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45° end',
  ],
  [
    { kind: 'spline', ...spline },
    'spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45°',
    'a spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45° end',
  ],
])('a joint’s end of kind %o, and the shaft’s end that goes in', (side, words, goer) => {
  expect(sideWords(side, INCHES)).toBe(words);
  expect(endForSide(side, INCHES)).toBe(goer);
});

describe('stock', () => {
  const splined = { kind: 'splined', ...spline, formed: 50.8 } as const;
  const halfFlat = { kind: 'double-d-end', ...DD, formed: 63.5 } as const;
  test.each<[ShaftStock, string]>([
    [{ kind: 'round', diameter: 19.05 }, 'solid round 3/4 in'],
    [{ kind: 'round', diameter: 19.05, material: 'steel' }, 'solid round 3/4 in, plain steel'],
    [
      { kind: 'double-d', ...DD, material: 'stainless' },
      'double-D 3/4 in, 0.560 in across the flats, full length, stainless steel',
    ],
    [
      { ...halfFlat, ends: 'column', material: 'steel' },
      'round 3/4 in with double-D 3/4 in, 0.560 in across the flats, 2 1/2 in long at the column end, plain steel',
    ],
    [
      { ...halfFlat, ends: 'both' },
      'round 3/4 in with double-D 3/4 in, 0.560 in across the flats, 2 1/2 in long at both ends',
    ],
    [
      { ...splined, ends: 'box', material: 'steel' },
      'spline of 36 teeth on 3/4 in, 48/96 pitch, involute 45°, 2 in long at the box end, plain steel',
    ],
  ])('%o', (stock, words) => {
    expect(stockWords(stock, INCHES)).toBe(words);
  });
});
