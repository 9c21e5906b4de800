import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { documentOf, rawLayout } from '../../../support/layouts.ts';
import { pngFile } from '../../../support/picture-files.ts';
import { jobOf, printed } from '../../../support/printed.ts';
import { type Pixels, readPdf } from '../../../support/read-pdf.ts';
import { DOUBLE_D_SIDE, rawShaft, SCREW_SIDE, SPLINE, SPLINE_SIDE } from '../../../support/shafts.ts';

// Small pictures of printed pages as they were once looked at and found good. A page that is meant to change is looked
// at, and its picture written anew with TOEBOARD_GOLDEN=write.

const folder = resolve(import.meta.dirname, '../../../golden');
const PER_MM = 1.2;
/** How far a pixel's grey may be off before it counts, of 255, and the share of pixels that may be. */
const GREY_OFF = 60;
const SHARE_OFF = 0.004;

const document = documentOf(
  rawLayout({
    name: 'Golden',
    rails: [
      {
        name: 'Rail',
        path: [
          [430, 330, 520],
          [-900, 360, 470],
        ],
        height: 90,
        width: 50,
        mirrored: true,
      },
    ],
    shaft: rawShaft({
      column: { end: [-1390, 330, 760], axis: [0.87, 0.05, -0.49], fit: { kind: 'spline', ...SPLINE } },
      joints: [
        { kind: 'single', centre: [-1346.5, 332.5, 735.5], columnSide: SPLINE_SIDE, boxSide: DOUBLE_D_SIDE },
        { kind: 'single', centre: [-1020, 452, 486], columnSide: SCREW_SIDE },
      ],
      shafts: [{ clock: 0, stock: { kind: 'double-d', diameter: 19.05, acrossFlats: 14.2 } }],
    }),
  }),
);

/** The pixels of a small PNG of ours: each row reported as its difference from the pixel to the left. */
function readGolden(file: Buffer): { width: number; height: number; grey: Uint8Array } {
  const width = file.readUInt32BE(16);
  const height = file.readUInt32BE(20);
  const parts: Buffer[] = [];
  for (let at = 8; at < file.length; ) {
    const length = file.readUInt32BE(at);
    if (file.toString('latin1', at + 4, at + 8) === 'IDAT')
      parts.push(file.subarray(at + 8, at + 8 + length));
    at += length + 12;
  }
  const rows = inflateSync(Buffer.concat(parts));
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    let value = 0;
    for (let x = 0; x < width; x += 1) {
      value = (value + (rows[y * (3 * width + 1) + 1 + 3 * x] as number)) & 255;
      grey[y * width + x] = value;
    }
  }
  return { width, height, grey };
}

function greyOf({ rgba, width, height }: Pixels): Uint8Array {
  return Uint8Array.from({ length: width * height }, (_, i) =>
    Math.round(((rgba[4 * i] as number) + (rgba[4 * i + 1] as number) + (rgba[4 * i + 2] as number)) / 3),
  );
}

test.each([
  ['sheet', 'General arrangement'],
  ['sheet', 'Side view'],
  ['sheet', 'Steering shaft, route'],
  ['templates', 'Pitman arm'],
  ['templates', 'Shaft ends, strips'],
  ['customer', 'Your steering'],
] as const)('%s: the page “%s” looks as it did', async (kind, title) => {
  const { bytes } = await printed(jobOf({ document, kind }));
  await readPdf(bytes, async (pages) => {
    const page = pages.find(({ text }) => text.includes(title) && !text.includes('Read this first'));
    const pixels = (await page?.render(PER_MM)) as Pixels;
    const grey = greyOf(pixels);
    const path = join(folder, `${kind}-${title.toLowerCase().replaceAll(/[^a-z]+/g, '-')}.png`);
    if (process.env['TOEBOARD_GOLDEN'] === 'write')
      writeFileSync(
        path,
        pngFile(
          pixels.width,
          pixels.height,
          Uint8Array.from({ length: 3 * grey.length }, (_, i) => grey[Math.floor(i / 3)] as number),
        ),
      );
    expect(existsSync(path), `${path} is missing: look at the page, then write it`).toBe(true);
    const golden = readGolden(readFileSync(path));
    expect([pixels.width, pixels.height]).toEqual([golden.width, golden.height]);
    let off = 0;
    for (let i = 0; i < grey.length; i += 1)
      if (Math.abs((grey[i] as number) - (golden.grey[i] as number)) > GREY_OFF) off += 1;
    expect(off / grey.length).toBeLessThan(SHARE_OFF);
  });
});
