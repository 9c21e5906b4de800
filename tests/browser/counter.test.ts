import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openStore } from '../../src-main/store/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { type OpenBoard, useBrowser } from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { Person } from '../support/person.ts';
import { photoClicks } from '../support/photo-clicks.ts';
import { pngFile } from '../support/picture-files.ts';
import { readPdf } from '../support/read-pdf.ts';
import { renderSpline } from '../support/rendered-spline.ts';

const openBoard = useBrowser();

/** What the store itself holds, read beside the page. */
function stored(board: OpenBoard) {
  const store = openStore({ folder: board.dataFolder });
  try {
    const photos = store.db.prepare('SELECT type, width, height FROM photo').all();
    return { tickets: store.tickets.list(), settings: store.settings.read(), photos };
  } finally {
    store.close();
  }
}

async function atTheCounter(): Promise<OpenBoard> {
  const board = await openBoard({ size: { width: 1280, height: 720 } });
  await bringChecker(board.context);
  await board.page.reload();
  await board.page.getByRole('button', { name: 'Counter', exact: true }).click();
  await board.page.getByRole('heading', { name: 'Which shaft, joints and supports?' }).waitFor();
  return board;
}

/** The answer on the sheet, as a person reads it. */
const sheet = (page: Page) => page.locator('article.sheet');

interface Asked {
  readonly asks: string;
  readonly answer: (person: Person) => Promise<void>;
  readonly headline: RegExp;
  /** Of the answer's parts. */
  readonly shows: readonly RegExp[];
}

const QUESTIONS: readonly Asked[] = [
  {
    asks: 'Which shaft, joints and supports?',
    answer: async (person) => {
      await person.type('From the column’s end straight to the box’s input', '30');
      await person.type('How much lower the box’s input is than the column’s end', '9 3/4');
      await person.type('How far the column falls toward the front, from level', '25');
      await person.choose('Column’s end', 'double-D');
      await person.choose('Box’s input', 'splined');
    },
    headline: /^2 single joints at \d+\.\d° and \d+\.\d°; shaft \d+/,
    shows: [
      /One joint/,
      /What to clock/,
      /To order/,
      /from a bar 30 in long/,
      /Nobody said, so it is assumed/,
      /The box’s input lies level\./,
      /Nothing stands in the way from column to box/,
    ],
  },
  {
    asks: 'Which spline is this?',
    answer: async (person) => {
      await person.type('Over the teeth', '.771');
      await person.choose('Counted', 'all around');
      await person.type('Teeth counted', '36');
    },
    headline: /^36 teeth on 0\.771 in, form not settled: trial-fit first\.$/,
    // (36 + 1)/48 in by the formula of ANSI B92.1 for the outside diameter of an external spline's basic form.
    shows: [/48\/96 pitch/, /0\.771 in/, /No tooth is missing/],
  },
  {
    asks: 'What fits what?',
    answer: async (person) => {
      await person.choose('The shaft’s end', 'double-D');
      await person.choose('The joint’s end', 'splined, pinch bolt');
    },
    headline: /^They do not go together: double-D 3\/4 in/,
    shows: [/Take the joint with a double-D/, /put an adapter between/],
  },
  {
    asks: 'Side or cross steer, manual or assisted?',
    answer: async (person) => {
      await person.type('Load on the front axle, by scales under the wheels', '1600');
      await person.choose('Headers beside the rail', 'on the right');
      await person.choose('Pump or motor on hand', 'yes');
    },
    headline: /^Begin from cross steer, (manual|assisted)\.$/,
    shows: [
      /Parking at the rim, roughly/,
      /1600 lb on the front axle/,
      /common practice, no published source/,
    ],
  },
];

describe('the counter', () => {
  test('answers each of its questions within two minutes, keeps it and prints it', async () => {
    const board = await atTheCounter();
    const { page } = board;
    for (const { asks, answer, headline, shows } of QUESTIONS) {
      const person = new Person(page);
      await person.click(asks);
      await page.getByRole('heading', { name: asks, level: 1 }).waitFor();
      // All its letters are keys of the board: none of them may do anything but stand in the field.
      await person.type('Customer', 'Suq Chlkvna 1');
      await answer(person);
      await person.reads(headline);
      // No answer to what was typed a letter ago is taken for this one.
      await page.locator('article.sheet[aria-busy="false"]').waitFor();
      for (const words of shows) await expect.poll(() => sheet(page).textContent()).toMatch(words);
      await sheet(page).locator('[data-part="cautions"]').getByText('has not seen the car').waitFor();
      await person.kept();
      expect(await violations(page), asks).toEqual([]);
      const coming = page.waitForEvent('download');
      await person.click('Print the ticket');
      const { content } = await downloaded(await coming);
      await readPdf(new Uint8Array(content), (pages) => {
        expect(pages.map(({ text }) => text.includes('certifies nothing'))).toEqual([true]);
        expect(pages[0]?.text).toContain(asks);
        expect(pages[0]?.text).toContain('Suq Chlkvna 1');
      });
      expect(person.actions, asks).toBeLessThanOrEqual(8);
      expect(person.seconds, asks).toBeLessThan(120);
    }
    const { tickets, settings } = stored(board);
    expect(tickets.map(({ question, customer }) => `${question.kind}: ${customer}`)).toEqual(
      ['arrangement', 'fit', 'spline', 'shaft'].map((kind) => `${kind}: Suq Chlkvna 1`),
    );
    expect([settings.unit, settings.snap]).not.toContain('mm');
    await expect.poll(() => page.getByRole('complementary', { name: 'Cars and variants' }).count()).toBe(0);
  });

  test('opens a ticket again, throws it away and puts it back, and makes a car of it', async () => {
    const board = await atTheCounter();
    const { page } = board;
    const person = new Person(page);
    await person.type('Customer', 'Long Lou');
    await person.type('From the column’s end straight to the box’s input', '762 mm');
    await person.reads(/joint/);
    await person.kept();
    // Left alone it asks nothing more: a new question stands beside it, and the ticket comes back as it was.
    await person.click('Which spline is this?');
    await page.getByRole('heading', { name: 'Which spline is this?', level: 1 }).waitFor();
    await page.locator('[data-ticket]').getByText('Long Lou').click();
    await expect
      .poll(() => page.getByLabel('From the column’s end straight to the box’s input').inputValue())
      .toBe('30 in');
    const falls = page.getByLabel('How far the column falls toward the front, from level');
    await expect.poll(() => falls.getAttribute('placeholder')).toBe('30°, assumed');

    await person.click('Throw away the ticket of Long Lou');
    await expect.poll(() => page.locator('[data-ticket]').count()).toBe(0);
    await person.click('Put it back');
    await page.locator('[data-ticket]').getByText('Long Lou').click();
    await person.kept();

    await person.click('Make a car of this');
    await expect.poll(() => page.getByLabel('The car’s name').inputValue()).toBe('Car of Long Lou');
    await person.click('Make the car');
    await page.getByRole('main', { name: 'Board' }).waitFor();
    await page
      .getByRole('button', { name: 'Cars and variants. Open: Long Lou, Car of Long Lou, Shaft and joints' })
      .waitFor();
    // And a reload loses nothing of the counter; a few letters find the ticket from the board.
    await page.reload();
    await page.getByRole('main', { name: 'Board' }).waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type('long lou shaft', { delay: 20 });
    const tickets = page.getByRole('group', { name: 'Tickets of the counter' });
    await tickets.getByRole('option').first().click();
    await page.getByRole('button', { name: 'Open its car' }).waitFor();
  });

  test('keeps the photo that teeth are counted on with its marks, shows it again, and lets it be taken off', async () => {
    const board = await atTheCounter();
    const { page } = board;
    const person = new Person(page);
    await person.click('Which spline is this?');
    await person.type('Customer', 'Quick Kim');
    // A photo larger than what is kept of one: each px of the drawn end four wide and four high.
    const { image, circle } = renderSpline({
      teeth: 30,
      missing: [7],
      size: 480,
      noise: 6,
      shade: 0.25,
      seed: 5,
    });
    const side = 4 * image.width;
    const rgb = new Uint8Array(3 * side * side);
    for (let y = 0; y < side; y += 1)
      for (let x = 0; x < side; x += 1)
        rgb.fill(
          image.data[(y >> 2) * image.width + (x >> 2)] as number,
          3 * (y * side + x),
          3 * (y * side + x) + 3,
        );
    const end = { name: 'end.png', mimeType: 'image/png', buffer: pngFile(side, side, rgb) };
    await page.getByLabel('Photo to count teeth on').setInputFiles(end);
    const canvas = page.locator('[data-spline-photo]');
    const click = photoClicks(canvas, image);
    const onRim = (degrees: number) =>
      click(
        circle.x + circle.radius * Math.cos((degrees * Math.PI) / 180),
        circle.y + circle.radius * Math.sin((degrees * Math.PI) / 180),
      );
    await page.getByText('Click the middle of the shaft’s end.').waitFor();
    await click(circle.x, circle.y);
    await page.getByText('Now click the rim').waitFor();
    await onRim(0);
    await page.getByText('2 more on the rim').waitFor();
    await onRim(120);
    await page.getByText('1 more on the rim').waitFor();
    await onRim(240);
    await page.locator('[data-photo-count="30"]').waitFor();
    await page.getByText('The ticket keeps the photo and what is marked on it.').waitFor();
    await person.kept();

    const photoOf = () => stored(board).photos;
    expect(photoOf()).toEqual([{ type: 'image/jpeg', width: 1600, height: 1600 }]);
    const ring = page.locator('.picture ellipse');
    const marked = await ring.getAttribute('transform');
    const again = async () => {
      await page.locator('[data-ticket]').getByText('Quick Kim').click();
      await page.locator('[data-photo-count="30"]').waitFor();
      await expect.poll(() => page.locator('.picture circle.clicked').count()).toBe(3);
      const numbers = (words: string | null) => (words?.match(/[\d.]+/g) ?? []).map(Number);
      for (const [i, each] of numbers(await ring.getAttribute('transform')).entries())
        expect(each).toBeCloseTo(numbers(marked)[i] as number, 6);
    };
    // Another question between, then the page anew.
    await person.click('What fits what?');
    await page.getByRole('heading', { name: 'What fits what?', level: 1 }).waitFor();
    await again();
    await page.reload();
    await page.getByRole('button', { name: 'Counter', exact: true }).click();
    await again();
    expect(await violations(page)).toEqual([]);

    await person.click('Take the photo off the ticket');
    await expect.poll(() => canvas.count()).toBe(0);
    await person.kept();
    expect(stored(board).tickets[0]?.question).not.toHaveProperty('photo');
    await person.click('Put it back');
    await page.locator('[data-photo-count="30"]').waitFor();
    await person.kept();
    expect(stored(board).tickets[0]?.question).toHaveProperty('photo');
  });
});
