import { expect, test } from 'vitest';
import { bringChecker, violations } from '../support/accessibility.ts';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();

test('a dark ground is chosen in the bar, kept over a reload, and every place can be read on it', async () => {
  const { page, context } = await openBoard();
  await bringChecker(context);
  await page.reload();
  await openDemonstration(page, 'Cross steer on parallel leaves');
  const button = page.getByRole('button', { name: 'Dark ground' });
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  /** How bright the strokes of some canvases, all unless given, are on the whole, 0 to 255. */
  const brightness = (of = '') =>
    page.evaluate((within) => {
      let [sum, count] = [0, 0];
      for (const canvas of document.querySelectorAll<HTMLCanvasElement>(`${within} canvas`)) {
        const { width, height } = canvas;
        if (!width || !height) continue;
        // A copy of its own to read: the board's is drawn on, not read.
        const copy = Object.assign(document.createElement('canvas'), { width, height });
        const context = copy.getContext('2d', { willReadFrequently: true });
        context?.drawImage(canvas, 0, 0);
        const data = context?.getImageData(0, 0, width, height).data;
        for (let at = 0; data && at < data.length; at += 4)
          if ((data[at + 3] ?? 0) > 200) {
            sum += data[at + 1] ?? 0;
            count += 1;
          }
      }
      return sum / count;
    }, of);
  const PICTORIAL = '[aria-label="Pictorial"]';
  const day = await paper();
  const byDay = await brightness();
  const inSpaceByDay = await brightness(PICTORIAL);
  await button.click();
  await expect.poll(paper).not.toBe(day);
  await expect.poll(() => button.getAttribute('aria-pressed')).toBe('true');
  // The car was light paper under dark lines, and is dark under light ones.
  await expect.poll(() => brightness()).toBeLessThan(byDay - 60);
  await expect.poll(() => brightness(PICTORIAL)).toBeLessThan(inSpaceByDay - 60);
  for (const place of ['Turn', 'Shaft', 'Sheet', 'Measure', 'Layout']) {
    await page
      .getByRole('navigation', { name: 'Places' })
      .getByRole('button', { name: place, exact: true })
      .click();
    await page.locator('main, [role="main"], #app').first().waitFor();
    expect(await violations(page), place).toEqual([]);
  }
  const night = await paper();
  await context.addInitScript(() => {
    const grounds: string[] = [];
    Object.assign(globalThis, { grounds });
    const look = () => {
      const ground = document.documentElement.dataset['ground'] ?? 'day';
      if (grounds.at(-1) !== ground) grounds.push(ground);
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  await page.reload();
  await expect.poll(paper).toBe(night);
  await button.waitFor();
  await expect.poll(() => button.getAttribute('aria-pressed')).toBe('true');
  // Not for one picture was it paper.
  await expect
    .poll(() => page.evaluate(() => (globalThis as unknown as { grounds: string[] }).grounds))
    .toEqual(['night']);
  await button.click();
  await expect.poll(paper).toBe(day);
});

test('the ground follows the computer until one is chosen', async () => {
  const { page } = await openBoard();
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const day = await paper();
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect.poll(paper).not.toBe(day);
  await page.getByRole('button', { name: 'Dark ground' }).click();
  await expect.poll(paper).toBe(day);
});
