import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import type { BoardHook } from '../../src-renderer/board/test-hook.ts';
import { figure, handleOf, scale, takeAlong, written } from '../support/board-pointer.ts';
import { pointButton, saved, storedDocument, useBrowser, withSample } from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { rawPlace, solveByRegistry } from '../support/raw-equations.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';
const IN = 25.4;

/**
 * The gap at a heave, mm. Outside check: the axle by ml-levenberg-marquardt on the links' equations written anew, and the
 * plain distance.
 */
function gapOf(document: LayoutDocument, heave: number): number {
  const layout = resolveLayout(document);
  const { dragLinkBall, dragLinkTo, box } = layout.steering;
  const ball = rawPlace(layout, heave, 0, solveByRegistry(layout, heave, 0), dragLinkTo, dragLinkBall);
  const from = box.pitmanBall;
  const apart = (at: typeof ball) => Math.hypot(at[0] - from[0], at[1] - from[1], at[2] - from[2]);
  return apart(ball) - apart(dragLinkBall);
}

/** Inches of "+1 3/16 in", "−5/32 in" or "no gap". */
function inches(words: string): number {
  if (words === 'no gap' || words.startsWith('under')) return 0;
  const [, sign, whole, over, under] =
    /^([+−])(?:(\d+)(?: |(?= in)))?(?:(\d+)\/(\d+))? ?in$/.exec(words) ?? [];
  if (sign === undefined) throw new Error(`"${words}" is no gap`);
  return (sign === '+' ? 1 : -1) * (Number(whole ?? 0) + (over ? Number(over) / Number(under) : 0));
}

/** What the detail says of a heave: "3 in bump +7/16 in". */
async function saidAt(page: Page, heave: string): Promise<number> {
  const said = await figure(page, 'detail');
  const words = new RegExp(`${heave} ([+−][^;.]*|under [^;.]*|no gap)`).exec(said)?.[1];
  if (words === undefined) throw new Error(`nothing of ${heave} in: ${said}`);
  return inches(words.trim()) * IN;
}

/** Half a thirty-second of an inch, to which the gap is written. */
const WRITTEN = IN / 64 + 0.01;

describe('the detail of the arcs', () => {
  test('says the gap over the travel, goes along with heave and drag, and stays away once put away', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const { page } = board;
    await pointButton(page, 'Pitman ball').waitFor();
    await boardAtRest(page);
    const stored = () => storedDocument(board, 'Arm down');
    await expect.poll(() => figure(page, 'detail')).toMatch(/^Detail A \((2|5|10) : 1\): Gap between/);
    const { bump, rebound: droop } = stored().travel;

    // At the ends of the travel and where the slider stands.
    const ends = async () => {
      const said = await figure(page, 'detail');
      const first = /allows: (.*?) (?:[+−]|under|no gap)/.exec(said)?.[1] ?? '';
      const last = /; ([^;]*? bump) [^;]*?\./.exec(said)?.[1] ?? '';
      return [first, last] as const;
    };
    const [low, high] = await ends();
    expect(low).toMatch(/ droop$/);
    await expect
      .poll(async () => Math.abs((await saidAt(page, low)) - gapOf(stored(), -droop)))
      .toBeLessThan(WRITTEN);
    await expect
      .poll(async () => Math.abs((await saidAt(page, high)) - gapOf(stored(), bump)))
      .toBeLessThan(WRITTEN);

    await page.getByRole('slider', { name: 'Heave', exact: true }).fill(String(2 * IN));
    await expect.poll(() => figure(page, 'detail')).toMatch(/The car stands at 2 in bump/);
    await expect
      .poll(async () => Math.abs((await saidAt(page, 'stands at 2 in bump')) - gapOf(stored(), 2 * IN)))
      .toBeLessThan(WRITTEN);
    await expect
      .poll(() => written(page))
      .toEqual(expect.arrayContaining(['A', '2 in bump', 'link allows', 'axle asks']));
    await page.keyboard.press('r');

    // While the ball is in the hand the gap opens; what is said then is that of the layout as it is let go.
    const before = await saidAt(page, high);
    await takeAlong(page, await handleOf(page, 'side', PITMAN), 0, 30);
    await expect.poll(async () => Math.abs((await saidAt(page, high)) - before)).toBeGreaterThan(2);
    const during = await saidAt(page, high);
    await page.mouse.up();
    await saved(page);
    await expect.poll(() => saidAt(page, high)).toBe(during);
    expect(Math.abs(during - gapOf(stored(), bump))).toBeLessThan(WRITTEN);

    // It stands beside the side view and covers nothing of it.
    const title = await page
      .getByText(/^Detail A/)
      .first()
      .boundingBox();
    const box = await handleOf(page, 'side', 'steering.box.sectorCentre');
    expect(title?.x ?? 0).toBeGreaterThan(box.x);

    const button = page.getByRole('button', { name: 'Detail', exact: true });
    await page.keyboard.press('d');
    await expect.poll(() => button.getAttribute('aria-pressed')).toBe('false');
    await expect.poll(() => page.locator('[data-figure="detail"]').count()).toBe(0);
    await page.reload();
    await pointButton(page, 'Pitman ball').waitFor();
    await expect.poll(() => page.locator('[data-figure="detail"]').count()).toBe(0);
    await button.click();
    await page.locator('[data-figure="detail"]').waitFor({ state: 'attached' });
    // Alone on the board, the view keeps its detail; another view has none.
    await page.keyboard.press('1');
    await expect.poll(() => page.locator('[data-figure="detail"]').count()).toBe(1);
    await page.keyboard.press('2');
    await expect.poll(() => page.locator('[data-figure="detail"]').count()).toBe(0);
  });
});

describe('the room that what moves needs', () => {
  test('is outlined on request, follows the travel, and is taken away again', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const { page } = board;
    await pointButton(page, 'Pitman ball').waitFor();
    const lowest = () =>
      page.evaluate(() => (window.toeboardBoard as BoardHook | undefined)?.spotAt('room', 'tyre', 'front'));
    await expect.poll(lowest).toBeUndefined();
    await page.getByRole('checkbox', { name: 'tyre' }).check();
    await page.locator('[data-figure="room"][data-settled="true"]').waitFor();
    await boardAtRest(page);
    await expect.poll(() => figure(page, 'room')).toMatch(/bump to .* droop.*lock to lock$/);
    // The wheels go down by the droop at the least: the room reaches as far below the ground that they stand on.
    const { travel, car } = storedDocument(board, 'Arm down');
    const wheel = await handleOf(page, 'front', 'axle.left.wheelCentre');
    const spot = await lowest();
    const below = ((spot?.y ?? 0) - wheel.y) / (await scale(page)) - car.tyreRadius;
    expect(below).toBeGreaterThan(travel.rebound);
    expect(below).toBeLessThan(travel.rebound + 80);
    await page.getByRole('checkbox', { name: 'tyre' }).uncheck();
    await expect.poll(lowest).toBeUndefined();
  });
});
