import { expect, test } from 'vitest';
import { handleOf } from '../support/board-pointer.ts';
import { pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

/** The places in the order of the job, and what stands on the right in each. */
const COLUMNS = [
  ['Trace', 'Photos and tracing'],
  ['Layout', undefined],
  ['Turn', undefined],
  ['Shaft', undefined],
  ['Road', 'Road and ride'],
  ['Sheet', 'What leaves the board'],
] as const;

test('every place opens with its own column and curves, and what each hands in stays', async () => {
  const { page } = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  await pointButton(page, 'Pitman ball').waitFor();
  await handleOf(page, 'side', 'steering.box.pitmanBall');
  const row = page.getByRole('navigation', { name: 'Places' });
  await expect
    .poll(() => row.getByRole('button').allTextContents())
    .toEqual(COLUMNS.map(([name]) => expect.stringContaining(name)));
  for (const [name, column] of COLUMNS) {
    const button = row.getByRole('button', { name, exact: true });
    await button.click();
    await expect.poll(() => button.getAttribute('aria-current')).toBe('page');
    const aside = page.getByRole('complementary');
    await aside.first().waitFor();
    if (column && name !== 'Trace') await page.getByRole('complementary', { name: column }).waitFor();
    if (name === 'Sheet') expect(await page.getByRole('region', { name: 'Pose and curves' }).count()).toBe(0);
    else await page.getByRole('region', { name: 'Pose and curves' }).waitFor();
  }
  // Back on the board, which is made anew.
  await row.getByRole('button', { name: 'Layout', exact: true }).click();
  await handleOf(page, 'side', 'steering.box.pitmanBall');
  const map = page.getByRole('button', { name: 'Where can the ball go?' });
  await page.keyboard.press('m');
  await expect.poll(() => map.getAttribute('aria-pressed')).toBe('true');
  await page.keyboard.press('Escape');
  await expect.poll(() => map.getAttribute('aria-pressed')).toBe('false');
  // What the places hand in stands in the list of keys.
  await page.keyboard.press('?');
  const keys = page.getByRole('region', { name: 'Keys' });
  for (const words of ['Pull the axle', 'Map of bump steer', 'Run the travel', 'Undo'])
    await keys.getByText(words).first().waitFor();
});
