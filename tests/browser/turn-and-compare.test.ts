import { expect, test } from 'vitest';
import { drag, figure, handleOf } from '../support/board-pointer.ts';
import { openDemonstration, takeDemonstration, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';

test('two variants of a car: figures side by side, their linkage on the board, live while one is dragged', async () => {
  const { page } = await openBoard();
  await openDemonstration(page, 'Side steer, box too low');
  await page.getByRole('tab', { name: 'Compare' }).click();
  const other = page.getByRole('checkbox', { name: /box at the cowl/ });
  await other.check();
  const row = page.getByRole('row', { name: /^Worst bump steer/ });
  await row.waitFor();
  const cells = async () =>
    (await row.getByRole('cell').allInnerTexts()).map((text) => Number.parseFloat(text));
  const [mine, theirs] = (await cells()) as [number, number];
  expect(mine).toBeGreaterThan(3);
  expect(theirs).toBeLessThan(0.5);
  expect(mine).toBeCloseTo(Number.parseFloat(await figure(page, 'worst')), 1);

  // Raised on the board, the open variant's figure follows and the other's stays.
  await drag(page, await handleOf(page, 'side', 'steering.box.sectorCentre'), 0, -12);
  await expect.poll(async () => (await cells())[0]).toBeLessThan(mine - 0.3);
  expect((await cells())[1]).toBe(theirs);

  const ghosts = page.getByRole('checkbox', { name: 'Their linkages on the board' });
  expect(await ghosts.isChecked()).toBe(true);
  await ghosts.uncheck();
  await other.uncheck();
  await row.waitFor({ state: 'detached' });
});

test('the place for the turn shows the whole turn, poses it under the pointer, and follows a drag', async () => {
  const { page } = await openBoard();
  await takeDemonstration(page);
  await page.getByRole('button', { name: 'Turn', exact: true }).click();
  await page.getByText('turns lock to lock').first().waitFor();
  const text = async () => (await page.locator('.strip, footer, section').allInnerTexts()).join(' ');
  expect(await text()).toMatch(/Overall ratio/);
  const before = await text();
  await drag(page, await handleOf(page, 'side', PITMAN), 20, -20);
  await expect.poll(text).not.toBe(before);
  const wheel = page.getByRole('slider', { name: 'Handwheel', exact: true });
  const straight = await wheel.getAttribute('aria-valuetext');
  const plot = page.locator('.u-over').first();
  const box = await plot.boundingBox();
  if (!box) throw new Error('no plot');
  await page.mouse.click(box.x + box.width * 0.2, box.y + box.height / 2);
  await expect.poll(() => wheel.getAttribute('aria-valuetext')).not.toBe(straight);
});
