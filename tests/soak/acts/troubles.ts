import type { Page } from 'playwright-core';
import { pause } from '../pause.ts';
import { drawn } from '../plan.ts';
import { settle, toTheBoard, typePitmanHeight, type World } from '../world.ts';

const HOUR = 3_600_000;

async function height(page: Page, lot: number): Promise<string> {
  await page.getByRole('tab', { name: 'Points' }).click();
  const given = `${(300 + 100 * lot).toFixed(1)} mm`;
  await typePitmanHeight(page, given);
  return given;
}

/** kill -9 in the middle of things; changed while it is down; started again on the same data. */
export async function kill({ page, program, ledger }: World, lots: readonly number[]): Promise<string> {
  const before = await height(page, lots[0] ?? 0);
  // Sometimes with everything in the store, sometimes in the middle of the save.
  if ((lots[1] ?? 0) < 0.5) await settle(page);
  else await pause(400 * (lots[2] ?? 0));
  await program.kill();
  const found = ledger.check(program.folder);
  const between = await height(page, lots[3] ?? 0);
  await page.getByRole('alert').filter({ hasText: 'is not answering' }).waitFor();
  await program.start();
  await settle(page);
  ledger.check(program.folder);
  return `${before}, killed, ${found} saves found, ${between}, taken up again`;
}

/** The page itself begins anew, and finds everything again. */
export async function reload({ page, program, ledger, pageReborn }: World): Promise<string> {
  await settle(page);
  await page.reload();
  await page.getByRole('navigation', { name: 'Places' }).waitFor();
  pageReborn();
  return `${ledger.check(program.folder)} saves found`;
}

/** A second page on the same layout: both change it, and the slower one is asked. */
export async function twoPages(
  { page, anotherPage, program, ledger }: World,
  lots: readonly number[],
): Promise<string> {
  await settle(page);
  const other = await anotherPage();
  try {
    await toTheBoard(other);
    const keep = (lots[0] ?? 0) < 0.5;
    await height(page, lots[1] ?? 0);
    await settle(page);
    await height(other, lots[2] ?? 0);
    const asked = other.getByText('changed in another window');
    await asked.waitFor();
    await other.getByRole('button', { name: keep ? 'Keep mine' : 'Use the other', exact: true }).click();
    await asked.waitFor({ state: 'detached' });
    await settle(other);
    // Now the first page is the slower one.
    if (keep) {
      await height(page, lots[3] ?? 0);
      const toFirst = page.getByText('changed in another window');
      await toFirst.waitFor();
      await page.getByRole('button', { name: 'Use the other', exact: true }).click();
      await toFirst.waitFor({ state: 'detached' });
      await settle(page);
    }
    ledger.check(program.folder);
    return keep ? 'the second kept its own, the first took it' : 'the second took the first’s';
  } finally {
    await other.close();
  }
}

/** A page that comes, changes something, goes in the middle of it, comes back by a reload, and is closed. */
export async function reloadOther(
  { page, anotherPage, program, ledger }: World,
  lots: readonly number[],
): Promise<string> {
  await settle(page);
  const other = await anotherPage();
  try {
    await toTheBoard(other);
    await height(other, lots[0] ?? 0);
    if ((lots[1] ?? 0) < 0.6) await settle(other);
    other.once('dialog', (dialog) => void dialog.accept());
    await other.reload();
    await other.getByRole('navigation', { name: 'Places' }).waitFor();
    await settle(other);
  } finally {
    await other.close();
  }
  const found = ledger.check(program.folder);
  // What the other page has saved is now newer than what stands here.
  await height(page, lots[2] ?? 0);
  await settle(page);
  return `${found} saves found`;
}

/**
 * The tab is hidden with a change that is not saved yet, stands frozen for a moment, and comes back. Without a window
 * Chromium hides no page, so the page is given the state and its event; the freezing is Chromium's own.
 */
export async function hide({ page, context }: World, lots: readonly number[]): Promise<string> {
  const given = await height(page, lots[0] ?? 0);
  const show = (state: 'hidden' | 'visible') =>
    page.evaluate((as) => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => as });
      Object.defineProperty(document, 'hidden', { configurable: true, get: () => as === 'hidden' });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
  await show('hidden');
  const session = await context.newCDPSession(page);
  await session.send('Page.setWebLifecycleState', { state: 'frozen' });
  await pause(300 + 1500 * (lots[1] ?? 0));
  await session.send('Page.setWebLifecycleState', { state: 'active' });
  await session.detach();
  await show('visible');
  await settle(page);
  return given;
}

/** Both clocks are set back: by minutes, hours or weeks, or to what they should be. */
export async function clockBack({ page, program }: World, lots: readonly number[]): Promise<string> {
  const back = drawn([0, 0.1, 3, 30, 24 * 40], lots[0] ?? 0) * HOUR;
  program.setClock(-back);
  await page.evaluate((offset) => {
    (window as { soakClock?: number }).soakClock = offset;
  }, -back);
  await pause(250);
  await height(page, lots[1] ?? 0);
  await settle(page);
  return `${back / HOUR} hours behind`;
}

/** No room: the save is refused in a sentence, kept in the page, and in the store once there is room. */
export async function fullDisk(
  { page, program, disk, ledger }: World,
  lots: readonly number[],
): Promise<string> {
  await settle(page);
  disk.fill(program);
  let told: string | null;
  try {
    await height(page, lots[0] ?? 0);
    const notice = page.getByRole('alert').filter({ hasText: 'are not saved' });
    await notice.waitFor();
    told = await notice.locator('p').textContent();
    await height(page, lots[1] ?? 0);
  } finally {
    disk.free(program);
  }
  await settle(page);
  ledger.check(program.folder);
  return `told: ${told?.trim().replaceAll(/\s+/g, ' ')}`;
}
