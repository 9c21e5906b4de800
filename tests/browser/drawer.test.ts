import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { parseLayout } from '../../shared-math/layout/index.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  storedDocument,
  storedDocuments,
  tabTo,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { impossibleLayout, sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

async function openDrawer(): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await board.page.keyboard.press('c');
  await drawer(board.page).waitFor();
  return board;
}

const drawer = (page: Page) => page.getByRole('complementary', { name: 'Cars and variants' });

async function choose(page: Page, of: string, item: string): Promise<void> {
  await page.getByRole('button', { name: `More for ${of}`, exact: true }).click();
  await page.getByRole('menuitem', { name: item }).click();
}

/** Adds a point of interest to the history: a typed height of the pitman ball. */
async function typeHeight(page: Page, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
  if ((await field.count()) === 0) await pointButton(page, 'Pitman ball').click();
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
  await saved(page);
}

test('the drawer that is opened while the last layout is still on its way stays open when it comes', async () => {
  const { page } = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await pointButton(page, 'Pitman ball').waitFor();
  const { promise: comes, resolve: letThrough } = Promise.withResolvers<void>();
  await page.route('**/rpc', async (route) => {
    if (route.request().postData()?.includes('variant.open')) await comes;
    await route.fallback();
  });
  await page.reload();
  await page.getByRole('button', { name: 'Cars and variants', exact: true }).click();
  await drawer(page).waitFor();
  letThrough();
  await pointButton(page, 'Pitman ball').waitFor();
  await expect.poll(() => page.title()).toBe('Arm down – Toeboard');
  await expect.poll(() => drawer(page).count()).toBe(1);
  // What is chosen there gives the board its room back, as ever.
  await page.getByRole('button', { name: 'Arm down', exact: true }).click();
  await drawer(page).waitFor({ state: 'detached' });
  await page.unrouteAll({ behavior: 'ignoreErrors' });
});

describe('customers, cars and variants', () => {
  test('are added one after another, and the new variant is opened', async () => {
    const board = await openDrawer();
    const { page } = board;
    await page.getByRole('button', { name: 'Add a car', exact: true }).click();
    await page.keyboard.type('Harrow & Daughter');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Pickup with a tube axle');
    // The plain car is what a new one starts from; it may be a demonstration.
    const from = page.getByRole('combobox', { name: 'Start from' });
    await expect.poll(() => from.inputValue()).toBe('plain');
    await from.selectOption({ label: 'Long tourer on a wishbone: Side steer on a wishbone' });
    await page.getByRole('button', { name: 'Add the car and open it' }).click();
    await page
      .getByRole('button', {
        name: /Open: Harrow & Daughter, Pickup with a tube axle, Side steer on a wishbone/,
      })
      .waitFor();
    expect(storedDocument(board, 'Side steer on a wishbone').location.kind).toBe('wishbone');
    // What was chosen is on the board, and the drawer out of its way.
    await expect.poll(() => drawer(page).count()).toBe(0);

    // Another variant of a car that is not on the board does not take over what is.
    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'Add a variant to Sample car' }).click();
    await expect.poll(() => from.inputValue()).toBe('plain');
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('As delivered');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /Open: Sample customer, Sample car, As delivered/ }).waitFor();
    expect(storedDocument(board, 'As delivered').location.kind).toBe('hairpins');
    await expect.poll(() => drawer(page).count()).toBe(0);
  });

  test('the open variant is renamed in place, as one step of undo', async () => {
    const board = await openDrawer();
    const { page } = board;
    await choose(page, 'Arm down', 'Rename');
    await page.keyboard.type('Arm up');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /Open: .*Arm up/ }).waitFor();
    // The field closes when the store has the name; until then Control+Z is the field's own.
    await page.getByRole('textbox', { name: 'Name of the variant' }).waitFor({ state: 'detached' });
    expect(storedDocuments(board, 'Arm down')).toHaveLength(0);
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: /Open: .*Arm down/ }).waitFor();
    await saved(page);
    expect(storedDocuments(board, 'Arm down')).toHaveLength(1);
  });

  test('a variant is duplicated, named, moved to another car and found', async () => {
    const board = await openDrawer();
    const { page } = board;
    await choose(page, 'Arm down', 'Duplicate');
    await page.getByRole('textbox', { name: 'Name of the variant' }).fill('Second try');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Add a car for Sample customer' }).click();
    // The customer stands in the form already, and the keyboard in the next field.
    await page.keyboard.type('Other car');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /Open: Sample customer, Other car, New layout/ }).click();
    await choose(page, 'Second try', 'Move to another car');
    await page.getByRole('button', { name: 'Move', exact: true }).click();
    await page.getByRole('button', { name: 'Second try', exact: true }).click();
    await page.getByRole('button', { name: /Open: Sample customer, Other car, Second try/ }).waitFor();
    await page.keyboard.press('c');

    const find = page.getByRole('textbox', { name: 'Find a customer, car or variant' });
    await find.fill('other second');
    await expect.poll(() => page.getByRole('button', { name: 'Arm down', exact: true }).count()).toBe(0);
    await expect.poll(() => page.getByRole('button', { name: 'Second try', exact: true }).count()).toBe(1);
    await find.fill('nowhere');
    await page.getByText('Nothing is called “nowhere”.').waitFor();
  });

  test('the bin takes the open variant off the board, gives it back, and is emptied only when asked twice', async () => {
    const board = await openDrawer();
    const { page } = board;
    await choose(page, 'Arm down', 'Put in the bin');
    await page
      .getByRole('heading', { name: 'Nothing is open' })
      .or(page.getByRole('heading', { name: 'A clean sheet' }))
      .waitFor();
    await page.getByRole('button', { name: 'Bin, 1 in it' }).click();
    await page.getByRole('button', { name: 'Restore Arm down' }).click();
    await page.getByText('The bin is empty.').waitFor();
    await page.getByRole('button', { name: 'Back to cars and variants' }).click();
    await page.getByRole('button', { name: 'Arm down', exact: true }).click();
    await pointButton(page, 'Pitman ball').waitFor();

    await page.keyboard.press('c');
    await choose(page, 'Sample customer', 'Put in the bin');
    await page.getByRole('button', { name: 'Bin, 1 in it' }).click();
    await page.getByRole('button', { name: 'Empty the bin…' }).click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await expect.poll(() => page.getByText('Sample customer').count()).toBe(1);
    await page.getByRole('button', { name: 'Empty the bin…' }).click();
    await page.getByRole('button', { name: 'Empty it for good' }).click();
    await page.getByText('The bin is empty.').waitFor();
    expect(storedDocuments(board, 'Arm down')).toHaveLength(0);
  });
});

describe('the drawer by keyboard alone', () => {
  test('opens, renames through a row’s menu, writes notes, closes, and gives the keyboard back', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const { page } = board;
    await pointButton(page, 'Pitman ball').waitFor();
    await tabTo(page, 'Cars and variants. Open: Sample customer, Sample car, Arm down');
    await page.keyboard.press('Enter');
    await drawer(page).waitFor();
    await tabTo(page, 'More for Sample car');
    await page.keyboard.press('Enter');
    await page.getByRole('menuitem', { name: 'Add a variant' }).and(page.locator(':focus')).waitFor();
    // Around the end of the menu and back, then down to the notes.
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    const notes = page.getByRole('menuitem', { name: 'Notes' }).and(page.locator(':focus'));
    for (let presses = 0; presses < 9 && (await notes.count()) === 0; presses += 1)
      await page.keyboard.press('ArrowDown');
    await notes.waitFor();
    await page.keyboard.press('Enter');
    await page.keyboard.type('Box from the long car');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.getByText('Box from the long car').waitFor();

    await tabTo(page, 'More for Arm down');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Arm level');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /Open: .*Arm level/ }).waitFor();
    // Escape in a form closes the form alone, outside it the drawer.
    await tabTo(page, 'More for Arm level');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await expect.poll(() => drawer(page).count()).toBe(1);
    await page.keyboard.press('Escape');
    await expect.poll(() => drawer(page).count()).toBe(0);
    expect(storedDocuments(board, 'Arm level')).toHaveLength(1);
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label')))
      .toMatch(/^Cars and variants/);
  });
});

describe('history', () => {
  test('lists what was done, brings an earlier state back, and that can be undone', async () => {
    const board = await openDrawer();
    const { page } = board;
    const height = () => storedDocument(board, 'Arm down').steering.box.pitmanBall[2];
    await page.keyboard.press('Escape');
    await typeHeight(page, '350 mm');
    await typeHeight(page, '360 mm');
    await page.getByRole('button', { name: 'History of this variant' }).click();
    const history = page.getByRole('complementary', { name: 'History' });
    await expect.poll(() => history.getByRole('listitem').count()).toBe(3);
    await expect
      .poll(() => history.getByRole('listitem').first().textContent())
      .toMatch(/Move Pitman ball to 14 3\/16 in above ground[\s\S]*present/);
    await history.getByRole('button', { name: /Restore .*Begun/ }).click();
    await expect.poll(height).toBe(346);
    await expect.poll(() => history.getByRole('listitem').count()).toBe(4);
    await page.getByRole('button', { name: /Undo: Restore: Begun/ }).click();
    await expect.poll(height).toBe(360);
  });
});

describe('files', () => {
  function file(name: string, text: string): string {
    const folder = mkdtempSync(join(tmpdir(), 'toeboard-test-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  }

  async function choosing(page: Page, path: string | string[]): Promise<void> {
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Import a file' }).click();
    await (await chooser).setFiles(path);
  }

  test('a bad file is told in one line that names it, and nothing changes', async () => {
    const board = await openDrawer();
    const { page } = board;
    for (const [name, text, reason] of [
      [
        'letter.json',
        'Dear Sir',
        'letter.json cannot be imported: it is plain text, neither a layout nor a car',
      ],
      [
        'no-link.json',
        JSON.stringify(impossibleLayout()),
        'steering.dragLinkBall: on the same spot as the pitman ball',
      ],
      ['newer.json', JSON.stringify({ ...sampleLayout(), version: 99 }), 'version 99'],
    ] as const) {
      await choosing(page, file(name, text));
      await page.getByRole('status').filter({ hasText: reason }).waitFor();
      await expect.poll(() => page.getByRole('status').filter({ hasText: name }).count()).toBe(1);
    }
    await expect
      .poll(() => page.getByRole('button', { name: /Open: Sample customer, Sample car, Arm down/ }).count())
      .toBe(1);
  });

  test('a good file beside a bad one still comes in, is opened, and goes out again the same', async () => {
    const board = await openDrawer();
    const { page } = board;
    const layout = sampleLayout('From a friend', 351);
    await choosing(page, [file('bad.json', '{'), file('friend.json', JSON.stringify(layout))]);
    await page.getByRole('button', { name: /Open: Imported, friend, From a friend/ }).waitFor();
    expect(storedDocument(board, 'From a friend')).toEqual(layout);

    await page.keyboard.press('c');
    const download = page.waitForEvent('download');
    await choose(page, 'From a friend', 'Export the layout');
    const sent = await download;
    expect(sent.suggestedFilename()).toMatch(/From a friend.*\.json$/);
    const read = parseLayout((await downloaded(sent)).content.toString());
    expect(read).toEqual({ ok: true, value: layout });
  });

  test('a file dropped on the window is taken in', async () => {
    const board = await openDrawer();
    const { page } = board;
    const text = JSON.stringify(sampleLayout('Dropped', 352));
    await page.evaluate((content) => {
      const carried = new DataTransfer();
      carried.items.add(new File([content], 'dropped.json', { type: 'application/json' }));
      for (const name of ['dragover', 'drop'])
        document.body.dispatchEvent(
          new DragEvent(name, { bubbles: true, cancelable: true, dataTransfer: carried }),
        );
    }, text);
    await page.getByRole('button', { name: /Open: Imported, dropped, Dropped/ }).waitFor();
  });
});
