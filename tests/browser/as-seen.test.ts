import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { View } from '../../shared-math/drawing/index.ts';
import type { Point } from '../../shared-math/geometry/points.ts';
import { hardpoints, type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { carryPoint, createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import type { Radians } from '../../shared-math/units/index.ts';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { photographedCar, SHOTS, type Shot } from '../support/photo-scene.ts';
import { photographed } from '../support/pinhole.ts';
import { pageOf } from '../support/trace-pointer.ts';

const openBoard = useBrowser();
const [SIDE, TOP] = SHOTS as [Shot, Shot];
const toggle = (page: Page) => page.getByRole('button', { name: 'As the camera saw it' });

async function openPhotos(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  await page.getByRole('complementary', { name: 'Trace over a photo' }).waitFor();
}

async function show(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${shot.file}`) }).click();
  await page.getByRole('checkbox', { name: 'Shown' }).check();
  await page.locator(`canvas[data-photo="${shot.file}"][data-laid]`).waitFor();
  await page.getByRole('button', { name: shot.view === 'side' ? 'Side' : 'Top', exact: true }).click();
  await page.getByRole('button', { name: 'Whole photo' }).click();
  await boardAtRest(page);
}

/** Screen px by which each hardpoint's handle lies beside the place at which the independent camera photographed it. */
async function misses(page: Page, view: View, shot: Shot, car: LayoutDocument): Promise<number[]> {
  const found: number[] = [];
  for (const { id, at } of hardpoints(car)) {
    const handle = await page.evaluate(([of, point]) => window.toeboardBoard?.handleAt(of, point), [
      view,
      id,
    ] as const);
    if (!handle) continue;
    const [x, y] = await pageOf(page, photographed(shot.camera, at));
    found.push(Math.hypot(handle.x - x, handle.y - y));
  }
  return found;
}

async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env['TOEBOARD_LOOK'];
  if (folder) await page.screenshot({ path: `${folder}/${name}.png` });
}

describe.each([
  { width: 1440, height: 900 },
  { width: 1280, height: 720 },
])('at $width x $height', (size) => {
  test('the demonstration’s drawing and photos lie on one another at every depth', async () => {
    const { page } = await openBoard({ size });
    await openDemonstration(page, 'Side steer, box too low');
    await openPhotos(page);
    const car = photographedCar();
    for (const shot of [SIDE, TOP]) {
      await show(page, shot);
      await picture(page, `plain-${shot.view}-${size.width}`);
      const beside = await misses(page, shot.view, shot, car);
      expect(beside.length).toBeGreaterThan(8);
      expect(Math.max(...beside)).toBeGreaterThan(15);

      await toggle(page).click();
      await page.locator('[data-seen="on"]').waitFor();
      await boardAtRest(page);
      await picture(page, `seen-${shot.view}-${size.width}`);
      await expect
        .poll(async () => Math.max(...(await misses(page, shot.view, shot, car))))
        .toBeLessThan(1.5);
      await toggle(page).click();
      await boardAtRest(page);
      await expect.poll(() => misses(page, shot.view, shot, car)).toEqual(beside);
    }
  });
});

test('it follows the pose, and E shows it for as long as it is held', async () => {
  const { page } = await openBoard();
  await openDemonstration(page, 'Side steer, box too low');
  await openPhotos(page);
  await show(page, SIDE);
  const car = photographedCar();
  const square = await misses(page, 'side', SIDE, car);
  await page.getByRole('application', { name: /^Drawing/ }).focus();
  await page.keyboard.down('e');
  await page.locator('[data-seen="on"]').waitFor();
  await boardAtRest(page);
  await expect.poll(async () => Math.max(...(await misses(page, 'side', SIDE, car)))).toBeLessThan(1.5);
  await page.keyboard.up('e');
  await page.locator('[data-seen]').waitFor({ state: 'detached' });
  await boardAtRest(page);
  await expect.poll(() => misses(page, 'side', SIDE, car)).toEqual(square);
  // Typed into a field the letter is text.
  await page.getByRole('textbox', { name: 'Camera from that plane' }).press('e');
  await expect.poll(() => page.locator('[data-seen]').count()).toBe(0);
  await page.keyboard.press('Escape');

  await toggle(page).click();
  await page.locator('[data-seen="on"]').waitFor();
  const heave = page.getByRole('textbox', { name: 'Heave, typed' });
  await heave.fill('50 mm');
  await heave.press('Enter');
  await boardAtRest(page);
  // The axle that has risen is where the camera would see it then: as if the car in the photo had been raised.
  const frontEnd = prepareFrontEnd(resolveLayout(car));
  const state = createState();
  solveFrontEnd(frontEnd, 50, 0 as Radians, 0 as Radians, state);
  expect(state.status).toBe('ok');
  for (const id of ['axle.left.kingpinTop', 'steering.dragLinkBall', 'location.left.framePivot']) {
    const point = hardpoints(car).find((each) => each.id === id);
    if (!point) throw new Error(id);
    const at = new Float64Array(3);
    carryPoint(frontEnd, state, point.carrier, point.at, at);
    const [x, y] = await pageOf(page, photographed(SIDE.camera, [...at] as unknown as Point));
    const handle = await page.evaluate((of) => window.toeboardBoard?.handleAt('side', of), id);
    expect(Math.hypot((handle?.x ?? 0) - x, (handle?.y ?? 0) - y), id).toBeLessThan(1.5);
  }
  await picture(page, 'seen-raised');
});
