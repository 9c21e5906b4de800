import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();

/** A name with a sign that turns the direction of writing, an escape, a line end, and far too long. */
const NASTY = `\u202Egnp.\u001B[31m\nevil ${'x'.repeat(300)}.json`;
/** No more than sixty characters of it, on one line, of signs that show as themselves. */
const SHOWN = /gnp\. \[31m evil x{20,44}…/;

async function bring(page: Page, label: string, text: string): Promise<void> {
  await page
    .getByLabel(label, { exact: true })
    .setInputFiles({ name: NASTY, mimeType: 'text/plain', buffer: Buffer.from(text) });
}

test('a file’s name is shown short and plain wherever a file is refused', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  const told: (string | null)[] = [];
  const refusal = async (words: RegExp) => {
    const sentence = page.getByText(words).first();
    await sentence.waitFor();
    told.push(await sentence.textContent());
  };
  await page.keyboard.press('k');
  await bring(page, 'Table file for the shelf', 'a,b\n1,2\n');
  await refusal(/^Not imported: .*gnp/);
  await page.getByRole('button', { name: 'Back to cars and variants' }).click();
  await page.getByRole('button', { name: 'Copies', exact: true }).click();
  await bring(page, 'File of a whole shop', 'nothing of the sort');
  await refusal(/gnp.*cannot be imported: this is not the file of a whole shop/);
  await page.getByRole('button', { name: 'Close the drawer' }).click();
  await page.getByRole('button', { name: 'Road', exact: true }).click();
  await page.getByRole('combobox', { name: 'Road', exact: true }).selectOption({ label: 'From my own file' });
  await bring(page, 'Road to import', 'distance,left,right\n0,zero,0\n');
  await refusal(/gnp.*is not taken\. Line 2/);
  for (const sentence of told) expect(sentence).toMatch(SHOWN);
  for (const sentence of told) expect(sentence).not.toMatch(/\p{Cc}|\p{Cf}/u);
  // The browser itself logs the refusal of the shop's file; nothing else may have been said.
  expect(board.complaints.filter((text) => !text.includes('422'))).toEqual([]);
  board.complaints.length = 0;
});
