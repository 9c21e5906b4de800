import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { drag, figure, handleOf, takeAlong } from '../support/board-pointer.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  storedDocument,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { boardAtRest } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';

async function openSample(): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await handleOf(board.page, 'side', PITMAN);
  return board;
}

const stored = (board: OpenBoard) => storedDocument(board, 'Arm down');
const pitmanOf = (board: OpenBoard) => stored(board).steering.box.pitmanBall;
const camera = (page: Page) => page.evaluate(() => window.toeboardBoard?.camera());
const degrees = (text: string) => Number.parseFloat(text);
const heave = (page: Page) => page.getByRole('slider', { name: 'Heave', exact: true });

describe('dragging a point', () => {
  test('moves it in the axes of its view, bends the curves at once, and is stored', async () => {
    const board = await openSample();
    const { page } = board;
    const before = degrees(await figure(page, 'worst'));
    await page.evaluate(() => {
      const keys: string[] = [];
      const { setItem } = Storage.prototype;
      Storage.prototype.setItem = function (key, value) {
        if (this === localStorage) keys.push(key);
        setItem.call(this, key, value);
      };
      Object.assign(window, { keysWritten: keys });
    });
    await takeAlong(page, await handleOf(page, 'side', PITMAN), 0, 30);
    // Not let go yet: the figures follow the hand.
    await expect.poll(async () => degrees(await figure(page, 'worst'))).toBeGreaterThan(before + 1);
    // And no step waits for the browser's storage, where what stands at the next start is kept.
    const written = () => page.evaluate(() => (window as unknown as { keysWritten: string[] }).keysWritten);
    await expect.poll(written).toEqual([]);
    const during = degrees(await figure(page, 'worst'));
    await page.mouse.up();
    await saved(page);
    const [x, y, z] = pitmanOf(board);
    expect([x, y]).toEqual([-872, 500]);
    expect(z).toBeLessThan(300);
    await expect.poll(async () => degrees(await figure(page, 'worst'))).toBe(during);
    await expect.poll(() => pointButton(page, 'Pitman ball').getAttribute('aria-pressed')).toBe('true');
  });

  test('is one step of undo and of redo', async () => {
    const board = await openSample();
    const { page } = board;
    await drag(page, await handleOf(page, 'side', PITMAN), 12, 30);
    await saved(page);
    const moved = pitmanOf(board);
    await page.keyboard.press('Control+z');
    await saved(page);
    expect(pitmanOf(board)).toEqual([-872, 500, 346]);
    await page.keyboard.press('Control+Shift+z');
    await saved(page);
    expect(pitmanOf(board)).toEqual(moved);
  });

  test('snaps to whole steps, and not with Alt', async () => {
    const board = await openSample();
    const { page } = board;
    await drag(page, await handleOf(page, 'side', PITMAN), 41, 37);
    await saved(page);
    const snapped = pitmanOf(board);
    for (const value of [snapped[0], snapped[2]])
      expect((value / 25.4) * 16).toBeCloseTo(Math.round((value / 25.4) * 16), 3);
    await page.keyboard.down('Alt');
    await drag(page, await handleOf(page, 'side', PITMAN), 17, 13);
    await page.keyboard.up('Alt');
    await saved(page);
    const free = pitmanOf(board);
    const sixteenths = [free[0], free[2]].map((value) =>
      Math.abs((value / 25.4) * 16 - Math.round((value / 25.4) * 16)),
    );
    expect(Math.max(...sixteenths)).toBeGreaterThan(0.01);
  });

  test('with Shift goes along one axis only', async () => {
    const board = await openSample();
    const { page } = board;
    await page.keyboard.down('Shift');
    await drag(page, await handleOf(page, 'side', PITMAN), 40, 14);
    await page.keyboard.up('Shift');
    await saved(page);
    const [x, , z] = pitmanOf(board);
    expect(z).toBe(346);
    expect(x).toBeLessThan(-950);
  });

  test('takes its mirror image along, in the view from ahead', async () => {
    const board = await openSample();
    const { page } = board;
    const right = await handleOf(page, 'front', 'location.right.framePivot');
    await drag(page, await handleOf(page, 'front', 'location.left.framePivot'), 15, 0);
    const moved = async () => (await handleOf(page, 'front', 'location.right.framePivot')).x;
    await expect.poll(moved).toBeLessThan(right.x - 10);
    await saved(page);
    const { location } = stored(board);
    if (location.kind !== 'hairpins') throw new Error('another kind of location');
    expect(location.right).toBe('mirror');
    expect(location.left.framePivot[1]).toBeGreaterThan(440);
  });

  test('leaves the sheet where it is looked at, and the car as it is drawn when all of it is drawn anew', async () => {
    const board = await openSample();
    const { page } = board;
    /** The ink of the canvas that the car is drawn on, all of it. */
    const drawn = async () => {
      await boardAtRest(page);
      return page.evaluate(() => {
        const canvas = document.querySelectorAll<HTMLCanvasElement>('.konvajs-content canvas')[3];
        const context = canvas?.getContext('2d');
        if (!canvas || !context) throw new Error('the board has no such canvas');
        const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
        return { ink: data.filter((value, i) => i % 4 === 3 && value > 0).length, bytes: data.join() };
      });
    };
    const before = await drawn();
    const looked = await camera(page);
    for (const [right, down] of [
      [41, 37],
      [-90, 12],
      [33, -60],
    ] as const)
      await drag(page, await handleOf(page, 'side', PITMAN), right, down);
    await drag(page, await handleOf(page, 'front', 'location.left.framePivot'), 25, 18);
    await page.mouse.move(4, 4);
    const stepByStep = await drawn();
    await expect.poll(() => camera(page)).toEqual(looked);
    await page.keyboard.press('f');
    const anew = await drawn();
    expect(before.ink).toBeGreaterThan(2000);
    expect(stepByStep.bytes).not.toBe(before.bytes);
    expect(stepByStep.bytes === anew.bytes).toBe(true);
  });

  test('draws of the car only what moves with the point', async () => {
    const { page } = await openSample();
    const far = await handleOf(page, 'front', 'location.right.framePivot');
    const near = await handleOf(page, 'front', PITMAN);
    await page.evaluate(() => {
      const car = document.querySelectorAll<HTMLCanvasElement>('.konvajs-content canvas')[3];
      const { clearRect } = CanvasRenderingContext2D.prototype;
      const cleared: [number, number, number, number][] = [];
      Object.assign(window, { cleared });
      CanvasRenderingContext2D.prototype.clearRect = function (...box) {
        // All of it is drawn when the point is taken and let go; what is looked at here are the steps between.
        const all = box[0] === 0 && box[1] === 0 && box[2] >= (car?.clientWidth ?? 0);
        if (this.canvas === car && !all) cleared.push(box);
        clearRect.apply(this, box);
      };
    });
    // At ride height the drag link is made to fit: the pitman ball moves, and the wheels stay straight.
    await drag(page, await handleOf(page, 'side', PITMAN), 40, 30);
    const covered = (at: { x: number; y: number }) =>
      page.evaluate(
        ([x, y]) => {
          const { cleared } = window as unknown as { cleared: [number, number, number, number][] };
          const car = document.querySelectorAll<HTMLCanvasElement>('.konvajs-content canvas')[3];
          const place = (car as HTMLCanvasElement).getBoundingClientRect();
          const ratio = (car as HTMLCanvasElement).width / place.width;
          const [px, py] = [ratio * (x - place.x), ratio * (y - place.y)];
          return cleared.filter(
            ([left, top, wide, high]) => px >= left && px <= left + wide && py >= top && py <= top + high,
          ).length;
        },
        [at.x, at.y] as const,
      );
    await expect.poll(() => covered(near)).toBeGreaterThan(0);
    await expect.poll(() => covered(far)).toBe(0);
  });

  test('Escape gives the point back, and nothing of the drag is stored', async () => {
    const board = await openSample();
    const { page } = board;
    const before = await figure(page, 'worst');
    const at = await handleOf(page, 'side', PITMAN);
    await takeAlong(page, at, 20, 30);
    await expect.poll(() => figure(page, 'worst')).not.toBe(before);
    await page.keyboard.press('Escape');
    await expect.poll(() => figure(page, 'worst')).toBe(before);
    await expect.poll(() => handleOf(page, 'side', PITMAN)).toEqual(at);
    await page.mouse.move(at.x + 60, at.y + 60);
    await page.mouse.up();
    await saved(page);
    expect(pitmanOf(board)).toEqual([-872, 500, 346]);
    await expect.poll(() => page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
  });

  test('of a posed car begins at ride height, and says so', async () => {
    const board = await openSample();
    const { page } = board;
    await heave(page).focus();
    await page.keyboard.press('End');
    await expect.poll(async () => Number(await heave(page).inputValue())).toBeGreaterThan(70);
    await drag(page, await handleOf(page, 'side', PITMAN), 0, 20);
    await expect.poll(async () => Number(await heave(page).inputValue())).toBe(0);
    await page.getByText('Back at ride height').waitFor();
    await saved(page);
    expect(pitmanOf(board)[2]).toBeLessThan(340);
  });

  test('onto a spot where the linkage cannot be is not taken, and the point stays where it last could be', async () => {
    const board = await openSample();
    const { page } = board;
    const ball = await handleOf(page, 'side', PITMAN);
    const sector = await handleOf(page, 'side', 'steering.box.sectorCentre');
    // The pitman ball on the sector shaft: an arm of no length.
    await takeAlong(page, ball, sector.x - ball.x, sector.y - ball.y);
    await page.getByText(/the pitman arm has no length/).waitFor();
    await page.mouse.up();
    await saved(page);
    const [x, , z] = pitmanOf(board);
    const { sectorCentre } = stored(board).steering.box;
    expect(Math.hypot(x - sectorCentre[0], z - sectorCentre[2])).toBeGreaterThan(1);
  });
});

describe('the keyboard on the board', () => {
  test('nudges the chosen point by a sixteenth in the view used last', async () => {
    const board = await openSample();
    const { page } = board;
    const at = await handleOf(page, 'front', PITMAN);
    await page.mouse.click(at.x, at.y);
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowRight');
    await saved(page);
    expect(pitmanOf(board)).toEqual([-872, 500 + 25.4 / 16, 346 + 25.4 / 16]);
  });

  test('the drawing and the pictorial, which take keys, can be reached by Tab and have names', async () => {
    const { page } = await openSample();
    const drawing = page.getByRole('application', { name: /Drawing of the front end/ });
    await drawing.focus();
    await expect.poll(() => drawing.evaluate((element) => element === document.activeElement)).toBe(true);
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    // What takes keys of its own is a stop of its own, and a reader of the screen passes the keys on to an application alone.
    await page.keyboard.press('Tab');
    await expect.poll(focused).toBe('Pictorial');
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('role')))
      .toBe('application');
    await page.keyboard.press('Tab');
    await expect.poll(focused).toBe('Let the pictorial fill the board');
    // The choice of rooms, then the views.
    for (let room = 0; room < 3; room += 1) await page.keyboard.press('Tab');
    for (const view of ['side', 'top', 'front']) {
      await page.keyboard.press('Tab');
      await expect.poll(focused).toBe(`Let the ${view} view fill the board`);
    }
  });
});
