import type { Locator } from 'playwright-core';
import { expect, test } from 'vitest';
import { openDemonstration, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();

test('long names never push anything out of a window; a small or twice enlarged one is moved about over the page', async () => {
  const { page } = await openBoard({ size: { width: 1440, height: 900 } });
  await openDemonstration(page, 'Cross steer, bar beside the drag link');
  /** Names of buttons, tabs and lists of the page that cannot be brought into sight. */
  const unreachable = () =>
    page.evaluate(() => {
      const parts = [...document.querySelectorAll<HTMLElement>('button, select, input, [role="tab"]')];
      return parts
        .filter((part) => part.checkVisibility() && !part.closest('[hidden], .unseen'))
        .filter((part) => {
          part.scrollIntoView({ block: 'nearest', inline: 'nearest' });
          const { left, right, top, bottom, width } = part.getBoundingClientRect();
          return width > 1 && (left < -1 || right > innerWidth + 1 || top < -1 || bottom > innerHeight + 1);
        })
        .map((part) => part.getAttribute('aria-label') ?? part.textContent?.trim() ?? part.tagName);
    });
  for (const [width, height] of [
    [1440, 900],
    [1280, 720],
    [1024, 640],
    // 1440 x 900 at twice the size.
    [720, 450],
  ] as const) {
    await page.setViewportSize({ width, height });
    const wide = () => page.evaluate(() => document.documentElement.scrollWidth);
    if (width >= 1024) await expect.poll(wide, { message: `${width} px` }).toBe(width);
    await expect.poll(() => unreachable(), { message: `${width} px` }).toEqual([]);
    await page.evaluate(() => scrollTo(0, 0));
  }
});

test('what opens at the lower edge of a column comes into sight', async () => {
  const { page } = await openBoard({ size: { width: 1024, height: 640 }, column: 'verdict' });
  await page.getByRole('button', { name: 'Side steer, box too low' }).click();
  /** Whether an element's upper edge and that far below it are seen within the column's page. */
  const inSight = async (of: Locator, height: number) => {
    const [box, column] = [await of.boundingBox(), await page.locator('#column-page').boundingBox()];
    return (
      box !== null && column !== null && box.y > column.y - 1 && box.y + height <= column.y + column.height
    );
  };
  const fold = page.getByRole('button', { name: /^\d+ OK$/ });
  // By key: the button stands at the column's lower edge when it has the focus.
  await fold.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => inSight(page.locator('.order [data-finding]').first(), 20)).toBe(true);
  await expect.poll(() => inSight(fold, 10)).toBe(true);
  // By pointer, from where it stands folded.
  await fold.click();
  await expect.poll(() => page.locator('.order [data-finding]').count()).toBe(0);
  await fold.click();
  await expect.poll(() => inSight(page.locator('.order [data-finding]').first(), 20)).toBe(true);
});
