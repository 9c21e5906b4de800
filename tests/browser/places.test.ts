import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { handleOf } from '../support/board-pointer.ts';
import { pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { buildPageWithDummy } from '../support/page-with-dummy.ts';

const openBoard = useBrowser();

/** The places in the order of the job, and what stands on the right in each. */
const COLUMNS = [
  ['Measure', 'Measure the car'],
  ['Layout', undefined],
  ['Turn', undefined],
  ['Shaft', undefined],
  ['Road', 'Road and ride'],
  ['Sheet', 'What leaves the board'],
] as const;

test('every place opens with its own column and curves, and what each hands in stays', async () => {
  const { page } = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await pointButton(page, 'Pitman ball').waitFor();
  await handleOf(page, 'side', 'steering.box.pitmanBall');
  const row = page.getByRole('navigation', { name: 'Places' });
  await expect
    .poll(() => row.getByRole('button').allTextContents())
    .toEqual(COLUMNS.map(([name]) => expect.stringContaining(name)));
  for (const [name, column] of COLUMNS) {
    const button = row.getByRole('button', { name, exact: true });
    await button.click();
    await expect.poll(() => button.getAttribute('aria-current')).toBe('page');
    const aside = page.getByRole('complementary');
    await aside.first().waitFor();
    if (column) await page.getByRole('complementary', { name: column }).waitFor();
    if (name === 'Sheet')
      await expect.poll(() => page.getByRole('region', { name: 'Pose and curves' }).count()).toBe(0);
    else await page.getByRole('region', { name: 'Pose and curves' }).waitFor();
  }
  // Back on the board, which is made anew.
  await row.getByRole('button', { name: 'Layout', exact: true }).click();
  await handleOf(page, 'side', 'steering.box.pitmanBall');
  const map = page.getByRole('button', { name: 'Where can the ball go?' });
  await page.keyboard.press('m');
  await expect.poll(() => map.getAttribute('aria-pressed')).toBe('true');
  await page.keyboard.press('Escape');
  await expect.poll(() => map.getAttribute('aria-pressed')).toBe('false');
  // What the places hand in stands in the list of keys.
  await page.keyboard.press('?');
  await page.getByRole('tab', { name: 'Keys' }).click();
  const keys = page.getByRole('region', { name: 'Help' });
  for (const words of ['Pull the axle', 'Map of bump steer', 'Run the travel', 'Undo'])
    await keys.getByText(words).first().waitFor();
});

test('a place whose files do not come says so, and comes when it is tried again by keyboard', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  // Before the page has loaded them by itself, or after: either way the first answer is a failure.
  const file = /\/assets\/ShaftPage-.*\.js/;
  await page.context().route(file, (route) => route.abort());
  await page.reload();
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Shaft', exact: true }).click();
  const again = page.getByRole('button', { name: 'Try again' });
  await again.waitFor();
  await expect.poll(() => page.getByRole('alert').textContent()).toContain('place Shaft could not be loaded');
  await again.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => again.getAttribute('aria-busy')).toBe('false');
  await expect.poll(() => again.isVisible()).toBe(true);
  await page.context().unroute(file);
  await page.keyboard.press('Enter');
  const column = page.getByRole('complementary', { name: 'Steering shaft' });
  await column.waitFor();
  await expect.poll(() => column.evaluate((element) => element.contains(document.activeElement))).toBe(true);
  board.complaints.length = 0;
});

test('one more line in the list of places shows a place: tab, column, strip, what it has on the board, keys', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'toeboard-dummy-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  await buildPageWithDummy(folder);
  const { page } = await openBoard({
    prepare: withSample(sampleLayout('Arm down')),
    rendererFolder: folder,
  });
  await pointButton(page, 'Pitman ball').waitFor();
  const written = () => page.evaluate(() => window.toeboardBoard?.written() ?? []);
  await expect.poll(written).toContain('Dummy on the board');
  const places = page.getByRole('navigation', { name: 'Places' }).getByRole('button');
  await expect
    .poll(async () => (await places.allTextContents()).map((words) => words.trim()).at(-1))
    .toBe('Dummy');
  await places.last().click();
  const column = page.getByRole('complementary', { name: 'Dummy column' });
  await column.getByRole('button', { name: 'Dummy button' }).waitFor();
  const strip = page.getByRole('region', { name: 'Pose and curves' });
  for (const words of ['Dummy plot', 'in dummies', '0.4 dummies', 'Straight: from 0 to 2.', 'the right end'])
    await strip.getByText(words).waitFor();
  await page.keyboard.press('x');
  await page.keyboard.press('j');
  await expect.poll(() => column.locator('[data-done]').textContent()).toBe('action, key');
  const slider = strip.getByRole('slider', { name: 'Dummy plot: pose the car along dummy way' });
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('End');
  await expect
    .poll(() => column.locator('[data-done]').textContent())
    .toBe('action, key, moved to 3, moved to 10');
  await page.keyboard.press('?');
  await page.getByRole('tab', { name: 'Keys' }).click();
  await page.getByRole('region', { name: 'Help' }).getByText('Try the dummy').waitFor();
});
