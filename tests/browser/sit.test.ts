import { expect, test } from 'vitest';
import { openDemonstration, saved, storedDocument, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();
const LEAF = 'Cross steer on parallel leaves';

test('the car sits lower in front as typed: its points go with the frame, what is lost is told, and undo brings it back', async () => {
  const board = await openBoard({ size: { width: 1280, height: 720 } });
  const { page } = board;
  await openDemonstration(page, LEAF);
  const before = storedDocument(board, LEAF);
  await page.getByRole('tab', { name: 'Car', exact: true }).click();
  const front = page.getByRole('textbox', { name: 'How it sits in front' });
  await front.scrollIntoViewIfNeeded();
  await expect.poll(() => front.inputValue()).toBe('as drawn');
  // The curve says in a sentence what it draws.
  await page.getByRole('figure', { name: /Worst bump steer over ride height: from/ }).waitFor();
  await front.fill('1');
  await front.press('Enter');
  await expect.poll(() => front.inputValue()).toBe('1 in lower');
  await page
    .getByText(/Set the drag link .* to centre the box\./)
    .first()
    .waitFor();
  await saved(page);
  const after = storedDocument(board, LEAF);
  expect(after.sits).toEqual({ front: 25.4, rear: 0 });
  // By hand: the box stands 150 mm or so behind the axle, so it went down nearly all of the inch.
  const down = before.steering.box.sectorCentre[2] - after.steering.box.sectorCentre[2];
  expect(down).toBeGreaterThan(20);
  expect(down).toBeLessThan(25.5);
  expect(after.axle.left.wheelCentre[2]).toBeCloseTo(before.axle.left.wheelCentre[2], 2);
  // Further than the axle can go it is not taken, and says why.
  await front.fill('9');
  await front.press('Enter');
  await page.getByText(/past the end of its bump/).waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /Undo/ }).click();
  await expect.poll(() => front.inputValue()).toBe('as drawn');
  await saved(page);
  expect(storedDocument(board, LEAF).steering).toEqual(before.steering);
});
