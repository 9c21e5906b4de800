import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { bringChecker, violations } from '../support/accessibility.ts';
import { drag, findHandle, handleOf } from '../support/board-pointer.ts';
import {
  openDemonstration,
  pointButton,
  saved,
  storedDocument,
  storedDocuments,
  takeDemonstration,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

const openNames = (page: Page, names: RegExp) => page.getByRole('button', { name: names });
const focusedName = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at?.getAttribute('aria-label') ?? (at as HTMLInputElement | null)?.labels?.[0]?.textContent ?? '';
  });

test('the first start asks once, and the walk points at the real things, is left and found again', async () => {
  const board = await openBoard({ size: { width: 1280, height: 720 } });
  const { page, context } = board;
  await bringChecker(context);
  await page.reload();
  await page.getByRole('heading', { name: 'A clean sheet' }).waitFor();
  for (const door of ['Look around', 'Measure a car', 'Answer a question'])
    await page.getByRole('region', { name: door }).waitFor();
  // What nobody has said is marked; what is chosen holds for a new car, whose steering goes to that side.
  const asked = page.getByRole('region', { name: 'Asked once' });
  await expect.poll(() => asked.getByText('assumed').count()).toBe(3);
  await asked.getByRole('combobox', { name: 'Lengths in' }).selectOption('mm');
  await asked.getByRole('combobox', { name: 'Driver of a new car' }).selectOption('right');
  await expect.poll(() => asked.getByText('assumed').count()).toBe(2);
  expect(await violations(page)).toEqual([]);
  await asked.getByRole('button', { name: 'Keep these' }).click();
  await asked.waitFor({ state: 'detached' });

  await page.getByRole('button', { name: 'Take the walk' }).click();
  const walk = (title: string) => page.getByRole('region', { name: title, exact: true });
  await walk('Drag this ball').waitFor();
  await openNames(page, /Open: .*Side steer, box too low/).waitFor();
  // The ring stands round the ball itself, and the ball can be dragged under it.
  const ball = await handleOf(page, 'side', 'steering.box.pitmanBall');
  const ring = page.locator('.ring');
  await expect
    .poll(async () => {
      const box = await ring.boundingBox();
      const spot = await findHandle(page, 'side', 'steering.box.pitmanBall');
      return box && spot && Math.hypot(box.x + box.width / 2 - spot.x, box.y + box.height / 2 - spot.y);
    })
    .toBeLessThan(2);
  await drag(page, ball, 0, -20);
  await walk('Drag this ball').getByText('The curves and the verdict went along').waitFor();
  await walk('Drag this ball').getByRole('button', { name: 'Next' }).click();
  expect(await violations(page)).toEqual([]);
  await walk('Watch the curve').getByRole('button', { name: 'Next' }).click();
  await walk('Move the axle').getByRole('button', { name: 'Leave the walk' }).click();
  await page.getByText('Find it again with / or ?').waitFor();
  await page.reload();
  await openNames(page, /Open: .*Side steer, box too low/).waitFor();
  await page.getByRole('button', { name: 'Find anything' }).click();
  await page.keyboard.type('walk round the b');
  await page.getByRole('option', { name: /^Walk round the board/ }).waitFor();
  await page.keyboard.press('Enter');
  // Where it was left, and by the help too.
  await walk('Move the axle').getByRole('button', { name: 'Leave the walk' }).click();
  await page.getByRole('button', { name: 'Words and keys' }).click();
  await page.getByRole('tab', { name: 'Keys' }).click();
  await page.getByRole('button', { name: 'Walk round the board' }).click();
  await walk('Move the axle').getByRole('button', { name: 'Next' }).click();
  await walk('Read the verdict').getByRole('button', { name: 'Next' }).click();
  await page.getByRole('button', { name: /^Undo: / }).click();
  await walk('Undo it').getByText('Nothing you try is lost.').waitFor();
  await walk('Undo it').getByRole('button', { name: 'Next' }).click();
  await walk('Print it').getByRole('button', { name: 'End the walk' }).click();
  await walk('Print it').waitFor({ state: 'detached' });

  // What was asked once is kept, changed in the settings, and taken by a new car.
  await page.keyboard.press('/');
  await page.keyboard.type('settings of this');
  await page.keyboard.press('Enter');
  const side = page.getByRole('combobox', { name: 'Driver of a new car' });
  await expect.poll(() => side.inputValue()).toBe('right');
  await page.keyboard.press('Escape');
  await page.keyboard.press('/');
  await page.keyboard.type('add a car');
  await page.keyboard.press('Enter');
  await page.getByText('Its driver sits on the right').waitFor();
  await page.keyboard.type('Harrow');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Van');
  await page.keyboard.press('Enter');
  await openNames(page, /Open: Harrow, Van, New layout/).waitFor();
  const made = storedDocument(board, 'New layout');
  expect(made.car.driverSide).toBe('right');
  expect(made.steering.box.sectorCentre[1]).toBeLessThan(0);
});

test('who listens hears which point is chosen, and after a drag what is new in the verdict', async () => {
  const { page } = await openBoard();
  await openDemonstration(page, 'Side steer, box at the cowl');
  const says = (what: string) => page.locator(`[data-says="${what}"]`);
  await pointButton(page, 'Pitman ball').click();
  await expect.poll(() => says('point').textContent()).toMatch(/^Pitman ball chosen, point \d+$/);
  // Nothing is new where nothing has changed.
  await expect.poll(() => says('findings').textContent()).toBe('');
  const heard: string[] = [];
  await page.exposeFunction('heard', (words: string) => heard.push(words));
  await says('findings').evaluate((element) => {
    new MutationObserver(() =>
      (window as unknown as { heard: (words: string) => void }).heard(element.textContent ?? ''),
    ).observe(element, { characterData: true, childList: true, subtree: true });
  });
  const ball = await handleOf(page, 'side', 'steering.box.pitmanBall');
  await drag(page, ball, 0, 60);
  await expect.poll(() => heard.length).toBeGreaterThan(0);
  expect(heard.join(' ')).toMatch(/Bump steer/i);
  // Once for the drag, however many frames it had.
  expect(heard.length).toBe(1);
  await page.keyboard.press('Control+z');
  await expect.poll(() => heard.at(-1)).toMatch(/in order now/);
});

test('find leads anywhere by a few letters, in the drawer at the left, and gives the keyboard back', async () => {
  const { page } = await openBoard();
  await takeDemonstration(page);
  const field = page.getByRole('combobox', { name: 'Find anything' });
  const chosen = () =>
    field.evaluate((input) => {
      const id = input.getAttribute('aria-activedescendant');
      return id ? (document.getElementById(id)?.textContent ?? 'no such row') : '';
    });
  const find = async (letters: string) => {
    await page.keyboard.press('/');
    await field.waitFor();
    await page.keyboard.type(letters);
  };

  await pointButton(page, 'Steering arm ball').focus();
  await page.keyboard.press('/');
  const drawer = page.getByRole('complementary', { name: 'Find' });
  await expect.poll(async () => (await drawer.boundingBox())?.x).toBe(0);
  const headings = page.getByRole('listbox').getByRole('group');
  await expect
    .poll(() => headings.evaluateAll((groups) => groups.map((group) => group.firstElementChild?.textContent)))
    .toEqual(['Actions', 'Points', 'Cars and variants', 'Findings', 'Words']);
  // Keys stand beside what they do, and the keys' letters typed here are text.
  await page.keyboard.type('whole sh');
  await expect.poll(chosen).toMatch(/^Show the whole sheet\s*F$/);
  // Escape takes back the text, then closes; the keyboard is where it was.
  await page.keyboard.press('Escape');
  await expect.poll(() => field.inputValue()).toBe('');
  await page.keyboard.press('Escape');
  await drawer.waitFor({ state: 'detached' });
  await expect.poll(() => focusedName(page)).toBe('Steering arm ball');

  await find('pit');
  await expect.poll(chosen).toMatch(/^Pitman ball/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Pitman ball' }).waitFor();
  await expect.poll(() => drawer.count()).toBe(0);

  // Down past the last row is the first again, and up the last.
  await find('kingpin top');
  const first = await chosen();
  await page.keyboard.press('ArrowDown');
  await expect.poll(chosen).not.toBe(first);
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowDown');
  await expect.poll(chosen).toBe(first);
  await page.keyboard.press('Escape');
  await page.keyboard.type('parallel leav');
  await page.getByRole('option', { name: /^Cross steer on parallel leaves/ }).click();
  await openNames(page, /Open: .*Cross steer on parallel leaves/).waitFor();

  await find('go to road');
  await page.keyboard.press('Enter');
  await page.getByRole('complementary', { name: 'Road and ride' }).waitFor();
  await find('steer');
  await page.getByRole('group', { name: 'Findings' }).getByRole('option').first().click();
  await page.locator('[data-finding].chosen').waitFor();

  await find('qqzzx');
  await page.getByText('Nothing has “qqzzx” in it').waitFor();
  await page.getByRole('status').filter({ hasText: 'Nothing found' }).waitFor({ state: 'attached' });
});

describe('a new car', () => {
  test('is one form, which keeps the keyboard: a name typed before the store has answered fires nothing', async () => {
    const board = await openBoard();
    const { page } = board;
    await takeDemonstration(page);
    const unit = () => page.getByRole('combobox', { name: 'Lengths in' }).inputValue();
    const before = await unit();
    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'Add a car', exact: true }).click();
    await page.keyboard.type('Harrow & Daughter');
    await page.keyboard.press('Tab');
    await page.keyboard.type('Pickup');
    // Letters that are keys of the board, in a list of choices as well.
    await page.keyboard.press('Tab');
    await page.keyboard.type('us');
    await expect.poll(unit).toBe(before);
    await page.keyboard.press('Home');

    // The store takes its time, and the typing goes on.
    let answer = () => {};
    const answered = new Promise<void>((go) => {
      answer = go;
    });
    await page.route('**/rpc', async (route) => {
      if (route.request().postData()?.includes('car.begin')) await answered;
      await route.continue();
    });
    const car = page.getByRole('textbox', { name: 'Car', exact: true });
    await car.focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.keyboard.type('fuss');
    await expect.poll(unit).toBe(before);
    await expect.poll(() => focusedName(page)).toBe('Car');
    answer();
    await openNames(page, /Open: Harrow & Daughter, Pickup, New layout/).waitFor();
    await page.unroute('**/rpc');
    expect(storedDocuments(board, 'New layout')).toHaveLength(1);
    // A plain car is nobody's: it is measured first, and the drawer is out of the way.
    await page.getByRole('complementary', { name: 'Measure the car' }).waitFor();
    await expect.poll(() => page.getByRole('complementary', { name: 'New car' }).count()).toBe(0);
  });

  test('for a customer that is there is added there; what was typed is still there after a look elsewhere', async () => {
    const { page } = await openBoard();
    await takeDemonstration(page);
    await page.keyboard.press('/');
    await page.keyboard.type('add a car');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Odile Farrowby');
    await page.getByText('Already in the shop, with 1 car').waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.type('Hill climber');
    await page.getByRole('button', { name: 'Close the drawer' }).click();
    await page.keyboard.press('/');
    await page.keyboard.type('add a car');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.getByRole('textbox', { name: 'Car', exact: true }).inputValue())
      .toBe('Hill climber');
    await page.getByRole('button', { name: 'Add the car and open it' }).click();
    await openNames(page, /Open: Odile Farrowby, Hill climber, New layout/).click();
    const customer = page.getByRole('heading', { name: 'Odile Farrowby' });
    await customer.waitFor();
    await expect.poll(() => customer.count()).toBe(1);
  });
});

test('what the board tells for a while stands beside the drawer, not under it', async () => {
  for (const size of [
    { width: 1280, height: 720 },
    { width: 1024, height: 640 },
  ]) {
    const { page } = await openBoard({ size });
    await takeDemonstration(page);
    // The drawer's file is there before, so that it comes while the words still stand.
    const drawer = page.getByRole('complementary', { name: 'Cars and variants' });
    await page.keyboard.press('c');
    await drawer.waitFor();
    await page.keyboard.press('Escape');
    await drawer.waitFor({ state: 'detached' });
    await page.keyboard.press('s');
    await page.keyboard.press('c');
    await drawer.waitFor();
    const toast = page.getByRole('status').filter({ hasText: 'Points no longer snap.' });
    const top = () =>
      toast.evaluate((element) => {
        const { left, top, height } = element.getBoundingClientRect();
        return document.elementFromPoint(left + 12, top + height / 2)?.closest('[role="status"]')
          ?.textContent;
      });
    await expect.poll(top, { message: `at ${size.width}` }).toContain('Points no longer snap.');
  }
});

/** Types into the height of the pitman ball without entering it. */
async function typeHeight(page: Page, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Pitman ball, above ground' });
  if ((await field.count()) === 0) await pointButton(page, 'Pitman ball').click();
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}

describe('what is kept', () => {
  test('undo after a reload and after a look at another variant; a typed figure that was not entered', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    const { page } = board;
    const height = () => storedDocument(board, 'Arm down').steering.box.pitmanBall[2];
    await pointButton(page, 'Pitman ball').waitFor();
    for (const text of ['350 mm', '360 mm']) {
      await typeHeight(page, text);
      await page.keyboard.press('Enter');
      await saved(page);
    }
    // Typed, not entered, and the page is left: entered on the way out.
    await typeHeight(page, '370 mm');
    await page.reload();
    await pointButton(page, 'Pitman ball').waitFor();
    await expect.poll(height).toBe(370);
    await page.keyboard.press('Control+z');
    await expect.poll(height).toBe(360);

    // Another variant, and back by its name.
    await page.keyboard.press('Control+d');
    await openNames(page, /Open: .*Arm down copy/).click();
    await expect.poll(() => page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Arm down', exact: true }).click();
    await openNames(page, /Open: .*Arm down$/).waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(height).toBe(350);
    await page.keyboard.press('Control+y');
    await page.keyboard.press('Control+y');
    await expect.poll(height).toBe(370);

    // One that is refused is no figure: whoever leaves is asked, and going to another point says that it was not taken.
    await typeHeight(page, 'as before');
    const asked = new Promise<string>((resolve) => {
      page.once('dialog', (dialog) => {
        resolve(dialog.type());
        void dialog.dismiss();
      });
    });
    await page.evaluate(() => {
      requestAnimationFrame(() => location.reload());
    });
    expect(await asked).toBe('beforeunload');
    await pointButton(page, 'Steering box').click();
    await page.getByRole('status').filter({ hasText: 'Not taken: “as before” in Pitman ball' }).waitFor();
    await saved(page);
    expect(height()).toBe(370);
  });

  test('what is typed into a form of the drawer, while the drawer is closed', async () => {
    const { page } = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    await pointButton(page, 'Pitman ball').waitFor();
    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'More for Sample car', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Notes' }).click();
    await page.keyboard.type('Box from the long car');
    await page.getByRole('button', { name: 'Close the drawer' }).click();
    await page.keyboard.press('c');
    const notes = page.getByRole('textbox', { name: 'Notes on the car' });
    await expect.poll(() => notes.inputValue()).toBe('Box from the long car');
    await page.getByRole('button', { name: 'Keep notes' }).click();
    await notes.waitFor({ state: 'detached' });
    await page.getByText('Box from the long car').waitFor();
  });
});

test('a second window goes along with the first, and what is typed in it stays', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const first = board.page;
  await pointButton(first, 'Pitman ball').waitFor();
  const second = await board.anotherWindow();
  const field = second.getByRole('textbox', { name: 'Pitman ball, above ground' });
  await pointButton(second, 'Pitman ball').click();
  const left = second.getByRole('textbox', { name: 'Pitman ball, left of centre' });
  await left.click();
  await second.keyboard.press('ControlOrMeta+a');
  await second.keyboard.type('19 1');

  await typeHeight(first, '350 mm');
  await first.keyboard.press('Enter');
  await first.getByRole('combobox', { name: 'Lengths in' }).selectOption('mm');
  await expect.poll(() => field.inputValue()).toBe('350.0 mm');
  // The half-typed figure and the keyboard are where they were, and the unit followed around them.
  await expect.poll(() => left.inputValue()).toBe('19 1');
  await expect.poll(() => focusedName(second)).toBe('Pitman ball, left of centre');
  await second.keyboard.press('Escape');

  // Lists and names too.
  await second.getByRole('button', { name: /^Cars and variants/ }).click();
  await first.getByRole('button', { name: /^Cars and variants/ }).click();
  await first.getByRole('button', { name: 'More for Sample customer', exact: true }).click();
  await first.getByRole('menuitem', { name: 'Rename' }).click();
  await first.keyboard.type('Harrow & Daughter');
  await first.keyboard.press('Enter');
  await openNames(second, /Open: Harrow & Daughter, Sample car, Arm down/).waitFor();
  await second.getByRole('heading', { name: 'Harrow & Daughter' }).waitFor();

  // Nothing was ever contested, and the second can take back what the first did.
  await expect.poll(() => second.getByText('has been changed in another window').count()).toBe(0);
  await second.getByRole('button', { name: 'Undo: What was changed in another window' }).click();
  await expect
    .poll(() => first.getByRole('textbox', { name: 'Pitman ball, above ground' }).inputValue())
    .toBe('346.0 mm');
});
