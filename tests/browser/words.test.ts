import { expect, test } from 'vitest';
import { TERMS } from '../../shared-math/words/terms/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();

test('the page of words is opened by its key, searched, and led through by its links', async () => {
  const { page, context } = await openBoard();
  await bringChecker(context);
  await page.reload();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  await page.keyboard.press('?');
  const help = page.getByRole('region', { name: 'Help' });
  const finder = help.getByRole('searchbox', { name: 'Find a word' });
  await finder.waitFor();
  // Ready to be typed in, and no key of the board while it is.
  await expect.poll(() => finder.evaluate((field) => field === document.activeElement)).toBe(true);
  await expect.poll(() => help.getByRole('article').count()).toBe(Object.keys(TERMS).length);
  expect(await violations(page)).toEqual([]);

  await page.keyboard.type('castor');
  await expect.poll(() => help.getByRole('article').first().getAttribute('data-word')).toBe('caster');
  await help.getByText('1 word', { exact: true }).waitFor();
  const entry = help.getByRole('article', { name: 'Caster' });
  await entry.getByText(TERMS.caster.usual.words).waitFor();
  await entry.getByRole('img', { name: /^A wheel from the side/ }).waitFor();
  // A word of its text leads to that word's entry.
  await entry.getByRole('button', { name: 'Trail', exact: true }).click();
  const trail = help.getByRole('article', { name: 'Trail' });
  await expect.poll(() => trail.evaluate((element) => element === document.activeElement)).toBe(true);
  await finder.fill('qqq');
  await help.getByText('No word has that.').waitFor();

  await help.getByRole('tab', { name: 'Keys' }).click();
  await help.getByText('Say what its label means').waitFor();
  await page.keyboard.press('Escape');
  await help.waitFor({ state: 'detached' });
});

test('a dotted word is explained by pointer, by focus and by F1, and Escape closes that alone', async () => {
  const { page, context } = await openBoard();
  await bringChecker(context);
  await page.reload();
  await openDemonstration(page, 'Box at the cowl');
  await page.getByRole('tab', { name: 'Car', exact: true }).click();
  const card = page.getByRole('dialog');
  const facts = page.getByLabel('Selected point and car');

  // By F1 in a field, whose name is its label alone.
  const radius = facts.getByRole('textbox', { name: 'Tyre radius', exact: true });
  await radius.focus();
  await page.keyboard.press('F1');
  await card.getByText(TERMS['tyre-radius'].what).waitFor();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await card.waitFor({ state: 'detached' });
  // The page below is as it was: the column is there, nothing else was closed.
  await radius.waitFor();

  // By the pointer resting there.
  const word = facts.locator('[data-term="wheelbase"]');
  await word.hover();
  await card.getByText(TERMS.wheelbase.what).waitFor();
  await expect.poll(() => word.getAttribute('aria-expanded')).toBe('true');
  await page.mouse.move(300, 300);
  await card.waitFor({ state: 'detached' });

  // By the Tab key where there is no field, and on into the page of words.
  const figure = page.getByLabel('Figures of the travel').locator('[data-term="one-wheel"]');
  await page.getByLabel('Figures of the travel').locator('[data-term="bump-steer"]').focus();
  await page.keyboard.press('Tab');
  while (!(await figure.evaluate((element) => element === document.activeElement)))
    await page.keyboard.press('Tab');
  await card.getByText(TERMS['one-wheel'].what).waitFor();
  await page.keyboard.press('Enter');
  await expect
    .poll(() => card.getByRole('button').evaluate((element) => element === document.activeElement))
    .toBe(true);
  await page.keyboard.press('Enter');
  await page
    .getByRole('region', { name: 'Help' })
    .getByRole('article', { name: 'One wheel over a bump' })
    .waitFor();
});
