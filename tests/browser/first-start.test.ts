import { expect, test } from 'vitest';
import {
  pointButton,
  saved,
  storedDocuments,
  takeDemonstration,
  useBrowser,
} from '../support/browser-page.ts';

const openBoard = useBrowser();

test('the first start offers the demonstration, opens it, and opens it again at the next start', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  // The caution stands where a person begins.
  await page.getByText('it certifies nothing').waitFor();
  const offered = await page.getByRole('main').getByRole('listitem').allInnerTexts();
  expect(offered).toHaveLength(5);

  await takeDemonstration(page);
  const crumb = page.getByRole('button', { name: /Cars and variants\. Open/ });
  const opened = await crumb.getAttribute('aria-label');
  expect(storedDocuments(board, 'Side steer, box at the cowl')).toHaveLength(1);
  await page.getByText('it certifies nothing').waitFor();

  await page.reload();
  await pointButton(page, 'Pitman ball').waitFor();
  await expect.poll(() => crumb.getAttribute('aria-label')).toBe(opened);
  await saved(page);
});

test('a layout of the list is taken in and opened itself, and no other before it', async () => {
  const { page } = await openBoard();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  await page.evaluate(() => {
    const titles = new Set<string>();
    new MutationObserver(() => {
      titles.add(document.title);
      document.documentElement.dataset.titles = [...titles].join('; ');
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
  await page.getByRole('button', { name: 'Side steer, box too low' }).click();
  await page.getByRole('button', { name: /Open: .*Side steer, box too low/ }).waitFor();
  // What is opened as soon as the board is there stays open.
  await page.keyboard.press('/');
  await page.keyboard.type('pitman', { delay: 150 });
  await expect.poll(() => page.getByRole('combobox', { name: 'Find anything' }).inputValue()).toBe('pitman');
  const titles = await page.evaluate(() => document.documentElement.dataset.titles?.split('; '));
  expect(titles?.filter((title) => title !== 'Toeboard')).toEqual(['Side steer, box too low – Toeboard']);
});

test('letters typed while find is still on its way are not lost, and do nothing else', async () => {
  const { page } = await openBoard();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  // The drawer's file comes only when it is let through.
  const { promise: comes, resolve: letThrough } = Promise.withResolvers<void>();
  await page.route(/\/Drawer-[^/]*\.js/, async (route) => {
    await comes;
    await route.continue();
  });
  await page.reload();
  await page.getByRole('button', { name: 'Side steer, box too low' }).click();
  await pointButton(page, 'Pitman ball').waitFor();
  await page.keyboard.press('/');
  await page.keyboard.type('pit');
  letThrough();
  const field = page.getByRole('combobox', { name: 'Find anything' });
  await expect.poll(() => field.inputValue()).toBe('pit');
  await page.keyboard.type('man');
  await expect.poll(() => field.inputValue()).toBe('pitman');
  await expect.poll(() => page.getByText('Pulling the axle').count()).toBe(0);
});

test('a plain car is a way to begin', async () => {
  const board = await openBoard();
  await board.page.getByRole('button', { name: 'Start with a plain car' }).click();
  // A new car is measured first.
  await board.page.getByRole('complementary', { name: 'Measure the car' }).waitFor();
  expect(storedDocuments(board, 'New layout')).toHaveLength(1);
});

test('the code is gone from the address at once, and a used address opens nothing but says why', async () => {
  const board = await openBoard();
  await board.page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  expect(new URL(board.page.url()).hash).toBe('');
  const used = board.host.newAddress();
  const first = await board.context.newPage();
  await first.goto(used);
  await first.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  const second = await board.context.newPage();
  await second.goto(used);
  // The program's own words: why, and what to do.
  await second
    .getByText(
      /This address has been opened before.*Take the newest address that the program has printed, or start it again\.$/,
    )
    .waitFor();
  // An address without its code was not used: that is another reason.
  const third = await board.context.newPage();
  await third.goto(new URL('/', used).href);
  await third.getByText(/this address is not whole/i).waitFor();
  // The browser itself logs the refusal; nothing else may have been said.
  expect(board.complaints.filter((text) => !text.includes('401'))).toEqual([]);
  board.complaints.length = 0;
});

test('a browser whose language tag its own number formats refuse opens the board all the same', async () => {
  const { page, context } = await openBoard();
  await takeDemonstration(page);
  await context.addInitScript(() => {
    Object.defineProperty(navigator, 'language', { value: 'en-US@posix', configurable: true });
  });
  await page.reload();
  await pointButton(page, 'Pitman ball').waitFor();
  await expect.poll(() => page.evaluate(() => navigator.language)).toBe('en-US');
});
