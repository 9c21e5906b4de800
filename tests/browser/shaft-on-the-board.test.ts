import { describe, expect, test } from 'vitest';
import { routeOf } from '../../shared-math/shaft/index.ts';
import { drag, handleOf, scale, takeAlong, written } from '../support/board-pointer.ts';
import {
  type OpenBoard,
  openDemonstration,
  pointButton,
  saved,
  storedDocument,
  useBrowser,
} from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();
const DEGREES = 180 / Math.PI;
const CROSS = 'Cross steer, bar beside the drag link';
const SIDE = 'Side steer, box at the cowl';

async function open(name: string): Promise<OpenBoard> {
  const board = await openBoard();
  await openDemonstration(board.page, name);
  await pointButton(board.page, 'Joint 1').waitFor();
  return board;
}

const shaftOf = (board: OpenBoard, name: string) => {
  const { shaft } = storedDocument(board, name);
  if (!shaft) throw new Error('the demonstration has a shaft');
  return shaft;
};

describe('the steering shaft on the board', { timeout: 90_000 * SLOWNESS }, () => {
  test('a joint dragged past its limit is crossed and found; dragged back both go', async () => {
    const board = await open(CROSS);
    const { page } = board;
    await page.getByRole('tab', { name: 'Verdict' }).click();
    await page.getByRole('button', { name: /^\d+ OK$/ }).waitFor();
    const finding = page.getByRole('button', {
      name: /Joint 2 stands at \d+\.\d°, too much for a single joint/,
    });
    await expect.poll(() => finding.count()).toBe(0);
    await expect.poll(async () => (await written(page)).some((text) => /limit 30°/.test(text))).toBe(false);

    const from = await handleOf(page, 'top', 'shaft.joints.1.centre');
    await drag(page, from, 0, -80);
    await finding.waitFor();
    // The angle with its limit beside the joint: what the cross on it is about.
    await expect
      .poll(async () => (await written(page)).some((text) => /°, limit 30°$/.test(text)))
      .toBe(true);
    await saved(page);
    const over = routeOf(shaftOf(board, CROSS)).joints[1]?.angle ?? 0;
    expect(over * DEGREES).toBeGreaterThan(30);
    // Sentences follow a drag a moment later.
    await expect.poll(() => finding.textContent()).toContain(`${(over * DEGREES).toFixed(1)}°`);

    const there = await handleOf(page, 'top', 'shaft.joints.1.centre');
    await drag(page, there, 0, from.y - there.y);
    await finding.waitFor({ state: 'detached' });
    await expect.poll(async () => (await written(page)).some((text) => /limit 30°$/.test(text))).toBe(false);
  });

  test('the first joint slides along the column’s axis, wherever the hand goes; one undo puts it back', async () => {
    const board = await open(SIDE);
    const { page } = board;
    await saved(page);
    const before = shaftOf(board, SIDE);
    const from = await handleOf(page, 'side', 'shaft.joints.0.centre');
    await takeAlong(page, from, -30, -25);
    await page.mouse.up();
    await saved(page);
    const after = shaftOf(board, SIDE);
    const { column } = routeOf(after);
    expectClose(column.off, 0, 2e-3, 'on the axis');
    // 30 px ahead and 25 up on an axis that leads ahead and down: (2·30 - 25) / √5 of them along it.
    const along = column.along - routeOf(before).column.along;
    expectClose(along, (2 * 30 - 25) / Math.sqrt(5) / (await scale(page)), 1.5 / (await scale(page)));
    expect(after.joints[1]).toEqual(before.joints[1]);
    expect(after.column).toEqual(before.column);

    await page.keyboard.press('Control+z');
    await saved(page);
    await expect.poll(() => shaftOf(board, SIDE)).toEqual(before);
  });

  test('the steering box takes the shaft’s box end along, and says so; all of it is one edit', async () => {
    const board = await open(SIDE);
    const { page } = board;
    await saved(page);
    const before = storedDocument(board, SIDE);
    const from = await handleOf(page, 'side', 'steering.box.sectorCentre');
    await drag(page, from, 24, -18);
    await page.getByText(/box end and joint 2 are bolted to it and go along/).waitFor();
    await saved(page);
    const after = storedDocument(board, SIDE);
    const by = after.steering.box.sectorCentre.map(
      (value, i) => value - before.steering.box.sectorCentre[i]!,
    );
    expect(Math.hypot(...by)).toBeGreaterThan(20);
    for (const [now, was] of [
      [after.shaft!.box.end, before.shaft!.box.end],
      [after.shaft!.joints[1]!.centre, before.shaft!.joints[1]!.centre],
    ] as const)
      now.forEach((value, i) => {
        expectClose(value - was[i]!, by[i]!, 2e-3);
      });
    await page.keyboard.press('Control+z');
    await saved(page);
    await expect.poll(() => storedDocument(board, SIDE).shaft).toEqual(before.shaft);
  });

  test('a joint chosen in the list tells its angles, is typed and nudged', async () => {
    const board = await open(CROSS);
    const { page } = board;
    await pointButton(page, 'Joint 2').click();
    const told = page.locator('[data-angle]');
    await expect.poll(() => told.textContent()).toMatch(/ 7\.7° of 30°, single joint/);
    const field = page.getByLabel('Joint 2, above ground');
    await field.fill('700 mm');
    await field.press('Enter');
    await saved(page);
    expect(shaftOf(board, CROSS).joints[1]?.centre[2]).toBe(700);
    await expect.poll(() => told.textContent()).not.toMatch(/ 7\.7°/);
    await field.blur();
    await page.keyboard.press('ArrowUp');
    await saved(page);
    await expect.poll(() => shaftOf(board, CROSS).joints[1]?.centre[2]).toBeCloseTo(700 + 25.4 / 16, 6);
  });
});
