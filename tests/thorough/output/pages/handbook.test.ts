import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { TERMS } from '../../../../shared-math/words/terms/index.ts';
import { labelsIn, WALK_WINDOW, WALKS } from '../../../../shared-math/words/walks/index.ts';
import { handbookPicture } from '../../../../src-main/files/index.ts';
import { printHandbook } from '../../../../src-main/output/pages/handbook/handbook.ts';
import { darkness, type ReadPage, readPdf } from '../../../support/read-pdf.ts';
import { ACTS } from '../../../support/walks/acts.ts';
import { smallPng } from '../../../support/walks/small-png.ts';

const PICTURES = join(import.meta.dirname, '../../../../src-renderer/public/handbook');
const wanted = WALKS.flatMap(({ steps }) => steps.flatMap(({ picture }) => picture ?? []));
const plain = (text: string) => text.replaceAll(/\s+/g, ' ');

describe('the walks', () => {
  test('have as many acts as steps, name labels, and each picture once', () => {
    for (const { id, steps } of WALKS) {
      expect(ACTS[id]?.steps).toHaveLength(steps.length);
      expect(steps.flatMap(({ words }) => labelsIn(words)).length).toBeGreaterThan(2);
    }
    expect(Object.keys(ACTS)).toEqual(WALKS.map(({ id }) => id));
    expect(new Set(wanted.map(({ file }) => file)).size).toBe(wanted.length);
  });

  test('have all their pictures, no others, and they weigh little', () => {
    expect(readdirSync(PICTURES).toSorted()).toEqual(wanted.map(({ file }) => `${file}.png`).toSorted());
    const bytes = wanted.reduce((sum, { file }) => sum + statSync(join(PICTURES, `${file}.png`)).size, 0);
    expect(bytes).toBeLessThan(1.5e6);
    for (const { file, of } of wanted) {
      const found = handbookPicture(file);
      if (!found) throw new Error(`${file} is not there`);
      // A whole page has the window's shape.
      if (of === 'page')
        expect(found.width / found.height).toBeCloseTo(WALK_WINDOW.width / WALK_WINDOW.height, 2);
    }
    expect(handbookPicture('../../package')).toBeUndefined();
  });
});

describe('a small picture', () => {
  test('has the pixels that it was made of, as another reader finds them', () => {
    // Four colours; read back by the format's own words: PLTE and IDAT of ISO/IEC 15948, one filter byte before each row.
    const colours = [
      [255, 255, 255],
      [34, 48, 60],
      [43, 101, 168],
      [184, 64, 42],
    ];
    const width = 7;
    const height = 5;
    const at = Array.from({ length: width * height }, (_, i) => (i * i) % 4);
    const rgba = new Uint8Array(at.flatMap((i) => [...(colours[i] as number[]), 255]));
    const png = Buffer.from(smallPng({ width, height, rgba }));
    const chunk = (kind: string) => {
      const from = png.indexOf(kind) + 4;
      return png.subarray(from, from + png.readUInt32BE(from - 8));
    };
    const palette = chunk('PLTE');
    const rows = inflateSync(chunk('IDAT'));
    for (let y = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1) {
        const index = rows[y * (width + 1) + 1 + x] as number;
        expect([...palette.subarray(3 * index, 3 * index + 3)]).toEqual(colours[at[y * width + x] as number]);
      }
  });
});

describe('the handbook on paper', () => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = await printHandbook({
      paper: 'a4',
      picture: handbookPicture,
      date: new Date(Date.UTC(2026, 0, 2)),
    });
  }, 60_000);

  test('has every walk and every word, with where each usual figure comes from', async () => {
    await readPdf(bytes, (pages: readonly ReadPage[]) => {
      // Without spaces: what is broken into lines is read with them elsewhere.
      const all = pages.map(({ text }) => text.replaceAll(' ', '')).join('');
      const has = (text: string) => all.includes(plain(text).replaceAll(' ', ''));
      for (const { title, about, steps } of WALKS)
        for (const text of [title, about, ...steps.map(({ words }) => words)])
          expect(has(text), text).toBe(true);
      for (const { name, what, measured, usual } of Object.values(TERMS))
        for (const text of [name, what, measured, usual.words, usual.source])
          expect(has(text), text).toBe(true);
    });
  });

  test('is tagged: a text in the place of each picture and each sketch, and the language', () => {
    const file = Buffer.from(bytes).toString('latin1');
    expect(file).toContain('/MarkInfo');
    expect(file).toMatch(/\/Lang \(en\)/);
    const figures = file.match(/\/S \/Figure/g)?.length ?? 0;
    expect(figures).toBe(wanted.length + Object.keys(TERMS).length);
  });

  test('keeps its margins, and its pictures are there', async () => {
    await readPdf(bytes, async (pages) => {
      for (const page of [pages[1], pages.at(-1)]) {
        if (!page) throw new Error('it has pages');
        const pixels = await page.render(2);
        let inked = 0;
        for (let y = 0; y < pixels.height; y += 1)
          for (let x = 0; x < pixels.width; x += 1) {
            if (darkness(pixels, x, y) < 0.1) continue;
            inked += 1;
            expect(x / pixels.perMm[0]).toBeGreaterThan(16);
            expect(x / pixels.perMm[0]).toBeLessThan(page.width - 16);
            expect(y / pixels.perMm[1]).toBeGreaterThan(14);
          }
        expect(inked).toBeGreaterThan(3000);
      }
    });
  });

  test('stands without a picture that was never taken', async () => {
    const bare = await printHandbook({ paper: 'letter', picture: () => undefined, date: new Date(0) });
    expect(bare.length).toBeLessThan(bytes.length / 2);
  });
});
