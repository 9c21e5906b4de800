import type { Page } from 'playwright-core';
import { pause } from '../pause.ts';
import { drawn } from '../plan.ts';
import { NotNow, type World } from '../world.ts';

async function goTo(page: Page, name: string): Promise<void> {
  const button = page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name, exact: true });
  await button.click();
  await page.locator(`nav[aria-label="Places"] [aria-current="page"]`, { hasText: name }).waitFor();
}

export async function openPlace({ page }: World, lots: readonly number[]): Promise<string> {
  const row = page.getByRole('navigation', { name: 'Places' }).getByRole('button');
  const names = (await row.allTextContents()).map((text) => text.trim()).filter((text) => text !== 'Layout');
  const name = drawn(names, lots[0] ?? 0);
  await goTo(page, name);
  await page.getByRole('complementary').first().waitFor();
  await pause(100 + 500 * (lots[1] ?? 0));
  return name;
}

export async function driveRoad({ page }: World, lots: readonly number[]): Promise<string> {
  await goTo(page, 'Road');
  const road = page.getByRole('combobox', { name: 'Road', exact: true });
  const roads = (await road.getByRole('option').allTextContents()).filter((words) => !/file/.test(words));
  const chosen = drawn(roads, lots[0] ?? 0).trim();
  await road.selectOption({ label: chosen });
  const drive = page.getByRole('button', { name: 'Drive', exact: true });
  await drive.waitFor();
  if (await drive.isDisabled()) throw new NotNow(`this layout cannot be driven over ${chosen}`);
  await drive.click();
  await pause(400 + 800 * (lots[1] ?? 0));
  const stop = page.getByRole('button', { name: 'Pause', exact: true });
  if ((lots[2] ?? 0) < 0.5 && (await stop.count())) await stop.click({ timeout: 2000 }).catch(() => {});
  return chosen;
}

export async function tune({ page }: World, lots: readonly number[]): Promise<string> {
  await page.getByRole('tab', { name: 'Verdict' }).click();
  const open = page.getByRole('button', { name: 'Tune', exact: true });
  await open.click();
  const look = page.getByRole('button', { name: 'Find the best', exact: true });
  await look.waitFor();
  if (await look.isDisabled()) throw new NotNow('nothing is free to move');
  await look.click();
  if ((lots[0] ?? 0) < 0.3) {
    await page
      .getByRole('button', { name: 'Cancel', exact: true })
      .click({ timeout: 5000 })
      .catch(() => {});
    return 'called off';
  }
  const take = page.getByRole('button', { name: 'Apply the moves' });
  const nothing = page.getByText('Nothing better found');
  await take.or(look).or(nothing).first().waitFor({ timeout: 120_000 });
  if (!(await take.count())) return 'nothing better';
  await ((lots[1] ?? 0) < 0.5 ? take : page.getByRole('button', { name: 'Discard them' })).click();
  return (lots[1] ?? 0) < 0.5 ? 'taken' : 'left';
}

export async function showMap({ page }: World, lots: readonly number[]): Promise<string> {
  await page.keyboard.press('m');
  const legend = page.getByRole('region', { name: 'Map of bump steer' });
  await legend.waitFor();
  await page
    .locator('section[aria-label="Map of bump steer"][aria-busy="false"]')
    .waitFor({ timeout: 60_000 });
  const best = legend.locator('[data-spot="best"]');
  const take = (lots[0] ?? 0) < 0.4 && (await best.count()) > 0 && (await best.isEnabled());
  if (take) await best.click();
  await page.keyboard.press('Escape');
  return take ? 'the best spot taken' : 'looked at';
}

export async function column({ page }: World, lots: readonly number[]): Promise<string> {
  const name = drawn(['Verdict', 'Points', 'Clearance', 'Car', 'Links', 'Compare'], lots[0] ?? 0);
  await page.getByRole('tab', { name, exact: true }).click();
  await pause(300);
  return name;
}

export async function unit({ page }: World): Promise<string> {
  await page.keyboard.press('u');
  await pause(150);
  await page.keyboard.press('u');
  return 'to and fro';
}
