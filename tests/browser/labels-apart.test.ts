import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';
import { framesDrawn, piecesThere } from '../support/frames.ts';
import { SLOWNESS } from '../support/slow-machine.ts';
import { paintedAtRest, rememberPainted, unreadable } from '../support/written-words.ts';

const openBoard = useBrowser();

const SIZES = [
  [1024, 640],
  [1280, 720],
  [1440, 900],
] as const;

const places = (page: Page) => page.getByRole('navigation', { name: 'Places' }).getByRole('button');
const tabs = (page: Page) => page.locator('.column [role="tab"]');

/** What cannot be read, each time with where it was met. What is on its way gets the time to arrive. */
async function faultsAt(page: Page, where: string): Promise<string[]> {
  await piecesThere(page);
  // Words look for room in these, once more when all is at rest.
  if (/ (Layout|Turn)$/.test(where)) await paintedAtRest(page);
  else await framesDrawn(page, 2);
  if ((await unreadable(page)).length === 0) return [];
  await paintedAtRest(page);
  return (await unreadable(page)).map((fault) => `${where}: ${fault}`);
}

async function faultsOfPlace(page: Page, where: string, everyTab: boolean): Promise<string[]> {
  const faults = await faultsAt(page, where);
  if (!everyTab) return faults;
  const names = await tabs(page).allTextContents();
  for (const [at, name] of names.entries()) {
    await tabs(page).nth(at).click();
    faults.push(...(await faultsAt(page, `${where}, ${name.trim()}`)));
  }
  if (names.length > 0) await tabs(page).first().click();
  return faults;
}

/** Places whose words are another car's others, in a window with room for them. */
const BY_CAR = ['Measure', 'Layout', 'Turn', 'Shaft', 'Road'];

/**
 * All places and their tabs in the smallest window, where they have least room; in the others all places of the first car, and of
 * the rest those that a car changes.
 */
async function faultsOfCar(page: Page, car: string, isFirst: boolean): Promise<string[]> {
  const faults: string[] = [];
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    const names = await places(page).allTextContents();
    for (const [at, name] of names.entries()) {
      if (width > 1024 && !isFirst && !BY_CAR.includes(name.trim())) continue;
      await places(page).nth(at).click();
      // The column of these two is that of Layout.
      const own = name.trim() !== 'Turn' && name.trim() !== 'Sheet';
      faults.push(
        ...(await faultsOfPlace(page, `${car}, ${width} px, ${name.trim()}`, own && width === 1024)),
      );
    }
    await page.getByRole('button', { name: 'Layout', exact: true }).click();
  }
  return faults;
}

// A hundred and more sights of the page, each measured: minutes where eight programs wait for each processor.
const SIGHTS = 300_000 * SLOWNESS;

test('no words lie over other words or are cut off, in any place of any demonstration', {
  timeout: SIGHTS,
}, async () => {
  const { page, context } = await openBoard({ column: 'verdict' });
  await rememberPainted(context);
  await page.reload();
  const first = page.getByRole('button', { name: 'Side steer, box too low' });
  await first.waitFor();
  const faults: string[] = [];
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    faults.push(...(await faultsAt(page, `clean sheet, ${width} px`)));
  }
  await first.click();
  await page.getByRole('tab', { name: 'Verdict' }).waitFor();
  await page.keyboard.press('c');
  const rows = page.locator('[data-row^="variant-"]');
  await rows.first().waitFor();
  const cars = await rows.evaluateAll((all) =>
    all.map((row) => [row.getAttribute('data-row') ?? '', row.textContent?.trim() ?? ''] as const),
  );
  expect(cars).toHaveLength(5);
  await page.keyboard.press('Escape');
  await rows.first().waitFor({ state: 'detached' });
  for (const [at, [row, name]] of cars.entries()) {
    if (!(await page.title()).startsWith(name)) {
      await page.keyboard.press('c');
      await page.locator(`[data-row="${row}"]`).click();
      await rows.first().waitFor({ state: 'detached' });
    }
    await expect.poll(() => page.title()).toBe(`${name} – Toeboard`);
    faults.push(...(await faultsOfCar(page, name, at === 0)));
  }
  expect(faults).toEqual([]);
});

test('sliders and curves fold to what they say, by keyboard as well, and stay so', async () => {
  const { page } = await openBoard({ size: { width: 1024, height: 640 } });
  await openDemonstration(page, 'Side steer, box too low');
  const fold = (what: string) => page.getByRole('button', { name: what, exact: true });
  const strip = page.getByRole('region', { name: 'Pose and curves' });
  const boardHeight = async () =>
    (await page.getByRole('main', { name: 'Board' }).boundingBox())?.height ?? 0;
  const before = await boardHeight();
  await expect.poll(() => fold('Sliders').getAttribute('aria-expanded')).toBe('true');
  await fold('Curves').click();
  await strip.getByText('Worst bump steer 3.82°').waitFor();
  await strip.getByText('Toe, both wheels: toe-in').waitFor();
  await expect.poll(() => page.locator('[data-curve]').count()).toBe(0);
  // The sliders still move the car, now along the strip.
  await page.getByRole('slider', { name: 'Heave', exact: true }).focus();
  await page.keyboard.press('End');
  await fold('Sliders').focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => fold('Sliders').getAttribute('aria-expanded')).toBe('false');
  await strip.getByText('Heave +3 in · Roll 0° · Handwheel 0° · Braking off').waitFor();
  await expect.poll(() => page.getByRole('slider', { name: 'Heave', exact: true }).count()).toBe(0);
  // More than a quarter of the window's height comes to the drawing.
  await expect.poll(boardHeight).toBeGreaterThan(before + 160);
  await page.reload();
  await strip.getByText('Heave 0 in').waitFor();
  await expect.poll(() => fold('Curves').getAttribute('aria-expanded')).toBe('false');
  await fold('Sliders').click();
  await page.getByRole('slider', { name: 'Heave', exact: true }).waitFor();
  await fold('Curves').click();
  await page.locator('[data-curve]').first().waitFor();
  await expect.poll(boardHeight).toBe(before);
});
