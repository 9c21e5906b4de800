import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import {
  openDemonstration,
  pointButton,
  saved,
  storedDocument,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { avifFile, claiming, heicFile } from '../support/heif-files.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { bombPdf, drawnPdf, hugePagePdf, pagesPdf, scanPdf } from '../support/pdf-files.ts';
import { dropFile } from '../support/trace-pointer.ts';

const openBoard = useBrowser();

async function openPhotos() {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  return board;
}

const bring = (page: Page, name: string, mimeType: string, buffer: Buffer) =>
  page.getByLabel('Photos to add').setInputFiles({ name, mimeType, buffer });

interface Seen {
  /** In the middle of each quarter, row by row: red, green, blue, each 1 or 0. */
  readonly quarters: readonly string[];
  /** Of all its pixels, how many of 1 are near to white. */
  readonly white: number;
}

/** A photo as the board shows it. */
async function seen(page: Page, name: string): Promise<Seen> {
  const canvas = page.locator(`canvas[data-photo="${name}"][data-laid]`);
  await canvas.waitFor();
  return canvas.evaluate((shown: HTMLCanvasElement) => {
    const { width, height } = shown;
    const paint = shown.getContext('2d') as CanvasRenderingContext2D;
    const { data } = paint.getImageData(0, 0, width, height);
    const quarters = [
      [0.25, 0.25],
      [0.75, 0.25],
      [0.25, 0.75],
      [0.75, 0.75],
    ].map(([x = 0, y = 0]) => {
      const at = 4 * (Math.floor(height * y) * width + Math.floor(width * x));
      return [...data.slice(at, at + 3)].map((value) => (value > 127 ? 1 : 0)).join('');
    });
    let white = 0;
    for (let i = 0; i < data.length; i += 4)
      if ((data[i] ?? 0) + (data[i + 1] ?? 0) + (data[i + 2] ?? 0) > 720) white += 1;
    return { quarters, white: white / (width * height) };
  });
}

const UPRIGHT = ['100', '010', '001', '000'];

test('what decodes pictures is loaded with the first of them, and not with the page', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  const loaded: string[] = [];
  page.on('request', (request) => loaded.push(new URL(request.url()).pathname));
  await page.reload();
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  const decoders = () => loaded.filter((path) => /decode|heif|pdf|originals|file-kinds/.test(path));
  expect(loaded.length).toBeGreaterThan(3);
  expect(decoders()).toEqual([]);
  await bring(page, 'turned.heic', '', heicFile({ turns: 3 }));
  await seen(page, 'turned.heic');
  expect(decoders().some((path) => /libheif.*\.wasm$/.test(path))).toBe(true);
  expect(decoders().some((path) => path.includes('pdf'))).toBe(false);
});

test('a phone’s own picture stands on the board as it was held', async () => {
  const board = await openPhotos();
  const { page } = board;
  // The quarters are those of the picture that the file was made from; ISO/IEC 23008-12 says how a file turns it.
  for (const [name, type, file, wanted, size] of [
    // As the chip held it: its EXIF orientation is no order in this format.
    ['on end.heic', 'image/heic', heicFile(), ['010', '000', '100', '001'], [64, 96]],
    // Turned once, by its own property, and not once more by the EXIF orientation that says the same.
    ['turned.heic', '', heicFile({ turns: 3 }), UPRIGHT, [96, 64]],
    ['quarters.avif', 'image/avif', avifFile(), UPRIGHT, [96, 64]],
    ['turned.avif', 'image/avif', avifFile({ turns: 1 }), ['010', '000', '100', '001'], [64, 96]],
  ] as const) {
    await bring(page, name, type, file);
    await expect.poll(async () => (await seen(page, name)).quarters, { message: name }).toEqual(wanted);
    await saved(page);
    expect(storedDocument(board, 'Arm down').photos.at(-1)?.size, name).toEqual(size);
  }
});

test('a phone’s own picture of a shaft’s end is taken for counting its teeth', async () => {
  const { page } = await openBoard();
  await openDemonstration(page, 'Side steer, box too low');
  await page.getByRole('button', { name: 'Shaft', exact: true }).click();
  await page.getByRole('complementary', { name: 'Steering shaft' }).waitFor();
  await page.getByRole('tab', { name: 'Splines' }).click();
  const picture = { name: 'end.heic', mimeType: '', buffer: heicFile({ turns: 3 }) };
  await page.getByLabel('Photo to count teeth on').setInputFiles(picture);
  const canvas = page.locator('canvas[width="96"][height="64"]');
  await canvas.waitFor();
});

describe('a drawing in a PDF', () => {
  /** Points of a sheet of A4 on its side. */
  const A4 = [841.89, 595.28] as const;

  test('comes with its first page, at what drawings are scanned at, and with letters that it does not carry', async () => {
    const board = await openPhotos();
    const { page } = board;
    const file = await drawnPdf([{ size: A4, words: 'AXLE' }, { size: [400, 300] }]);
    await bring(page, 'axle.pdf', 'application/pdf', file);
    const { quarters, white } = await seen(page, 'axle.pdf');
    expect(quarters).toEqual(UPRIGHT);
    // Four capitals of 40 points, white: a stem of them is some 5 points wide, each letter about 2.5 stems of 29 points.
    expect(white).toBeGreaterThan(0.5 * ((4 * 2.5 * 5 * 29) / (A4[0] * A4[1])));
    expect(white).toBeLessThan(2 * ((4 * 2.5 * 5 * 29) / (A4[0] * A4[1])));
    await saved(page);
    const photo = storedDocument(board, 'Arm down').photos[0];
    // 300 px to the inch: 841.89 and 595.28 points of 1/72 in.
    expect(photo?.size).toEqual([3507, 2480]);
    expect(photo?.page).toBeUndefined();
  });

  test('that is a scan in a format of scanners is read by the decoder that comes along', async () => {
    const { page } = await openPhotos();
    await bring(page, 'scan.pdf', 'application/pdf', scanPdf());
    await expect.poll(async () => (await seen(page, 'scan.pdf')).quarters).toEqual(UPRIGHT);
  });

  test('whose page says that it is turned is turned', async () => {
    const { page } = await openPhotos();
    await bring(page, 'turned.pdf', 'application/pdf', await drawnPdf([{ size: [300, 400], turned: 90 }]));
    // A quarter clockwise: the lower left comes to the upper left.
    await expect
      .poll(async () => (await seen(page, 'turned.pdf')).quarters)
      .toEqual(['001', '100', '000', '010']);
  });
});

describe('what cannot be taken', () => {
  const heic = heicFile({ turns: 3 });
  // What its decoder has to know of the picture before all else.
  const scrambled = Buffer.from(heic);
  scrambled.fill(0xff, heic.indexOf('hvcC') + 30, heic.indexOf('hvcC') + 100);

  test('is refused in one line by what it is or what is wrong with it, and nothing is lost', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const { page } = board;
    await pointButton(page, 'Pitman ball').waitFor();
    const pdf = pagesPdf(1);
    const locked = await drawnPdf([{ size: [400, 300] }], 'axle');
    for (const [name, file, reason] of [
      ['broken off.heic', heic.subarray(0, -100), 'it breaks off before its end'],
      ['bomb.heic', claiming(heic, 60_000, 60_000), 'its picture is 60000 by 60000 pixels'],
      ['liar.heic', claiming(heic, 640, 480), 'its picture cannot be decoded'],
      ['scrambled.heic', scrambled, 'its picture cannot be decoded'],
      ['clip.heic', Buffer.from('\0\0\0\x14ftypqt  \0\0\0\0qt  '), 'it is a movie; bring a JPEG'],
      ['broken off.pdf', pdf.subarray(0, -30), 'it breaks off before its end'],
      ['empty.pdf', Buffer.from('%PDF-1.7\n%%EOF\n'), 'it is a PDF that cannot be read'],
      ['locked.pdf', locked, 'it is locked with a password'],
      ['bomb.pdf', bombPdf(60_000, 60_000), 'its page holds a picture of more than 120 million pixels'],
      ['letter.pdf', Buffer.from('PK\x03\x04word/document.xml'), 'it is a Word document; bring a JPEG'],
      [
        'clip.mov',
        Buffer.from('\0\0\0\x14ftypqt  \0\0\0\0qt  '),
        'it is a movie, neither a layout nor a car',
      ],
      ['parts.zip', Buffer.from('PK\x03\x04'), 'it is a ZIP archive, neither a layout nor a car'],
    ] as const) {
      await dropFile(page, name, '', file);
      await page.getByText(new RegExp(`^${name} cannot be (added|imported): ${reason}`)).waitFor();
    }
    expect(storedDocument(board, 'Arm down')).toEqual(sampleLayout('Arm down'));
    await expect.poll(() => page.locator('canvas[data-photo]').count()).toBe(0);
    // The browser notes refused requests on its console by itself.
    const others = board.complaints.filter((text) => !text.includes('status of 422'));
    board.complaints.length = 0;
    expect(others).toEqual([]);
  });

  test('a PDF of thousands of pages, or with a page as large as a field, shows its first page', async () => {
    const board = await openPhotos();
    const { page } = board;
    await bring(page, 'catalogue.pdf', 'application/pdf', pagesPdf(5000));
    await expect
      .poll(async () => (await seen(page, 'catalogue.pdf')).quarters)
      .toEqual(['111', '111', '001', '111']);
    await bring(page, 'field side.pdf', 'application/pdf', hugePagePdf(14_400, 200));
    await seen(page, 'field side.pdf');
    await saved(page);
    expect(storedDocument(board, 'Arm down').photos[1]?.size).toEqual([20_000, 277]);
  });
});
