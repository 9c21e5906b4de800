import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { saved, storedDocument, useBrowser, withSample } from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { photographedCar, SHOTS, type Shot } from '../support/photo-scene.ts';
import { photographed } from '../support/pinhole.ts';
import { SLOWNESS } from '../support/slow-machine.ts';
import { clickPhoto } from '../support/trace-pointer.ts';

const openBoard = useBrowser();
const PHOTOS = join(import.meta.dirname, '../../projects/photos');
const [SIDE] = SHOTS as [Shot, Shot];

async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['TOEBOARD_LOOK'];
  if (folder) await page.screenshot({ path: `${folder}/${name}.png` });
}

async function openPhotos(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  await page.getByRole('complementary', { name: 'Trace over a photo' }).waitFor();
}

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label });
  await field.fill(text);
  await field.press('Enter');
}

const step = (page: Page, name: string) =>
  page.getByRole('button', { name: new RegExp(`^!?\\s*${name}\\b`) });
const click = (page: Page, point: Point) => clickPhoto(page, photographed(SIDE.camera, point));
const given = (page: Page) =>
  page.locator('[data-given]').evaluateAll((all) => all.map((each) => each.getAttribute('data-given')));

/** The photographed car without photos and with nothing measured: the first photo is still to be taken. */
const bare = () => ({ ...photographedCar(), name: 'To be photographed', photos: [], origins: {} });

describe.each([
  { width: 1440, height: 900 },
  { width: 1280, height: 720 },
])('a photo at $width x $height', (size) => {
  test('is guided to be taken, has no tick for what nobody gave, and says what that costs', {
    timeout: 120_000 * SLOWNESS,
  }, async () => {
    const board = await openBoard({ size, prepare: withSample(bare()) });
    const { page, context } = board;
    await bringChecker(context);
    await page.reload();
    await openPhotos(page);
    await page.getByRole('img', { name: /a phone stands square to the car/ }).waitFor();
    await picture(page, `guide-${size.width}`);
    expect(await violations(page)).toEqual([]);

    await page.getByLabel('Photos to add').setInputFiles(join(PHOTOS, SIDE.file));
    await page.locator(`canvas[data-photo="${SIDE.file}"][data-laid]`).waitFor();
    await step(page, 'Straighten').click();
    await type(page, 'It is wide', `${SIDE.width} mm`);
    await type(page, 'It is high', `${SIDE.height} mm`);
    for (const corner of SIDE.frame) await click(page, corner);
    await page.getByLabel('The photo straightened').waitFor();
    await step(page, 'Place').click();
    await click(page, resolveLayout(photographedCar()).axle.left.wheelCentre);

    const left = page.locator('[data-trace="left-out"]');
    await left.getByText(/How far the camera stood is not given/).waitFor();
    await left.getByText(/Where the plane stands is not given/).waitFor();
    await expect.poll(() => given(page)).toEqual(['false', 'false']);
    await page.getByRole('button', { name: 'As the camera saw it' }).click();
    await page
      .locator('[data-seen="lacking"]')
      .getByText(/It still needs how far the camera stood/)
      .waitFor();
    await boardAtRest(page);
    await left.scrollIntoViewIfNeeded();
    await picture(page, `left-out-${size.width}`);
    expect(await violations(page)).toEqual([]);

    await type(page, 'Camera from that plane', `${SIDE.distance} mm`);
    await left.getByText(/Each inch that it stands elsewhere/).waitFor();
    await page.locator('[data-seen="on"]').waitFor();
    await type(page, 'The plane that is to scale', `${SIDE.depth} mm`);
    await left.getByText(/Where the plane stands/).waitFor({ state: 'detached' });
    await left.getByText(/taken for granted/).waitFor();
    await expect.poll(() => given(page)).toEqual(['true', 'true']);

    // The lens still bends, so the level is checked near the middle: the two tyres' heights as they stand on the floor.
    await step(page, 'Level').click();
    await page.getByRole('button', { name: 'Click the floor twice' }).click();
    await click(page, [100, SIDE.depth, 120]);
    await click(page, [-900, SIDE.depth, 120]);
    await page.locator('[data-level="agrees"]').waitFor();
    await left.waitFor({ state: 'detached' });
    // What is foretold comes from beside the page: one photo says nothing of depth, another from elsewhere does.
    const advice = page.locator('[data-trace="advice"] li');
    await advice
      .first()
      .getByText(/so far nothing says how deep they stand/)
      .waitFor();
    await advice.first().scrollIntoViewIfNeeded();
    await picture(page, `advice-${size.width}`);
    await page.getByRole('button', { name: 'Click the floor twice' }).click();
    await click(page, [150, SIDE.depth, 220]);
    await click(page, [-850, SIDE.depth, 180]);
    await page
      .locator('[data-level="differs"]')
      .getByText(/2\.\d° apart/)
      .waitFor();
    await page.locator('[data-level]').scrollIntoViewIfNeeded();
    await picture(page, `level-${size.width}`);
    expect(await violations(page)).toEqual([]);
    await saved(page);
    expect(storedDocument(board, 'To be photographed').photos[0]?.levelCheck?.by).toBe('floor');
  });
});
