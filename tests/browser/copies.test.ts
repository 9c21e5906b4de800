import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { bringChecker, violations } from '../support/accessibility.ts';
import { pointButton, saved, storedDocument, useBrowser, withSample } from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { testFolder } from '../support/host-folder.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();
const PICTURES = process.env['TOEBOARD_PICTURES'];

async function openCopies(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Cars and variants/ }).click();
  await page.getByRole('button', { name: 'Copies', exact: true }).click();
  await page.getByRole('heading', { name: 'Copies of the shop' }).waitFor();
}

async function typeHeight(page: Page, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
  if ((await field.count()) === 0) await pointButton(page, 'Pitman ball').click();
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await saved(page);
}

describe('the copies of a shop', { timeout: 180_000 * SLOWNESS }, () => {
  test('are kept by themselves, can be looked into, and brought back over what came after', async () => {
    const board = await openBoard({
      prepare: withSample(sampleLayout('Arm down')),
      size: { width: 1280, height: 720 },
    });
    const { page, context } = board;
    await bringChecker(context);
    await page.reload();
    // That a layout was opened is remembered, which is a change: the copy of the day is made in the first quiet seconds.
    const backups = join(board.dataFolder, 'backups');
    const kept = () => existsSync(backups) && readdirSync(backups).some((name) => name.endsWith('.sqlite'));
    await expect.poll(kept, { timeout: 60_000 * SLOWNESS }).toBe(true);
    await typeHeight(page, '360 mm');
    await openCopies(page);
    await page.getByRole('button', { name: /^Look inside the copy of today/ }).click();
    await page.getByText('1 customer, 1 car, 1 layout').waitFor();
    expect(await violations(page)).toEqual([]);
    if (PICTURES) await page.screenshot({ path: join(PICTURES, 'copies.png') });
    await page.getByRole('button', { name: 'Restore this copy…' }).click();
    await page.getByRole('button', { name: 'Replace the shop with it' }).click();
    await page.getByText('The copy is back.').waitFor();
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(346);
    // What was there before can be had again.
    await page.getByText('before another copy was brought back').waitFor();
    // The board shows what is in the store, and goes on saving.
    await page.keyboard.press('Escape');
    await typeHeight(page, '340 mm');
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBe(340);
  });

  test('go into one file, and from that file into another shop', async () => {
    const { page } = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    await openCopies(page);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the whole shop to a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/^Toeboard shop \d{4}-\d\d-\d\d\.toeboard-shop$/);
    const path = join(testFolder(), 'shop.toeboard-shop');
    writeFileSync(path, (await downloaded(download)).content);

    // The history goes along as far as it is asked for: all of it, or the newest states of each layout.
    const statesIn = (text: string) => text.match(/^\{"state"/gm)?.length ?? 0;
    expect(statesIn(readFileSync(path, 'utf8'))).toBe(1);
    await page.keyboard.press('Escape');
    await typeHeight(page, '350 mm');
    await openCopies(page);
    await page
      .getByRole('combobox', { name: 'History of the layouts' })
      .selectOption({ label: 'the newest states' });
    const count = page.getByRole('textbox', { name: 'States of each layout' });
    await count.fill('none');
    await count.press('Enter');
    await page.getByText('a whole number from 1 to 300').waitFor();
    await count.fill('1');
    await count.press('Enter');
    const [newest] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the whole shop to a file' }).click(),
    ]);
    expect(statesIn((await downloaded(newest)).content.toString())).toBe(1);

    const other = await openBoard();
    await openCopies(other.page);
    await other.page.getByLabel('File of a whole shop').setInputFiles(path);
    await other.page.getByText('1 customer, 1 car, 1 layout').waitFor();
    await other.page.getByRole('button', { name: 'Restore this copy…' }).click();
    await other.page.getByRole('button', { name: 'Replace the shop with it' }).click();
    await other.page.getByText('The copy is back.').waitFor();
    expect(storedDocument(other, 'Arm down')).toEqual(sampleLayout('Arm down'));

    writeFileSync(path, readFileSync(path, 'utf8').replace('Sample customer', 'Simple customer'));
    await other.page.getByLabel('File of a whole shop').setInputFiles(path);
    await other.page.getByText('shop.toeboard-shop cannot be imported: it was changed or damaged').waitFor();
    // The browser itself logs the refusal; nothing else may have been said.
    expect(other.complaints.filter((text) => !text.includes('422'))).toEqual([]);
    other.complaints.length = 0;
  });
});
