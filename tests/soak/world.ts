import type { BrowserContext, Page } from 'playwright-core';
import type { Disk } from './disk.ts';
import type { Ledger } from './ledger.ts';
import { pause } from './pause.ts';
import type { Program } from './program.ts';

/** All that an act can reach. */
export interface World {
  readonly context: BrowserContext;
  readonly program: Program;
  readonly ledger: Ledger;
  readonly disk: Disk;
  /** The page that stays open all the time, in which things would be seen to grow. */
  readonly page: Page;
  /** One more page onto the same shop, with what it says heard like the other's. */
  readonly anotherPage: () => Promise<Page>;
  /** To be called when the page that stays begins a new life. */
  readonly pageReborn: () => void;
}

/** An act that could not be done as things stood; no fault of the program. */
export class NotNow extends Error {}

/** Milliseconds for anything to show up on a busy machine. */
const PATIENCE = 60_000;

/** Waits until the page says that everything is in the store, and answers for a person what it asks on the way. */
export async function settle(page: Page): Promise<void> {
  for (const until = Date.now() + PATIENCE; Date.now() < until; ) {
    const keep = page.getByRole('button', { name: 'Keep mine', exact: true });
    // It may be gone again by the time it is clicked.
    if (await keep.count()) await keep.click({ timeout: 1000 }).catch(() => {});
    if (await page.locator('[data-save-state="saved"]').count()) return;
    await pause(60);
  }
  const says = await page.locator('[data-save-state]').first().getAttribute('title');
  throw new Error(`the page does not come to rest: it says "${says ?? 'saving'}"`);
}

/** Back to where every act begins: the place of the layout at ride height, nothing lying over the board. */
export async function toTheBoard(page: Page): Promise<void> {
  await page.mouse.up();
  const close = page.getByRole('button', { name: 'Close the drawer' });
  if (await close.count()) await close.click();
  await page
    .getByRole('navigation', { name: 'Places' })
    .getByRole('button', { name: 'Layout', exact: true })
    .click();
  await page.keyboard.press('Escape');
  await page.keyboard.press('r');
  await page.keyboard.press('0');
  await page.getByRole('tab', { name: 'Points' }).click();
}

/** Types something as the pitman ball's height, as a person does. */
export async function typePitmanHeight(page: Page, given: string): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
  // A second click on the point's name would let it go again.
  if (!(await field.count())) await page.getByRole('button', { name: 'Pitman ball', exact: true }).click();
  await field.fill(given);
  await field.press('Enter');
}
