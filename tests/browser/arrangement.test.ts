import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { bringChecker, violations } from '../support/accessibility.ts';
import { figure, handleOf } from '../support/board-pointer.ts';
import {
  type OpenBoard,
  openDemonstration,
  pointButton,
  saved,
  storedDocument,
  storedDocuments,
  tabTo,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { framesDrawn } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const NAMES = ['Side steer, manual', 'Side steer, assisted', 'Cross steer, manual', 'Cross steer, assisted'];

async function openSample(): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  return board;
}

const sheet = (page: Page) => page.getByRole('main', { name: 'Choose an arrangement' });

/** The cells of a line of the sheet, one for each arrangement, once all of them say something: the sheet comes late. */
async function line(page: Page, what: string): Promise<string[]> {
  const cells = sheet(page).locator(`[data-row="${what}"] td`).filter({ hasText: /\S/ });
  await cells.nth(NAMES.length - 1).waitFor();
  const texts = await cells.allTextContents();
  return texts.map((text) => text.replaceAll(/\s+/g, ' ').trim());
}

async function takeCross(page: Page): Promise<void> {
  await sheet(page).getByRole('button', { name: 'Add as a new variant: Cross steer, manual' }).click();
  await expect.poll(() => page.title()).toBe('Cross steer, manual – Toeboard');
}

describe('choosing an arrangement', () => {
  test('shows four side by side with figures, reasons and cautions', async () => {
    const { page } = await openSample();
    await page.keyboard.press('a');
    await expect.poll(() => sheet(page).getByRole('columnheader').allTextContents()).toEqual(NAMES);
    for (const name of NAMES)
      await sheet(page)
        .getByRole('img', { name: `${name}, seen from above` })
        .waitFor();
    for (const text of await line(page, 'Worst bump steer')) expect(text).toMatch(/^\d+\.\d\d°$/);
    const parking = await line(page, 'Parking at the rim');
    expect(parking[0]).toMatch(/^\d+ lb, at the most \d+ lb$/);
    expect(parking[1]).toMatch(/^2 to 7 lb \d+ lb, at the most \d+ lb if the assistance fails$/);
    await expect
      .poll(async () => (await line(page, 'Comes too near')).some((text) => text === 'measuring…'))
      .toBe(false);
    await sheet(page)
      .getByText('Fits a light front end, and a frame with no room across it')
      .first()
      .waitFor();
    await sheet(page).getByText('Self-made and welded arms can break.').waitFor();
    await sheet(page)
      .getByText(/local codes, the parts’ makers and licensed practice/)
      .waitFor();
  });

  test('lays the chosen one as a new variant that opens with the figures promised', async () => {
    const board = await openSample();
    const { page } = board;
    const before = storedDocument(board, 'Arm down');
    await page.getByRole('button', { name: 'Choose an arrangement for this car' }).click();
    const [bump, turns, circle] = await Promise.all([
      line(page, 'Worst bump steer'),
      line(page, 'Lock to lock'),
      line(page, 'Circle between kerbs'),
    ]);
    await takeCross(page);
    await handleOf(page, 'front', 'steering.box.pitmanBall');
    expect(bump[2]).toMatch(/^\d+\.\d\d°$/);
    await expect.poll(async () => (await figure(page, 'worst')).split(' ')[0]).toBe(bump[2]);
    await page.getByRole('button', { name: 'Turn', exact: true }).click();
    await expect.poll(() => figure(page, 'turns')).toContain(turns[2]?.split(' ')[0]);
    await expect
      .poll(async () =>
        (await page.locator('[data-figure="kerbs"] td').allTextContents()).map((text) => text.trim()),
      )
      .toContain(circle[2]);
    await saved(page);
    const laid = storedDocument(board, 'Cross steer, manual');
    expect(laid.steering.dragLinkTo).toBe('right');
    expect(laid.lateral.kind).toBe('bar');
    expect(laid.notes).toMatch(/^Laid for a frame/);
    expect(laid.axle).toEqual(before.axle);
    expect(storedDocument(board, 'Arm down')).toEqual(before);
  });

  test('by keys alone: a typed frame, the engine in the way, and the figures follow', async () => {
    const { page } = await openSample();
    await page.keyboard.press('a');
    await sheet(page).getByText('None are drawn').waitFor();
    await tabTo(page, 'Back to the board');
    await page.keyboard.press('Tab');
    const type = async (text: string) => {
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await type('6 in');
    await sheet(page).getByText('a frame is wider than 7 7/8 in').waitFor();
    await type('120 in');
    await sheet(page).getByText('the tyres leave 50 in between them').waitFor();
    const usual = await line(page, 'Circle between kerbs');
    await type('24');
    await expect
      .poll(() => sheet(page).getByRole('textbox', { name: 'Frame width at the axle' }).inputValue())
      .toBe('24 in');
    await expect.poll(() => line(page, 'Circle between kerbs')).not.toEqual(usual);

    const before = await line(page, 'Roll steer, per degree of roll');
    await sheet(page).getByRole('combobox', { name: 'The engine' }).selectOption('is in the way');
    await sheet(page).getByText('box and drag link are laid ahead of it').first().waitFor();
    await expect.poll(() => line(page, 'Roll steer, per degree of roll')).not.toEqual(before);
    await page.keyboard.press('Escape');
    await sheet(page).waitFor({ state: 'detached' });
    await pointButton(page, 'Pitman ball').waitFor();
  });

  test('is one of the drawer’s ways to a new variant, for a car that is not open as well', async () => {
    const board = await openSample();
    const { page } = board;
    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'Add a car', exact: true }).click();
    await page.keyboard.type('Harrow & Daughter');
    await page.getByRole('textbox', { name: 'Car', exact: true }).fill('Pickup');
    await page
      .getByRole('combobox', { name: 'Start from' })
      .selectOption({ label: 'an arrangement chosen for this car' });
    await page.getByRole('button', { name: 'Add the car and open it' }).click();
    await sheet(page).getByText('Pickup').waitFor();
    await takeCross(page);
    await page
      .getByRole('button', { name: /Open: Harrow & Daughter, Pickup, Cross steer, manual/ })
      .waitFor();
    await saved(page);
    expect(storedDocuments(board, 'Cross steer, manual')).toHaveLength(1);
  });

  test('stays open when it was asked for right after a demonstration was opened', async () => {
    const { page } = await openBoard();
    let opened = 0;
    let letGo = () => {};
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    // Whatever is opened after the first layout comes only when the sheet stands already.
    await page.route('**/rpc', async (route) => {
      const { name } = route.request().postDataJSON() as { readonly name: string };
      if (name === 'variant.open') opened += 1;
      if (name === 'variant.open' && opened > 1) await held;
      await route.continue();
    });
    await openDemonstration(page, 'Side steer on a wishbone');
    await page.keyboard.press('a');
    await sheet(page).waitFor();
    letGo();
    await expect.poll(() => page.title()).toBe('Side steer on a wishbone – Toeboard');
    await sheet(page).getByRole('columnheader', { name: 'Cross steer, manual' }).waitFor();
    expect(opened).toBe(1);
    await page.unroute('**/rpc');
  });

  test('type that comes late is drawn on no board that has gone meanwhile', async () => {
    const { page } = await openSample();
    // The page hears of its type when the test says so.
    await page.addInitScript(() => {
      const ready = new Promise<void>((come) => {
        Object.assign(window, { typeComes: come });
      });
      Object.defineProperty(FontFaceSet.prototype, 'ready', { get: () => ready });
    });
    await page.reload();
    await pointButton(page, 'Pitman ball').waitFor();
    await framesDrawn(page, 3);
    // The sheet takes the board's place, and another car comes onto the next one.
    await page.keyboard.press('a');
    await takeCross(page);
    await pointButton(page, 'Pitman ball').waitFor();
    await framesDrawn(page, 3);
    await page.evaluate(() => (window as unknown as { typeComes: () => void }).typeComes());
    // Whatever is read of the board that has gone is complained of on the console, which fails the test.
    await framesDrawn(page, 3);
  });

  test('leaves everything as it was when it is put away', async () => {
    const board = await openSample();
    const { page } = board;
    await page.keyboard.press('a');
    await sheet(page).getByRole('button', { name: 'Back to the board' }).click();
    await handleOf(page, 'side', 'steering.box.pitmanBall');
    await page.keyboard.press('a');
    await page.getByRole('button', { name: 'Turn', exact: true }).click();
    await sheet(page).waitFor({ state: 'detached' });
    await page.getByRole('region', { name: 'Figures of the turn' }).waitFor();
    for (const name of NAMES) expect(storedDocuments(board, name)).toEqual([]);
  });

  test('has nothing that a checker of accessibility objects to', async () => {
    const { page, context } = await openSample();
    await bringChecker(context);
    await page.reload();
    await pointButton(page, 'Pitman ball').waitFor();
    await page.keyboard.press('a');
    await sheet(page).waitFor();
    expect(await violations(page)).toEqual([]);
  });
});
