import type { Page } from 'playwright-core';

/** Waits until the page has drawn that many more frames: whatever moves by itself has moved by then. */
export function framesDrawn(page: Page, frames: number): Promise<void> {
  return page.evaluate(
    (count) =>
      new Promise<void>((done) => {
        let left = count;
        const next = () => {
          left -= 1;
          if (left < 0) done();
          else requestAnimationFrame(next);
        };
        requestAnimationFrame(next);
      }),
    frames,
  );
}

/** Waits until nothing that the page shows is still on its way as a file of its own. */
export async function piecesThere(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector('.missing[aria-busy="true"]') === null);
}

/** Frames alike after which a flight is over: it begins in its second frame and moves in every one after it. */
const FRAMES_ALIKE = 6;

/** Waits until the board, which flies from one sight to another, has arrived. */
export function boardAtRest(page: Page): Promise<void> {
  return page.evaluate(
    (enough) =>
      new Promise<void>((done) => {
        let alike = 0;
        let before = '';
        const look = () => {
          const now = JSON.stringify(window.toeboardBoard?.camera());
          alike = now === before ? alike + 1 : 0;
          before = now;
          if (alike >= enough) done();
          else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      }),
    FRAMES_ALIKE,
  );
}
