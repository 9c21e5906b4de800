import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Obstacle } from '../../shared-math/layout/index.ts';
import { drag, findHandle, handleOf, takeAlong } from '../support/board-pointer.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  storedDocument,
  tabTo,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const NAME = 'Arm down';
/** Rails that keep clear of the sample's axle and links over its travel. */
const RAIL = {
  name: 'Frame rail',
  path: [
    [430, 330, 520],
    [-240, 345, 520],
    [-900, 330, 520],
  ] as [number, number, number][],
  height: 100,
  width: 50,
  mirrored: true,
};

async function openSample(rails = [RAIL]): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample({ ...sampleLayout(NAME), rails }) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  return board;
}

const stored = (board: OpenBoard) => storedDocument(board, NAME);
const boxOf = (board: OpenBoard) => stored(board).obstacles[0] as Extract<Obstacle, { kind: 'box' }>;
const pathOf = (board: OpenBoard) => stored(board).rails[0]?.path ?? [];
const openPage = (page: Page) => page.getByRole('tab', { name: 'Clearance' }).click();
const add = (page: Page, role: string) =>
  page.getByRole('combobox', { name: 'Add an obstacle' }).selectOption(role);
const written = (page: Page) => page.evaluate(() => window.toeboardBoard?.written() ?? []);

async function type(page: Page, field: string, text: string): Promise<void> {
  await page.getByRole('textbox', { name: field, exact: true }).fill(text);
  await page.keyboard.press('Enter');
}

describe('something in the way of the drag link', () => {
  test('is found, shown at its worst with the gap, moved away, and all of it undone', async () => {
    const board = await openSample();
    const { page } = board;
    await openPage(page);
    await add(page, 'other');
    await saved(page);
    const before = stored(board);
    expect(boxOf(board)).toMatchObject({ name: 'Part in the way', centre: [-300, 0, 520] });

    // Beside the link as it runs, just above it: by its middle, in the view from above, and then by figures.
    await drag(page, await handleOf(page, 'top', 'obstacles.0.centre'), 30, 0);
    await saved(page);
    expect(boxOf(board).centre[0]).toBeLessThan(-330);
    expect(boxOf(board).centre[1]).toBe(0);
    await type(page, 'Part in the way, middle, back from axle', '450 mm');
    await type(page, 'Part in the way, middle, left of centre', '490 mm');
    await type(page, 'Part in the way, middle, above ground', '470 mm');
    await saved(page);
    expect(boxOf(board).centre).toEqual([-450, 490, 470]);

    await page.getByRole('tab', { name: /^Verdict/ }).click();
    const finding = page.locator('[data-finding="clearance"]', { hasText: 'the part in the way' });
    await finding.waitFor();
    await expect
      .poll(() => finding.textContent())
      .toMatch(/Drag link (hits|comes within .* of) the part in the way at /);
    await finding.getByRole('button', { name: 'Show it there' }).click();
    await expect
      .poll(async () => Number(await page.getByRole('slider', { name: 'Heave', exact: true }).inputValue()))
      .not.toBe(0);
    await expect.poll(() => written(page)).toContain('drag link to part in the way');

    // Taken away by the hand, which brings the car back to ride height, and the gap with it.
    await drag(page, await handleOf(page, 'top', 'obstacles.0.centre'), 0, -90);
    await finding.waitFor({ state: 'detached' });
    await expect.poll(() => written(page)).not.toContain('drag link to part in the way');
    await saved(page);
    expect(boxOf(board).centre[1]).toBeLessThan(400);

    await page.keyboard.press('Control+z');
    await finding.waitFor();
    for (let steps = 0; steps < 4; steps += 1) await page.keyboard.press('Control+z');
    await saved(page);
    expect(stored(board)).toEqual(before);
    await page.keyboard.press('Control+z');
    await saved(page);
    expect(stored(board).obstacles).toEqual([]);
    await finding.waitFor({ state: 'detached' });
  });

  test('the nearest pairs are told with figures, and one press poses the car where a pair is nearest', async () => {
    const { page } = await openSample();
    await openPage(page);
    const pair = page.getByRole('button', { name: /^Drag link – left tyre,/ });
    await pair.click();
    await expect.poll(() => pair.getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => written(page)).toContain('drag link to left tyre');
    await page.getByRole('slider', { name: 'Heave', exact: true }).press('ArrowLeft');
    await expect.poll(() => pair.getAttribute('aria-pressed')).toBe('false');
    await expect.poll(() => written(page)).not.toContain('drag link to left tyre');
    await pair.click();
    await pair.click();
    await expect
      .poll(async () => Number(await page.getByRole('slider', { name: 'Heave', exact: true }).inputValue()))
      .toBe(0);
  });
});

describe('sizes and places', () => {
  test('a bad size is told beside its field, and nothing is lost', async () => {
    const board = await openSample();
    const { page } = board;
    await openPage(page);
    await add(page, 'engine');
    await saved(page);
    const before = stored(board);
    await type(page, 'Engine, width', '0');
    await page.getByText('Engine, width: must be more than 0').first().waitFor();
    await page.getByRole('button', { name: /^Keep / }).click();
    await type(page, 'Engine, width', 'wide');
    await page.getByText(/"wide" is not a length/).waitFor();
    await page.getByRole('button', { name: /^Keep / }).click();
    await saved(page);
    expect(stored(board)).toEqual(before);
    await type(page, 'Engine, width', '480 mm');
    await saved(page);
    expect(boxOf(board).size[1]).toBe(480);
  });

  test('a corner dragged sizes a box; the corner opposite stays', async () => {
    const board = await openSample();
    const { page } = board;
    await openPage(page);
    await add(page, 'engine');
    await saved(page);
    const { centre, size } = boxOf(board);
    await page.keyboard.down('Alt');
    await drag(page, await handleOf(page, 'side', 'obstacles.0.cornerAhead'), -20, -16);
    await page.keyboard.up('Alt');
    await saved(page);
    const after = boxOf(board);
    expect(after.size[0]).toBeGreaterThan(size[0] + 20);
    expect(after.size[2]).toBeGreaterThan(size[2] + 20);
    expect(after.size[1]).toBe(size[1]);
    expect(after.centre[0] - after.size[0] / 2).toBeCloseTo(centre[0] - size[0] / 2, 2);
    expect(after.centre[2] - after.size[2] / 2).toBeCloseTo(centre[2] - size[2] / 2, 2);
  });

  test('another shape, a mirror image, a name, and out again', async () => {
    const board = await openSample();
    const { page } = board;
    await openPage(page);
    await add(page, 'engine');
    await page.getByRole('combobox', { name: 'Shape' }).selectOption('cylinder');
    await type(page, 'Engine, diameter', '10 in');
    await page.getByRole('switch', { name: 'Engine, on both sides' }).click();
    await type(page, 'Name of Engine', 'Starter motor');
    await saved(page);
    expect(stored(board).obstacles[0]).toMatchObject({
      kind: 'cylinder',
      name: 'Starter motor',
      mirrored: true,
      radius: 127,
    });
    await page.getByRole('button', { name: 'Remove Starter motor' }).click();
    await saved(page);
    expect(stored(board).obstacles).toEqual([]);
  });
});

describe('rails', () => {
  test('are calm until chosen; then their points are dragged, typed, added and taken out', async () => {
    const board = await openSample();
    const { page } = board;
    const SECOND = 'rails.0.path.1';
    await expect.poll(() => findHandle(page, 'top', SECOND)).toBeUndefined();
    await openPage(page);
    await page.getByRole('button', { name: /^Frame rail/ }).click();
    const at = await handleOf(page, 'top', SECOND);
    // With Shift along one axis alone.
    await page.keyboard.down('Shift');
    await drag(page, at, 0, -14);
    await page.keyboard.up('Shift');
    await saved(page);
    const [x, y, z] = pathOf(board)[1] ?? [0, 0, 0];
    expect([x, z]).toEqual([-240, 520]);
    expect(y).toBeLessThan(335);
    await page.keyboard.press('Control+z');
    await saved(page);
    expect(pathOf(board)[1]).toEqual([-240, 345, 520]);

    await takeAlong(page, await handleOf(page, 'side', SECOND), 10, 10);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await type(page, 'Frame rail, point 2, above ground', '540 mm');
    await page.getByRole('button', { name: 'Add a point after point 2' }).click();
    await saved(page);
    expect(pathOf(board)).toEqual([
      [430, 330, 520],
      [-240, 345, 540],
      [-570, 338, 530],
      [-900, 330, 520],
    ]);
    await page.getByRole('button', { name: 'Remove point 3' }).click();
    await page.getByRole('button', { name: 'Remove point 2' }).click();
    await expect.poll(() => page.getByRole('button', { name: 'Remove point 1' }).isDisabled()).toBe(true);
    await type(page, 'Frame rail, height of section', '4 in');
    await saved(page);
    expect(stored(board).rails[0]).toMatchObject({
      height: 101.6,
      path: [
        [430, 330, 520],
        [-900, 330, 520],
      ],
    });
  });

  test('are added and moved by keyboard alone', async () => {
    const board = await openSample([]);
    const { page } = board;
    await tabTo(page, 'Points');
    await page.keyboard.press('ArrowRight');
    await page.getByRole('heading', { name: 'Rails' }).waitFor();
    await tabTo(page, 'Add a rail');
    await page.keyboard.press('Enter');
    await saved(page);
    const before = pathOf(board)[0] ?? [0, 0, 0];
    await type(page, 'Frame rail, point 1, above ground', '600 mm');
    await saved(page);
    expect(pathOf(board)[0]).toEqual([before[0], before[1], 600]);
  });

  test('a click on what is drawn chooses it, and arrow keys move an obstacle whole', async () => {
    const board = await openSample();
    const { page } = board;
    await openPage(page);
    await add(page, 'engine');
    await saved(page);
    const start = boxOf(board).centre;
    await page.getByRole('tab', { name: 'Points' }).click();
    await page.keyboard.press('Escape');
    await page.locator('[data-chosen]').waitFor({ state: 'detached' });
    await expect.poll(() => findHandle(page, 'side', 'obstacles.0.centre')).toBeUndefined();
    // Above the frame and well inside the block, where nothing else can be taken hold of.
    const ball = await handleOf(page, 'side', 'steering.box.pitmanBall');
    const scale = await page.evaluate(() => window.toeboardBoard?.camera().scale ?? 0);
    const spot = { x: ball.x - (872 - 600) * scale, y: ball.y - (840 - 346) * scale };
    await page.mouse.move(spot.x, spot.y);
    await expect.poll(() => written(page)).toContain('Engine');
    await page.mouse.click(spot.x, spot.y);
    await page.getByRole('heading', { name: 'Engine' }).waitFor();
    await page.keyboard.press('ArrowUp');
    await saved(page);
    expect(boxOf(board).centre).toEqual([start[0], start[1], start[2] + 25.4 / 16]);
  });
});
