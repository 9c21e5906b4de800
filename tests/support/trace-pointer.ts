import type { Page } from 'playwright-core';
import type { TraceHook } from '../../src-renderer/places/measure/photos/trace-hook.ts';
import { scale } from './board-pointer.ts';

export type Px = readonly [number, number];

/** Where a px of the photo that is traced shows on the page. */
export async function pageOf(page: Page, px: Px): Promise<Px> {
  const at = await page
    .waitForFunction((spot) => (window.toeboardTrace as TraceHook | undefined)?.(spot), px)
    .catch((error) => {
      throw new Error(`px ${px.join(', ')} of the photo shows nowhere`, { cause: error });
    });
  return (await at.jsonValue()) as Px;
}

/** Clicks a px of the photo as a careful person does: zooms in on it, clicks the nearest whole px of the screen, zooms out. */
export async function clickPhoto(page: Page, px: Px): Promise<void> {
  const [x, y] = await pageOf(page, px);
  await page.mouse.move(x, y);
  await zoom(page, -1);
  const [nearX, nearY] = await pageOf(page, px);
  await page.mouse.move(Math.round(nearX), Math.round(nearY));
  await page.mouse.down();
  await page.mouse.up();
  await page.mouse.move(x, y);
  await zoom(page, 1);
}

/** How much larger the photo is while it is clicked, as the exponent of a pinch. */
const CLOSER = 1.68;
/** Of the board's own: what a px of a pinch adds to the exponent. */
const PINCH = 0.01;

/** One pinch where the pointer is, which browsers report as a wheel with Control; the board is waited for. */
async function zoom(page: Page, way: 1 | -1): Promise<void> {
  const before = await scale(page);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, (CLOSER / PINCH) * way);
  await page.keyboard.up('Control');
  for (let waits = 0; (await scale(page)) === before; waits += 1) {
    if (waits > 300) throw new Error(`The board does not follow the pinch at a scale of ${before}`);
    await settled(page);
  }
}

/** Two frames: what the pointer did is drawn. */
export function settled(page: Page): Promise<void> {
  return page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );
}

/** Drops a file onto the board, as from the system's own folder window. */
export async function dropFile(page: Page, name: string, type: string, content: Buffer): Promise<void> {
  await page.evaluate(
    ([fileName, mime, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const carried = new DataTransfer();
      carried.items.add(new File([bytes], fileName, { type: mime }));
      const target = document.querySelector('main') ?? document.body;
      for (const kind of ['dragover', 'drop'])
        target.dispatchEvent(new DragEvent(kind, { dataTransfer: carried, bubbles: true, cancelable: true }));
    },
    [name, type, content.toString('base64')] as const,
  );
}
