import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { rowsAsDrawn, surveyList } from '../../shared-math/adjust/list/index.ts';
import { hardpoints, PLAIN_LAYOUT, withValue } from '../../shared-math/layout/index.ts';
import { openStore } from '../../src-main/store/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { drag, handleOf } from '../support/board-pointer.ts';
import { type OpenBoard, saved, storedDocument, useBrowser } from '../support/browser-page.ts';
import { CAR, TWENTY, taped } from '../support/taped-car.ts';

const openBoard = useBrowser();

/** A person's actions on the page, counted: a press of a key or of the pointer, and the typing of a figure. */
class Hand {
  actions = 0;
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }
  async click(name: string): Promise<void> {
    this.actions += 1;
    await this.#page.getByRole('button', { name }).click();
  }
  async type(text: string): Promise<void> {
    this.actions += 1;
    await this.#page.keyboard.type(text);
  }
  async press(key: string): Promise<void> {
    this.actions += 1;
    await this.#page.keyboard.press(key);
  }
}

const field = (page: Page, id: string) => page.locator(`input[data-row="${id}"]`);
const headline = (page: Page) => page.locator('[data-headline]');
const holder = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('data-row'));

function storedSurvey(board: OpenBoard) {
  const store = openStore({ folder: board.dataFolder });
  try {
    const car = store.shop.read()[0]?.cars[0];
    return car && store.surveys.read(car.id).survey;
  } finally {
    store.close();
  }
}

test('from a new car to a headline with its doubt: twenty measurements in under 45 actions', async () => {
  const board = await openBoard({ size: { width: 1280, height: 720 } });
  const { page } = board;
  const hand = new Hand(page);
  await hand.click('Start with a plain car');
  await expect.poll(() => holder(page)).toBe('hub-height');
  for (const [id, key] of TWENTY) {
    await expect.poll(() => holder(page)).toBe(id);
    const text = id === 'rail-outer' ? '15 1/4' : id === 'rail-top' ? '17 1/2' : taped(id);
    await hand.type(text);
    await hand.press(key);
    // The lateral bar is not measured: on to the box.
    if (id === 'pivot-up') await hand.press('PageDown');
  }
  expect(hand.actions).toBeLessThan(45);
  await expect.poll(() => headline(page).textContent()).toMatch(/\d\.\d° ± \d+\.\d°/);
  // It says what would help most, and what is still a guess.
  await page
    .getByText(/makes (nearly all|two thirds|half|a third|\d+ %) of it: nobody measured it\./)
    .waitFor();
  await saved(page);
  await expect.poll(() => storedSurvey(board)?.survey.rows.length).toBe(18);
  expect(storedSurvey(board)?.taken['hub-height']?.typed).toMatch(/ in$/);
  const stored = storedDocument(board, 'New layout');
  const pivot = hardpoints(stored).find(({ id }) => id === 'location.left.framePivot')?.at;
  // Within the sixteenth that the tape was read to.
  for (const [axis, value] of [-868, 372, 342].entries())
    expect(Math.abs((pivot?.[axis] ?? 0) - value)).toBeLessThan(1.6);
  expect(stored.origins?.['location.left.framePivot']).toBe('tape');
});

/** The whole list of the car on the stands typed into the page, but for rows that are taken another way. */
async function measureAll(page: Page, but: Readonly<Record<string, string>> = {}): Promise<void> {
  for (const { id, observes } of surveyList(CAR)) {
    if (!observes || id === 'pitman-lean') continue;
    await field(page, id).fill(but[id] ?? taped(id));
    await field(page, id).press('Enter');
  }
}

test('a figure typed on the wrong side is named, with the slip, and one button mends it', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'hub-height').waitFor();
  // The pitman ball stands 33 3/8 in behind the axle, written as ahead of it.
  const right = taped('pitman-back');
  await measureAll(page, { 'pitman-back': `-${right}` });
  const card = page.getByRole('article', { name: "Does not fit: Pitman ball, back from the hubs' line" });
  await card.waitFor();
  await expect.poll(() => card.textContent()).toContain('does not fit; the others say');
  await expect.poll(() => page.getByRole('article').count()).toBe(1);
  // Also from the foot of the list.
  await field(page, 'tie-rod').click();
  await page.getByRole('button', { name: '1 measurement does not fit: show it' }).click();
  await card.getByRole('button', { name: /measured to the other side\?$/ }).click();
  await card.waitFor({ state: 'detached' });
  await expect.poll(() => field(page, 'pitman-back').inputValue()).toBe(`${right} in`);
  await expect
    .poll(() => storedSurvey(board)?.survey.rows.find(({ id }) => id === 'pitman-back'))
    .toMatchObject({ kind: 'back', value: expect.closeTo(848, 0) });
  // All of the list, and nothing is a guess any more.
  await page.getByText('10 of 10 points measured').waitFor();
});

test('a figure far from the drawing that nothing checks is asked about and left aside until it is answered', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  // The pivot 34 3/16 in behind the axle, written as ahead of it, and nothing else measured.
  await field(page, 'pivot-back').fill(`-${taped('pivot-back')}`);
  await field(page, 'pivot-back').press('Enter');
  const card = page.getByRole('article', { name: "Please confirm: Hairpin pivot, back from the hubs' line" });
  await card.getByRole('button', { name: /: measured to the other side\?$/ }).waitFor();
  await saved(page);
  const pivot = () =>
    hardpoints(storedDocument(board, 'New layout')).find(({ id }) => id === 'location.left.framePivot')
      ?.at[0];
  expect(pivot()).toBe(-820);
  // It may well be right: nothing is said to be wrong.
  await page.getByRole('button', { name: '1 measurement to confirm: show it' }).waitFor();
  await card.getByRole('button', { name: 'Keep it as typed' }).click();
  await card.waitFor({ state: 'detached' });
  await saved(page);
  expect(pivot()).toBeCloseTo(868, 0);
  // Typed anew, it is asked about anew.
  await field(page, 'pivot-back').fill('-35');
  await field(page, 'pivot-back').press('Enter');
  await card.getByRole('button', { name: /: measured to the other side\?$/ }).click();
  await saved(page);
  expect(pivot()).toBeCloseTo(-889, 0);

  // A figure that no slip explains, and that such cars do not have: kept once, it is not asked about again.
  await field(page, 'kingpin-back').fill('15 1/4');
  await field(page, 'kingpin-back').press('Enter');
  const far = page.getByRole('article', { name: /^Please confirm: Kingpin/ });
  await far
    .getByText(
      '15 1/4 in is far from what such cars have: 3 15/16 in ahead to 3 15/16 in behind (common practice',
    )
    .waitFor();
  await far.getByRole('button', { name: 'Keep it as typed' }).click();
  await far.waitFor({ state: 'detached' });
  await saved(page);
  await page.reload();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await expect.poll(() => field(page, 'kingpin-back').inputValue()).toBe('15 1/4 in');
  // What is measured is adjusted again by then, and whatever is to be asked is asked.
  await page.getByText('based on guesses').first().waitFor();
  await expect.poll(() => far.count()).toBe(0);
  await field(page, 'kingpin-back').fill('16');
  await field(page, 'kingpin-back').press('Enter');
  await far.getByRole('button', { name: 'Remove it' }).click();
  await expect.poll(() => field(page, 'kingpin-back').inputValue()).toBe('');
});

test('undo brings back drawing and measurement together, redo takes both again', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'hub-height').fill('13 1/4');
  await field(page, 'hub-height').press('Enter');
  await field(page, 'track').fill('56 1/2');
  await field(page, 'track').press('Enter');
  await expect.poll(() => storedSurvey(board)?.survey.rows.length).toBe(2);
  await page.getByRole('button', { name: /^Undo: Measure Track/ }).click();
  await expect.poll(() => field(page, 'track').inputValue()).toBe('');
  await expect.poll(() => field(page, 'hub-height').inputValue()).toBe('13 1/4 in');
  await expect.poll(() => storedSurvey(board)?.survey.rows.map(({ id }) => id)).toEqual(['hub-height']);
  await page.getByRole('button', { name: /^Redo: Measure Track/ }).click();
  await expect.poll(() => field(page, 'track').inputValue()).toBe('56 1/2 in');
  await expect.poll(() => storedSurvey(board)?.survey.rows.length).toBe(2);
  await page.getByText('1 of 10 points measured').waitFor();
  // A figure that is taken out again leaves its point a guess, as it was.
  await field(page, 'track').fill('');
  await field(page, 'track').press('Enter');
  await page.getByText('0 of 10 points measured').waitFor();
  await page.getByRole('button', { name: /^Undo: Leave open/ }).click();
  await page.getByText('1 of 10 points measured').waitFor();
  // And over a reload: neither of the two steps back leaves the one without the other.
  await saved(page);
  await page.reload();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await expect.poll(() => field(page, 'track').inputValue()).toBe('56 1/2 in');
  await page.getByRole('button', { name: /^Undo: Measure Track/ }).click();
  await expect.poll(() => storedSurvey(board)?.survey.rows.map(({ id }) => id)).toEqual(['hub-height']);
  await page.getByRole('button', { name: /^Undo: Measure Hub/ }).click();
  await expect.poll(() => storedSurvey(board)?.survey.rows).toEqual([]);
  await page.getByRole('button', { name: /^Redo: Measure Hub/ }).click();
  await expect.poll(() => storedSurvey(board)?.survey.rows.map(({ id }) => id)).toEqual(['hub-height']);
});

test('another variant of the car says that it stands elsewhere, and takes the measurements; plans stay', async () => {
  let carId = '';
  const board = await openBoard({
    prepare: (store) => {
      carId = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
      const planned = {
        ...PLAIN_LAYOUT,
        name: 'Planned',
        origins: { 'steering.box.pitmanBall': 'plan' as const },
      };
      store.settings.write({ lastVariant: store.variants.add(carId, planned, 'Begun') });
      store.surveys.begin(carId, {
        survey: {
          format: 'toeboard-survey',
          version: 1,
          rows: [
            { id: 'pivot-back', kind: 'back', of: 'location.left.framePivot', value: 868 },
            { id: 'pivot-out', kind: 'out', of: 'location.left.framePivot', value: 372 },
            { id: 'pivot-up', kind: 'up', of: 'location.left.framePivot', value: 342 },
            { id: 'pitman-up', kind: 'up', of: 'steering.box.pitmanBall', value: 400 },
          ],
        },
        taken: {},
      });
    },
  });
  const { page } = board;
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByText('1 point of this variant stands elsewhere than measured.').waitFor();
  await page.getByRole('button', { name: 'Use the measured points', exact: true }).click();
  await saved(page);
  const stored = storedDocument(board, 'Planned');
  expect(hardpoints(stored).find(({ id }) => id === 'location.left.framePivot')?.at).toEqual([
    expect.closeTo(-868, 1),
    expect.closeTo(372, 1),
    expect.closeTo(342, 1),
  ]);
  expect(stored.steering.box.pitmanBall).toEqual(PLAIN_LAYOUT.steering.box.pitmanBall);
  expect(stored.origins).toEqual({
    'steering.box.pitmanBall': 'plan',
    'location.left.framePivot': 'tape',
  });
  await expect
    .poll(() => page.getByRole('button', { name: 'Use the measured points', exact: true }).count())
    .toBe(0);
});

test('two points chosen on the board are measured against each other', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'hub-height').waitFor();
  await page.getByRole('button', { name: 'Measure between two points' }).click();
  await page.getByText('Click the first point on the board.').waitFor();
  const first = await handleOf(page, 'top', 'location.left.framePivot');
  await page.mouse.click(first.x, first.y);
  await page.getByText('Now the second one.').waitFor();
  const second = await handleOf(page, 'top', 'axle.left.tieRodBall');
  await page.mouse.click(second.x, second.y);
  const length = page.getByRole('textbox', { name: 'Length', exact: true });
  await length.fill('71,5 cm');
  await length.press('Enter');
  await page.getByText('Hairpin pivot to tie rod ball, straight').waitFor();
  await expect
    .poll(() => storedSurvey(board)?.survey.rows)
    .toMatchObject([
      {
        kind: 'straight',
        from: 'location.left.framePivot',
        to: 'axle.left.tieRodBall',
        value: 715,
        doubt: 1.6,
      },
    ]);
});

test('the verdict on a plain car waits and says why; with a measured point it judges', async () => {
  const { page } = await openBoard({ column: 'verdict' });
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'hub-height').waitFor();
  await page.getByRole('button', { name: 'Layout', exact: true }).click();
  await page.getByText('The verdict is waiting').waitFor();
  await expect.poll(() => page.locator('[data-finding]').count()).toBe(0);
  await page.getByText('All 10 points of this car are guesses.').waitFor();
  await expect.poll(() => page.locator('[data-figure="known"]').textContent()).toContain('based on guesses');
  await page.getByRole('button', { name: 'Measure the car' }).click();
  await field(page, 'hub-height').fill('13 1/4');
  await field(page, 'hub-height').press('Enter');
  await field(page, 'track').fill('56 3/8');
  await field(page, 'track').press('Enter');
  await page.getByText('1 of 10 points measured').waitFor();
  await page.getByRole('button', { name: 'Layout', exact: true }).click();
  await page.locator('[data-finding].waits').first().waitFor();
  await expect.poll(() => page.locator('[data-finding]:not(.waits)').count()).toBe(0);
  await page.getByText(/^\d+ waiting for measurements$/).waitFor();
  await page.getByText('9 of 10 points are guesses').waitFor();
});

test('a drag of the pitman ball holds a measured arm, until the arm is being chosen', async () => {
  const board = await openBoard({ column: 'points' });
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'pitman-arm').fill(taped('pitman-arm'));
  await field(page, 'pitman-arm').press('Enter');
  await saved(page);
  const arm = () => {
    const { sectorCentre, pitmanBall } = storedDocument(board, 'New layout').steering.box;
    return pitmanBall.map((value, axis) => value - (sectorCentre[axis] as number));
  };
  const before = arm();
  await page.getByRole('button', { name: 'Layout', exact: true }).click();
  await drag(page, await handleOf(page, 'side', 'steering.box.pitmanBall'), 30, -20);
  await saved(page);
  for (const [axis, value] of arm().entries()) expect(value).toBeCloseTo(before[axis] as number, 6);
  expect(storedDocument(board, 'New layout').origins).toMatchObject({
    'steering.box.pitmanBall': 'plan',
    'steering.box.sectorCentre': 'plan',
  });
  await page.getByRole('switch', { name: 'arm length kept: yes' }).click();
  await drag(page, await handleOf(page, 'side', 'steering.box.pitmanBall'), 30, -20);
  await saved(page);
  expect(Math.abs((arm()[2] as number) - (before[2] as number))).toBeGreaterThan(5);
  // What it is then stands among the known lengths, and is typed there.
  const typedArm = page.getByRole('textbox', { name: 'Pitman arm', exact: true });
  await typedArm.fill('6 in');
  await typedArm.press('Enter');
  await expect.poll(() => typedArm.inputValue()).toBe('6 in');
});

test('two windows: the one that comes second is told, and may keep its own or take the other', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'hub-height').waitFor();
  const other = await board.anotherWindow({ ofAnotherBrowser: true });
  await other.getByRole('button', { name: 'Measure', exact: true }).click();
  await field(other, 'hub-height').waitFor();
  await field(page, 'caster').fill('7');
  await field(page, 'caster').press('Enter');
  await expect.poll(() => storedSurvey(board)?.survey.rows.length).toBe(1);
  await field(other, 'inclination').fill('8');
  await field(other, 'inclination').press('Enter');
  await other.getByText('the measurements of New car have been changed in another window.').waitFor();
  await other.getByRole('button', { name: 'Use the other window’s' }).click();
  await expect.poll(() => field(other, 'caster').inputValue()).toBe('7°');
  await expect.poll(() => field(other, 'inclination').inputValue()).toBe('');
  await field(other, 'inclination').fill('8');
  await field(other, 'inclination').press('Enter');
  await expect
    .poll(() => storedSurvey(board)?.survey.rows.map(({ id }) => id))
    .toEqual(['caster', 'inclination']);
});

test('damaged measurements are told, nothing is typed into them, and measuring anew takes their place', async () => {
  const board = await openBoard({
    prepare: (store) => {
      const carId = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
      store.settings.write({ lastVariant: store.variants.add(carId, PLAIN_LAYOUT, 'Begun') });
      store.db.prepare('UPDATE car SET survey = ?, survey_revision = 3').run('{"survey":');
    },
  });
  const { page } = board;
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByText('Sample car: its stored measurements are damaged: they are no JSON.').waitFor();
  await field(page, 'caster').fill('7');
  await field(page, 'caster').press('Enter');
  await page.getByRole('alert').filter({ hasText: 'they are no JSON' }).nth(1).waitFor();
  await page.getByRole('button', { name: 'Start measuring again' }).click();
  await field(page, 'caster').fill('7,5');
  await field(page, 'caster').press('Enter');
  await expect
    .poll(() => storedSurvey(board)?.survey.rows)
    .toMatchObject([{ kind: 'caster', value: 7.5, doubt: 0.3 }]);
});

test('the shop’s instruments, a row’s own doubt and another way of taking it', async () => {
  const board = await openBoard();
  const { page } = board;
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'hub-height').waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Layout', exact: true }).click();
  await page.keyboard.press('l');
  const tape = page.getByRole('textbox', { name: 'Tape, doubt' });
  await tape.fill('1/32');
  await tape.press('Enter');
  await expect.poll(() => tape.inputValue()).toBe('± 1/32 in');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  const row = (id: string) => storedSurvey(board)?.survey.rows.find((each) => each.id === id);
  await field(page, 'hub-height').click();
  await page
    .getByRole('combobox', { name: 'Taken' })
    .selectOption({ label: "the tyre's height, floor to top of tread" });
  await field(page, 'hub-height').fill('26 1/2');
  await field(page, 'hub-height').press('Enter');
  await expect.poll(() => row('hub-height')).toMatchObject({ value: 336.55, doubt: 0.396875 });
  await field(page, 'hub-height').click();
  const doubt = page.getByRole('textbox', { name: 'Hub, up from the floor, doubt' });
  await doubt.fill('1/4');
  await doubt.press('Enter');
  await expect.poll(() => row('hub-height')).toMatchObject({ value: 336.55, doubt: 3.175 });
});

test('a finding that measuring leaves in doubt says what else it may be', async () => {
  // A pitman ball so low that its bump steer lies at the limit; measured throughout, by a coarse hand.
  const car = withValue(PLAIN_LAYOUT, 'steering.box.pitmanBall', [-810, 480, 327]);
  const board = await openBoard({
    column: 'verdict',
    prepare: (store) => {
      const carId = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
      const list = surveyList(car);
      const rows = rowsAsDrawn(car, list).map((row) => ({ ...row, doubt: row.kind === 'caster' ? 1 : 8 }));
      const measured = Object.fromEntries(
        hardpoints(car).flatMap(({ id }) => (id.includes('.right.') ? [] : [[id, 'tape' as const]])),
      );
      store.settings.write({
        lastVariant: store.variants.add(carId, { ...car, origins: measured }, 'Begun'),
      });
      store.surveys.begin(carId, { survey: { format: 'toeboard-survey', version: 1, rows }, taken: {} });
    },
  });
  const { page } = board;
  await page.locator('[data-in-doubt]').first().waitFor();
  await expect
    .poll(() => page.locator('[data-in-doubt]').first().textContent())
    .toMatch(/Within the doubt of measuring it could just as well be .+ of 12\)/);
});

test('the place Measure has no serious fault for those who cannot see it', async () => {
  const { page, context } = await openBoard();
  await bringChecker(context);
  await page.reload();
  await page.getByRole('button', { name: 'Start with a plain car' }).click();
  await field(page, 'caster').fill('-7');
  await field(page, 'caster').press('Enter');
  await field(page, 'pivot-back').fill('-33');
  await field(page, 'pivot-back').press('Enter');
  await page.getByRole('article').first().waitFor();
  await page.getByRole('button', { name: 'Measure between two points' }).click();
  expect(await violations(page)).toEqual([]);
});
