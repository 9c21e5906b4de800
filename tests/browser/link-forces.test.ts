import { describe, expect, test } from 'vitest';
import { openDemonstration, saved, storedDocument, useBrowser } from '../support/browser-page.ts';

const openBoard = useBrowser();
const LEAF = 'Cross steer on parallel leaves';

describe('the forces in the links', () => {
  test('stand by case with what each link bears; what is typed counts, and is kept', async () => {
    const board = await openBoard({ size: { width: 1280, height: 720 } });
    const { page } = board;
    await openDemonstration(page, LEAF);
    await page.getByRole('tab', { name: 'Links', exact: true }).click();
    const column = page.getByRole('tabpanel');
    const drag = column.locator('details', { hasText: 'Drag link' }).first();
    await drag.waitFor();
    await expect
      .poll(() => drag.locator('summary').textContent())
      .toMatch(/holds .* times the load, size assumed/);
    await drag.locator('summary').click();
    const wall = page.getByRole('textbox', { name: 'Drag link, wall' });
    await wall.fill('3/16');
    await wall.press('Enter');
    await saved(page);
    expect(storedDocument(board, LEAF).links?.dragLink?.wall).toBeCloseTo(4.7625, 6);
    const thread = drag.getByRole('combobox', { name: 'Thread' }).first();
    await thread.selectOption('3/4-16');
    await saved(page);
    expect(storedDocument(board, LEAF).links?.dragLink?.ends).toEqual({
      pitman: { kind: 'threaded', thread: { diameter: 19.05, pitch: 25.4 / 16 } },
    });
  });
});
