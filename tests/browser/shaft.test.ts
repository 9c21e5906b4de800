import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { motionOf, routeOf, turningOf } from '../../shared-math/shaft/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { openDemonstration, saved, storedDocument, useBrowser } from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';
import { photoClicks } from '../support/photo-clicks.ts';
import { pngFile } from '../support/picture-files.ts';
import { type RenderedSpline, renderSpline } from '../support/rendered-spline.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();
const SIDE = 'Side steer, box at the cowl';
const LONG = 'Cross steer, bar beside the drag link';

async function openShaft(name: string) {
  const board = await openBoard();
  await openDemonstration(board.page, name);
  await board.page.getByRole('button', { name: 'Shaft', exact: true }).click();
  await board.page.getByRole('complementary', { name: 'Steering shaft' }).waitFor();
  return board;
}

const shaftIn = (board: Parameters<typeof storedDocument>[0], name: string) => {
  const { shaft } = storedDocument(board, name);
  if (!shaft) throw new Error('the demonstration carries a shaft');
  return shaft;
};
const figureOf = async (page: Page, name: string) =>
  Number.parseFloat((await page.locator(`[data-figure="${name}"]`).textContent()) ?? 'NaN');

async function typed(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label });
  await field.fill(text);
  await field.press('Enter');
}

describe('the route', () => {
  test('one button sets the clocking that leaves the least, as one step of undo', async () => {
    const board = await openShaft(SIDE);
    const { page } = board;
    await typed(page, /^Shaft 1, clock/, '20');
    const [before, atWheels] = [await figureOf(page, 'swing'), await figureOf(page, 'at the wheels')];
    await page.getByRole('button', { name: 'Set the best clocking' }).click();
    await page.getByRole('button', { name: 'Clocked best' }).waitFor();
    await saved(page);
    const shaft = shaftIn(board, SIDE);
    const turning = turningOf(shaft, routeOf(shaft));
    if (!turning.ok) throw new Error('it turns');
    // No clocking of this one shaft does better, tried all around.
    for (let degrees = -88; degrees <= 90; degrees += 2) {
      const tried = motionOf(turning.value.chain, [(degrees * Math.PI) / 180]);
      expect(tried.swing).toBeGreaterThan(turning.value.motion.swing - 1e-4);
    }
    const after = await figureOf(page, 'swing');
    expect(after).toBeLessThan(before);
    await expect.poll(() => figureOf(page, 'at the wheels')).toBeLessThan(atWheels);
    expectClose(after, toDegrees(turning.value.motion.swing), 0.006, 'the figure beside the curves');
    await page.getByRole('button', { name: 'Undo: Set the best clocking' }).click();
    await saved(page);
    expect(shaftIn(board, SIDE).shafts[0]?.clock).toBe(20);
  });

  test('joints come and go, kinds change, supports are asked for and set', async () => {
    const board = await openShaft(SIDE);
    const { page } = board;
    await page.getByRole('button', { name: 'Add a joint here' }).click();
    await page.getByText('one support bearing wanted, no there. Add one.').waitFor();
    await page.locator('[data-shaft="1"]').getByRole('button', { name: 'Add a support' }).click();
    await page.getByText('one support bearing wanted, one there.').waitFor();
    await page.getByRole('combobox', { name: 'Joint 2 is' }).selectOption('double joint');
    await saved(page);
    expect(shaftIn(board, SIDE).joints.map(({ kind }) => kind)).toEqual(['single', 'double', 'single']);
    await page.locator('[data-joint="2"]').getByRole('button', { name: 'Remove', exact: true }).click();
    await saved(page);
    expect(shaftIn(board, SIDE).joints).toHaveLength(2);
    // A maker's own limit for one joint; emptied, the shop's holds again.
    await typed(page, /^Joint 1, limit/, '5');
    await page.getByText('this joint’s own limit').waitFor();
    await saved(page);
    expect(shaftIn(board, SIDE).joints[0]).toMatchObject({ limit: 5 });
    await typed(page, /^Joint 1, limit/, 'steep');
    await page.getByRole('alert').filter({ hasText: 'degrees are expected' }).waitFor();
    await typed(page, /^Joint 1, limit/, '');
    await saved(page);
    expect(shaftIn(board, SIDE).joints[0]).not.toHaveProperty('limit');
    await typed(page, /^Shaft 1, clock/, 'some');
    await page.getByRole('alert').filter({ hasText: 'degrees are expected' }).waitFor();
  });

  test('a suggested route is taken as one step, and undone', async () => {
    const board = await openShaft(LONG);
    const { page } = board;
    const before = shaftIn(board, LONG);
    await page.getByRole('button', { name: 'Suggest routes' }).click();
    const route = page.locator('[data-route="3"]');
    // The kinds are named, and each joint's angle beside its own limit, before the route is taken.
    await route.getByText(/^Joint 3, (single|double)$/).waitFor({ timeout: 30_000 * SLOWNESS });
    await route.getByText(/^3 single joints, 2 shafts, /).waitFor();
    await route.getByRole('button', { name: 'Show it on the board' }).click({ timeout: 30_000 * SLOWNESS });
    await route.getByRole('button', { name: 'Hide it again' }).waitFor();
    await route.getByRole('button', { name: 'Use this route' }).click();
    await saved(page);
    const taken = shaftIn(board, LONG);
    expect(taken.joints).toHaveLength(3);
    expect(taken.joints).not.toEqual(before.joints);
    const angles = (shaft: typeof taken) => routeOf(shaft).joints.map(({ angle }) => angle);
    expect(Math.max(...angles(taken))).toBeLessThan(Math.max(...angles(before)) + 1e-6);
    // What had been chosen for column and box stays.
    expect(taken.column.fit).toEqual(before.column.fit);
    await page.getByRole('button', { name: 'Undo: Use the route of 3 joints' }).click();
    await saved(page);
    expect(shaftIn(board, LONG)).toEqual(before);
  });

  test('begins where a layout has none', async () => {
    const board = await openShaft(SIDE);
    const { page } = board;
    await page.getByRole('button', { name: 'Remove the shaft' }).click();
    await page.getByRole('button', { name: 'Add a shaft' }).click();
    await page.locator('[data-joint="2"]').waitFor();
    await saved(page);
    const { shaft } = storedDocument(board, SIDE);
    expect(shaft?.joints).toHaveLength(2);
    expect(routeOf(shaft as NonNullable<typeof shaft>).box.off).toBeLessThan(0.1);
  });
});

test('ends that do not go together are told, and a remedy sets one that does', async () => {
  const board = await openShaft(SIDE);
  const { page } = board;
  await page.getByRole('tab', { name: 'Ends' }).click();
  const meeting = page.locator('[data-meeting="Shaft 1 and joint 2"]');
  await meeting.getByRole('button', { name: /^Shaft 1 and joint 2/ }).click();
  await meeting.getByRole('combobox', { name: 'Joint 2, column side' }).selectOption('splined, pinch bolt');
  await meeting.getByText('do not go together').waitFor();
  await meeting.getByText(/Take joint 2 with/).waitFor();
  await meeting.getByRole('button', { name: 'Set it so' }).first().click();
  await meeting.getByText('go together', { exact: true }).waitFor();
  await meeting
    .getByRole('group', { name: 'Joint 2, column side' })
    .getByRole('combobox', { name: 'Usual size' })
    .selectOption('for 1 in, 0.750 in across the flats');
  await meeting.getByText(/loose/).first().waitFor();
  await page.getByRole('button', { name: 'Undo: Set joint 2, column side' }).click();
  await typed(page, /^Joint 2, column side: bore$/, '1 in');
  await meeting.getByText(/loose/).first().waitFor();
  await page.getByRole('tab', { name: 'Make' }).click();
  await page.getByText('Shaft 1 and joint 2 do not go together').waitFor();
});

describe('a spline', () => {
  test('is found from a caliper and half a count, and becomes the column’s end', async () => {
    const board = await openShaft(SIDE);
    const { page } = board;
    await page.getByRole('tab', { name: 'Splines' }).click();
    // 36 teeth at 48/96 pitch are (36 + 1) / 48 in over the teeth: the involute standard's own formula.
    await typed(page, 'Over the teeth', '0.771 in');
    await typed(page, /^Teeth counted$/, '18');
    const found = page.locator('[data-spline]');
    await found.getByText('36', { exact: true }).waitFor();
    await page.getByText('An odd number of teeth has no half').waitFor();
    // Caliper and count leave two forms: undecided it is named as such, and the eye decides for one by the keyboard.
    await page.getByRole('button', { name: 'The box’s end is this' }).click();
    await saved(page);
    expect(shaftIn(board, SIDE).box.fit).toMatchObject({ kind: 'spline', form: 'unidentified', teeth: 36 });
    await page.getByRole('radio', { name: /^36 teeth, 48\/96 pitch, 45°/ }).focus();
    await page.keyboard.press('Space');
    await page.getByText('Goes into the drawing as 36 teeth, 48/96 pitch, 45°.').waitFor();
    await page.getByRole('button', { name: 'The column’s end is this' }).click();
    await saved(page);
    const involute = { kind: 'spline', form: 'involute-45', teeth: 36, pitch: 48 };
    expect(shaftIn(board, SIDE).column.fit).toMatchObject(involute);
    // 35 teeth of 48/96 are 3/4 in: half a count leaves that open, both halves counted do not.
    await typed(page, 'Over the teeth', '3/4 in');
    await page.getByText('Count once more, all the way round').waitFor();
    await typed(page, /^Teeth counted on the other half/, '18');
    await page.getByText(/^36 teeth on 0\.7500 in is nearest to .* trial-fit/).waitFor();
    await page
      .locator('[data-candidate^="36 teeth"]')
      .getByText('0.0208 in under: trial-fit')
      .first()
      .waitFor();
    await typed(page, /^Teeth counted on the other half/, '');
    await typed(page, 'Over the teeth', '0.71 in');
    await typed(page, /^Teeth counted$/, '15');
    await page.getByText('No standard involute form fits').waitFor();
  });

  test('is counted on a photo, with its blank, by pointer', async () => {
    const board = await openShaft(SIDE);
    const { page } = board;
    await page.getByRole('tab', { name: 'Splines' }).click();
    const spec: RenderedSpline = { teeth: 30, missing: [7], size: 480, noise: 6, shade: 0.25, seed: 5 };
    const { image, circle } = renderSpline(spec);
    const rgb = new Uint8Array(3 * image.data.length);
    for (let i = 0; i < image.data.length; i += 1) rgb.fill(image.data[i] as number, 3 * i, 3 * i + 3);
    await page.getByLabel('Photo to count teeth on').setInputFiles({
      name: 'end.png',
      mimeType: 'image/png',
      buffer: pngFile(image.width, image.height, rgb),
    });
    const canvas = page.locator('[data-spline-photo]');
    const click = photoClicks(canvas, image);
    await page.getByText('Click the middle of the shaft’s end.').waitFor();
    await click(circle.x + 1.5, circle.y - 1);
    await page.getByText('Now click the rim, over the teeth, in three places spread around it.').waitFor();
    const onRim = (degrees: number) =>
      click(
        circle.x + circle.radius * Math.cos((degrees * Math.PI) / 180),
        circle.y + circle.radius * Math.sin((degrees * Math.PI) / 180),
      );
    await onRim(0);
    // A click that went astray is taken back; two on the rim are not counted on yet.
    await click(circle.x, circle.y);
    await page.getByText(/take the last one back/).waitFor();
    await page.getByRole('button', { name: 'Undo the last click' }).click();
    await onRim(120);
    await page.getByText('1 more on the rim, spread around it').waitFor();
    await expect.poll(() => page.locator('[data-photo-count]').count()).toBe(0);
    await onRim(240);
    await page.locator('[data-photo-count="30"]').waitFor();
    await page.getByText('One blank in the rhythm').waitFor();
    await page
      .getByText('The rim laid straight, once around: a mark at every tooth, a shade over every blank.')
      .waitFor();
    await page.getByRole('button', { name: 'Use this count' }).click();
    await expect
      .poll(() => page.getByRole('textbox', { name: 'Teeth counted', exact: true }).inputValue())
      .toBe('29');
    await typed(page, 'Over the teeth', '0.646 in');
    await page.locator('[data-spline]').getByText('30', { exact: true }).waitFor();
    // What is no picture is refused by its name.
    await page.getByLabel('Photo to count teeth on').setInputFiles({
      name: 'letter.png',
      mimeType: 'image/png',
      buffer: Buffer.from('Dear customer'),
    });
    await page.getByText('letter.png is not taken: its picture cannot be decoded.').waitFor();
  });
});

test.each(['pasted', 'let go over it'])(
  'a photo of an end that is %s is for counting, not for tracing',
  async (way) => {
    const { page } = await openShaft(SIDE);
    await page.getByRole('tab', { name: 'Splines' }).click();
    const { image } = renderSpline({ teeth: 24, missing: [], size: 200, noise: 4, shade: 0.2, seed: 3 });
    const rgb = new Uint8Array(3 * image.data.length);
    for (let i = 0; i < image.data.length; i += 1) rgb.fill(image.data[i] as number, 3 * i, 3 * i + 3);
    const bytes = [...pngFile(image.width, image.height, rgb)];
    await page.getByText('Choose a photo').evaluate(
      (place, { bytes, pasted }) => {
        const brought = new DataTransfer();
        brought.items.add(new File([new Uint8Array(bytes)], 'end.png', { type: 'image/png' }));
        const how = { bubbles: true, cancelable: true };
        if (pasted) {
          document.body.dispatchEvent(new ClipboardEvent('paste', { ...how, clipboardData: brought }));
          return;
        }
        for (const kind of ['dragover', 'drop'])
          place.dispatchEvent(new DragEvent(kind, { ...how, dataTransfer: brought }));
      },
      { bytes, pasted: way === 'pasted' },
    );
    await page.locator('[data-spline-photo]').waitFor();
    await expect
      .poll(() => page.getByRole('complementary', { name: 'Steering shaft' }).isVisible())
      .toBe(true);
    await expect.poll(() => page.getByText('Drop the file to import it.').count()).toBe(0);
  },
);

test('everything is reached by keys, and has no serious fault for those who cannot see it', async () => {
  const { page, context } = await openShaft(SIDE);
  await bringChecker(context);
  await page.reload();
  await page.getByRole('button', { name: 'Shaft', exact: true }).click();
  await page.getByRole('tab', { name: 'Route' }).focus();
  expect(await violations(page)).toEqual([]);
  for (const name of ['Ends', 'Splines', 'Make']) {
    await page.keyboard.press('ArrowRight');
    await page.getByRole('tab', { name, selected: true }).waitFor();
    expect(await violations(page), name).toEqual([]);
  }
  // The splines' page with a find and a photo's count on it, and an end laid open.
  await page.getByRole('tab', { name: 'Splines' }).click();
  await typed(page, 'Over the teeth', '0.771 in');
  await typed(page, /^Teeth counted$/, '18');
  await page.locator('[data-candidate]').first().waitFor();
  const { image, circle } = renderSpline({
    teeth: 24,
    missing: [],
    size: 300,
    noise: 4,
    shade: 0.2,
    seed: 9,
  });
  const rgb = new Uint8Array(3 * image.data.length);
  for (let i = 0; i < image.data.length; i += 1) rgb.fill(image.data[i] as number, 3 * i, 3 * i + 3);
  await page.getByLabel('Photo to count teeth on').setInputFiles({
    name: 'end.png',
    mimeType: 'image/png',
    buffer: pngFile(image.width, image.height, rgb),
  });
  // By keys alone: the mark begins in the picture's middle, near enough the centre; then out to the rim.
  await page.getByRole('button', { name: /^Photo of the shaft’s end/ }).focus();
  await page.keyboard.press('Enter');
  const go = async (key: string, far: number) => {
    for (let gone = 0; gone < far - 2; gone += 4) await page.keyboard.press(key);
  };
  await go('ArrowRight', circle.radius);
  await page.keyboard.press('Enter');
  // A place in between, set too early, is taken back by its key.
  await go('ArrowLeft', circle.radius);
  await page.keyboard.press('Enter');
  await page.keyboard.press('Backspace');
  await go('ArrowUp', circle.radius);
  await page.keyboard.press('Enter');
  await go('ArrowDown', circle.radius);
  await go('ArrowLeft', circle.radius);
  await page.keyboard.press('Enter');
  await page.locator('[data-photo-count="24"]').waitFor();
  expect(await violations(page), 'a find and a count').toEqual([]);
  await page.getByRole('tab', { name: 'Ends' }).click();
  await page.getByRole('button', { name: /^Shaft 1 and joint 2/ }).click();
  expect(await violations(page), 'an end laid open').toEqual([]);
});
