import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { moveHardpoint } from '../../shared-math/layout/index.ts';
import { figure, handleOf } from '../support/board-pointer.ts';
import { type OpenBoard, pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { framesDrawn } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

async function openSample(document = sampleLayout('Arm down', 300)): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(document) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await handleOf(board.page, 'side', 'steering.box.pitmanBall');
  return board;
}

const steer = (page: Page) => page.getByRole('slider', { name: /^Steer of the wheels/ });
const heave = (page: Page) => page.getByRole('slider', { name: 'Heave', exact: true });
const roll = (page: Page) => page.getByRole('slider', { name: 'Roll', exact: true });
const value = async (slider: Locator) => Number(await slider.inputValue());

async function boxOf(locator: Locator) {
  const box = await locator.boundingBox();
  if (!box) throw new Error('not on the page');
  return box;
}

describe('a curve', () => {
  test('poses the car where the pointer is on it, and follows a scrub', async () => {
    const { page } = await openSample();
    const box = await boxOf(steer(page));
    const ride = await handleOf(page, 'side', 'axle.left.wheelCentre');
    await page.mouse.move(box.x + box.width - 12, box.y + box.height / 2);
    await page.mouse.down();
    await expect.poll(() => value(heave(page))).toBeGreaterThan(65);
    await expect
      .poll(async () => (await handleOf(page, 'side', 'axle.left.wheelCentre')).y)
      .toBeLessThan(ride.y - 10);
    await page.mouse.move(box.x + box.width * 0.3, box.y + 20, { steps: 5 });
    await expect.poll(() => value(heave(page))).toBeLessThan(-10);
    await page.mouse.up();
    await page.mouse.move(box.x + box.width - 12, box.y + 20);
    await expect.poll(() => value(heave(page))).toBeLessThan(-10);
  });

  test('is worked by keys: steps, ends, and its value in words', async () => {
    const { page } = await openSample();
    await steer(page).focus();
    await page.keyboard.press('End');
    await expect.poll(() => value(heave(page))).toBe(75);
    await expect.poll(() => steer(page).getAttribute('aria-valuetext')).toBe('at 2 15/16 in of bump');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => value(heave(page))).toBeCloseTo(75 - 25.4 / 16, 3);
    await page.keyboard.press('Home');
    await expect.poll(() => value(heave(page))).toBe(-75);
  });

  test('over roll poses the car in roll', async () => {
    const { page } = await openSample();
    await page.getByRole('button', { name: 'over roll' }).click();
    await steer(page).focus();
    await page.keyboard.press('End');
    await expect.poll(() => value(roll(page))).toBe(3);
    await expect.poll(() => value(heave(page))).toBe(0);
    await page.getByText('left wheel up 3°').first().waitFor();
  });

  test('says in words what it shows', async () => {
    const { page } = await openSample();
    const summary = () =>
      steer(page).evaluate(
        (element) => document.getElementById(element.getAttribute('aria-describedby') ?? '')?.textContent,
      );
    await expect
      .poll(summary)
      .toMatch(
        /^Mean steer of the wheels: from .*° at 2 15\/16 in of droop to .*° at 2 15\/16 in of bump\.$/,
      );
  });

  test('shows the wheels’ angles of the present pose', async () => {
    const { page } = await openSample();
    const panel = page.getByRole('region', { name: 'Steer of the wheels' });
    const mean = panel.getByText('mean', { exact: false }).first();
    await expect.poll(() => mean.textContent()).toMatch(/mean\s+0\.00°/);
    await steer(page).focus();
    await page.keyboard.press('End');
    await expect.poll(() => mean.textContent()).toMatch(/mean\s+-?[1-9]\d*\.\d\d°/);
  });
});

describe('the figures', () => {
  test('follow the unit', async () => {
    const { page } = await openSample();
    await expect.poll(() => figure(page, 'slope')).toMatch(/° per inch$/);
    await expect.poll(() => figure(page, 'worst')).toMatch(/ in front to rear of the tyre$/);
    await page.keyboard.press('u');
    await expect.poll(() => figure(page, 'slope')).toMatch(/° per 25 mm$/);
    await expect.poll(() => figure(page, 'worst')).toMatch(/ mm front to rear of the tyre$/);
  });

  test('say where the linkage does not reach, and the curve has a gap instead of a guess', async () => {
    const short = sampleLayout('Short link');
    const near = moveHardpoint(short, 'steering.box.pitmanBall', [-60, 500, 346]);
    const document = {
      ...moveHardpoint(near, 'steering.box.sectorCentre', [-60, 500, 486]),
      travel: { bump: 250, rebound: 250, roll: 3 },
    };
    const { page } = await openSample(document);
    await page
      .getByText(/The drag link does not reach beyond .* in of (bump|droop)\./)
      .first()
      .waitFor();
  });
});

describe('running the travel', () => {
  test('moves the car up and down until it is stopped', async () => {
    const { page } = await openSample();
    await page.getByRole('button', { name: 'Run travel' }).click();
    const seen: number[] = [];
    const spread = async () => {
      seen.push(await value(heave(page)));
      return Math.max(...seen) - Math.min(...seen);
    };
    await expect.poll(spread).toBeGreaterThan(25);
    const wheel = async () => (await handleOf(page, 'front', 'axle.left.wheelCentre')).y;
    const moving = await wheel();
    await expect.poll(async () => Math.abs((await wheel()) - moving)).toBeGreaterThan(2);
    await page.getByRole('button', { name: 'Stop' }).click();
    const stopped = await value(heave(page));
    await framesDrawn(page, 12);
    await expect.poll(() => value(heave(page))).toBe(stopped);
  });
});
