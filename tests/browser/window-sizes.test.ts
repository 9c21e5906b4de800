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
    expect(await unreachable(), `${width} px`).toEqual([]);
    await page.evaluate(() => scrollTo(0, 0));
  }
});
