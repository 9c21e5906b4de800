import type { Page } from 'playwright-core';
import { pause } from '../pause.ts';
import { drawn } from '../plan.ts';
import { NotNow, settle, typePitmanHeight, type World } from '../world.ts';

async function openCars(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Cars and variants/ }).click();
  await page.getByRole('complementary', { name: 'Cars and variants' }).waitFor();
}

const closeDrawer = (page: Page) => page.getByRole('button', { name: 'Close the drawer' }).click();

export async function drawer({ page }: World, lots: readonly number[]): Promise<string> {
  const key = drawn(['c', 'h', 'l', 'k'], lots[0] ?? 0);
  await page.keyboard.press(key);
  await page.getByRole('button', { name: 'Close the drawer' }).waitFor();
  if (key === 'c') {
    await page.getByRole('textbox', { name: 'Find a customer, car or variant' }).fill('side');
    const page2 = drawn(['Copies', 'Bin'], lots[1] ?? 0);
    await page.getByRole('button', { name: new RegExp(`^${page2}`) }).click();
  }
  await pause(200);
  await closeDrawer(page);
  return `key ${key}`;
}

export async function openAnother({ page }: World, lots: readonly number[]): Promise<string> {
  await openCars(page);
  const rows = page.locator('button[data-row^="variant-"]:not([aria-current])');
  const count = await rows.count();
  if (count === 0) throw new NotNow('there is no other layout');
  const row = rows.nth(Math.min(count - 1, Math.floor((lots[0] ?? 0) * count)));
  const name = ((await row.textContent()) ?? '').trim();
  await row.click();
  await page
    .getByRole('button', { name: new RegExp(`Open: .*${name.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}`) })
    .waitFor();
  await closeDrawer(page);
  return name;
}

/** Back to the first state that the history has: dragged about for hours, a layout would run off its sheet. */
export async function goBack({ page }: World): Promise<string> {
  await page.keyboard.press('h');
  await page.getByRole('complementary', { name: 'History' }).waitFor();
  const restore = page.getByRole('button', { name: /^Restore the state of/ });
  await pause(300);
  if (!(await restore.count())) {
    await closeDrawer(page);
    throw new NotNow('there is one state alone');
  }
  await restore.last().click();
  await settle(page);
  await closeDrawer(page);
  return 'to the first state';
}

async function openVariant(page: Page): Promise<string> {
  await openCars(page);
  const row = await page.locator('button[data-row^="variant-"][aria-current]').getAttribute('data-row');
  return row?.replace('variant-', '') ?? '';
}

export async function copyAndBin({ page, ledger }: World): Promise<string> {
  await settle(page);
  const original = await openVariant(page);
  await closeDrawer(page);
  await page.keyboard.press('ControlOrMeta+d');
  await page.getByText('This is the copy').waitFor();
  await page.getByRole('button', { name: 'Close this notice' }).click();
  await typePitmanHeight(page, '341 mm');
  await settle(page);
  const copy = await openVariant(page);
  if (copy === original) throw new Error('the copy was not opened');
  const name = await page.locator(`[data-row="variant-${copy}"]`).textContent();
  await page
    .locator('li', { has: page.locator(`[data-row="variant-${copy}"]`) })
    .last()
    .getByRole('button', { name: /^More for/ })
    .click();
  await page.getByRole('menuitem', { name: 'Put in the bin' }).click();
  await page.locator(`[data-row="variant-${copy}"]`).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: /^Bin, \d+ in it/ }).click();
  await page.getByRole('button', { name: 'Empty the bin…' }).click();
  await page.getByRole('button', { name: 'Empty it for good' }).click();
  await page.getByText('The bin is empty.').waitFor();
  ledger.forget(copy);
  await page.getByRole('button', { name: 'Back to cars and variants' }).click();
  await page.locator(`[data-row="variant-${original}"]`).click();
  await page
    .getByRole('button', { name: 'Pitman ball', exact: true })
    .or(page.getByRole('tab', { name: 'Points' }))
    .first()
    .waitFor();
  await closeDrawer(page);
  return (name ?? '').trim();
}
