import { expect, test } from 'vitest';
import { WALK_WINDOW, WALKS } from '../../shared-math/words/walks/index.ts';
import { ROUTE_THE_SHAFT } from '../../shared-math/words/walks/route-the-shaft.ts';
import { useBrowser } from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { walkThrough } from '../support/walks/walk-through.ts';

const openBoard = useBrowser();

test.each(WALKS)(
  'the walk “$title” can be gone as it is written, and every label that it names is there',
  async (walk) => {
    const { page } = await openBoard({ size: WALK_WINDOW });
    expect(await walkThrough(page, walk)).toEqual([]);
  },
);

test('a walk waits for a place that comes late', async () => {
  const { page } = await openBoard({ size: WALK_WINDOW });
  await page.route('**/assets/*', async (route) => {
    await new Promise((sent) => setTimeout(sent, 700));
    await route.continue();
  });
  await page.reload();
  expect(await walkThrough(page, ROUTE_THE_SHAFT)).toEqual([]);
  await page.unrouteAll({ behavior: 'ignoreErrors' });
});

test('the handbook is a page of the help with all pictures, and is saved as a PDF', async () => {
  const { page } = await openBoard();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  await page.keyboard.press('?');
  const help = page.getByRole('region', { name: 'Help' });
  await help.getByRole('tab', { name: 'Handbook' }).click();
  for (const { title, steps } of WALKS) {
    const walk = help.getByRole('region', { name: title });
    await expect.poll(() => walk.getByRole('listitem').count()).toBe(steps.length);
    for (const { picture } of steps) {
      if (!picture) continue;
      const image = walk.getByRole('img', { name: picture.alt });
      await image.scrollIntoViewIfNeeded();
      await expect
        .poll(() => image.evaluate((element) => (element as HTMLImageElement).naturalWidth))
        .toBeGreaterThan(300);
    }
  }
  const file = page.waitForEvent('download');
  await help.getByRole('button', { name: 'Save the handbook as a PDF' }).click();
  const { content } = await downloaded(await file);
  expect(content.subarray(0, 5).toString('latin1')).toBe('%PDF-');
});
