import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { type LayoutDocument, resolveLayout, withValue } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { returnToStraight, sweepTurn, turnsLockToLock } from '../../shared-math/sweep/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { handleOf, takeAlong, written } from '../support/board-pointer.ts';
import { pointButton, tabTo, useBrowser, withSample } from '../support/browser-page.ts';
import { DEGREE } from '../support/close.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const PITMAN = 'steering.box.pitmanBall';
const STOPPED = withValue(sampleLayout('Arm down'), 'steering.stopAngle', 30);

async function openTurn(document: LayoutDocument = STOPPED): Promise<Page> {
  const { page } = await openBoard({ prepare: withSample(document) });
  await pointButton(page, 'Pitman ball').waitFor();
  await handleOf(page, 'side', PITMAN);
  await page.getByRole('button', { name: 'Turn', exact: true }).click();
  await page.getByRole('region', { name: 'Figures of the turn' }).waitFor();
  return page;
}

const turnOf = (document: LayoutDocument, heave = 0) =>
  sweepTurn(prepareFrontEnd(resolveLayout(document)), heave, 0);
const wheels = (page: Page) => page.getByRole('slider', { name: /^Wheels through the turn/ });
const handwheel = (page: Page) => page.getByRole('slider', { name: 'Handwheel', exact: true });
const value = async (slider: Locator) => Number(await slider.inputValue());

/** The cells of a line of the figures, as they read. */
async function cells(page: Page, name: string): Promise<string[]> {
  const texts = await page.locator(`tr[data-figure="${name}"] td`).allTextContents();
  return texts.map((text) => text.replaceAll(/\s+/g, ' ').trim());
}
const turns = async (page: Page) =>
  Number.parseFloat((await page.locator('[data-figure="turns"]').textContent()) ?? '');

async function boxOf(locator: Locator) {
  const box = await locator.boundingBox();
  if (!box) throw new Error('not on the page');
  return box;
}

describe('the place for the turn', () => {
  test('tells turns, locks and what sets them, circles and effort, in the reader’s unit', async () => {
    const page = await openTurn();
    const turn = turnOf(STOPPED);
    await expect.poll(() => turns(page)).toBeCloseTo(turnsLockToLock(turn), 2);
    await expect.poll(() => cells(page, 'ended by')).toEqual(['the stop at 30°', 'the stop at 30°']);
    const [left, right] = await cells(page, 'locks');
    expect(left).toBe(`30.0° and ${(Math.abs(turn.left.rightSteer) / DEGREE).toFixed(1)}°`);
    expect(right).toBe(`30.0° and ${(Math.abs(turn.right.leftSteer) / DEGREE).toFixed(1)}°`);
    await expect.poll(async () => (await cells(page, 'kerbs'))[0]).toMatch(/^\d\d ft \d+ in$/);
    await expect
      .poll(() => cells(page, 'effort'))
      .toEqual([
        expect.stringMatching(/^\d+ lb manual \d+ lb most, (left|right) lock$/),
        '2 to 7 lb assisted',
      ]);
    await page.keyboard.press('u');
    await expect.poll(async () => (await cells(page, 'kerbs'))[0]).toMatch(/^1\d\.\d\d m$/);
    await expect
      .poll(async () => (await cells(page, 'effort'))[0])
      .toMatch(/^\d+ N manual \d+ N most, (left|right) lock$/);
  });

  test('says so where the box itself ends the turn', async () => {
    const page = await openTurn(sampleLayout('Arm down'));
    await expect.poll(() => cells(page, 'ended by')).toEqual(['the box’s own end', 'the box’s own end']);
  });

  test('follows the pitman ball while it is dragged, and goes back with Escape', async () => {
    const page = await openTurn();
    const [before, circle] = [await turns(page), await cells(page, 'kerbs')];
    await takeAlong(page, await handleOf(page, 'side', PITMAN), 0, 24);
    // A longer pitman arm turns the wheels faster: fewer turns to the same stops.
    await expect.poll(() => turns(page)).toBeLessThan(before - 0.1);
    await page.keyboard.press('Escape');
    await expect.poll(() => turns(page)).toBe(before);
    await expect.poll(() => cells(page, 'kerbs')).toEqual(circle);
    await page.mouse.up();
  });

  test('is at the heave of the pose', async () => {
    const page = await openTurn();
    await page.getByRole('slider', { name: 'Heave', exact: true }).focus();
    await page.keyboard.press('Home');
    const turn = turnOf(STOPPED, -75);
    await expect.poll(() => turns(page)).toBeCloseTo(turnsLockToLock(turn), 2);
    await expect
      .poll(async () => (await cells(page, 'handwheel'))[0])
      .toBe(`${(turn.left.handwheel / (2 * Math.PI)).toFixed(2)} turns`);
  });

  test('has the board speak of the turn, and of the travel again beside the travel’s curves', async () => {
    const page = await openTurn();
    await wheels(page).focus();
    await page.keyboard.press('End');
    await expect.poll(async () => (await written(page)).join('; ')).toMatch(/\d\d° link to pitman arm/);
    await expect
      .poll(async () => (await written(page)).join('; '))
      .toMatch(/outer wheel \d\.\d° (beyond|short of) ideal/);
    await expect.poll(async () => (await written(page)).join('; ')).not.toMatch(/link allows/);
    await page.getByRole('button', { name: 'Layout', exact: true }).click();
    await expect.poll(async () => (await written(page)).join('; ')).toMatch(/link allows/);
    await expect.poll(async () => (await written(page)).join('; ')).not.toMatch(/link to pitman arm/);
  });

  test('has nothing that a checker of accessibility objects to', async () => {
    const { page, context } = await openBoard({ prepare: withSample(STOPPED) });
    await bringChecker(context);
    await page.reload();
    await page.getByRole('button', { name: 'Turn', exact: true }).click();
    await wheels(page).focus();
    await page.keyboard.press('End');
    expect(await violations(page)).toEqual([]);
  });
});

describe('a curve of the turn', () => {
  test('turns the handwheel to where the pointer is: left at the left, and follows a scrub', async () => {
    const page = await openTurn();
    const box = await boxOf(wheels(page));
    const straight = await handleOf(page, 'top', 'axle.left.tieRodBall');
    await page.mouse.move(box.x + box.width * 0.3, box.y + box.height / 2);
    await page.mouse.down();
    await expect.poll(() => value(handwheel(page))).toBeGreaterThan(100);
    // Behind its kingpin, the left arm's ball goes to the car's right as the wheel turns left: up on the sheet.
    await expect
      .poll(async () => (await handleOf(page, 'top', 'axle.left.tieRodBall')).y)
      .toBeLessThan(straight.y - 4);
    await page.mouse.move(box.x + box.width * 0.8, box.y + 20, { steps: 5 });
    await expect.poll(() => value(handwheel(page))).toBeLessThan(-100);
    await page.mouse.up();
    await page.mouse.move(box.x + box.width * 0.3, box.y + 20);
    await expect.poll(() => value(handwheel(page))).toBeLessThan(-100);
  });

  test('ends at the locks, wherever the pointer goes', async () => {
    const page = await openTurn();
    const box = await boxOf(wheels(page));
    await page.mouse.move(box.x + box.width * 0.5, box.y + 20);
    await page.mouse.down();
    await page.mouse.move(box.x - 40, box.y + 20, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => value(handwheel(page))).toBeCloseTo(turnOf(STOPPED).left.handwheel / DEGREE, 6);
  });

  test('is worked by keys: steps to the side of the arrow, locks, the angle in words', async () => {
    const page = await openTurn();
    const { left, right } = turnOf(STOPPED);
    await tabTo(page, 'Wheels through the turn: pose the car along handwheel');
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => value(handwheel(page))).toBe(5);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => value(handwheel(page))).toBe(-5);
    await expect
      .poll(() => wheels(page).getAttribute('aria-valuetext'))
      .toBe('at 5° of handwheel to the right');
    await page.keyboard.press('End');
    await expect.poll(() => value(handwheel(page))).toBeCloseTo(left.handwheel / DEGREE, 6);
    await page.keyboard.press('Home');
    await expect.poll(() => value(handwheel(page))).toBeCloseTo(right.handwheel / DEGREE, 6);
  });

  test('tells the pose’s own figures, Ackermann in degrees and in per cent with its measure', async () => {
    const page = await openTurn();
    const turn = turnOf(STOPPED);
    await wheels(page).focus();
    await page.keyboard.press('End');
    const panel = (name: string) => page.getByRole('region', { name, exact: true });
    const last = turn.count - 1;
    await expect
      .poll(() => panel('Overall ratio').textContent())
      .toContain(`${turn.ratio[last]?.toFixed(1)} to 1`);
    await expect
      .poll(() => panel('Ackermann error').textContent())
      .toContain(`${((turn.ackermannError[last] as number) / DEGREE).toFixed(2)}°`);
    await page.getByRole('button', { name: 'Ackermann in per cent' }).click();
    await expect
      .poll(() => panel('Ackermann').textContent())
      .toMatch(new RegExp(`at equal inner angle\\s+${Math.round(turn.ackermannPercent[last] as number)} %`));
  });

  test('shows what brings the wheels back to straight, and where it stops', async () => {
    const page = await openTurn();
    await page.getByRole('button', { name: 'Return to straight', exact: true }).click();
    const back = returnToStraight(prepareFrontEnd(resolveLayout(STOPPED)), turnOf(STOPPED), 0, 0);
    await wheels(page).focus();
    await page.keyboard.press('End');
    await expect
      .poll(() => page.getByRole('region', { name: 'Return to straight', exact: true }).textContent())
      // A pound-force is 4.4482216152605 N and a foot 304.8 mm, exactly (ISO 80000-4, international yard and pound agreement).
      .toContain(`${((back?.both.at(-1) as number) / 4.4482216152605 / 304.8).toFixed(1)} lb·ft`);
    await expect
      .poll(() => page.locator('[data-figure="return"]').textContent())
      .toMatch(/Returns by itself\s*all the way\s*all the way/);
  });

  test('says in words what it shows', async () => {
    const page = await openTurn();
    const summary = () =>
      wheels(page).evaluate(
        (element) => document.getElementById(element.getAttribute('aria-describedby') ?? '')?.textContent,
      );
    await expect
      .poll(summary)
      .toMatch(
        /^Left wheel: from -\d\d\.\d\d° at \d+° of handwheel to the right to 30\.00° at \d+° of handwheel to the left\./,
      );
  });
});
