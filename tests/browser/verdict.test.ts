import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { withGuessesPlanned } from '../../shared-math/layout/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { figure, handleOf, takeAlong } from '../support/board-pointer.ts';
import { type OpenBoard, saved, storedDocument, useBrowser, withSample } from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const LOW = 'Side steer, box too low';
const PITMAN = 'steering.box.pitmanBall';

async function openLow(): Promise<OpenBoard> {
  const board = await openBoard({ column: 'verdict' });
  await board.page.getByRole('button', { name: LOW }).click();
  await board.page.getByText(/^\d to fix · \d to check$/).waitFor();
  return board;
}

async function openSample(): Promise<OpenBoard> {
  const board = await openBoard({
    column: 'verdict',
    prepare: withSample(withGuessesPlanned(sampleLayout('Arm down'))),
  });
  await board.page.getByRole('button', { name: /\d OK$/ }).waitFor();
  return board;
}

const finding = (page: Page, words: RegExp) => page.getByRole('button', { name: words });
const chosenCard = (page: Page) => page.locator('[data-finding].chosen');
const worst = async (page: Page) => Number.parseFloat(await figure(page, 'worst'));
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** Types into a field as a person does, and takes it with Enter. */
async function type(page: Page, label: string, text: string): Promise<void> {
  await field(page, label).click();
  await page.keyboard.press('ControlOrMeta+a');
  if (text === '') await page.keyboard.press('Delete');
  else await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Presses Tab until the button of those words has the focus. */
async function tabToButton(page: Page, words: RegExp): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate(() =>
      document.activeElement?.textContent?.replaceAll(/\s+/g, ' ').trim(),
    );
    if (words.test(here ?? '')) return;
  }
  throw new Error(`No Tab leads to ${words}`);
}

describe('a finding', () => {
  test('by pointer: chosen, its part on the board, its move applied, the figure drops, undo brings it back', async () => {
    const board = await openLow();
    const { page } = board;
    const before = await worst(page);
    expect(before).toBeGreaterThan(3.5);
    const bump = finding(page, /^Must fix: Bump steer 3\.\d\d° to the (left|right) at 3 in of bump$/);
    await bump.click();
    await expect.poll(() => bump.getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => field(page, 'Pitman ball, above ground').inputValue()).toBe('11 1/16 in');

    await page.getByRole('button', { name: 'Raise the box with its arm 3 in' }).first().click();
    await expect.poll(() => worst(page)).toBeLessThan(before / 5);
    await page.getByText('4 to check', { exact: true }).waitFor();
    await saved(page);
    const { box } = storedDocument(board, LOW).steering;
    expectClose(box.pitmanBall[2], 356.7, 0.1, 'raised');
    // The arm is bolted to the box and keeps its length.
    expectClose(box.sectorCentre[2] - box.pitmanBall[2], 145, 1e-9, 'arm');

    await page.getByRole('button', { name: 'Undo: Raise the box with its arm 3 in' }).click();
    await expect.poll(() => worst(page)).toBe(before);
    await bump.waitFor();
    await saved(page);
    expect(storedDocument(board, LOW).steering.box.pitmanBall).toEqual([-600, 446, 281]);
  });

  test('by keyboard alone, and the focus stays in the list', async () => {
    const { page } = await openLow();
    const before = await worst(page);
    await page.getByRole('tab', { name: 'Verdict' }).focus();
    await tabToButton(page, /^Must fix: Bump steer 3\.\d\d° to the \w+ at /);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Pitman ball' }).waitFor();
    await tabToButton(page, /^Raise the box with its arm/);
    await page.keyboard.press('Enter');
    await expect.poll(() => worst(page)).toBeLessThan(before / 5);
    const focused = () => page.evaluate(() => document.activeElement?.closest('[data-finding]') !== null);
    await expect.poll(focused).toBe(true);
    await page.keyboard.press('Control+z');
    await expect.poll(() => worst(page)).toBe(before);
  });

  test('offers to show where it was measured, and the way back', async () => {
    const { page } = await openLow();
    const heave = page.getByRole('slider', { name: 'Heave', exact: true });
    await finding(page, /Bump steer 3\.\d\d° to the \w+ at /).click();
    await chosenCard(page).getByRole('button', { name: 'Show it there' }).click();
    await expect.poll(async () => Math.abs(Number(await heave.inputValue()) - 76.2)).toBeLessThan(0.1);
    await page.getByRole('button', { name: 'Back to ride height' }).click();
    await expect.poll(() => heave.inputValue()).toBe('0');
    // What steers the handwheel too is shown with it turned.
    await finding(page, /Drag link comes within .* of the left tyre/).click();
    await chosenCard(page).getByRole('button', { name: 'Show it there' }).click();
    const handwheel = page.getByRole('textbox', { name: 'Handwheel, typed' });
    await expect.poll(() => handwheel.inputValue()).toMatch(/^\d{3}° left$/);
  });

  test('lets go of its part when it is chosen a second time', async () => {
    const { page } = await openLow();
    await finding(page, /Roll oversteer/).click();
    await page.getByRole('heading', { name: 'Pitman ball' }).waitFor();
    await finding(page, /Roll oversteer/).click();
    await page.locator('[data-chosen]').waitFor({ state: 'detached' });
  });

  test('that is in order is folded away and can be looked at and chosen', async () => {
    const { page } = await openLow();
    await expect.poll(() => finding(page, /^OK: Caster 6\.1°$/).count()).toBe(0);
    await page.getByRole('button', { name: /^\d+ OK$/ }).click();
    await finding(page, /^OK: Caster 6\.1°$/).click();
    await page.getByRole('heading', { name: 'Left kingpin, top' }).waitFor();
  });
});

describe('the verdict', () => {
  test('shows titles first, and choosing one takes no other from under the pointer', async () => {
    const { page } = await openLow();
    await expect.poll(() => page.locator('[data-chosen]').count()).toBe(0);
    const cards = page.locator('.mending [data-finding]');
    const titles = page.locator('.mending .choose');
    // What else the first one's move puts right is said without being asked for, and in sight.
    const also = cards.first().locator('[data-also-mended]');
    await also.waitFor();
    const [said, column] = [await also.boundingBox(), await page.locator('#column-page').boundingBox()];
    expect((said?.y ?? 0) + (said?.height ?? 0)).toBeLessThan((column?.y ?? 0) + (column?.height ?? 0));
    // The others say what is wrong and offer the move; where that comes from is said when they are chosen.
    await expect.poll(() => cards.nth(1).locator('.grounds').count()).toBe(0);
    await cards.nth(1).locator('.mend').waitFor();
    const at = async (index: number) => (await titles.nth(index).boundingBox())?.y;
    const before = await at(0);
    await titles.first().click();
    await page.locator('[data-chosen]').waitFor();
    await expect.poll(() => at(0)).toBe(before);
    // One that what is said of its part would cover comes up as far as it has to.
    await titles.nth(1).click();
    const part = page.locator('[data-chosen]');
    await expect
      .poll(async () => {
        const [title, below] = [await titles.nth(1).boundingBox(), await part.boundingBox()];
        return title !== null && below !== null && title.y + title.height < below.y + 1;
      })
      .toBe(true);
  });

  test('its suggested moves, one after another, bring the bad layout below a fifth of its bump steer', async () => {
    const { page } = await openLow();
    const before = await worst(page);
    const moves = page.getByRole('button', { name: /^(Raise|Lower|Move|Put) the / });
    let taken = 0;
    await moves.first().waitFor();
    for (let offered = await moves.allTextContents(); offered.length > 0 && taken < 6; taken += 1) {
      await moves.first().click();
      // Judged anew, the list offers other moves than those that were looked at.
      await expect.poll(() => moves.allTextContents()).not.toEqual(offered);
      offered = await moves.allTextContents();
    }
    expect(taken).toBeGreaterThan(0);
    await expect.poll(() => worst(page)).toBeLessThan(before / 5);
    // There is none left that a button mends.
    await expect.poll(() => page.locator('.mend').count()).toBe(0);
    await expect
      .poll(() =>
        page
          .getByText(/stop/, { exact: false })
          .filter({ hasText: /^\d stops?/ })
          .count(),
      )
      .toBe(0);
  });

  test('follows a point while it is dragged, and is whole when it is let go', async () => {
    const { page } = await openSample();
    const told = async () => {
      const text = await finding(page, /Bump steer \d.* at /)
        .first()
        .textContent();
      return Number.parseFloat(/Bump steer ([\d.]+)°/.exec(text ?? '')?.[1] ?? 'NaN');
    };
    const behind = async () => Math.abs((await told()) - (await worst(page)));
    await page.getByRole('button', { name: /\d OK$/ }).click();
    await expect.poll(behind).toBeLessThan(0.06);
    const before = await told();
    const at = await handleOf(page, 'side', PITMAN);
    await takeAlong(page, at, 0, 40);
    // Still in the hand.
    await expect.poll(behind).toBeLessThan(0.06);
    await expect.poll(told).toBeGreaterThan(before + 1);
    await page.mouse.move(at.x, at.y + 70, { steps: 20 });
    await page.mouse.up();
    await expect.poll(behind).toBeLessThan(0.06);
    await expect.poll(told).toBeGreaterThan(before + 2);
  });

  test('is told in the unit that the reader chooses', async () => {
    const { page } = await openLow();
    await page.getByRole('button', { name: 'Raise the box with its arm 3 in' }).first().waitFor();
    await page.keyboard.press('u');
    await page
      .getByRole('button', { name: /^Raise the box with its arm 7\d\.\d mm$/ })
      .first()
      .waitFor();
    await finding(page, /Bump steer starts at 1\.09° per 25 mm to the right in bump/).waitFor();
  });

  test('says plainly where nothing is past its limit, and that this is no approval', async () => {
    const { page } = await openBoard({ column: 'verdict' });
    await page.getByRole('button', { name: 'Side steer, box at the cowl' }).click();
    await page.getByText('Nothing past its limit').waitFor();
    await page.getByText(/That is not an approval/).waitFor();
    await page.getByText(/The board measures geometry; it certifies nothing/).waitFor();
  });
});

describe('limits of the shop', () => {
  test('one is typed, the finding changes and says whose limit it is, a reload keeps it, emptied it is the usual again', async () => {
    const { page } = await openSample();
    const tilts = finding(page, /^Must fix: .* tie rod ball tilts \d/);
    await expect.poll(() => tilts.count()).toBe(0);
    await page.keyboard.press('l');
    await type(page, 'Tilt of a ball or rod end, at most', '6.5');
    await tilts.first().waitFor();
    const card = page.locator('[data-finding="ball-tilt"]').first();
    await card.getByText('limit 6.5° · this shop’s own limit').waitFor();
    await page.getByRole('button', { name: 'Limits, 1 of this shop' }).waitFor();
    await page.locator('[data-limit="ballTilt"]').getByText('This shop’s own.').waitFor();

    await page.reload();
    await tilts.first().waitFor();
    await page.getByRole('button', { name: 'Limits, 1 of this shop' }).click();
    await expect.poll(() => field(page, 'Tilt of a ball or rod end, at most').inputValue()).toBe('6.5°');
    await type(page, 'Tilt of a ball or rod end, at most', '');
    await expect.poll(() => tilts.count()).toBe(0);
    await page.reload();
    await page.getByRole('button', { name: 'Limits', exact: true }).waitFor();
    await expect.poll(() => tilts.count()).toBe(0);
  });

  test('one that cannot be is refused under its field, and the usual figure holds', async () => {
    const { page } = await openSample();
    await page.getByRole('button', { name: 'Limits' }).click();
    await type(page, 'Caster, at least', '9');
    await page
      .getByRole('alert')
      .filter({ hasText: 'it cannot be more than “Caster, at most”, 8°' })
      .waitFor();
    await page.getByRole('button', { name: 'Keep 4°' }).click();
    await expect.poll(() => field(page, 'Caster, at least').inputValue()).toBe('');
    // Escape puts the drawer away; the board was in reach all the while.
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByText('Limits of this shop').count()).toBe(0);
  });
});

describe('the stud of a ball', () => {
  const stud = (page: Page) => page.getByRole('combobox', { name: 'Steering arm ball, stud points' });

  async function chooseBall(page: Page): Promise<void> {
    await page.getByRole('tab', { name: 'Points' }).click();
    await page.getByRole('button', { name: 'Steering arm ball', exact: true }).click();
    await page.getByRole('tab', { name: 'Verdict' }).click();
  }

  test('turned fore and aft is a finding, one step of undo, and stored', async () => {
    const board = await openSample();
    const { page } = board;
    await chooseBall(page);
    await expect
      .poll(() => stud(page).locator('option:checked').textContent())
      .toBe('usual, along the kingpin');
    await stud(page).selectOption('fore and aft');
    await finding(page, /^Must fix: Steering arm ball tilts \d/).waitFor();
    await saved(page);
    expect(storedDocument(board, 'Arm down').studs).toEqual({ 'steering.dragLinkBall': [1, 0, 0] });
    await page
      .getByRole('button', { name: 'Undo: Turn the stud of Steering arm ball: fore and aft' })
      .click();
    await expect.poll(() => finding(page, /Steering arm ball tilts/).count()).toBe(0);
    await saved(page);
    expect(storedDocument(board, 'Arm down').studs).toBeUndefined();
  });

  test('takes three numbers, refuses none at all, and goes back to the usual', async () => {
    const board = await openSample();
    const { page } = board;
    await chooseBall(page);
    await stud(page).selectOption('numbers');
    await type(page, 'Steering arm ball, stud ahead', '0.5');
    await type(page, 'Steering arm ball, stud left', '0');
    await type(page, 'Steering arm ball, stud up', '1');
    await saved(page);
    expect(storedDocument(board, 'Arm down').studs).toEqual({ 'steering.dragLinkBall': [0.5, 0, 1] });
    await type(page, 'Steering arm ball, stud ahead', '0');
    await type(page, 'Steering arm ball, stud up', '0');
    await page.getByRole('alert').filter({ hasText: 'Stud of steering arm ball: has no length' }).waitFor();
    await page.getByRole('button', { name: 'Keep 1' }).click();
    await stud(page).selectOption('usual');
    await saved(page);
    expect(storedDocument(board, 'Arm down').studs).toBeUndefined();
  });
});

describe('car facts and cautions', () => {
  test('stops and the nose are set and taken out again', async () => {
    const board = await openSample();
    const { page } = board;
    await page.getByRole('tab', { name: 'Car', exact: true }).click();
    await page.getByRole('combobox', { name: 'Stops at the axle' }).selectOption('set');
    await type(page, 'Stops, of either wheel', '30');
    await type(page, 'Nose ahead of axle', '24');
    await type(page, 'Width of nose', '36');
    await saved(page);
    const set = storedDocument(board, 'Arm down');
    expect(set.steering.stopAngle).toBe(30);
    expectClose(set.car.noseAhead ?? 0, 609.6, 1e-9, 'nose ahead');
    expectClose(set.car.noseWidth ?? 0, 914.4, 1e-9, 'nose width');
    await type(page, 'Nose ahead of axle', '');
    await page.getByRole('combobox', { name: 'Stops at the axle' }).selectOption('none');
    await saved(page);
    const without = storedDocument(board, 'Arm down');
    expect(without.car).not.toHaveProperty('noseAhead');
    expect(without.steering).not.toHaveProperty('stopAngle');
    await page.getByText('Without stops the box takes the blow.').waitFor();
  });

  test('stand quietly beside what is chosen and open by pointer or keyboard', async () => {
    const { page } = await openLow();
    const detail = page.getByText(/Do not heat or bend a forged or cast arm/);
    await finding(page, /Bump steer 3\.\d\d° to the \w+ at /).click();
    const line = page.getByText('Self-made and welded arms can break.');
    await line.waitFor();
    await expect.poll(() => detail.isVisible()).toBe(false);
    await line.click();
    await expect.poll(() => detail.isVisible()).toBe(true);
    await page.keyboard.press('Enter');
    await expect.poll(() => detail.isVisible()).toBe(false);
    await page.getByRole('tab', { name: 'Car', exact: true }).click();
    await page.getByRole('combobox', { name: 'Assistance' }).selectOption('power');
    await page.getByText('If the pump stops, the effort is back.').waitFor();
  });
});

test('the verdict, its cautions and the limits have no serious fault for those who cannot see them', async () => {
  const { page, context } = await openLow();
  await bringChecker(context);
  await page.reload();
  await finding(page, /Bump steer 3\.\d\d° to the \w+ at /).click();
  await page.getByText('Self-made and welded arms can break.').click();
  await page.getByRole('button', { name: /^\d+ OK$/ }).click();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('combobox', { name: 'Pitman ball, stud points' }).selectOption('numbers');
  await page.locator('body').press('l');
  await page.getByRole('heading', { name: 'Limits of this shop' }).waitFor();
  expect(await violations(page)).toEqual([]);
});
