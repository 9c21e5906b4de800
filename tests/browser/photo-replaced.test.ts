import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Photo } from '../../shared-math/layout/index.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  storedDocument,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { drawnPdf } from '../support/pdf-files.ts';
import { greyPng, pngFile } from '../support/picture-files.ts';
import { pixelsOf } from '../support/pictures.ts';
import { clickPhoto, pageOf } from '../support/trace-pointer.ts';

const openBoard = useBrowser();

async function openPhotos() {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  return board;
}

const shows = (page: Page, name: string) => page.locator(`canvas[data-photo="${name}"][data-laid]`).waitFor();

async function bring(page: Page, name: string, buffer: Buffer, mimeType = 'image/png'): Promise<void> {
  await page.getByLabel('Photos to add').setInputFiles({ name, mimeType, buffer });
  await shows(page, name);
  await boardAtRest(page);
}

const replaceWith = (page: Page, name: string, buffer: Buffer) =>
  page.getByLabel('Photo to replace it with').setInputFiles({ name, mimeType: 'image/png', buffer });

async function stored(board: OpenBoard): Promise<readonly Photo[]> {
  await saved(board.page);
  return storedDocument(board, 'Arm down').photos;
}

async function scale(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Scale\b/ }).click();
  await clickPhoto(page, [100, 100]);
  await clickPhoto(page, [300, 100]);
  const field = page.getByRole('textbox', { name: 'True distance' });
  await field.fill('1000 mm');
  await field.press('Enter');
}

test('another picture takes a photo’s place: its marks go along where they fit, and are asked about where not', async () => {
  const board = await openPhotos();
  const { page } = board;
  await bring(page, 'first side.png', greyPng(120, 400, 300));
  await scale(page);
  const [first] = await stored(board);
  if (!first?.scale) throw new Error('the scale was not taken');

  // The same shape in twice the px.
  await replaceWith(page, 'better side.png', greyPng(140, 800, 600));
  await shows(page, 'better side.png');
  await page.getByText('The marks are kept, to the new size').waitFor();
  const [better] = await stored(board);
  expect(better?.size).toEqual([800, 600]);
  expect(better?.scale).toEqual({
    from: first.scale.from.map((px) => 2 * px),
    to: first.scale.to.map((px) => 2 * px),
    distance: 1000,
  });
  await page.getByRole('button', { name: 'Undo: Replace first side.png' }).click();
  await shows(page, 'first side.png');
  await expect.poll(() => stored(board)).toEqual([first]);

  // Another shape: nothing happens before it is answered.
  const asked = page.getByRole('region', { name: 'Another picture' });
  await replaceWith(page, 'upright side.png', greyPng(160, 300, 400));
  await asked
    .getByText('upright side.png has another shape, 300 by 400 pixels instead of 400 by 300')
    .waitFor();
  await expect.poll(() => asked.getByRole('button', { name: 'Use it and keep the marks' }).count()).toBe(0);
  await asked.getByRole('button', { name: 'Keep the picture as it is' }).click();
  await asked.waitFor({ state: 'detached' });
  await expect.poll(() => stored(board)).toEqual([first]);
  await replaceWith(page, 'upright side.png', greyPng(160, 300, 400));
  await asked.getByRole('button', { name: 'Use it without the marks' }).click();
  await shows(page, 'upright side.png');
  const [upright] = await stored(board);
  expect([upright?.size, upright?.scale, upright?.view]).toEqual([[300, 400], undefined, 'side']);
  await page.getByRole('button', { name: 'Undo: Replace first side.png' }).click();
  await shows(page, 'first side.png');
  await expect.poll(() => stored(board)).toEqual([first]);

  // What cannot be taken leaves the photo as it is.
  await replaceWith(page, 'letter.png', Buffer.from('Dear customer'));
  await page.getByText('letter.png cannot be added: it is plain text').waitFor();
  await expect.poll(() => stored(board)).toEqual([first]);
  board.complaints.length = 0;
});

test('a drawing of several pages is turned, and what was marked on one goes to another only if that is wanted', async () => {
  const board = await openPhotos();
  const { page } = board;
  const size = [400, 300] as const;
  const file = await drawnPdf(
    ['#c00', '#0c0', '#00c'].map((colour) => ({ size, colours: [colour, colour, colour, colour] })),
  );
  await bring(page, 'axle side.pdf', file, 'application/pdf');
  const field = page.getByRole('textbox', { name: 'Page of the drawing, of 3' });
  await expect.poll(() => field.inputValue()).toBe('1');
  const turn = async (to: string) => {
    await field.fill(to);
    await field.press('Enter');
  };
  await turn('4');
  await page.getByText('a page from 1 to 3').waitFor();
  await turn('2');
  await expect.poll(async () => (await stored(board))[0]?.page).toBe(2);
  await shows(page, 'axle side.pdf');
  // Fresh photos are seen through a little: the green of the second page over the paper.
  await expect
    .poll(async () => (await colourAt(page, [300, 300])).map((level) => level > 127))
    .toEqual([false, true, false]);

  await scale(page);
  const marked = await stored(board);
  await turn('3');
  const asked = page.getByRole('region', { name: 'Another picture' });
  await asked.getByText('Page 3 is another drawing than the one that you marked.').waitFor();
  await asked.getByRole('button', { name: 'Use it and keep the marks' }).click();
  await expect.poll(async () => (await stored(board))[0]).toEqual({ ...marked[0], page: 3 });
  await page.getByRole('button', { name: 'Undo: Turn to page 3 of axle side.pdf' }).click();
  await expect.poll(() => stored(board)).toEqual(marked);
});

/** The colour on the screen where a px of the photo that is worked at shows. */
async function colourAt(page: Page, px: readonly [number, number]): Promise<number[]> {
  const [x, y] = await pageOf(page, px);
  const shot = await page.screenshot({ clip: { x: Math.round(x), y: Math.round(y), width: 2, height: 2 } });
  return [...pixelsOf(shot, 2).rgba.slice(0, 3)];
}

test('of several photos of one side one is in front: the one that is worked at, else the one that was put there', async () => {
  const board = await openPhotos();
  const { page } = board;
  const plain = (red: number, green: number) =>
    pngFile(
      40,
      30,
      Uint8Array.from({ length: 3 * 40 * 30 }, (_, i) => [red, green, 0][i % 3] as number),
    );
  for (const [name, red, green] of [
    ['red side.png', 250, 0],
    ['green side.png', 0, 250],
  ] as const) {
    await bring(page, name, plain(red, green));
    await page.getByRole('slider', { name: 'Strength' }).fill('100');
  }
  const spot = [3, 3] as const;
  const isRed = async () => {
    const [red = 0, green = 0] = await colourAt(page, spot);
    return red > green;
  };
  await expect.poll(isRed).toBe(false);
  await page.getByRole('button', { name: /^red side\.png/ }).click();
  await expect.poll(isRed).toBe(true);

  // Elsewhere in the program the later one lies over the other, until one is put in front.
  const sides = page.getByRole('tab', { name: 'From photos' });
  const away = () => page.getByRole('tab', { name: 'By tape' }).click();
  await away();
  await expect.poll(isRed).toBe(false);
  await sides.click();
  await page.getByRole('button', { name: 'Put in front' }).click();
  await away();
  await expect.poll(isRed).toBe(true);
  await expect.poll(async () => (await stored(board)).map(({ front }) => front)).toEqual([true, undefined]);
  await sides.click();
  await page.getByRole('button', { name: /^green side\.png/ }).click();
  await page.getByRole('button', { name: 'Put in front' }).click();
  await expect.poll(async () => (await stored(board)).map(({ front }) => front)).toEqual([undefined, true]);

  // Taken off the board, and brought back as it lay.
  await page.getByRole('button', { name: 'Remove from the board' }).click();
  await expect.poll(() => stored(board)).toHaveLength(1);
  await page.getByRole('button', { name: 'Undo: Remove green side.png from the board' }).click();
  await shows(page, 'green side.png');
  await expect.poll(async () => (await stored(board)).map(({ front }) => front)).toEqual([undefined, true]);
});
