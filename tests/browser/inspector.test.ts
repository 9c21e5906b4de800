import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import {
  pointButton,
  saved,
  storedDocument,
  tabTo,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';
import { framesDrawn } from '../support/frames.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const NAME = 'Arm down';

async function openSample() {
  const board = await openBoard({ prepare: withSample(sampleLayout(NAME)) });
  await pointButton(board.page, 'Pitman ball').click();
  return board;
}

/** Types into a field as a person does, and takes it with Enter. */
async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label, exact: true });
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

describe('typed figures', () => {
  test('a coordinate in any unit changes the stored document; undo, redo and a reload find it', async () => {
    const board = await openSample();
    const { page } = board;
    const ball = () => storedDocument(board, NAME).steering.box.pitmanBall;
    await type(page, 'Pitman ball, above ground', '350 mm');
    await saved(page);
    expect(ball()).toEqual([-872, 500, 350]);
    await type(page, 'Pitman ball, back from axle', `2' 10 1/4"`);
    await saved(page);
    expectClose(ball()[0], -34.25 * 25.4, 1e-9, 'typed feet and inches');

    await page.getByRole('button', { name: /^Undo: Move Pitman ball to 34 1\/4 in back/ }).click();
    await page.keyboard.press('Control+z');
    await saved(page);
    expect(ball()).toEqual([-872, 500, 346]);
    await page.keyboard.press('Control+y');
    await saved(page);
    expect(ball()).toEqual([-872, 500, 350]);

    await page.reload();
    await pointButton(page, 'Pitman ball').click();
    const shown = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
    await expect.poll(() => shown.inputValue()).toBe('13 3/4 in');
  });

  test('a wrong text is told under its field, keeps the old value and what was typed', async () => {
    const board = await openSample();
    const { page } = board;
    await type(page, 'Pitman ball, above ground', 'about a foot');
    const alert = page.getByRole('alert').filter({ hasText: '"about a foot" is not a length' });
    await alert.waitFor();
    const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
    await expect.poll(() => field.getAttribute('aria-invalid')).toBe('true');
    await expect.poll(() => field.inputValue()).toBe('about a foot');
    expect(storedDocument(board, NAME).steering.box.pitmanBall[2]).toBe(346);
    await field.focus();
    await page.keyboard.press('Escape');
    await expect.poll(() => field.inputValue()).toBe('13 5/8 in');
    await expect.poll(() => alert.count()).toBe(0);
  });

  test('a figure that the layout cannot have is told in plain words and not taken', async () => {
    const board = await openSample();
    const { page } = board;
    await page.getByRole('tab', { name: 'Car', exact: true }).click();
    await type(page, 'Wheelbase', '0');
    await page.getByRole('alert').filter({ hasText: 'Wheelbase: must be more than 0' }).waitFor();
    await type(page, 'Tyre radius', '340 mm');
    await saved(page);
    expect(storedDocument(board, NAME).car).toMatchObject({ wheelbase: 2640, tyreRadius: 340 });
  });

  test('a point on the spot of its link’s other end is refused and nothing is lost', async () => {
    const board = await openSample();
    const { page } = board;
    await pointButton(page, 'Steering arm ball').click();
    for (const [label, text] of [
      ['Steering arm ball, back from axle', '872 mm'],
      ['Steering arm ball, left of centre', '500 mm'],
      ['Steering arm ball, above ground', '346 mm'],
    ] as const)
      await type(page, label, text);
    await page
      .getByRole('alert')
      .filter({ hasText: 'Steering arm ball: on the same spot as the pitman ball' })
      .waitFor();
    await page.keyboard.press('Escape');
    await saved(page);
    expect(storedDocument(board, NAME).steering.dragLinkBall).toEqual([-872, 500, 395]);
  });
});

describe('units', () => {
  test('switching changes what is shown and nothing that is stored, and is remembered', async () => {
    const board = await openSample();
    const { page } = board;
    const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
    const units = page.getByRole('combobox', { name: 'Lengths in' });
    const before = storedDocument(board, NAME);
    const shown: string[] = [];
    for (const choice of ['in-16', 'in-32', 'in-64', 'in-0', 'mm']) {
      await units.selectOption(choice);
      shown.push(await field.inputValue());
    }
    expect(shown).toEqual(['13 5/8 in', '13 5/8 in', '13 5/8 in', '13.622 in', '346.0 mm']);
    // A bare number is in the unit that is shown.
    await field.click();
    await page.keyboard.type('350');
    await page.keyboard.press('Enter');
    await saved(page);
    expect(storedDocument(board, NAME).steering.box.pitmanBall[2]).toBe(350);
    await page.keyboard.press('Escape');
    await page.locator('body').press('Control+z');
    await saved(page);
    expect(storedDocument(board, NAME)).toEqual(before);
    await page.reload();
    await pointButton(page, 'Pitman ball').click();
    await expect.poll(() => field.inputValue()).toBe('346.0 mm');
  });
});

describe('the keyboard alone', () => {
  test('chooses a point from the list and nudges it, a held key being one step of undo', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout(NAME)) });
    const { page } = board;
    const ball = () => storedDocument(board, NAME).steering.box.pitmanBall;
    await pointButton(page, 'Pitman ball').waitFor();
    await tabTo(page, 'Pitman ball');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Pitman ball' }).waitFor();
    // Presses within a second are one step. A busy machine takes longer between two of them, so the page's clock goes slower.
    await page.evaluate(() => {
      const now = performance.now.bind(performance);
      const begun = now();
      performance.now = () => begun + (now() - begun) / 50;
    });
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowLeft');
    await saved(page);
    expectClose(ball()[2], 346 + (2 * 25.4) / 16, 1e-9, 'two nudges up');
    expectClose(ball()[0], -872 + 12.7, 1e-9, 'one long nudge ahead');
    await page.keyboard.press('u');
    await page.keyboard.press('ArrowDown');
    await saved(page);
    expectClose(ball()[2], 345 + (2 * 25.4) / 16, 1e-9, 'one millimetre down');
    await page.keyboard.press('Control+z');
    await saved(page);
    expect(ball()).toEqual([-872, 500, 346]);
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  });
});

describe('kinds', () => {
  test('another axle location proposes points of its own and can be undone', async () => {
    const board = await openSample();
    const { page } = board;
    const before = storedDocument(board, NAME);
    await page.getByRole('tab', { name: 'Car', exact: true }).click();
    await page.getByRole('combobox', { name: 'Located by' }).selectOption('four-bar');
    await page.getByRole('combobox', { name: 'Centred by' }).selectOption('bar');
    await saved(page);
    expect(storedDocument(board, NAME)).toMatchObject({
      location: { kind: 'four-bar' },
      lateral: { kind: 'bar' },
    });
    await page.getByRole('tab', { name: 'Points' }).click();
    await pointButton(page, 'Right lower bar, frame end').click();
    await page.getByRole('switch', { name: 'mirrored: yes' }).click();
    await type(page, 'Right lower bar, frame end, above ground', '300 mm');
    await saved(page);
    const { location } = storedDocument(board, NAME);
    if (location.kind !== 'four-bar' || location.right === 'mirror')
      throw new Error('the right side is not its own');
    expect(location.right.lower.frame[2]).toBe(300);
    expect(location.left.lower.frame[2]).not.toBe(300);
    await page.keyboard.press('Escape');
    for (let steps = 0; steps < 4; steps += 1) await page.locator('body').press('Control+z');
    await saved(page);
    expect(storedDocument(board, NAME)).toEqual(before);
  });
});

describe('the pose', () => {
  test('sliders pose the car by keyboard, an edit returns it to ride height and says so', async () => {
    const board = await openSample();
    const { page } = board;
    const heave = page.getByRole('slider', { name: 'Heave', exact: true });
    await heave.focus();
    await page.keyboard.press('PageUp');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => heave.getAttribute('aria-valuetext')).toBe('11/16 in of bump');
    await page.keyboard.press('End');
    await expect.poll(() => heave.inputValue()).toBe('75');
    const handwheel = page.getByRole('textbox', { name: 'Handwheel, typed' });
    await handwheel.click();
    await page.keyboard.type('90 right');
    await page.keyboard.press('Enter');
    await expect.poll(() => handwheel.inputValue()).toBe('90° right');

    await type(page, 'Pitman ball, above ground', '340 mm');
    await page.getByText('Back at ride height: the layout is drawn there.').waitFor();
    await expect.poll(() => heave.inputValue()).toBe('0');
    await expect.poll(() => handwheel.inputValue()).toBe('0°');
  });

  test('the travel runs up and down until it is stopped', async () => {
    const { page } = await openSample();
    const heave = page.getByRole('slider', { name: 'Heave', exact: true });
    const at = async () => Number(await heave.inputValue());
    await page.getByRole('button', { name: 'Run travel' }).click();
    await expect.poll(at).toBeGreaterThan(60);
    await expect.poll(at).toBeLessThan(-60);
    await page.getByRole('button', { name: 'Stop' }).click();
    const stopped = await at();
    await framesDrawn(page, 12);
    await expect.poll(at).toBe(stopped);
    await page.getByRole('button', { name: 'To ride height' }).click();
    await expect.poll(at).toBe(0);
  });

  test('a control stops where the linkage does, and says what stops it', async () => {
    const board = await openSample();
    const { page } = board;
    // A long arm and a box that turns far swing the ball past the end of the link.
    await type(page, 'Pitman ball, above ground', '200 mm');
    await page.getByRole('tab', { name: 'Car', exact: true }).click();
    await type(page, 'Sector travel each way', '120');
    const handwheel = page.getByRole('slider', { name: 'Handwheel', exact: true });
    await handwheel.focus();
    await page.keyboard.press('End');
    await page
      .getByText(/The (drag link|tie rod) does not reach beyond .* of handwheel to the left/)
      .waitFor();
    const stopped = Number(await handwheel.inputValue());
    expect(stopped).toBeGreaterThan(200);
    expect(stopped).toBeLessThan(1920);
  });
});
