import { describe, expect, test } from 'vitest';
import { notchFor } from '../../../../shared-math/shaft/index.ts';
import { armList, linkList, pitmanFromPlumb } from '../../../../src-main/output/pages/links.ts';
import { railDatum } from '../../../../src-main/output/pages/rail-datum.ts';
import { notchEdge, surfaceOf } from '../../../../src-main/output/pages/templates/shaft-strips.ts';
import { faceFile } from '../../../../src-main/output/pens/fonts.ts';
import { spread } from '../../../../src-main/output/pens/ordinates.ts';
import { ticksOver } from '../../../../src-main/output/pens/plot.ts';
import { scaleFor } from '../../../../src-main/output/pens/scales.ts';
import { layoutOf } from '../../../support/layouts.ts';

describe('the way around a shaft', () => {
  test('a round end is pi times its diameter around', () => {
    expect(surfaceOf(19.05, undefined).whole).toBeCloseTo(Math.PI * 19.05, 12);
  });

  test('a double-D is what the points of its outline, walked one by one, add up to', () => {
    const [d, w] = [19.05, 14.2];
    let length = 0;
    const steps = 200_000;
    const at = (i: number) => {
      const angle = (2 * Math.PI * i) / steps;
      const y = (d / 2) * Math.sin(angle);
      return [(d / 2) * Math.cos(angle), Math.max(-w / 2, Math.min(w / 2, y))] as const;
    };
    // Cut by the flats the circle's points lie on them; their steps along a flat are those of its length.
    for (let i = 0; i < steps; i += 1) {
      const [a, b] = [at(i), at(i + 1)];
      length += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
    const { whole, stretches } = surfaceOf(d, w);
    // The walk cuts the four corners by a little.
    expect(whole).toBeCloseTo(length, 3);
    expect(stretches.map(({ kind }) => kind)).toEqual(['round', 'flat', 'round', 'flat']);
    expect(stretches[3]?.to).toBe(whole);
  });
});

test('the edge of a notch lies where the bolt’s cylinder meets the shaft’s', () => {
  const [r, b, offset] = [9.525, 4.9, 11.5];
  const edge = notchEdge(r, b, offset);
  expect(edge.length).toBeGreaterThan(20);
  for (const [along, around] of edge) {
    const height = r * Math.cos(around / r);
    expect(along ** 2 + (height - offset) ** 2).toBeCloseTo(b ** 2, 6);
  }
  // At its middle it is as deep as the step of the making says.
  const notch = notchFor({ kind: 'round', diameter: 2 * r }, { diameter: 9.525, fromFace: 16, offset }, 32);
  const widest = Math.max(...notchEdge(r, 9.525 / 2 + 0.254, offset).map(([, around]) => around));
  expect(r - r * Math.cos(widest / r)).toBeCloseTo(notch?.depth as number, 6);
});

test('links are as long as a tape between their balls, arms as far as their balls from their axes', () => {
  const layout = layoutOf();
  const lengths = Object.fromEntries(
    [...linkList(layout), ...armList(layout)].map(({ name, length }) => [name, length]),
  );
  expect(lengths['Drag link']).toBeCloseTo(Math.hypot(800, 16, 45), 9);
  expect(lengths['Tie rod']).toBeCloseTo(1212, 9);
  expect(lengths['Pitman arm']).toBeCloseTo(140, 9);
  // The kingpin as a line from (7, 649, 265) along (-14, -18, 130): the area of the parallelogram over its base.
  const [u, d] = [
    [-14, -18, 130],
    [-157, -43, 27],
  ] as const;
  const area = Math.hypot(u[1] * d[2] - u[2] * d[1], u[2] * d[0] - u[0] * d[2], u[0] * d[1] - u[1] * d[0]);
  expect(lengths['Tie rod arm, each side']).toBeCloseTo(area / Math.hypot(...u), 9);
  expect(pitmanFromPlumb(layout)?.angle).toBeCloseTo(0, 9);
});

test('the frame’s top and face are those of the rail at each station', () => {
  const layout = layoutOf({
    rails: [
      {
        name: 'Rail',
        path: [
          [400, 300, 500],
          [-300, 300, 500],
          [-700, 340, 430],
          [-2000, 340, 430],
        ],
        height: 90,
        width: 50,
        mirrored: true,
      },
    ],
  });
  const datum = railDatum(layout);
  expect(datum.top).toBeCloseTo(545, 9);
  expect(datum.topAt(-1000)).toBeCloseTo(475, 9);
  // On the slope, 70 in 400, half the height stands square to the rail.
  expect(datum.topAt(-500)).toBeCloseTo(465 + 45 * Math.hypot(1, 70 / 400), 6);
  expect(datum.faceAt(-1000, -3)).toBeCloseTo(365, 9);
  expect(datum.topAt(900)).toBeUndefined();
  expect(railDatum(layoutOf()).top).toBeUndefined();
});

test('figures beside a view keep their order and their distance, and stay about where they belong', () => {
  const wishes = [1, 1.2, 1.3, 20, 40, 40.1];
  const places = spread(wishes, 4);
  places.slice(1).forEach((place, i) => {
    expect(place - (places[i] as number)).toBeGreaterThanOrEqual(4 - 1e-9);
  });
  expect(places[3]).toBe(20);
  expect((places[0] as number) + (places[1] as number) + (places[2] as number)).toBeCloseTo(3.5, 9);
});

test('round figures cover a plot’s range', () => {
  expect(ticksOver(-0.41, 0.33)).toEqual([-0.5, -0.4, -0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3, 0.4]);
  expect(ticksOver(0, 30)[0]).toBe(0);
});

test('the largest usual scale that fits is taken', () => {
  expect(scaleFor('in', 1600, 900, { width: 210, height: 120 })).toBe(8);
  expect(scaleFor('mm', 1600, 900, { width: 150, height: 120 })).toBe(15);
});

test('the shipped type is unpacked to plain OpenType whose tables bear their own checksums', () => {
  for (const face of ['regular', 'headingBold'] as const) {
    const font = faceFile(face, 'latin');
    const count = font.readUInt16BE(4);
    expect(count).toBeGreaterThan(8);
    for (let i = 0; i < count; i += 1) {
      const at = 12 + 16 * i;
      const tag = font.toString('latin1', at, at + 4);
      const [checksum, offset, length] = [
        font.readUInt32BE(at + 4),
        font.readUInt32BE(at + 8),
        font.readUInt32BE(at + 12),
      ];
      if (tag === 'head') continue;
      let sum = 0;
      for (let word = offset; word < offset + length; word += 4) sum = (sum + font.readUInt32BE(word)) >>> 0;
      expect(sum, tag).toBe(checksum);
    }
  }
});
