import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Store } from '../../src-main/store/index.ts';
import type { BoardHook } from '../../src-renderer/board/test-hook.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { drag, findHandle, handleOf, type Spot, takeAlong } from '../support/board-pointer.ts';
import { type OpenBoard, pointButton, saved, storedDocument, useBrowser } from '../support/browser-page.ts';
import { boardAtRest, framesDrawn } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';
const LEFT = 'axle.left.wheelCentre';
const RIGHT = 'axle.right.wheelCentre';

/** One car with two variants, the first of them open. */
function withTwo(store: Store): void {
  const car = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
  const [first] = [sampleLayout('Arm down'), sampleLayout('Box low', 300)].map((document) =>
    store.variants.add(car, document, 'Begun'),
  );
  store.settings.write({ lastVariant: first ?? null });
}

async function openSample(): Promise<OpenBoard> {
  const board = await openBoard({ prepare: withTwo });
  await board.page.emulateMedia({ reducedMotion: 'reduce' });
  await pointButton(board.page, 'Pitman ball').waitFor();
  await picturedOf(board.page, PITMAN);
  return board;
}

/** Where the pictorial shows a hardpoint, page px. */
async function picturedOf(page: Page, id: string): Promise<Spot> {
  const shown = await page
    .waitForFunction((of) => (window.toeboardBoard as BoardHook | undefined)?.picturedAt(of), id)
    .catch((error) => {
      throw new Error(`The pictorial does not show ${id}`, { cause: error });
    });
  return (await shown.jsonValue()) as Spot;
}

const pictorial = (page: Page) => page.getByRole('application', { name: 'Pictorial', exact: true });
const sentence = (page: Page) => page.locator('[data-figure="pictorial"]').textContent();
const between = (from: Spot, to: Spot) => [to.x - from.x, to.y - from.y] as const;

/** A place of the picture that no point is near. */
async function bareSpot(page: Page): Promise<Spot> {
  const box = await pictorial(page).boundingBox();
  if (!box) throw new Error('no pictorial');
  return { x: box.x + 25, y: box.y + 40 };
}

/** What stands on the picture's canvas. */
const inked = (page: Page) =>
  pictorial(page)
    .locator('canvas.car')
    .evaluate((canvas) => (canvas as HTMLCanvasElement).toDataURL());

/** How many px the car at ride height has on the canvas under the picture; 0 while it is hidden. */
const paleAt = (page: Page) =>
  pictorial(page)
    .locator('canvas.under')
    .evaluate((element) => {
      const canvas = element as HTMLCanvasElement;
      const { width, height } = canvas;
      if (canvas.hidden || width === 0) return 0;
      const copy = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
      copy?.drawImage(canvas, 0, 0);
      const pixels = copy?.getImageData(0, 0, width, height).data ?? [];
      let count = 0;
      for (let at = 3; at < pixels.length; at += 4) if (pixels[at] !== 0) count += 1;
      return count;
    });

async function inkedAtRest(page: Page): Promise<string> {
  await framesDrawn(page, 3);
  return inked(page);
}

describe('the pictorial', () => {
  test('stands in the free quarter, isometric, and is turned by hand and by keys', async () => {
    const board = await openSample();
    const { page } = board;
    const titles = await Promise.all(
      ['pictorial', 'top view', 'front view'].map((of) =>
        page.getByRole('button', { name: `Let the ${of} fill the board` }).boundingBox(),
      ),
    );
    const [own, top, front] = titles as { x: number; y: number }[];
    expect(own?.x).toBeCloseTo(front?.x as number, 0);
    expect(own?.y).toBeCloseTo(top?.y as number, 0);
    for (const id of [PITMAN, LEFT, RIGHT]) {
      const { x, y } = await picturedOf(page, id);
      expect(x).toBeLessThan(top?.x as number);
      expect(y).toBeLessThan(front?.y as number);
    }

    // Drawn by hand with two set squares: what goes ahead and to the left goes 30° off level, what goes up, up.
    const { axle, steering } = storedDocument(board, 'Arm down');
    const at = (point: readonly number[]) => {
      const [x, y, z] = point as [number, number, number];
      return { x: (y - x) * Math.cos(Math.PI / 6), y: (x + y) / 2 - z };
    };
    const [wheel, ball] = [axle.left.wheelCentre, steering.box.pitmanBall];
    const drawn = between(await picturedOf(page, LEFT), await picturedOf(page, PITMAN));
    const expected = between(at(wheel), at(ball));
    expect(drawn[0] / drawn[1]).toBeCloseTo(expected[0] / expected[1], 4);
    const across = between(await picturedOf(page, LEFT), await picturedOf(page, RIGHT));
    const acrossExpected = between(at(wheel), at([wheel[0], -wheel[1], wheel[2]]));
    expect(across[0] / drawn[0]).toBeCloseTo(acrossExpected[0] / expected[0], 4);

    await expect
      .poll(() => sentence(page))
      .toContain('seen from ahead and the left, from above, at ride height');
    const spot = await bareSpot(page);
    await page.mouse.move(spot.x, spot.y);
    await page.getByText('Drag to turn the car.').waitFor();
    const square = await picturedOf(page, PITMAN);
    await drag(page, spot, 220, -40);
    const turned = await picturedOf(page, PITMAN);
    expect(Math.hypot(...between(square, turned))).toBeGreaterThan(30);
    await expect.poll(() => sentence(page)).toContain('seen from ahead and the right, a little from above');
    await takeAlong(page, spot, -90, 0);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect
      .poll(async () => Math.hypot(...between(turned, await picturedOf(page, PITMAN))))
      .toBeLessThan(0.01);
    // With reduced motion it is square at once.
    await page.mouse.dblclick(spot.x, spot.y);
    await expect
      .poll(async () => Math.hypot(...between(square, await picturedOf(page, PITMAN))))
      .toBeLessThan(0.01);

    await pictorial(page).focus();
    for (let press = 0; press < 3; press += 1) await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => sentence(page)).toContain('seen from ahead, from above');
    await page.keyboard.press('ArrowDown');
    await expect
      .poll(async () => Math.hypot(...between(square, await picturedOf(page, PITMAN))))
      .toBeGreaterThan(10);
    await page.keyboard.press('Home');
    await expect
      .poll(async () => Math.hypot(...between(square, await picturedOf(page, PITMAN))))
      .toBeLessThan(0.01);
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall).toEqual(ball);
    await bringChecker(board.context);
    await page.reload();
    await pointButton(page, 'Pitman ball').waitFor();
    await picturedOf(page, PITMAN);
    expect(await violations(page)).toEqual([]);
  });

  test('has points that can be chosen and not moved', async () => {
    const board = await openSample();
    const { page } = board;
    const before = storedDocument(board, 'Arm down').steering.box.pitmanBall;
    const spot = await picturedOf(page, PITMAN);
    await page.mouse.move(spot.x, spot.y);
    await page.getByText('Pitman ball. Click to choose it.').waitFor();
    await page.mouse.click(spot.x, spot.y);
    await expect.poll(() => pointButton(page, 'Pitman ball').getAttribute('aria-pressed')).toBe('true');
    await takeAlong(page, spot, 60, 10);
    await page.getByText('Points are moved in the other views.').waitFor();
    await page.mouse.up();
    await expect
      .poll(async () => Math.hypot(...between(spot, await picturedOf(page, PITMAN))))
      .toBeGreaterThan(5);
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall).toEqual(before);
    await page.mouse.dblclick(...(Object.values(await bareSpot(page)) as [number, number]));
    await page.mouse.move(4, 4);
    const alone = await inkedAtRest(page);
    await page.getByRole('tab', { name: 'Compare' }).click();
    await page.getByRole('checkbox', { name: 'Box low', exact: true }).check();
    await expect.poll(() => inked(page)).not.toBe(alone);
    // Arrow keys still move what is chosen, when the picture has not the focus.
    await page.mouse.click(...(Object.values(await picturedOf(page, PITMAN)) as [number, number]));
    await page.keyboard.press('ArrowUp');
    await saved(page);
    expect(storedDocument(board, 'Arm down').steering.box.pitmanBall[2]).toBeGreaterThan(before[2]);
  });

  test('moves with a point dragged in another view, with the pose, and fills the board', async () => {
    const board = await openSample();
    const { page } = board;
    const ball = await picturedOf(page, PITMAN);
    const wheel = await picturedOf(page, LEFT);
    const before = await inked(page);
    await takeAlong(page, await handleOf(page, 'side', PITMAN), 0, 40);
    const dragged = await picturedOf(page, PITMAN);
    expect(dragged.x).toBeCloseTo(ball.x, 1);
    expect(dragged.y).toBeGreaterThan(ball.y + 5);
    await expect.poll(() => picturedOf(page, LEFT)).toEqual(wheel);
    await expect.poll(() => inked(page)).not.toBe(before);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    const heave = page.getByRole('slider', { name: 'Heave', exact: true });
    await heave.focus();
    await page.keyboard.press('End');
    await expect.poll(async () => (await picturedOf(page, LEFT)).y).toBeLessThan(wheel.y - 5);
    // The car at ride height stands pale behind it, as in the views: the same in any pose, hidden while the picture is turned.
    await framesDrawn(page, 3);
    const pale = await paleAt(page);
    expect(pale).toBeGreaterThan(1000);
    const PALE = 'Pale behind it, the same car stands at ride height.';
    await expect.poll(() => sentence(page)).toContain(PALE);
    await page.keyboard.press('ArrowLeft');
    await framesDrawn(page, 3);
    await expect.poll(() => paleAt(page)).toBe(pale);
    const spot = await bareSpot(page);
    await takeAlong(page, spot, 120, 10);
    await framesDrawn(page, 2);
    await page.mouse.move(spot.x + 140, spot.y);
    await framesDrawn(page, 2);
    await expect.poll(() => paleAt(page)).toBe(0);
    await page.mouse.up();
    await expect.poll(() => paleAt(page)).toBeGreaterThan(1000);
    await page.mouse.dblclick(spot.x, spot.y);
    await heave.focus();
    await page.keyboard.press('r');
    await framesDrawn(page, 3);
    await expect.poll(() => paleAt(page)).toBe(0);
    await expect.poll(() => sentence(page)).not.toContain(PALE);
    await expect.poll(() => sentence(page)).toContain('at ride height');

    await page.keyboard.press('4');
    await boardAtRest(page);
    await expect.poll(() => findHandle(page, 'side', PITMAN)).toBeUndefined();
    const apart = (from: Spot, to: Spot) => Math.hypot(...between(from, to));
    const large = apart(await picturedOf(page, LEFT), await picturedOf(page, PITMAN));
    expect(large).toBeGreaterThan(1.5 * apart(wheel, ball));
    await page.getByRole('button', { name: 'Back to the whole sheet from the pictorial' }).click();
    await boardAtRest(page);
    await expect
      .poll(async () => apart(await picturedOf(page, LEFT), await picturedOf(page, PITMAN)))
      .toBeCloseTo(apart(wheel, ball), 3);
    await page.getByRole('button', { name: 'Pictorial', exact: true }).click();
    await boardAtRest(page);
    await expect.poll(() => findHandle(page, 'top', PITMAN)).toBeUndefined();
    await page.keyboard.press('1');
    await boardAtRest(page);
    await expect.poll(() => pictorial(page).count()).toBe(0);
  });

  test('shows the room that the tyres need, in each turn that it rests in', async () => {
    const { page } = await openSample();
    const tyre = page.getByRole('checkbox', { name: 'tyre', exact: true });
    const settled = () => page.locator('[data-figure="room"][data-settled="true"]').waitFor();
    /** Where the picture is another than without the room, px of its canvas. */
    const changed = async (from: string, to: string) =>
      page.evaluate(
        async ([a, b]) => {
          const pixels = async (url: string) => {
            const image = new Image();
            image.src = url;
            await image.decode();
            const canvas = new OffscreenCanvas(image.width, image.height);
            const context = canvas.getContext('2d');
            context?.drawImage(image, 0, 0);
            return context?.getImageData(0, 0, image.width, image.height);
          };
          const [one, other] = [await pixels(a), await pixels(b)];
          if (!one || !other || one.width !== other.width) throw new Error('pictures of two sizes');
          const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
          for (let i = 0; i < one.data.length; i += 1) {
            if (one.data[i] === other.data[i]) continue;
            const [x, y] = [(i >> 2) % one.width, Math.floor((i >> 2) / one.width)];
            box.left = Math.min(box.left, x);
            box.right = Math.max(box.right, x);
            box.top = Math.min(box.top, y);
            box.bottom = Math.max(box.bottom, y);
          }
          return { ...box, width: one.width, height: one.height };
        },
        [from, to] as const,
      );
    await page.keyboard.press('4');
    await boardAtRest(page);
    await tyre.check();
    await settled();
    for (const turned of [false, true]) {
      if (turned) {
        await pictorial(page).focus();
        await page.keyboard.press('Shift+ArrowLeft');
        await page.keyboard.press('ArrowDown');
      }
      await settled();
      await page.mouse.move(4, 4);
      const shown = await inkedAtRest(page);
      await tyre.uncheck();
      await page.mouse.move(4, 4);
      const alone = await inkedAtRest(page);
      await tyre.check();
      await settled();
      await page.mouse.move(4, 4);
      await expect.poll(async () => (await inkedAtRest(page)) === shown).toBe(true);
      const { left, top, right, bottom, width, height } = await changed(alone, shown);
      const canvas = await pictorial(page).boundingBox();
      const [near, far] = [await picturedOf(page, LEFT), await picturedOf(page, RIGHT)];
      const [x, y] = [canvas?.x ?? 0, canvas?.y ?? 0];
      // Around both wheels, and in the square picture nothing of it is cut off.
      expect(left + x).toBeLessThan(Math.min(near.x, far.x) - 40);
      expect(right + x).toBeGreaterThan(Math.max(near.x, far.x) + 40);
      expect(top + y).toBeLessThan(Math.min(near.y, far.y) - 60);
      expect(bottom + y).toBeGreaterThan(Math.max(near.y, far.y) + 60);
      if (!turned) expect(Math.min(left, top, width - 1 - right, height - 1 - bottom)).toBeGreaterThan(0);
    }
    // Of each frame, how many lines are painted, and how many of them are outlines of room, which alone have so long a dash.
    await pictorial(page).evaluate((picture) => {
      const found = picture.querySelector<HTMLCanvasElement>('canvas.car')?.getContext('2d');
      if (!found) throw new Error('no picture');
      const context: CanvasRenderingContext2D = found;
      const frames: { lines: number; rooms: number }[] = [];
      const { clearRect, stroke } = CanvasRenderingContext2D.prototype;
      context.clearRect = (...box) => {
        frames.push({ lines: 0, rooms: 0 });
        clearRect.apply(context, box);
      };
      context.stroke = (...path: unknown[]) => {
        const frame = frames.at(-1);
        if (frame) frame.lines += 1;
        if (frame && context.getLineDash().length === 6) frame.rooms += 1;
        Reflect.apply(stroke, context, path);
      };
      Object.assign(window, { framesOfPicture: frames });
    });
    const frames = () =>
      page.evaluate(
        () => (window as unknown as { framesOfPicture: { lines: number; rooms: number }[] }).framesOfPicture,
      );
    // In every frame of a turn there is the car, and no room of another turn; both once it rests.
    for (const key of ['ArrowLeft', 'ArrowUp']) {
      const before = (await frames()).length;
      const until = await pictorial(page).evaluate(async (picture, arrow) => {
        for (let turned = 0; turned < 8; turned += 1) {
          picture.dispatchEvent(new KeyboardEvent('keydown', { key: arrow, bubbles: true }));
          await new Promise((done) => requestAnimationFrame(done));
        }
        return (window as unknown as { framesOfPicture: unknown[] }).framesOfPicture.length;
      }, key);
      const turning = (await frames()).slice(before, until);
      expect(turning.length).toBeGreaterThan(3);
      for (const { lines, rooms } of turning) {
        expect(lines).toBeGreaterThan(20);
        expect(rooms).toBe(0);
      }
      await settled();
      // One around each tyre, or one around both where one stands behind the other.
      await expect.poll(async () => (await frames()).at(-1)?.rooms).toBeGreaterThan(0);
    }
  });
});
