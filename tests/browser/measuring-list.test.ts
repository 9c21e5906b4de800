import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { useBrowser, withSample } from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { demonstration } from '../support/printed.ts';

const openBoard = useBrowser();

test('the list goes out as a table, and comes back filled as one step of undo; what is wrong is told by line', async () => {
  const { page } = await openBoard({ prepare: withSample(demonstration('hairpins-side-steer.json')) });
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the list as a table' }).click(),
  ]);
  const { path, content } = await downloaded(download);
  const text = content.toString('utf8');
  expect(text).toContain('row,what to measure,counted,with,unit,figure');

  const filled = text
    .replace(/^(track,.*),$/m, '$1,56 3/8')
    .replace(/^(caster,.*),$/m, '$1,"six"')
    .replace(/^(drag-link,.*),$/m, '$1,61 cm');
  expect(filled).not.toBe(text);
  const file = join(dirname(path), 'filled.csv');
  writeFileSync(file, filled);
  await page.getByLabel('Filled-in list to import').setInputFiles(file);
  await page.getByText('2 rows imported; not imported:').waitFor();
  await expect.poll(() => page.getByText(/^Line \d+, Caster: /).count()).toBe(1);
  const track = page.getByRole('textbox', { name: 'Track, tyre centre to tyre centre' });
  await expect.poll(() => track.inputValue()).toBe('56 3/8 in');
  await expect
    .poll(() => page.getByRole('textbox', { name: 'Drag link, ball to ball' }).inputValue())
    .toBe('61 cm');
  await page.getByText('Worst bump steer').first().click();
  await page.keyboard.press('Control+z');
  await expect.poll(() => track.inputValue()).toBe('');

  writeFileSync(file, 'not,a\nlist,1\n');
  await page.getByLabel('Filled-in list to import').setInputFiles(file);
  await page.getByText('Not imported: filled.csv: there is no column "row"').waitFor();
});
