import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { runRide } from '../../shared-math/ride/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { handleOf, type Spot, written } from '../support/board-pointer.ts';
import {
  type OpenBoard,
  openDemonstration,
  saved,
  storedDocument,
  tabTo,
  useBrowser,
} from '../support/browser-page.ts';
import { DEGREE } from '../support/close.ts';

const openBoard = useBrowser();
const BAD = 'Side steer, box too low';
const GOOD = 'Side steer, box at the cowl';
const WHEEL = 'axle.left.wheelCentre';

async function openBad(place?: 'Turn' | 'Road'): Promise<OpenBoard> {
  const board = await openBoard();
  await openDemonstration(board.page, BAD);
  await saved(board.page);
  if (place) await board.page.getByRole('button', { name: place, exact: true }).click();
  if (place === 'Road') await peak(board.page, 'Steers by itself, at most');
  return board;
}

const wheel = (page: Page, view: 'front' | 'side' = 'front') => handleOf(page, view, WHEEL);
const pullReadout = (page: Page) => page.getByRole('region', { name: 'Pull on the axle' });
const moment = (page: Page) => page.getByRole('slider', { name: 'Moment' });
const time = async (page: Page) => Number(await moment(page).inputValue());

/** Bare rubber of the left tyre as the front view shows it: below the wheel's middle, away from every handle. */
async function rubber(page: Page): Promise<Spot> {
  const { x, y } = await wheel(page);
  return { x: x + 6, y: y + 40 };
}

/** Takes hold of the left tyre and holds the hand so many px above. */
async function pullUp(page: Page, px: number): Promise<void> {
  const { x, y } = await rubber(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - px, { steps: 6 });
}

/** The cells of a line of peaks, once they are there. */
async function peak(page: Page, what: string): Promise<string[]> {
  await page.locator(`[data-peak="${what}"] td`).first().waitFor();
  return page.locator(`[data-peak="${what}"] td`).allTextContents();
}
const degrees = (text: string | undefined) => Number.parseFloat(text ?? '');

describe('a hand on the axle', () => {
  test('pulls a tyre up against its spring, behind the hand; let go, it settles at ride height', async () => {
    const board = await openBad();
    const { page } = board;
    const before = storedDocument(board, BAD);
    const rest = await wheel(page);
    await pullUp(page, 24);
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(6);
    await expect.poll(() => pullReadout(page).locator('[data-pull="rise"]').textContent()).toMatch(/in up$/);
    await expect
      .poll(() => pullReadout(page).locator('[data-pull="steer"]').textContent())
      .toMatch(/^\d\.\d\d° right$/);
    // The spring holds it back: the wheel has not come as far as the hand.
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeLessThan(23);
    await page.mouse.up();
    await pullReadout(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
    expect(storedDocument(board, BAD)).toEqual(before);
    await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
  });

  test('gives the car back at rest with Escape', async () => {
    const { page } = await openBad();
    const rest = await wheel(page);
    await pullUp(page, 24);
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(6);
    await page.keyboard.press('Escape');
    await pullReadout(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
    await page.mouse.up();
  });

  test.each(['Turn', 'Road'] as const)('is there in %s as well', async (place) => {
    const { page } = await openBad(place);
    const rest = await wheel(page);
    await pullUp(page, 20);
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(5);
    await page.mouse.up();
    await pullReadout(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
  });

  test('is a keyboard’s too: P takes hold, arrows pull the whole axle, Shift P lets go, R is ride height at once', async () => {
    const { page } = await openBad();
    const rest = await wheel(page);
    await page.keyboard.press('p');
    await pullReadout(page).waitFor();
    await page.keyboard.press('Shift+ArrowUp');
    await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(4);
    await expect.poll(() => pullReadout(page).textContent()).toContain('Pulling the axle');
    await page.keyboard.press('p');
    await expect.poll(() => pullReadout(page).textContent()).toContain('Pulling the left tyre');
    await page.keyboard.press('ArrowDown');
    // No key of text fields lets go.
    await page.keyboard.press('Enter');
    await expect.poll(() => pullReadout(page).textContent()).toContain('Pulling the left tyre');
    await page.keyboard.press('Shift+P');
    await pullReadout(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
    await page.keyboard.press('p');
    await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(2);
    await page.keyboard.press('r');
    await pullReadout(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
  });

  test('goes to its rest without swinging where no motion is wanted', async () => {
    const { page } = await openBad();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const rest = await wheel(page);
    await pullUp(page, 24);
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(6);
    await page.mouse.up();
    await pullReadout(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
  });
});

describe('the place for the road', () => {
  test('drives over a bump and stops at its end; the peaks are those of the mathematics', async () => {
    const board = await openBad('Road');
    const { page } = board;
    // 2 in high, 48 in long, at 25 mph, 0.3 s on: what the fields say.
    const speed = 11_176;
    const road = {
      kind: 'one-wheel',
      side: 'left',
      height: 50.8,
      length: 1219.2,
      start: 0.3 * speed,
    } as const;
    const run = runRide(storedDocument(board, BAD), road, { speed, seconds: 2.5 });
    if (!run.ok) throw new Error(run.failure.reason);
    const dart = Math.max(...run.value.bumpSteer.map(Math.abs)) / DEGREE;
    expect(dart).toBeGreaterThan(1);
    await expect
      .poll(async () => degrees((await peak(page, 'Steers by itself, at most'))[0]))
      .toBeCloseTo(dart, 2);
    await page.getByRole('button', { name: 'Drive', exact: true }).click();
    await page.getByRole('button', { name: 'Pause', exact: true }).waitFor();
    await expect.poll(() => time(page)).toBeGreaterThan(0.2);
    await page.getByRole('button', { name: 'Drive', exact: true }).waitFor();
    await expect.poll(() => time(page)).toBeCloseTo(2.5, 6);
  });

  test('is scrubbed on a curve and by keys; the wheel on the bump stands higher', async () => {
    const { page } = await openBad('Road');
    const rest = await wheel(page);
    const curve = page.getByRole('slider', { name: /^Steered by the road/ });
    await curve.focus();
    await page.keyboard.press('Home');
    for (let presses = 0; presses < 5; presses += 1) await page.keyboard.press('PageUp');
    await expect.poll(() => time(page)).toBeCloseTo(0.4, 6);
    await moment(page).focus();
    for (let presses = 0; presses < 4; presses += 1) await page.keyboard.press('ArrowLeft');
    await expect.poll(() => time(page)).toBeCloseTo(0.36, 6);
    await expect.poll(async () => rest.y - (await wheel(page)).y).toBeGreaterThan(5);
    await expect
      .poll(() => page.locator('[data-drive="steer"]').textContent())
      .toMatch(/^[12]\.\d\d° right$/);
    await page.getByRole('button', { name: 'A moment on' }).click();
    await expect.poll(() => time(page)).toBeCloseTo(0.37, 6);
    // The buttons take arrows like the slider beside them; without them a comma or a full stop does nothing.
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => time(page)).toBeCloseTo(0.38, 6);
    await page.keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => time(page)).toBeCloseTo(0.28, 6);
    for (const key of [',', '.']) await page.keyboard.press(key);
    await expect.poll(() => time(page)).toBeCloseTo(0.28, 6);
    const box = await curve.boundingBox();
    if (!box) throw new Error('not on the page');
    await page.mouse.click(box.x + box.width * 0.6, box.y + box.height / 2);
    await expect.poll(() => time(page)).toBeGreaterThan(1);
    await page.getByRole('button', { name: 'To the start' }).click();
    await expect.poll(() => time(page)).toBe(0);
    await expect.poll(async () => (await wheel(page)).y).toBeCloseTo(rest.y, 6);
  });

  test('shows side by side how much further the bad box darts than the good one', async () => {
    const { page } = await openBad('Road');
    await page.getByRole('checkbox', { name: GOOD }).check();
    await expect.poll(async () => (await peak(page, 'Steers by itself, at most')).length).toBe(2);
    const [bad, good] = (await peak(page, 'Steers by itself, at most')).map(degrees);
    expect(bad).toBeGreaterThan(1);
    expect(bad).toBeGreaterThan(5 * (good as number));
    expect(good).toBeLessThan(0.25);
    for (const name of ['Steered by the road', 'Kick at the handwheel', 'Axle', 'Toe, both wheels'])
      await expect
        .poll(() =>
          page.getByRole('region', { name, exact: true }).getByRole('listitem').last().textContent(),
        )
        .toMatch(/^\s*B\s+Side steer, box at the cowl/);
    await moment(page).focus();
    for (let presses = 0; presses < 4; presses += 1) await page.keyboard.press('PageUp');
    await expect
      .poll(async () => (await written(page)).join('; '))
      .toContain('B Side steer, box at the cowl');
  });

  test('takes a road of one’s own, and tells the line of one that is none', async () => {
    const { page } = await openBad('Road');
    await page
      .getByRole('combobox', { name: 'Road', exact: true })
      .selectOption({ label: 'From my own file' });
    const file = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
    const input = page.getByLabel('Road to import');
    await input.setInputFiles(
      file('lane.csv', 'distance,left,right\n0,0,0\n4000,0,0\n4300,40,0\n4600,0,0\n'),
    );
    await page.getByText('lane.csv').waitFor();
    const dart = (await peak(page, 'Steers by itself, at most'))[0];
    expect(degrees(dart)).toBeGreaterThan(0.5);
    await input.setInputFiles(file('torn.csv', 'distance,left,right\n0,0,0\n4000,zero,0\n'));
    await page.getByText('torn.csv is not taken. Line 3: "zero" is not a number.').waitFor();
    // The road that was there stays.
    await expect.poll(() => page.getByText('lane.csv').isVisible()).toBe(true);
    await expect.poll(async () => (await peak(page, 'Steers by itself, at most'))[0]).toBe(dart);
  });

  test('refuses sizes that no car drives over, and says so', async () => {
    const { page } = await openBad('Road');
    await page.getByLabel('Speed').fill('0');
    await page.keyboard.press('Enter');
    await page.getByText('a speed is more than 0 and at most 300 km/h').waitFor();
    await page.getByRole('button', { name: 'Keep 25 mph' }).click();
    await page.getByRole('combobox', { name: 'Road', exact: true }).selectOption({ label: 'Kerb edge' });
    await page.getByLabel('Height').fill('14 in');
    await page.keyboard.press('Enter');
    await page.getByText(/no lower than the wheel's middle/).waitFor();
  });

  test('keeps what the car rides on in the document, each a step that can be undone', async () => {
    const board = await openBad('Road');
    const { page } = board;
    const ridden = async () => (await page.locator('[data-ride="rideFrequency"] b').textContent())?.trim();
    const before = await ridden();
    const told = storedDocument(board, BAD).ride;
    await page.getByLabel('Spring rate from').selectOption({ label: 'a load put on the car' });
    await page.getByLabel('Load put over the axle').fill('500 lb');
    await page.keyboard.press('Enter');
    await page.getByLabel('Car drops by').fill('1 in');
    await page.keyboard.press('Enter');
    await expect.poll(ridden).not.toBe(before);
    await saved(page);
    const spring = storedDocument(board, BAD).ride?.spring;
    expect(spring?.kind === 'measured' && spring.load).toBeCloseTo(500 * 4.4482216, 3);
    await page.getByLabel('Tyre rate, each').fill('-5');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: /0/ }).first().waitFor();
    await page.getByLabel('Tyre rate, each').press('Escape');
    await page.getByLabel('Speed').blur();
    const undo = page.getByRole('button', { name: /^Undo/ });
    while (await undo.isEnabled()) await undo.click();
    await saved(page);
    expect(storedDocument(board, BAD).ride).toEqual(told);
    await expect.poll(ridden).toBe(before);
  });

  test('is reached by keys alone, and has nothing that a checker of accessibility objects to', async () => {
    const { page, context } = await openBad();
    await bringChecker(context);
    await page.reload();
    await tabTo(page, 'Road');
    await page.keyboard.press('Enter');
    await peak(page, 'Steers by itself, at most');
    await tabTo(page, 'A moment on');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => time(page)).toBeCloseTo(0.01, 6);
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('p');
    await pullReadout(page).waitFor();
    expect(await violations(page)).toEqual([]);
  });
});
