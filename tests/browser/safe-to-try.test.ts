import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { DATABASE_FILE } from '../../src-main/store/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import {
  pointButton,
  saved,
  storedDocument,
  storedDocuments,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

async function typeHeight(page: Page, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
  if ((await field.count()) === 0) await pointButton(page, 'Pitman ball').click();
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

describe('two windows', () => {
  async function conflict() {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const other = await board.anotherWindow({ ofAnotherBrowser: true });
    await typeHeight(board.page, '350 mm');
    await saved(board.page);
    await typeHeight(other, '360 mm');
    await other.getByText('changed in another window').waitFor();
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(350);
    return { board, other };
  }

  test('the second one asks before it overwrites, and keeps its own when told to', async () => {
    const { board, other } = await conflict();
    await other.getByRole('button', { name: 'Keep mine' }).click();
    await saved(other);
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(360);
  });

  test('or takes what the other one saved', async () => {
    const { board, other } = await conflict();
    await other.getByRole('button', { name: 'Use the other' }).click();
    await saved(other);
    // The point stays chosen, and what stood here is one step of undo away.
    await other.getByRole('button', { name: 'Undo: Take what the other window has' }).waitFor();
    await expect
      .poll(() => other.getByRole('textbox', { name: 'Pitman ball, above ground' }).inputValue())
      .toBe('13 3/4 in');
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(350);
  });
});

test('a layout that another window has thrown away for good can be kept as a new one', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  const other = await board.anotherWindow();
  await other.getByRole('button', { name: /^Cars and variants/ }).click();
  await other.getByRole('button', { name: 'More for Arm down' }).click();
  await other.getByRole('menuitem', { name: 'Put in the bin' }).click();
  await other.getByRole('button', { name: 'Bin, 1 in it' }).click();
  await other.getByRole('button', { name: 'Empty the bin…' }).click();
  await other.getByRole('button', { name: 'Empty it for good' }).click();
  await other.getByText('The bin is empty.').waitFor();

  await typeHeight(page, '350 mm');
  await page.getByText('no longer in the store').waitFor();
  expect(storedDocuments(board, 'Arm down')).toHaveLength(0);
  await page.getByRole('button', { name: 'Save as a new variant' }).click();
  await saved(page);
  expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(350);
});

test('a damaged store is set aside, said once, and the board begins anew', async () => {
  const dataFolder = mkdtempSync(join(tmpdir(), 'toeboard-test-'));
  onTestFinished(() => rmSync(dataFolder, { recursive: true, force: true }));
  writeFileSync(join(dataFolder, DATABASE_FILE), 'not a database, though as long as one'.repeat(200));
  const { page } = await openBoard({ dataFolder });
  const notice = page.getByRole('alert').filter({ hasText: 'The database was damaged' });
  await notice.waitFor();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  await notice.getByRole('button', { name: 'Close this notice' }).click();
  await page.reload();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  await expect.poll(() => notice.count()).toBe(0);
});

describe('a host that does not answer', () => {
  test('is told plainly, and the changes arrive when it answers again', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const { page } = board;
    await pointButton(page, 'Pitman ball').waitFor();
    await page.route('**/rpc', (route) => route.abort());
    await typeHeight(page, '350 mm');
    await page.getByRole('alert').filter({ hasText: 'tried again' }).waitFor();
    await typeHeight(page, '355 mm');
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(346);
    await page.unroute('**/rpc');
    await saved(page);
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(355);
    // The browser itself logs the calls that were cut off; nothing else may have been said.
    const others = board.complaints.filter((text) => !text.includes('net::ERR_FAILED'));
    board.complaints.length = 0;
    expect(others).toEqual([]);
  });
});

test('a page closed right after a change leaves the change in the store', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await typeHeight(board.page, '350 mm');
  await board.page.close({ runBeforeUnload: true });
  await expect.poll(() => storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(350);
});

describe('for those who cannot see it', () => {
  test('no place, no page of a column and none of the drawer has a fault, of whatever weight', async () => {
    const { page, context } = await openBoard({ column: 'verdict' });
    await bringChecker(context);
    await page.reload();
    await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
    const faults: string[] = [];
    const look = async (name: string) =>
      faults.push(...(await violations(page, true)).map((fault) => `${name}: ${fault}`));
    await look('start');
    await page.getByRole('button', { name: 'Add the demonstration shop' }).click();
    await page.locator('.tally').filter({ hasText: /\w/ }).waitFor();

    const tabs = page.getByRole('tablist', { name: 'Right column' }).getByRole('tab');
    const names = (await tabs.allTextContents()).map((name) => name.trim());
    expect(names.length).toBeGreaterThan(5);
    for (const name of names) {
      await page.getByRole('tab', { name, exact: true }).click();
      await look(name);
    }
    await page.getByRole('tab', { name: 'Points', exact: true }).click();
    await pointButton(page, 'Pitman ball').click();
    await look('a chosen point');

    const find = async (words: string) => {
      await page.getByRole('button', { name: 'Find anything' }).click();
      await page.keyboard.type(words);
    };
    await find('ball');
    await look('find');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    for (const [words, title] of [
      ['add a car', 'New car'],
      ['settings of this', 'Settings of this shop'],
      ['limits', 'Limits of this shop'],
      ['shelf', 'Shelf of this shop'],
      ['copies', 'Copies of the shop'],
      ['bin', 'Bin'],
      ['history', 'History'],
      ['cars and variants', 'Cars and variants'],
    ] as const) {
      await find(words);
      await page.keyboard.press('Enter');
      await page.getByRole('complementary', { name: title, exact: true }).waitFor();
      await look(title);
      await page.getByRole('button', { name: 'Close the drawer' }).click();
    }
    await find('walk round');
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Drag this ball' }).waitFor();
    await look('walk');
    await page.getByRole('button', { name: 'Leave the walk' }).click();
    await page.getByRole('button', { name: 'Words and keys' }).click();
    for (const name of ['Words', 'Keys']) {
      await page.getByRole('tab', { name, exact: true }).click();
      await page.getByRole('heading', { name, exact: true }).waitFor();
      await look(name);
    }
    await page.getByRole('button', { name: 'Close the help' }).click();
    for (const place of await page.getByRole('navigation', { name: 'Places' }).getByRole('button').all()) {
      await place.click();
      await page.getByRole('complementary').first().waitFor();
      await look((await place.textContent())?.trim() ?? '');
    }
    expect(faults).toEqual([]);
  });
});
