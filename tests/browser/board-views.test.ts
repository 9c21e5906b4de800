import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { barePaper, drag, findHandle, handleOf, scale } from '../support/board-pointer.ts';
import { type OpenBoard, pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';

async function openSample(size?: { width: number; height: number }): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')), ...(size ? { size } : {}) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await handleOf(board.page, 'side', PITMAN);
  return board;
}

/** The same point in the three views: over one another, and beside one another. */
async function expectAligned(page: Page): Promise<void> {
  for (const id of [PITMAN, 'steering.dragLinkBall', 'axle.left.tieRodBall']) {
    const [side, top, front] = [
      await handleOf(page, 'side', id),
      await handleOf(page, 'top', id),
      await handleOf(page, 'front', id),
    ];
    expect(top.x).toBeCloseTo(side.x, 4);
    expect(front.y).toBeCloseTo(side.y, 4);
    expect(top.y).toBeLessThan(side.y);
    expect(front.x).toBeLessThan(side.x);
  }
}

describe('the sheet', () => {
  test('shows the three views aligned, wholly in sight, at any size of the window', async () => {
    for (const size of [
      { width: 1280, height: 720 },
      { width: 2560, height: 1440 },
    ]) {
      const { page } = await openSample(size);
      await expectAligned(page);
      const board = await page.getByRole('application', { name: 'Drawing of the front end' }).boundingBox();
      if (!board) throw new Error('no board');
      for (const view of ['side', 'top', 'front'] as const)
        for (const id of [PITMAN, 'axle.left.wheelCentre', 'steering.box.sectorCentre']) {
          const { x, y } = await handleOf(page, view, id);
          expect(x).toBeGreaterThan(board.x + 20);
          expect(x).toBeLessThan(board.x + board.width - 20);
          expect(y).toBeGreaterThan(board.y + 20);
          expect(y).toBeLessThan(board.y + board.height - 20);
        }
    }
  });

  test('zooms at the pointer, with all views together', async () => {
    const { page } = await openSample();
    const at = await handleOf(page, 'side', PITMAN);
    const before = await scale(page);
    await page.mouse.move(at.x, at.y);
    for (let turn = 0; turn < 4; turn += 1) await page.mouse.wheel(0, -120);
    await expect.poll(() => scale(page)).toBeGreaterThan(before * 1.5);
    await boardAtRest(page);
    // Wheel events come in whole pixels, so the spot under the pointer is known to half of one.
    const after = await handleOf(page, 'side', PITMAN);
    const slack = 0.5 * ((await scale(page)) / before);
    expect(Math.abs(after.x - at.x)).toBeLessThan(slack);
    expect(Math.abs(after.y - at.y)).toBeLessThan(slack);
    await expectAligned(page);
  });

  test('moves with a drag on empty paper, and comes back whole with F', async () => {
    const { page } = await openSample();
    const at = await handleOf(page, 'side', PITMAN);
    await drag(page, await barePaper(page), 70, -40);
    await boardAtRest(page);
    const moved = await handleOf(page, 'side', PITMAN);
    expect(moved.x - at.x).toBeCloseTo(70, 4);
    expect(moved.y - at.y).toBeCloseTo(-40, 4);
    await expectAligned(page);
    await page.keyboard.press('f');
    await boardAtRest(page);
    const back = await handleOf(page, 'side', PITMAN);
    expect(back.x).toBeCloseTo(at.x, 2);
    expect(back.y).toBeCloseTo(at.y, 2);
  });

  test('is zoomed by two fingers', async () => {
    const board = await openSample();
    const { page } = board;
    const before = await scale(page);
    const { x, y } = await barePaper(page);
    const touch = await board.context.newCDPSession(page);
    const fingers = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...apart: number[]) =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: apart.flatMap((px) => [
          { x: x - px, y, id: 1 },
          { x: x + px, y, id: 2 },
        ]),
      });
    await fingers('touchStart', 20);
    await fingers('touchMove', 30);
    await fingers('touchMove', 40);
    await fingers('touchEnd');
    await expect.poll(() => scale(page)).toBeCloseTo(before * 2, 1);
    await expectAligned(page);
  });
});

describe('a view', () => {
  test('fills the board from its name, alone, and gives it back', async () => {
    const { page } = await openSample();
    const before = await scale(page);
    await page.getByRole('button', { name: 'Let the side view fill the board' }).click();
    await boardAtRest(page);
    await expect.poll(() => scale(page)).toBeGreaterThan(before * 1.8);
    await expect.poll(() => findHandle(page, 'top', PITMAN)).toBeUndefined();
    await expect.poll(() => findHandle(page, 'front', PITMAN)).toBeUndefined();
    await page.getByRole('button', { name: 'Back to the whole sheet' }).click();
    await boardAtRest(page);
    await expect.poll(() => scale(page)).toBeCloseTo(before, 6);
    await expectAligned(page);
  });

  test('a double click on its name fills the board too', async () => {
    const { page } = await openSample();
    await page.getByRole('button', { name: 'Let the front view fill the board' }).dblclick();
    await boardAtRest(page);
    await expect.poll(() => findHandle(page, 'front', PITMAN)).toBeDefined();
    await expect.poll(() => findHandle(page, 'side', PITMAN)).toBeUndefined();
  });

  test('is also called by its key and by its button', async () => {
    const { page } = await openSample();
    const shows = async () => {
      const shown: string[] = [];
      for (const view of ['side', 'top', 'front'] as const)
        if (await findHandle(page, view, PITMAN)) shown.push(view);
      return shown;
    };
    for (const [key, views] of [
      ['1', ['side']],
      ['2', ['top']],
      ['3', ['front']],
      ['0', ['side', 'top', 'front']],
    ] as const) {
      await page.keyboard.press(key);
      await expect.poll(shows).toEqual(views);
    }
    await page.getByRole('button', { name: 'Top', exact: true }).click();
    await expect.poll(shows).toEqual(['top']);
    await page.getByRole('button', { name: 'All views' }).click();
    await expect.poll(shows).toEqual(['side', 'top', 'front']);
  });
});

describe('hovering', () => {
  test('on a handle lights its line in the list, in whichever view it is', async () => {
    const { page } = await openSample();
    for (const view of ['side', 'top', 'front'] as const) {
      const at = await handleOf(page, view, PITMAN);
      // Twelve pixels beside it is still on it.
      await page.mouse.move(at.x, at.y + 12);
      await expect.poll(() => pointButton(page, 'Pitman ball').getAttribute('class')).toMatch(/hovered/);
      const paper = await barePaper(page);
      await page.mouse.move(paper.x, paper.y);
      await expect.poll(() => pointButton(page, 'Pitman ball').getAttribute('class')).not.toMatch(/hovered/);
    }
  });
});
