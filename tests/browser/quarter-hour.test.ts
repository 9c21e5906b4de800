import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { useBrowser } from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { Person } from '../support/person.ts';
import { readPdf } from '../support/read-pdf.ts';
import { SLOWNESS } from '../support/slow-machine.ts';

const openBoard = useBrowser();

/** s. The whole of it, from the first page that anybody sees to a sheet in hand. */
const QUARTER_HOUR = 15 * 60;

/** s. Holding tape, plumb bob or angle finder to the car, once for each figure: assumed, no published source. */
const TAPE = 20;
/** s. Reading what the board then says (the verdict, the four arrangements, the sheet's pages): assumed, no published source. */
const READING = 120;

/** What a person brings from an invented car: twenty figures in the words of the list, in its order, and what the sheet says of each. */
const TAPED: readonly (readonly [row: string, figure: string, onSheet?: string])[] = [
  ['Hub, up from the floor', '13 1/4', 'Wheel centre both sides, taped 0 in 0.0 mm # – 13 1/4 in'],
  ['Track, tyre centre to tyre centre', '56 3/8', 'Wheel centre both sides, taped 0 in 0.0 mm 28 3/16 in'],
  [
    'Kingpin to kingpin, top of the bosses',
    '48 3/16',
    'Kingpin, top both sides, guessed, not measured # 24 1/16 in',
  ],
  [
    'Kingpin to kingpin, bottom of the bosses',
    '49 15/16',
    'Kingpin, bottom both sides, guessed, not measured # 25 in',
  ],
  [
    'Kingpin boss, top, up from the floor',
    '15 7/16',
    'Kingpin, top both sides, guessed, not measured # # – 15 7/16 in',
  ],
  [
    'Kingpin boss, bottom, up from the floor',
    '10 11/16',
    'Kingpin, bottom both sides, guessed, not measured # # – 10 11/16 in',
  ],
  ['Caster', '7 1/2', 'Caster 7.5°'],
  ['Kingpin inclination', '10 1/2'],
  ['Rail, outer face out from the centre line', '15 1/4'],
  ['Rail, top edge up from the floor', '17 1/2'],
  ["Hairpin pivot, back from the hubs' line", '34 3/16', 'Hairpin pivot both sides, taped 34 3/16 in'],
  ['Hairpin pivot, out from the centre line', '14 5/8', 'Hairpin pivot both sides, taped # 14 5/8 in'],
  ['Hairpin pivot, up from the floor', '13 7/16', 'Hairpin pivot both sides, taped # # – 13 7/16 in'],
  ["Sector shaft, back from the hubs' line", '33 1/8', 'Steering box taped 33 1/8 in'],
  ['Sector shaft, out from the centre line', '17 5/16', 'Steering box taped # 17 5/16 in left'],
  ['Sector shaft, up from the floor', '20', 'Steering box taped # # – 20 in'],
  ['Pitman arm, centre to centre', '6 1/4', 'Pitman arm 6 1/4 in'],
  ['Drag link, ball to ball', '33 1/8', 'Drag link 33 1/8 in'],
  [
    'Steering arm, ball to kingpin axis',
    '3 11/16',
    'Steering arm kingpin axis to ball, left side 3 11/16 in',
  ],
  ['Tie rod, ball to ball', '46 5/16', 'Tie rod 46 5/16 in'],
];

/** A piece of the sheet as a pattern: "#" is a figure in inches with its millimetres. */
function onPaper(words: string): RegExp {
  const figure = String.raw`[\d/ ]+ in(?: ahead| left| right)? [\d.,]+ mm`;
  return new RegExp(words.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`).replaceAll('#', figure));
}

/** The name of the row that has the keyboard. */
const rowAtHand = (page: Page) =>
  page.evaluate(() => {
    const field = document.activeElement as HTMLInputElement | null;
    return field?.dataset['row'] ? (field.labels?.[0]?.textContent ?? '').trim() : '';
  });

/** Whether the row that has the keyboard is wholly in sight with what it says, below the headline and within the list. */
const rowInSight = (page: Page) =>
  page.evaluate(() => {
    const row = document.activeElement?.closest('.row');
    const list = row?.closest('[role="tabpanel"]');
    if (!row || !list) return 'no row has the keyboard';
    const [of, within] = [row.getBoundingClientRect(), list.getBoundingClientRect()];
    const headline = list.querySelector('.stays')?.getBoundingClientRect().bottom ?? within.top;
    const bottom = Math.min(within.bottom, list.closest('.column')?.getBoundingClientRect().bottom ?? 0);
    return of.top >= headline - 1 && of.bottom <= bottom + 1
      ? 'in sight'
      : `${Math.round(of.top)} to ${Math.round(of.bottom)} within ${Math.round(headline)} to ${Math.round(bottom)}`;
  });

test('twenty measurements become a printed sheet within a quarter of an hour, by somebody who starts from nothing', async () => {
  const { page } = await openBoard({ size: { width: 1280, height: 720 }, column: 'verdict' });
  const person = new Person(page);

  // The door, and whose car it is.
  await page.getByRole('region', { name: 'Measure a car' }).waitFor();
  await person.click('Add a car');
  await expect
    .poll(() => page.evaluate(() => (document.activeElement as HTMLInputElement).labels?.[0]?.textContent))
    .toContain('Customer');
  await person.types('Dell Harrow', 'Tab');
  await person.types('Five-window', 'Enter');

  // The list of the tape. It has the keyboard, goes on by itself, and what is not on the person's list is passed over.
  await expect.poll(() => rowAtHand(page)).toBe(TAPED[0]?.[0]);
  for (const [row, figure] of TAPED) {
    for (let passed = 0; (await rowAtHand(page)) !== row; passed += 1) {
      if (passed > 8) throw new Error(`“${row}” does not come after what was typed before it`);
      await person.presses('Enter');
    }
    await expect.poll(() => rowInSight(page), { message: row }).toBe('in sight');
    await person.types(figure, 'Enter');
  }
  const wrong = page.getByRole('complementary', { name: 'Measure the car' }).getByRole('alert');
  await expect.poll(() => wrong.allTextContents()).toEqual([]);
  await expect
    .poll(() => page.getByRole('article', { name: /^Does not fit|^Please confirm/ }).count())
    .toBe(0);
  await page.getByText('3 of 10 points measured').waitFor();
  await expect
    .poll(() => page.locator('[data-headline]').textContent())
    .toMatch(/\d\.\d° ± \d+\.\d° from measuring/);

  // What the board makes of it, and what else could be built on this car.
  await person.click('Layout');
  await page
    .getByText(/^\d+ (to fix|to check|waiting)/)
    .first()
    .waitFor();
  await page.getByText('7 of 10 points are guesses').waitFor();
  await person.click('Choose an arrangement for this car');
  await page
    .getByRole('button', { name: /^Add as a new variant/ })
    .first()
    .waitFor();
  await person.presses('Escape');

  await person.click('Sheet');
  await page.getByRole('img', { name: /^Build sheet, page 1/ }).waitFor({ timeout: 60_000 * SLOWNESS });
  const coming = page.waitForEvent('download', { timeout: 60_000 * SLOWNESS });
  await person.click('Make the build sheet');
  const { content } = await downloaded(await coming);
  await page.getByText(/look in its downloads/).waitFor();

  expect(person.actions).toBeLessThan(60);
  expect(person.seconds + TAPED.length * TAPE + READING).toBeLessThan(QUARTER_HOUR);

  await readPdf(new Uint8Array(content), (pages) => {
    const text = pages.map((each) => each.text).join('\n');
    for (const words of ['Dell Harrow', 'Five-window', '3 measured on the car and 7 guessed'])
      expect(text).toContain(words);
    const missing = TAPED.flatMap(([row, , words]) => (words && !onPaper(words).test(text) ? [row] : []));
    expect(missing).toEqual([]);
  });
});
