import { expect, test } from 'vitest';
import { type PlotPicture, samePicture } from '../../../src-renderer/curves/plot-picture.ts';

const rung = { half: 2, step: 1, decimals: 0 } as unknown as PlotPicture['range']['rung'];
const picture = (): PlotPicture => ({
  at: [-1, 0, 1],
  columns: [
    [0.5, undefined, 1.5],
    [1, 2, 3],
  ],
  range: { middle: 0, rung },
  wanted: 0,
  span: [-1, 1],
  band: { lower: [0, 0, 0], upper: [1, 1, 1] },
});

test('a picture of the same numbers is the same, in other arrays too', () => {
  expect(samePicture(picture(), picture())).toBe(true);
});

test.each<[string, Partial<PlotPicture>]>([
  ['a place along the axis', { at: [-1, 0.1, 1] }],
  [
    'a value',
    {
      columns: [
        [0.5, undefined, 1.5],
        [1, 2, 3.0001],
      ],
    },
  ],
  [
    'a gap where a value was',
    {
      columns: [
        [0.5, undefined, undefined],
        [1, 2, 3],
      ],
    },
  ],
  ['one curve fewer', { columns: [[0.5, undefined, 1.5]] }],
  ['the middle', { range: { middle: 1, rung } }],
  ['the height', { range: { middle: 0, rung: { ...rung } } }],
  ['what is wanted', { wanted: undefined }],
  ['the ends of the axis', { span: [-2, 1] }],
  ['no ends', { span: undefined }],
  ['an edge of the band', { band: { lower: [0, 0, 0], upper: [1, 1, 2] } }],
  ['no band', { band: undefined }],
])('%s makes another picture', (_, change) => {
  expect(samePicture(picture(), { ...picture(), ...change })).toBe(false);
  expect(samePicture({ ...picture(), ...change }, picture())).toBe(false);
});
