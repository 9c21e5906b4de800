import type { Page } from 'playwright-core';
import type { View } from '../../shared-math/drawing/index.ts';
import type { BoardHook } from '../../src-renderer/board/test-hook.ts';

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Where a view shows the handle of a hardpoint, page px; undefined if it shows none. */
export function findHandle(page: Page, view: View, hardpoint: string): Promise<Spot | undefined> {
  return page.evaluate(([of, id]) => (window.toeboardBoard as BoardHook | undefined)?.handleAt(of, id), [
    view,
    hardpoint,
  ] as const);
}

/** px per mm of the sheet. */
export function scale(page: Page): Promise<number> {
  return page.evaluate(() => window.toeboardBoard?.camera().scale ?? 0);
}

/** The same, where there has to be one: waited for, since the board is drawn after what stands in the list. */
export async function handleOf(page: Page, view: View, hardpoint: string): Promise<Spot> {
  const shown = await page
    .waitForFunction(([of, id]) => (window.toeboardBoard as BoardHook | undefined)?.handleAt(of, id), [
      view,
      hardpoint,
    ] as const)
    .catch((error) => {
      throw new Error(`The ${view} view shows no handle of ${hardpoint}`, { cause: error });
    });
  return (await shown.jsonValue()) as Spot;
}

/** Takes a point up and carries it, without letting go. */
export async function takeAlong(page: Page, from: Spot, right: number, down: number): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + right, from.y + down, { steps: 6 });
}

/** Drags from a spot and lets go. */
export async function drag(page: Page, from: Spot, right: number, down: number): Promise<void> {
  await takeAlong(page, from, right, down);
  await page.mouse.up();
}

/** A spot of bare paper: between the front view and the side view. */
export async function barePaper(page: Page): Promise<Spot> {
  const front = await handleOf(page, 'front', 'axle.left.wheelCentre');
  const side = await handleOf(page, 'side', 'axle.left.wheelCentre');
  return { x: front.x + 0.4 * (side.x - front.x), y: front.y };
}

/** The text of one of the figures beside the curves. */
export async function figure(page: Page, name: string): Promise<string> {
  return ((await page.locator(`[data-figure="${name}"]`).textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
}

/** All that is written over the drawing. */
export function written(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => (window.toeboardBoard as BoardHook | undefined)?.written() ?? []);
}

/** Where the pitman ball of a variant beside the open one is drawn; undefined if it is not. */
export function otherBall(page: Page, letter: string): Promise<Spot | undefined> {
  return page.evaluate(
    (of) => (window.toeboardBoard as BoardHook | undefined)?.spotAt('variant', of),
    letter,
  );
}
