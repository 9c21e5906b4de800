import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { BoardHook } from '../../src-renderer/board/test-hook.ts';
import { figure, handleOf, type Spot, takeAlong } from '../support/board-pointer.ts';
import { type OpenBoard, saved, storedDocument, tabTo, useBrowser } from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';
import { boardAtRest } from '../support/frames.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();
const LOW = 'Side steer, box too low';
const PITMAN = 'steering.box.pitmanBall';

async function openLow(): Promise<OpenBoard> {
  const board = await openBoard({ column: 'verdict' });
  await board.page.getByRole('button', { name: LOW }).click();
  await board.page.getByText(/^\d to fix · \d to check$/).waitFor();
  return board;
}

const worst = async (page: Page) => Number.parseFloat(await figure(page, 'worst'));
const legend = (page: Page) => page.getByRole('region', { name: 'Map of bump steer' });
const reading = (page: Page) => page.locator('[data-map-reading]');
const degreesIn = (text: string | null) =>
  Number.parseFloat(/([\d.]+)° of bump steer/.exec(text ?? '')?.[1] ?? 'NaN');

async function showMap(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Where can the ball go?' }).click();
  await legend(page).getByText('Best spot', { exact: true }).waitFor();
  // The board flies to the map's window.
  await boardAtRest(page);
}

/** Where a place of the map stands, mm; page px. */
async function mapAt(page: Page, across: number, up: number): Promise<Spot> {
  const shown = await page
    .waitForFunction(([x, z]) => (window.toeboardBoard as BoardHook | undefined)?.spotAt('map', x, z), [
      across,
      up,
    ] as const)
    .catch((error) => {
      throw new Error('No map is shown', { cause: error });
    });
  return (await shown.jsonValue()) as Spot;
}

describe('the map', () => {
  test('a click sends the box there, the curve flattens, what it said holds, and undo brings it back', async () => {
    const board = await openLow();
    const { page } = board;
    const before = await worst(page);
    await showMap(page);
    const { box: drawn } = storedDocument(board, LOW).steering;

    // Somebody who knows nothing but the light stretch of the map: a little beside its ridge, over the box as it stands.
    const spot = await mapAt(page, -720, 348);
    await page.mouse.move(spot.x, spot.y, { steps: 4 });
    await reading(page).waitFor();
    const promised = degreesIn(await reading(page).textContent());
    await page.mouse.click(spot.x, spot.y);
    await expect.poll(() => worst(page)).toBeLessThan(before / 5);
    expectClose(await worst(page), promised, 0.06, 'what was read');
    await page.getByRole('heading', { name: 'Pitman ball' }).waitFor();

    await saved(page);
    const { box } = storedDocument(board, LOW).steering;
    for (const axis of [0, 1, 2] as const)
      expectClose(
        box.sectorCentre[axis] - drawn.sectorCentre[axis],
        box.pitmanBall[axis] - drawn.pitmanBall[axis],
        1e-6,
        `the arm goes along, axis ${axis}`,
      );
    expect(box.pitmanBall[1]).toBe(drawn.pitmanBall[1]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => worst(page)).toBe(before);
  });

  test('a click at the best spot goes to the box, not to the hairpin pivot that lies over it', async () => {
    const board = await openLow();
    const { page } = board;
    await showMap(page);
    await legend(page).locator('[data-spot="best"]').click();
    await saved(page);
    const [across, , up] = storedDocument(board, LOW).steering.box.pitmanBall;
    await page.keyboard.press('Control+z');
    await saved(page);

    const spot = await mapAt(page, across, up);
    const pivot = await handleOf(page, 'side', 'location.left.framePivot');
    expect(Math.hypot(pivot.x - spot.x, pivot.y - spot.y), 'the pivot’s handle is there').toBeLessThan(14);
    for (const place of [spot, pivot]) {
      await page.mouse.click(place.x, place.y);
      await page.getByRole('heading', { name: 'Pitman ball' }).waitFor();
      await saved(page);
      const { pitmanBall } = storedDocument(board, LOW).steering.box;
      expectClose(pitmanBall[0], across, 30, 'behind the axle');
      expectClose(pitmanBall[2], up, 30, 'above ground');
      await page.keyboard.press('Control+z');
    }
  });

  test('from the map alone the bad layout comes to a good box by keyboard', async () => {
    const { page } = await openLow();
    await page.keyboard.press('m');
    const best = legend(page).locator('[data-spot="best"]');
    await best.waitFor();
    await tabTo(page, (await best.textContent())?.trim() ?? '');
    await page.keyboard.press('Enter');
    await expect.poll(() => worst(page)).toBeLessThan(0.05);
    await legend(page).getByText('the ball is there').first().waitFor();
    // And along the ridge with the arrows of the slider.
    const slider = page.getByRole('slider', { name: 'Slide along the ridge' });
    await slider.focus();
    for (let press = 0; press < 6; press += 1) await page.keyboard.press('ArrowRight');
    const said = degreesIn(await slider.getAttribute('aria-valuetext'));
    expect(said).toBeGreaterThan(0.05);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(async () => Math.abs((await worst(page)) - said)).toBeLessThan(0.06);
    await page.keyboard.press('Escape');
    await expect.poll(() => legend(page).count()).toBe(0);
    await page.getByRole('button', { name: 'All views', pressed: true }).waitFor();
  });

  test('follows a hardpoint under the hand, and the last word is that of where it was let go', async () => {
    const { page } = await openLow();
    await showMap(page);
    const best = legend(page).locator('[data-spot="best"]');
    const before = await best.textContent();
    // The hairpin's pivot moves the whole valley with it.
    const at = await handleOf(page, 'side', 'location.left.framePivot');
    await takeAlong(page, at, 0, -30);
    await expect.poll(() => best.textContent()).not.toBe(before);
    await page.mouse.up();
    const settled = () =>
      page.locator('section[aria-label="Map of bump steer"][aria-busy="false"]').waitFor();
    await settled();
    const after = await best.textContent();
    expect(after).not.toBe(before);
    // Asked afresh for the same layout, the map says the same.
    await page.keyboard.press('m');
    await expect.poll(() => legend(page).count()).toBe(0);
    await showMap(page);
    await settled();
    await expect.poll(() => best.textContent()).toBe(after);
  });

  test('says what meets where it is hatched, and is told in the view that judges', async () => {
    const { page } = await openBoard({ column: 'verdict' });
    await page.getByRole('button', { name: 'Cross steer on parallel leaves' }).click();
    await page.getByText(/Nothing past its limit|to check/).waitFor();
    await showMap(page);
    await page.getByRole('button', { name: 'Front', pressed: true }).waitFor();
    await legend(page).getByText('drag link and left spring').first().waitFor();
    const spot = await mapAt(page, 450, 330);
    await page.mouse.move(spot.x, spot.y, { steps: 3 });
    await expect.poll(() => reading(page).textContent()).toMatch(/of bump steer, but .* touch/);
  });
});

describe('tune', () => {
  const row = (page: Page, words: string) => page.locator(`[data-figure-row="${words}"] td`);

  async function tuned(page: Page): Promise<string[]> {
    await page.getByRole('button', { name: 'Find the best', exact: true }).click();
    await page.getByRole('button', { name: 'Apply the moves' }).waitFor({ timeout: 40_000 * SLOWNESS });
    return page
      .getByRole('listitem')
      .filter({ hasText: /^Move the box/ })
      .allTextContents();
  }

  test('proposes, shows it on the board, is taken as one step, and undone; the same seed gives the same', async () => {
    const board = await openLow();
    const { page } = board;
    const before = await worst(page);
    await page.getByRole('tab', { name: 'Verdict' }).click();
    await page.getByRole('button', { name: 'Tune', exact: true }).click();
    const moves = await tuned(page);
    expect(moves.length).toBeGreaterThan(0);
    const promised = Number.parseFloat(
      ((await row(page, 'Bump steer over heave').nth(1).textContent()) ?? '').replace(/[^\d.]/g, ''),
    );
    expect(promised).toBeLessThan(before / 5);
    // Until it is taken nothing changes.
    await expect.poll(() => worst(page)).toBe(before);
    await page.getByRole('button', { name: 'Discard them' }).click();
    expect(await tuned(page)).toEqual(moves);

    await page.getByRole('button', { name: 'Apply the moves' }).click();
    await expect.poll(() => worst(page)).toBeLessThan(before / 5);
    expectClose(await worst(page), promised, 0.011, 'what was proposed');
    await saved(page);
    expect(storedDocument(board, LOW).steering.box.pitmanBall).not.toEqual([-600, 500, 276]);
    await page.getByRole('button', { name: /^Undo: Tune: the box/ }).click();
    await expect.poll(() => worst(page)).toBe(before);
  });

  test('is called off, says plainly that nothing is free, and drops what another edit overtakes', async () => {
    const { page } = await openLow();
    await showMap(page);
    await legend(page).getByRole('button', { name: /tune/ }).click();
    await page.getByRole('button', { name: 'Find the best', exact: true }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Find the best', exact: true }).waitFor();
    for (const name of ['The box fore and aft', 'The box up and down'])
      await page.getByRole('checkbox', { name }).uncheck();
    await page.getByText('Nothing is free to move.').waitFor();
    await expect
      .poll(() => page.getByRole('button', { name: 'Find the best', exact: true }).isDisabled())
      .toBe(true);
    const far = page.getByRole('textbox', { name: 'How far: The box up and down' });
    await far.fill('90 mm');
    await far.press('Enter');
    await expect
      .poll(() => page.getByRole('checkbox', { name: 'The box up and down' }).isChecked())
      .toBe(true);
    await far.fill('3 to 1');
    await far.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'the first length is more than the second' }).waitFor();
    await page.getByRole('button', { name: /^Keep/ }).click();
    await tuned(page);
    await page.getByRole('button', { name: 'Side', exact: true }).click();
    const at = await handleOf(page, 'side', PITMAN);
    await takeAlong(page, at, 0, -20);
    await page.mouse.up();
    await page.getByRole('button', { name: 'Find the best', exact: true }).waitFor();
  });
});

describe('small steps', () => {
  test('of the chosen point are told under its fields, and a real step does what they said', async () => {
    const { page } = await openLow();
    await page.getByRole('button', { name: /^Must fix: Bump steer \d.* at 3 in of bump$/ }).click();
    const higher = page.locator('[data-step="2+"]');
    await higher.waitFor();
    const said = Number.parseFloat(
      /bump steer ([\d.]+)° less/.exec((await higher.textContent()) ?? '')?.[1] ?? 'NaN',
    );
    await expect.poll(() => higher.textContent()).toContain('1/8 in higher');
    await page.getByRole('button', { name: 'All ways, with toe, ratio and gap' }).click();
    await expect.poll(() => page.getByRole('row', { name: /^(lower|higher|further)/ }).count()).toBe(6);
    const before = await worst(page);
    const height = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
    await height.fill('11');
    await height.press('Enter');
    await expect.poll(() => worst(page)).not.toBe(before);
    const drawn = await worst(page);
    await height.fill('11 1/8');
    await height.press('Enter');
    await expect.poll(async () => drawn - (await worst(page))).toBeGreaterThan(0);
    expectClose(drawn - (await worst(page)), said, 0.06, 'an eighth higher');
  });

  test('the shop’s tolerance is a band about the curve, typed and kept', async () => {
    const board = await openLow();
    const { page } = board;
    await page.getByRole('button', { name: 'Build tolerance' }).click();
    const up = page.locator('[data-tolerance-worst]');
    const degrees = async () =>
      Number.parseFloat(/([\d.]+)°/.exec((await up.textContent()) ?? '')?.[1] ?? 'NaN');
    await up.waitFor();
    const usual = await degrees();
    expect(usual).toBeGreaterThan(await worst(page));
    const field = page.getByRole('textbox', { name: 'Build tolerance, each way' });
    await field.fill('10 mm');
    await field.press('Enter');
    await expect.poll(degrees).toBeGreaterThan(usual);
    await field.fill('3 ft');
    await field.press('Enter');
    await page
      .getByRole('alert')
      .filter({ hasText: /a tolerance is from/ })
      .waitFor();
    await field.press('Escape');
    await page.reload();
    await expect.poll(() => field.inputValue()).toBe('25/64 in');
  });
});
