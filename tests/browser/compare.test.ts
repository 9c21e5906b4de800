import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import type { Store } from '../../src-main/store/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { figure, handleOf, otherBall, takeAlong } from '../support/board-pointer.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  storedDocument,
  tabTo,
  useBrowser,
} from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';

/** One car with these variants, the first of them open. */
function withVariants(...documents: LayoutDocument[]): (store: Store) => void {
  return (store) => {
    const car = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
    const ids = documents.map((document) => store.variants.add(car, document, 'Begun'));
    store.settings.write({ lastVariant: ids[0] ?? null });
  };
}

async function openThree(): Promise<OpenBoard> {
  const board = await openBoard({
    prepare: withVariants(
      sampleLayout('Arm down'),
      sampleLayout('Box low', 300),
      sampleLayout('Box high', 380),
    ),
  });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await handleOf(board.page, 'side', PITMAN);
  return board;
}

const box = (page: Page, name: string) => page.getByRole('checkbox', { name, exact: true });
const panel = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

/** The cells of a line of the table, as they read. */
async function line(page: Page, what: string): Promise<string[]> {
  const cells = page.locator(`[data-compared="${what}"] td`);
  await cells.first().waitFor();
  const texts = await cells.allTextContents();
  return texts.map((text) => text.replaceAll(/\s+/g, ' ').trim());
}
const degrees = (text: string | undefined) => Number.parseFloat((text ?? '').replace('−', '-'));

describe('comparing variants', () => {
  test('by keys alone: figures, their difference, curves and linkage of the other', async () => {
    const { page } = await openThree();
    await page.keyboard.press('v');
    await tabTo(page, 'Compare');
    await page.keyboard.press('Tab');
    for (
      let presses = 0;
      presses < 6 && !(await box(page, 'Box low').evaluate((e) => e === document.activeElement));
      presses += 1
    )
      await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.locator('[data-compared="Worst bump steer"]').waitFor();

    const [mine, theirs, difference] = await line(page, 'Worst bump steer');
    expect(`${degrees(mine).toFixed(2)}°`).toBe((await figure(page, 'worst')).split(' ')[0]);
    expect(degrees(difference)).toBeCloseTo(degrees(theirs) - degrees(mine), 1);
    expect(degrees(theirs)).toBeGreaterThan(degrees(mine) + 0.5);
    await expect.poll(() => page.locator('[data-figure="worst B"]').textContent()).toContain(theirs);
    await expect.poll(() => line(page, 'Tie rod')).toEqual([expect.any(String), expect.any(String), 'same']);
    for (const name of ['Steer of the wheels', 'Toe, both wheels', 'Caster'])
      await expect
        .poll(() => panel(page, name).getByRole('listitem').last().textContent())
        .toMatch(/^\s*B\s+Box low/);
    await expect.poll(() => otherBall(page, 'B')).toBeDefined();
  });

  test('lays the other over the curves of the turn as well', async () => {
    const { page } = await openThree();
    await page.getByRole('tab', { name: 'Compare' }).click();
    await box(page, 'Box low').check();
    await page.getByRole('button', { name: 'Turn', exact: true }).click();
    for (const name of ['Wheels through the turn', 'Overall ratio', 'Ackermann error'])
      await expect
        .poll(() => panel(page, name).getByRole('listitem').last().textContent())
        .toMatch(/^\s*B\s+Box low/);
  });

  test('shows the others’ linkages in the pose of the open one, and puts them away', async () => {
    const { page } = await openThree();
    await page.getByRole('tab', { name: 'Compare' }).click();
    await box(page, 'Box low').check();
    await box(page, 'Box high').check();
    await expect.poll(() => otherBall(page, 'C')).toBeDefined();
    const straight = await otherBall(page, 'B');
    // Its arm swings along the car with the handwheel, as the open one's does.
    await page.getByRole('slider', { name: 'Handwheel', exact: true }).focus();
    for (let presses = 0; presses < 6; presses += 1) await page.keyboard.press('PageUp');
    await expect
      .poll(async () => Math.abs(((await otherBall(page, 'B'))?.x ?? 0) - (straight?.x ?? 0)))
      .toBeGreaterThan(8);
    await box(page, 'Show their linkages on the board').uncheck();
    await expect.poll(() => otherBall(page, 'B')).toBeUndefined();
    await expect.poll(() => otherBall(page, 'C')).toBeUndefined();
    // The figures stay.
    await expect.poll(() => line(page, 'Worst bump steer')).toHaveLength(3);
    await box(page, 'Show their linkages on the board').check();
    await expect.poll(() => otherBall(page, 'C')).toBeDefined();
  });

  test('is live while the open variant is dragged; the other is only read', async () => {
    const board = await openThree();
    const { page } = board;
    const untouched = storedDocument(board, 'Box low');
    await page.getByRole('tab', { name: 'Compare' }).click();
    await box(page, 'Box low').check();
    await page.locator('[data-compared="Worst bump steer"]').waitFor();
    const [mine, theirs] = await line(page, 'Worst bump steer');
    await takeAlong(page, await handleOf(page, 'side', PITMAN), 0, 20);
    // Not let go yet.
    await expect
      .poll(async () => degrees((await line(page, 'Worst bump steer'))[0]))
      .toBeGreaterThan(degrees(mine) + 0.5);
    const [moved, still, difference] = await line(page, 'Worst bump steer');
    expect(still).toBe(theirs);
    expect(degrees(difference)).toBeCloseTo(degrees(still) - degrees(moved), 1);
    await page.mouse.up();
    await saved(page);
    expect(storedDocument(board, 'Box low')).toEqual(untouched);
  });

  test('ends for a variant that is taken out, opened or put in the bin', async () => {
    const { page } = await openThree();
    await page.getByRole('tab', { name: 'Compare' }).click();
    await box(page, 'Box low').check();
    await box(page, 'Box high').check();
    await page.getByRole('button', { name: 'Remove Box low from the comparison' }).click();
    await expect.poll(() => box(page, 'Box low').isChecked()).toBe(false);
    await expect.poll(() => otherBall(page, 'B')).toBeUndefined();
    await expect.poll(() => line(page, 'Worst bump steer')).toHaveLength(3);

    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'More for Box high', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Put in the bin' }).click();
    await page.locator('[data-compared="Worst bump steer"]').waitFor({ state: 'detached' });
    await expect.poll(() => otherBall(page, 'C')).toBeUndefined();
  });

  test('reads a variant again that was changed meanwhile', async () => {
    const board = await openThree();
    const { page } = board;
    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'More for Box low', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Compare with the open layout' }).click();
    await page.keyboard.press('Escape');
    await page.locator('[data-compared="Worst bump steer"]').waitFor();
    const [, before] = await line(page, 'Worst bump steer');

    const open = async (name: string) => {
      await page.keyboard.press('c');
      await page.getByRole('button', { name, exact: true }).click();
      await expect.poll(() => page.title()).toBe(`${name} – Toeboard`);
      await page.keyboard.press('Escape');
    };
    await open('Box low');
    await page.getByText('Choose one or more').waitFor();
    await takeAlong(page, await handleOf(page, 'side', PITMAN), 0, 8);
    await page.mouse.up();
    await saved(page);
    await open('Arm down');
    // Hung lower still, it steers itself more.
    await expect
      .poll(async () => degrees((await line(page, 'Worst bump steer'))[1]))
      .toBeGreaterThan(degrees(before) + 0.2);
  });

  test('has nothing that a checker of accessibility objects to', async () => {
    const { page, context } = await openThree();
    await bringChecker(context);
    await page.reload();
    await page.getByRole('tab', { name: 'Compare' }).click();
    await box(page, 'Box low').check();
    await box(page, 'Box high').check();
    await page.locator('[data-compared="Worst bump steer"]').waitFor();
    expect(await violations(page)).toEqual([]);
  });

  test('a car with one variant is offered ways to lay another beside it', async () => {
    const { page } = await openBoard({ prepare: withVariants(sampleLayout('Arm down')) });
    await page.getByRole('tab', { name: 'Compare' }).click();
    await page.getByRole('button', { name: 'Duplicate this one' }).click();
    await box(page, 'Arm down').check();
    await expect.poll(async () => (await line(page, 'Worst bump steer')).at(-1)).toBe('same');
  });
});
