import { readFileSync } from 'node:fs';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { pointButton, saved, useBrowser, withSample } from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { SLOWNESS } from '../support/slow-machine.ts';
import { pageOf, settled } from '../support/trace-pointer.ts';

const openBoard = useBrowser();

/** A phone's largest picture, px. */
const WIDE = 8064;
const HIGH = 6048;
/** Where fine stripes stand in it: columns of one px, red and blue by turns, which any reduction makes one purple. */
const STRIPES = { x: 5200, y: 3100, across: 40 } as const;

/** Makes the picture in the page and hands it to the board as a file. */
async function bringLarge(page: Page): Promise<number> {
  return page.evaluate(
    async ([width, height, { x, y, across }]) => {
      const canvas = new OffscreenCanvas(width, height);
      const paint = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
      paint.fillStyle = '#999';
      paint.fillRect(0, 0, width, height);
      for (let i = 0; i < 60; i += 1) {
        paint.fillStyle = `hsl(${i * 37} 40% 60%)`;
        paint.fillRect((i * 977) % width, (i * 1399) % height, 700, 500);
      }
      for (let i = 0; i < across; i += 1) {
        paint.fillStyle = i % 2 === 0 ? '#f00' : '#00f';
        paint.fillRect(x + i, y, 1, across);
      }
      const file = new File([await canvas.convertToBlob({ type: 'image/png' })], 'large side.png', {
        type: 'image/png',
      });
      const carried = new DataTransfer();
      carried.items.add(file);
      const input = document.querySelector<HTMLInputElement>('input[aria-label="Photos to add"]');
      if (!input) throw new Error('there is no place to bring a photo in');
      input.files = carried.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
      return file.size;
    },
    [WIDE, HIGH, STRIPES] as const,
  );
}

/** How many pixels of a canvas are pure red, pure blue, and neither but mixed from both. */
function stripes(page: Page, selector: string): Promise<{ red: number; blue: number; purple: number }> {
  return page.locator(selector).evaluate((shown: HTMLCanvasElement) => {
    const own = new OffscreenCanvas(shown.width, shown.height).getContext('2d', { willReadFrequently: true });
    own?.drawImage(shown, 0, 0);
    const data = own?.getImageData(0, 0, shown.width, shown.height).data ?? new Uint8ClampedArray();
    const found = { red: 0, blue: 0, purple: 0 };
    for (let i = 0; i < data.length; i += 4) {
      const [r = 0, g = 0, b = 0] = data.slice(i, i + 3);
      if (g > 30) continue;
      if (r > 200 && b < 55) found.red += 1;
      else if (b > 200 && r < 55) found.blue += 1;
      else if (r > 80 && r < 180 && b > 80 && b < 180) found.purple += 1;
    }
    return found;
  });
}

interface Cost {
  /** ms of processor that the page's own thread takes for each frame: script, and all of its work. */
  readonly script: number;
  readonly all: number;
}

async function figures(cdp: CDPSession): Promise<Cost> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  const named = (name: string) => 1000 * (metrics.find((each) => each.name === name)?.value ?? 0);
  return { script: named('ScriptDuration'), all: named('TaskDuration') };
}

const FRAMES = 60;

/** Moves the paper to and fro, a step a frame, as a hand does that drags it. */
async function pan(page: Page, cdp: CDPSession): Promise<Cost> {
  const before = await figures(cdp);
  await page.evaluate(async (frames) => {
    const paper = document.querySelector('.paper') as HTMLElement;
    const { x, y, width, height } = paper.getBoundingClientRect();
    for (let i = 0; i < frames; i += 1) {
      const way = i % 20 < 10 ? 1 : -1;
      paper.dispatchEvent(
        new WheelEvent('wheel', {
          clientX: x + width / 2,
          clientY: y + height / 2,
          deltaY: 17 * way,
          shiftKey: true,
          bubbles: true,
          cancelable: true,
        }),
      );
      await new Promise((done) => requestAnimationFrame(() => done(null)));
    }
  }, FRAMES);
  const after = await figures(cdp);
  return { script: (after.script - before.script) / FRAMES, all: (after.all - before.all) / FRAMES };
}

/** The least that a frame of panning takes, at the present sight, with the photo and without it, by turns. */
async function compared(page: Page, cdp: CDPSession): Promise<{ shown: Cost; hidden: Cost }> {
  const least = (costs: Cost[]): Cost => ({
    script: Math.min(...costs.map(({ script }) => script)),
    all: Math.min(...costs.map(({ all }) => all)),
  });
  const costs: Record<'shown' | 'hidden', Cost[]> = { shown: [], hidden: [] };
  const box = page.getByRole('checkbox', { name: 'Shown' });
  for (let round = 0; round < 3; round += 1) {
    costs.shown.push(await pan(page, cdp));
    await box.uncheck();
    await page.locator('canvas[data-photo]').waitFor({ state: 'detached' });
    await saved(page);
    costs.hidden.push(await pan(page, cdp));
    await box.check();
    await page.locator('canvas[data-photo][data-laid]').waitFor();
    await saved(page);
    await boardAtRest(page);
  }
  return { shown: least(costs.shown), hidden: least(costs.hidden) };
}

/** MB that the browser's pages and their workers have in memory by now; undefined where the system does not say. */
async function resident(browser: Browser | null): Promise<number | undefined> {
  const session = await browser?.newBrowserCDPSession();
  const { processInfo = [] } = (await session?.send('SystemInfo.getProcessInfo')) ?? {};
  await session?.detach();
  try {
    return processInfo
      .filter(({ type }) => type === 'renderer')
      .map(({ id }) => /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1])
      .reduce((sum, kB) => sum + Number(kB) / 1000, 0);
  } catch {
    return undefined;
  }
}

test('a picture of 48 megapixels is looked at closely in its own pixels, and the paper moves as if it were not there', {
  timeout: 180_000 * SLOWNESS,
}, async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  const cdp = await board.context.newCDPSession(page);
  // Of the processor, not by the clock: others work on the same machine.
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  const before = await resident(board.context.browser());
  const begun = Date.now();
  const bytes = await bringLarge(page);
  const whole = 'canvas[data-photo="large side.png"]';
  await page.locator(`${whole}[data-laid]`).waitFor({ timeout: 60_000 * SLOWNESS });
  const shown = Date.now() - begun;
  await page.getByRole('button', { name: 'Whole photo' }).click();
  await boardAtRest(page);
  // What is reduced has lost the stripes, so that finding them says that the original is seen.
  const reduced = await stripes(page, whole);
  expect(reduced.red + reduced.blue).toBe(0);
  expect(reduced.purple).toBeGreaterThan(0);

  await page.getByRole('button', { name: /^Scale\b/ }).click();
  const middle = [STRIPES.x + STRIPES.across / 2, STRIPES.y + STRIPES.across / 2] as const;
  const [x, y] = await pageOf(page, middle);
  const asked = Date.now();
  await page.mouse.move(x, y);
  await page.locator('[data-loupe="original"]').waitFor({ timeout: 60_000 * SLOWNESS });
  const opened = Date.now() - asked;
  const loupe = await stripes(page, '[data-loupe="original"] canvas');
  expect(loupe.red).toBeGreaterThan(200);
  expect(loupe.blue).toBeGreaterThan(200);
  expect(loupe.purple).toBe(0);

  // From close by, a px of the original is larger than one of the screen.
  for (let turn = 0; turn < 14; turn += 1) {
    await page.mouse.wheel(0, -240);
    await settled(page);
  }
  await boardAtRest(page);
  await page.locator('canvas[data-close]').waitFor({ timeout: 60_000 * SLOWNESS });
  await expect.poll(async () => (await stripes(page, 'canvas[data-close]')).red).toBeGreaterThan(1000);
  const close = await stripes(page, 'canvas[data-close]');
  expect(close.blue).toBeGreaterThan(1000);
  expect(close.purple).toBeLessThan(close.red + close.blue);
  const full = await resident(board.context.browser());

  await page.keyboard.press('Escape');
  const near = await compared(page, cdp);
  await page.getByRole('button', { name: 'Whole photo' }).click();
  await boardAtRest(page);
  const far = await compared(page, cdp);
  process.stdout.write(
    `48 megapixels (${(bytes / 1e6).toFixed(1)} MB): on the board in ${shown} ms, in the loupe after ${opened} ms\n`,
  );
  for (const [where, { shown, hidden }] of [
    ['from close by', near],
    ['as a whole', far],
  ] as const)
    process.stdout.write(
      `48 megapixels ${where}: a frame of panning takes ${shown.script.toFixed(2)} ms of script, ${hidden.script.toFixed(2)} without the photo (${(shown.script / hidden.script).toFixed(2)} times); all of the page's work ${shown.all.toFixed(1)} and ${hidden.all.toFixed(1)} ms\n`,
    );
  if (before !== undefined && full !== undefined)
    process.stdout.write(
      `48 megapixels: the pages had ${before.toFixed(0)} MB before, ${full.toFixed(0)} MB with it open in full\n`,
    );
  for (const { shown, hidden } of [near, far]) expect(shown.script - hidden.script).toBeLessThan(2);
});
