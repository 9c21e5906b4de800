import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openStore } from '../../src-main/store/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import {
  type OpenBoard,
  openDemonstration,
  saved,
  storedDocument,
  useBrowser,
} from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';

const openBoard = useBrowser();
const SIDE = 'Side steer, box at the cowl';
const shelf = (page: Page) => page.getByRole('complementary', { name: 'Shelf of this shop' });

async function openShelf(): Promise<OpenBoard> {
  const board = await openBoard();
  await openDemonstration(board.page, SIDE);
  await board.page.keyboard.press('k');
  await shelf(board.page).waitFor();
  return board;
}

/** The demonstration on the board with the right column at "Car". */
async function openDemonstrationCar(): Promise<OpenBoard> {
  const board = await openBoard();
  await openDemonstration(board.page, SIDE);
  await board.page.getByRole('tab', { name: 'Car', exact: true }).click();
  return board;
}

async function typed(page: Page, label: string, text: string): Promise<void> {
  const field = shelf(page).getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

/** What the store itself holds, read beside the page. */
function stored(board: OpenBoard) {
  const store = openStore({ folder: board.dataFolder });
  try {
    return store.shelf.list().map(({ part }) => part);
  } finally {
    store.close();
  }
}

async function bring(page: Page, name: string, text: string): Promise<void> {
  await page
    .locator('input[aria-label="Table file for the shelf"]')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

describe('the shelf', () => {
  test('takes a bearing by typing, in the reader’s unit, changes it, takes it off and puts it back', async () => {
    const board = await openShelf();
    const { page } = board;
    const before = stored(board).length;
    await shelf(page).getByRole('button', { name: 'Add a support bearing' }).click();
    await typed(page, 'Name', 'Bearing for the tourer');
    await typed(page, 'Bearing bore', '3/4');
    await shelf(page).getByRole('button', { name: 'Put on the shelf' }).click();
    const change = shelf(page).getByRole('button', { name: 'Change Bearing for the tourer', exact: true });
    await change.waitFor();
    expect(stored(board).at(-1)).toMatchObject({
      kind: 'support',
      name: 'Bearing for the tourer',
      bore: 19.05,
      count: 1,
    });

    await change.click();
    await typed(page, 'How many', '4');
    await shelf(page).getByRole('button', { name: 'Keep', exact: true }).click();
    await change.waitFor();
    expect(stored(board).at(-1)).toMatchObject({ count: 4, bore: 19.05 });

    await shelf(page).getByRole('button', { name: 'Remove Bearing for the tourer from the shelf' }).click();
    await change.waitFor({ state: 'detached' });
    expect(stored(board)).toHaveLength(before);
    await shelf(page)
      .getByRole('button', { name: 'Undo: Remove Bearing for the tourer from the shelf' })
      .click();
    await change.waitFor();
    await shelf(page).getByRole('button', { name: 'Undo: Change Bearing for the tourer' }).click();
    const undoPut = shelf(page).getByRole('button', { name: /^Undo: Put Bearing/ });
    await undoPut.waitFor();
    // The next step is offered before the store has answered.
    await expect.poll(() => stored(board).at(-1)).toMatchObject({ count: 1 });

    // A step that the store does not take back can be tried again.
    await page.route('**/rpc', (route) =>
      route.request().postData()?.includes('shelf.remove') ? route.abort() : route.fallback(),
    );
    await undoPut.click();
    await page.getByText('Not removed from the shelf').waitFor();
    await page.unroute('**/rpc');
    await undoPut.click();
    await change.waitFor({ state: 'detached' });
    expect(stored(board)).toHaveLength(before);
    // The browser itself logs the call that was cut off; nothing else may have been said.
    expect(board.complaints.filter((text) => !text.includes('net::ERR_FAILED'))).toEqual([]);
    board.complaints.length = 0;
  });

  test('an entry that lacks a figure says which, and keeps what was typed', async () => {
    const { page } = await openShelf();
    await shelf(page).getByRole('button', { name: 'Add a joint' }).click();
    await typed(page, 'Name', 'Half told');
    await shelf(page).getByRole('button', { name: 'Put on the shelf' }).click();
    await shelf(page).getByText('End 1 bore: is missing.').waitFor();
    // Another form of end asks for other figures.
    await shelf(page).getByRole('combobox', { name: 'End 1', exact: true }).selectOption('spline');
    await shelf(page).getByRole('textbox', { name: 'End 1 teeth' }).waitFor();
    await expect.poll(() => shelf(page).getByRole('textbox', { name: 'End 1 bore' }).count()).toBe(0);
    await expect
      .poll(() => shelf(page).getByRole('textbox', { name: 'Name', exact: true }).inputValue())
      .toBe('Half told');
  });

  test('takes in a table file, adds or replaces, and undoes either', async () => {
    const board = await openShelf();
    const { page } = board;
    const before = stored(board);
    const text = 'kind;name;how many;bearing bore (mm)\r\nsupport bearing;Bearing from the list;3;19,23\r\n';
    await bring(page, 'list.csv', text);
    await shelf(page).getByRole('button', { name: 'Keep it and add' }).click();
    await shelf(page).getByRole('button', { name: 'Change Bearing from the list' }).waitFor();
    expect(stored(board)).toHaveLength(before.length + 1);
    expect(stored(board).at(-1)).toMatchObject({ bore: 19.23, count: 3 });

    await bring(page, 'list.csv', text);
    await shelf(page).getByRole('button', { name: 'Replace it with the file' }).click();
    await shelf(page)
      .getByRole('button', { name: 'Change Cowl box, manual', exact: true })
      .waitFor({ state: 'detached' });
    expect(stored(board)).toHaveLength(1);
    await shelf(page).getByRole('button', { name: 'Undo: Import list.csv, 1 entry' }).click();
    await shelf(page).getByRole('button', { name: 'Change Cowl box, manual', exact: true }).waitFor();
    await shelf(page).getByRole('button', { name: 'Undo: Import list.csv, 1 entry' }).click();
    await shelf(page)
      .getByRole('button', { name: 'Change Bearing from the list' })
      .waitFor({ state: 'detached' });
    expect(stored(board)).toEqual(before);
  });

  test('a refused table file is named with line and column, and changes nothing', async () => {
    const board = await openShelf();
    const { page } = board;
    const before = stored(board);
    await bring(page, 'bad.csv', 'kind,name,bearing bore (mm)\nsupport,A,19\nsupport,B,wide\n');
    await shelf(page).getByRole('button', { name: 'Keep it and add' }).click();
    await shelf(page)
      .getByText('bad.csv: line 3, column "bearing bore (mm)": "wide" is not a length')
      .waitFor();
    expect(stored(board)).toEqual(before);
  });

  test('goes out as a table file that a spreadsheet reads, lengths in the shop’s unit', async () => {
    const { page } = await openShelf();
    const download = page.waitForEvent('download');
    await shelf(page).getByRole('button', { name: 'Export a table file' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe('shelf.csv');
    const text = (await downloaded(file)).content.toString();
    expect(text.split('\r\n')[0]).toContain('bearing bore (in)');
    expect(text).toContain('"Cowl box, manual"');
  });

  test('is looked through by words, and held against the car on the board', async () => {
    const { page } = await openShelf();
    await shelf(page).getByRole('textbox', { name: 'Find on the shelf' }).fill('rod end left');
    await expect
      .poll(() =>
        shelf(page)
          .getByRole('button', { name: /^Change / })
          .count(),
      )
      .toBe(2);
    await shelf(page).getByRole('button', { name: 'For this car', exact: true }).click();
    await shelf(page).getByText('on the shelf: Cowl box, manual').waitFor();
    await shelf(page)
      .getByText(/to order: \d, by the dimensions above/)
      .first()
      .waitFor();
  });

  test('can be used by everybody: nothing wrong for those who listen, nor for those who see little', async () => {
    const { page, context } = await openShelf();
    await bringChecker(context);
    await page.reload();
    await page.getByRole('tab', { name: 'Points' }).waitFor();
    await page.keyboard.press('k');
    await shelf(page).getByRole('button', { name: 'Change Cowl box, manual', exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);
    await shelf(page).getByRole('button', { name: 'Add an arm' }).click();
    expect(await violations(page)).toEqual([]);
    await shelf(page).getByRole('button', { name: 'For this car', exact: true }).click();
    expect(await violations(page)).toEqual([]);
  });
});

describe('taking from the shelf', () => {
  test('a box sets ratio, sector travel and assistance as one step of undo', async () => {
    const board = await openDemonstrationCar();
    const { page } = board;
    const before = storedDocument(board, SIDE);
    await page.getByRole('button', { name: 'Take from the shelf: the steering box' }).click();
    await page.getByRole('button', { name: /^Cross box, assisted/ }).click();
    await saved(page);
    const taken = storedDocument(board, SIDE);
    expect(taken.steering.box).toEqual({
      ...before.steering.box,
      ratio: 17,
      sectorTravel: 40,
      assist: 'power',
    });
    // It was made for the other arrangement, which is said.
    await page.getByText(/is made for cross steer; this layout is side steer/).waitFor();
    await page.getByRole('button', { name: 'Undo: Take Cross box, assisted from the shelf' }).click();
    await saved(page);
    expect(storedDocument(board, SIDE)).toEqual(before);
  });

  test('a joint goes in the way round that fits, and the parts list tells shelf or order', async () => {
    const board = await openDemonstrationCar();
    const { page } = board;
    const before = storedDocument(board, SIDE).shaft;
    await page.getByRole('button', { name: 'Shaft', exact: true }).click();
    await page.getByRole('tab', { name: /^Ends/ }).click();
    await page.getByRole('button', { name: /Box and joint 2/ }).click();
    await page.getByRole('button', { name: 'Take from the shelf: joint 2' }).click();
    await page
      .getByRole('button', { name: /^Single, 36 spline to 3\/4 double-D \d there.*goes with/ })
      .click();
    await saved(page);
    const joint = storedDocument(board, SIDE).shaft?.joints[1];
    expect(joint).toMatchObject({
      kind: 'single',
      centre: before?.joints[1]?.centre,
      columnSide: { kind: 'double-d-pinch-bolt' },
      boxSide: { kind: 'spline-pinch-bolt' },
    });
    await page.getByRole('tab', { name: 'Make' }).click();
    await page.getByText('on the shelf: 2 × Single, 36 spline to 3/4 double-D').waitFor();
    await page.getByText('to order: 1').first().waitFor();
  });
});
