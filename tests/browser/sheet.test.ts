import type { Download, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { AT_RIDE, DRAWN_VIEWS, drawSvg, formatTrouble } from '../../src-main/output/drawings/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  tabTo,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();

async function openSheet(): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(sampleLayout()) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await board.page.getByRole('button', { name: 'Sheet', exact: true }).click();
  return board;
}

const choose = (page: Page, name: string) => page.getByRole('radio', { name, exact: true }).check();
const picture = (page: Page, name: RegExp) => page.getByRole('img', { name });
const answer = (page: Page) =>
  page.getByRole('complementary', { name: 'What leaves the board' }).getByRole('status');

/** The file that a download brought. */
async function bytesOf(download: Download): Promise<{ name: string; content: Buffer }> {
  const { content } = await downloaded(download);
  return { name: download.suggestedFilename(), content };
}

/** ms for what has many pictures, on the slowest of machines. */
const FILM = 90_000 * SLOWNESS;

async function made(page: Page, button: string, patience?: number) {
  const coming = page.waitForEvent('download', patience === undefined ? {} : { timeout: patience });
  await page.getByRole('button', { name: button, exact: true }).click();
  return bytesOf(await coming);
}

describe('the place Sheet', () => {
  test('shows the build sheet as it will be, page by page', async () => {
    const { page } = await openSheet();
    await picture(page, /^Build sheet, page 1/).waitFor();
    const pages = Number(/of (\d+)/.exec((await page.getByText(/^Page 1 of/).textContent()) ?? '')?.[1]);
    expect(pages).toBeGreaterThan(5);
    const width = (name: RegExp) =>
      picture(page, name).evaluate(
        (img) => (img as HTMLImageElement).naturalWidth / (img as HTMLImageElement).naturalHeight,
      );
    // US letter, lying (ANSI A: 11 by 8 1/2 in).
    await expect.poll(() => width(/^Build sheet, page 1/)).toBeCloseTo(11 / 8.5, 2);
    await page.getByRole('button', { name: 'Next page' }).click();
    await picture(page, /^Build sheet, page 2/).waitFor();
    await page.getByRole('combobox', { name: 'Paper' }).selectOption('A4');
    // ISO 216.
    await expect.poll(() => width(/^Build sheet, page 2/)).toBeCloseTo(297 / 210, 2);
  });

  test('makes the sheet, shows how far it is, and hands over a PDF', async () => {
    const { page } = await openSheet();
    await picture(page, /^Build sheet, page 1/).waitFor();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Make the build sheet' }).click();
    await page.getByRole('progressbar', { name: 'Progress' }).waitFor();
    const { name, content } = await bytesOf(await coming);
    expect(name).toBe('Sample car - Arm down - Build sheet.pdf');
    expect(content.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(content.subarray(-6).toString('latin1')).toContain('%%EOF');
    await answer(page)
      .getByText(/Build sheet\.pdf \(\d+ kB\) is with the browser/)
      .waitFor();
    await expect.poll(() => page.getByRole('progressbar').count()).toBe(0);
  });

  test('is called off, and makes the next thing', async () => {
    const { page } = await openSheet();
    // Held back until it has been called off, so that nothing depends on who is faster.
    let letGo = () => {};
    const held = new Promise<void>((done) => {
      letGo = done;
    });
    await page.route('**/rpc', async (route) => {
      const { name, input } = route.request().postDataJSON() as {
        name: string;
        input: { preview?: boolean };
      };
      if (name === 'output.start' && !input.preview) await held;
      await route.continue();
    });
    await page.getByRole('button', { name: 'Make the build sheet' }).click();
    await page.getByRole('button', { name: 'Cancel it' }).click();
    letGo();
    await answer(page).getByText('Cancelled. Nothing was written.').waitFor();
    await page.unroute('**/rpc');
    await choose(page, 'Data');
    const { content } = await made(page, 'Make the file');
    expect(content.toString('utf8')).toMatch(/^\uFEFFpoint,name,carriedBy,x,y,z,origin\r\n/);
  });

  test('gives drawings, curves and data by their first bytes', async () => {
    const { page } = await openSheet();
    await choose(page, 'Drawing');
    await picture(page, /^Drawing/).waitFor();
    const dxf = await made(page, 'Make the drawing');
    expect(dxf.name).toBe('Sample car - Arm down - Side view.dxf');
    expect(dxf.content.toString('latin1')).toContain('$INSUNITS');
    await page.getByRole('combobox', { name: 'View' }).selectOption('Top view');
    await page.getByRole('combobox', { name: 'File' }).selectOption('PNG, a picture');
    const png = await made(page, 'Make the drawing');
    expect(png.name).toBe('Sample car - Arm down - Top view.png');
    expect(png.content.subarray(0, 4).toString('latin1')).toBe('\x89PNG');
    await choose(page, 'Curves');
    const svg = await made(page, 'Make the curves');
    expect(svg.content.toString('utf8')).toMatch(/^<\?xml [^>]*>\n<svg /);
    await choose(page, 'Data');
    await page.getByRole('combobox', { name: 'Of what' }).selectOption('This layout (JSON)');
    const json = await made(page, 'Make the file');
    expect(JSON.parse(json.content.toString('utf8'))).toMatchObject({
      format: 'toeboard-layout',
      name: 'Arm down',
    });
  });

  test('gives the page that moves, a film and the car in space', async () => {
    const { page } = await openSheet();
    await choose(page, 'Page that moves');
    await picture(page, /^Page that moves/).waitFor();
    // The car has one variant: there is none to be shown beside it.
    await expect.poll(() => page.getByRole('combobox', { name: 'Variant beside it' }).count()).toBe(0);
    const moving = await made(page, 'Make the page that moves');
    expect(moving.name).toBe('Sample car - Arm down - Page that moves.html');
    expect(moving.content.toString('utf8')).toMatch(/^<!doctype html>/);
    await choose(page, 'Film of the travel');
    await picture(page, /^Film of the travel, page 1/).waitFor();
    await page.getByRole('combobox', { name: 'Through its' }).selectOption('Roll');
    await page.getByRole('combobox', { name: 'There and back in' }).selectOption('2 seconds');
    const film = await made(page, 'Make the film', FILM);
    expect(film.name).toBe('Sample car - Arm down - Film.png');
    // Frames as they stand in the file (PNG, third edition, 11.3.6.1): 2 seconds of 12.
    const control = film.content.indexOf('acTL', 0, 'latin1');
    expect(film.content.readUInt32BE(control + 4)).toBe(24);
    await choose(page, 'Drawing');
    await page.getByRole('combobox', { name: 'View' }).selectOption('Pictorial, in space');
    await page.getByRole('combobox', { name: 'Seen from' }).selectOption('ahead and its right');
    await expect.poll(() => page.getByRole('combobox', { name: 'File' }).getByRole('option').count()).toBe(2);
    const space = await made(page, 'Make the drawing');
    expect(space.name).toBe('Sample car - Arm down - Pictorial.svg');
    expect(space.content.toString('utf8')).toContain('seen from ahead 45.0° round to its right');
  });

  test('the drawing is of the layout as it is now, in the pose it stands in', async () => {
    const { page } = await openSheet();
    await page.getByRole('button', { name: 'Layout', exact: true }).click();
    await page.getByRole('slider', { name: 'Heave', exact: true }).focus();
    await page.keyboard.press('PageUp');
    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    await choose(page, 'Drawing');
    await page.getByRole('checkbox', { name: /As the car stands/ }).check();
    await page.getByRole('combobox', { name: 'File' }).selectOption('SVG, vectors');
    const posed = (await made(page, 'Make the drawing')).content.toString('utf8');
    expect(posed).toContain('of bump');
    await page.getByRole('checkbox', { name: /As the car stands/ }).uncheck();
    const ride = (await made(page, 'Make the drawing')).content.toString('utf8');
    expect(ride).toContain('at ride height, wheels straight ahead');
  });

  test('tells in one sentence why there is no file', async () => {
    const board = await openSheet();
    const { page } = board;
    await picture(page, /^Build sheet, page 1/).waitFor();
    await page.route('**/output/**', (route) => route.fulfill({ status: 404, body: '{}' }));
    await page.getByRole('button', { name: 'Make the build sheet' }).click();
    await answer(page).getByText('Not written: it is no longer kept: make it again.').waitFor();
    await page.unroute('**/output/**');
    expect((await made(page, 'Make the build sheet')).content.length).toBeGreaterThan(10_000);
    // The browser itself tells of the status that was put in its way.
    board.complaints.length = 0;
  });

  test('by keys alone', async () => {
    const { page } = await openSheet();
    await tabTo(page, 'Sheet');
    const radio = page.getByRole('radio', { name: 'Build sheet' });
    for (
      let presses = 0;
      presses < 30 && !(await radio.evaluate((e) => e === document.activeElement));
      presses += 1
    )
      await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.getByRole('radio', { name: 'Customer’s copy' }).isChecked()).toBe(true);
    await tabTo(page, 'Make the customer’s copy');
    const coming = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    expect((await bytesOf(await coming)).content.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    // The hand is still on the button.
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent?.trim()))
      .toBe('Make the customer’s copy');
  });

  test('has nothing that a checker of accessibility objects to', async () => {
    const { page, context } = await openSheet();
    await bringChecker(context);
    await page.reload();
    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    await picture(page, /^Build sheet, page 1/).waitFor();
    expect(await violations(page)).toEqual([]);
    await choose(page, 'Drawing');
    await picture(page, /^Drawing/).waitFor();
    expect(await violations(page)).toEqual([]);
    await choose(page, 'Data');
    await page.getByRole('cell', { name: 'steering.box.pitmanBall', exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);
    await saved(page);
  });

  test('every SVG is well formed to a strict reader of XML, letters as text or as outlines', async () => {
    const { page } = await openSheet();
    const document = { ...sampleLayout(), name: 'A & B <c> "d" ’ ü' };
    for (const view of DRAWN_VIEWS.filter((each) => formatTrouble(each, 'svg') === undefined))
      for (const lettering of ['text', 'outlines'] as const) {
        const { svg } = drawSvg(
          { view, format: 'svg', document, unit: 'in', fraction: 16, pose: AT_RIDE },
          lettering,
        );
        const read = await page.evaluate((text) => {
          const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
          const root = parsed.documentElement;
          const lost = [...parsed.querySelectorAll('use')].filter(
            (use) => !parsed.getElementById((use.getAttribute('href') ?? '').slice(1)),
          );
          return {
            trouble: parsed.querySelector('parsererror')?.textContent ?? '',
            root: `${root.namespaceURI} ${root.localName}`,
            about: parsed.querySelector('desc')?.textContent ?? '',
            lost: lost.length,
          };
        }, svg);
        expect(read).toEqual({
          trouble: '',
          root: 'http://www.w3.org/2000/svg svg',
          about: 'A & B <c> "d" ’ ü',
          lost: 0,
        });
      }
  });
});
