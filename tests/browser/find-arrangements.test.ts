import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { LayoutDocument } from '../../shared-math/layout/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { figure } from '../support/board-pointer.ts';
import {
  openDemonstration,
  pointButton,
  saved,
  storedDocument,
  useBrowser,
} from '../support/browser-page.ts';
import { stopsOf } from '../support/judged-anew.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();
const DRAWN = 'Side steer, box too low';
/** Milliseconds for the search itself, on a machine that does other things as well. */
const SEARCH = 60_000 * SLOWNESS;

const sheet = (page: Page) => page.getByRole('main', { name: 'Find arrangements that fit this car' });
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent?.trim());
const said = (page: Page) => sheet(page).getByRole('status').textContent();

/** What of a document its steering is not: the same whatever is laid. */
const carOf = ({ car, axle, location, rails, obstacles, travel }: LayoutDocument) => ({
  car,
  axle,
  location,
  rails,
  obstacles,
  travel,
});

test('from the door to a laid variant without a stop, and back by one undo', {
  timeout: 180_000 * SLOWNESS,
}, async () => {
  const board = await openBoard({ size: { width: 1280, height: 720 } });
  const { page, context } = board;
  await bringChecker(context);
  await page.reload();
  await openDemonstration(page, DRAWN);
  await expect.poll(() => page.title()).toBe(`${DRAWN} – Toeboard`);
  await saved(page);
  const before = storedDocument(board, DRAWN);
  expect((await stopsOf(before)).length).toBeGreaterThan(0);

  // By keys alone through the door; the four usual ones stay behind it.
  await page.getByRole('button', { name: 'Choose an arrangement for this car' }).press('Enter');
  await expect.poll(() => focused(page)).toBe('Choose an arrangement');
  await page.keyboard.press('Tab');
  await expect.poll(() => focused(page)).toBe('Find arrangements that fit this car');
  await page.keyboard.press('Enter');
  await sheet(page).waitFor();
  await expect.poll(() => focused(page)).toBe('Find arrangements that fit this car');
  await expect.poll(() => said(page)).toContain('Nothing has been looked for yet.');
  // What was taped on the car stands still until it is let go, and says how far it could go then.
  const box = sheet(page).getByRole('checkbox', { name: 'Where the steering box is bolted' });
  await expect.poll(() => box.isChecked()).toBe(true);
  await sheet(page).getByRole('button', { name: 'Untick all' }).press('Enter');
  await expect.poll(() => box.isChecked()).toBe(false);
  const tieRod = sheet(page).getByRole('checkbox', { name: 'The tie rod’s balls' });
  await tieRod.press('Space');
  await expect.poll(() => tieRod.isChecked()).toBe(true);
  const room = page.locator(`[id="${await box.getAttribute('aria-describedby')}"]`);
  await expect
    .poll(async () => (await room.textContent())?.trim())
    .toMatch(/^Along the rails, .*behind the axle.*\.$/);
  // Of the parts of the frame that the box may be on, all but one are left out; the last one has to stay.
  const parts = sheet(page).getByRole('group', {
    name: 'Which part of the frame the box is on: what to try',
  });
  for (const name of [
    'Inside the rail',
    'On top of the rail',
    'Inside the rail, its arm outside',
    'On a crossmember',
  ])
    await parts.getByRole('checkbox', { name, exact: true }).press('Space');
  const outside = parts.getByRole('checkbox', { name: 'Outside the rail' });
  await outside.press('Space');
  await expect.poll(() => parts.getByRole('alert').textContent()).toBe('One of these has to be left to try.');
  await expect.poll(() => outside.isChecked()).toBe(true);
  expect(await violations(page)).toEqual([]);

  // What the page has its workers do is heard along: of the search it works out nothing itself, or it would stall.
  await page.evaluate(() => {
    const asked: string[] = [];
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (message: { job?: string }) {
      if (message.job) asked.push(message.job);
      post.call(this, message);
    };
    Object.assign(window, { asked });
  });
  // What is pressed, what comes of it in words and the cautions are in sight, however long the form and the cards are.
  const inSight = async () => {
    for (const part of [
      page.getByRole('heading', { name: 'Find arrangements that fit this car' }),
      sheet(page).getByRole('status'),
      sheet(page).getByRole('button', { name: /^(Find arrangements|Look again)$/ }),
      sheet(page).getByText(/local codes, the parts’ makers and licensed practice/),
    ]) {
      const at = await part.boundingBox();
      expect(at && at.y >= 0 && at.y + at.height <= 720, String(part)).toBe(true);
    }
  };
  await inSight();
  await sheet(page).getByRole('button', { name: 'Find arrangements', exact: true }).press('Enter');
  await expect.poll(() => focused(page)).toBe('Stop looking');
  await expect.poll(() => page.locator('[data-doing]').textContent()).toMatch(/arrangements tried\.$/);
  await page.locator('[data-proposal]').first().waitFor({ timeout: SEARCH });
  const asked = () => page.evaluate(() => (window as unknown as { asked: string[] }).asked);
  await expect.poll(async () => (await asked()).slice(0, 2)).toEqual(['tasks', 'drawn']);
  await expect.poll(() => said(page)).toMatch(/^\d+ arrangements? fits? so far\./);
  await page.keyboard.press('Enter');
  await expect.poll(() => focused(page)).toBe('Look again');
  await expect.poll(() => said(page)).toContain('The search was stopped: there may be more.');
  await inSight();
  expect(await violations(page)).toEqual([]);

  const card = page.locator('[data-proposal]').first();
  const name = (await card.getByRole('heading').textContent()) ?? '';
  expect(name).toContain('outside the left rail');
  const worst = (await card.locator('[data-figure-row="Worst bump steer"] td').allTextContents()).map(
    (text) => /[\d.]+°/.exec(text)?.[0],
  );
  expect(worst[1]).toBe('3.82°');

  // Over the drawing before it is laid; the drawing may go on meanwhile.
  await card.getByRole('button', { name: 'Show on the board' }).press('Enter');
  const ghost = page.getByRole('region', { name: 'Proposed arrangement' });
  await ghost.getByText(name).waitFor();
  await expect.poll(() => focused(page)).toBe('Add as a new variant');
  await pointButton(page, 'Pitman ball').click();
  await page.keyboard.press('ArrowUp');
  await ghost.getByText('found for the drawing as it was before your last change').waitFor();
  await saved(page);
  const changed = storedDocument(board, DRAWN);
  expect(changed).not.toEqual(before);
  await ghost.getByRole('button', { name: 'Back to the proposals' }).press('Enter');
  await sheet(page).getByText(`These are for “${DRAWN}” as it was drawn when you asked.`).waitFor();

  await page
    .locator('[data-proposal]')
    .first()
    .getByRole('button', { name: 'Add as a new variant' })
    .press('Enter');
  await expect.poll(() => page.title()).toBe(`${name} – Toeboard`);
  await pointButton(page, 'Pitman ball').waitFor();
  await saved(page);
  const laid = storedDocument(board, name);
  expect(await stopsOf(laid)).toEqual([]);
  expect(carOf(laid)).toEqual(carOf(before));
  expect(laid.origins?.['steering.box.pitmanBall']).toBe('plan');
  expect(laid.notes).toContain(`Found by the board for “${DRAWN}” as it was drawn`);
  await expect.poll(async () => (await figure(page, 'worst')).split(' ')[0]).toBe(worst[0]);
  expect(storedDocument(board, DRAWN)).toEqual(changed);

  await page.keyboard.press('ControlOrMeta+z');
  await saved(page);
  expect(storedDocument(board, name)).toEqual({ ...before, name });
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await saved(page);
  expect(storedDocument(board, name)).toEqual(laid);
});
