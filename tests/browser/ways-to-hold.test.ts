import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type LayoutDocument, parseLayout } from '../../shared-math/layout/index.ts';
import {
  type OpenBoard,
  pointButton,
  saved,
  storedDocuments,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';

const openBoard = useBrowser();

function demonstration(): LayoutDocument {
  const file = join(resolve(import.meta.dirname, '../..'), 'projects', 'hairpins-side-steer.json');
  const outcome = parseLayout(readFileSync(file, 'utf8'));
  if (!outcome.ok) throw new Error(outcome.failure.reason);
  return outcome.value;
}

const SIZES = { '1440': { width: 1440, height: 900 }, '1280': { width: 1280, height: 720 } };

/** What the store holds of the one open layout. */
function stored(board: OpenBoard): LayoutDocument {
  const [document] = storedDocuments(board, demonstration().name);
  if (!document) throw new Error('nothing is stored');
  return document;
}

async function choose(page: Page, field: string, words: string): Promise<void> {
  await page.getByRole('tab', { name: 'Car', exact: true }).click();
  await page.getByRole('combobox', { name: field }).selectOption({ label: words });
}

/** Poses the car by what is typed beside the sliders: every pose has a steer, which none out of reach has. */
async function poses(page: Page): Promise<void> {
  for (const [heave, roll] of [
    ['0', '0'],
    ['75 mm', '0'],
    ['-75 mm', '0'],
    ['0', '3'],
  ] as const) {
    for (const [slider, value] of [
      ['Heave', heave],
      ['Roll', roll],
    ] as const) {
      const typed = page.getByRole('textbox', { name: `${slider}, typed` });
      await typed.fill(value);
      await typed.press('Enter');
    }
    await expect
      .poll(() => page.getByRole('region', { name: 'Steer of the wheels', exact: true }).textContent())
      .toMatch(/mean\s*-?\d+\.\d\d°/);
  }
}

test.each(Object.entries(SIZES))(
  'every new way to hold an axle is chosen and posed at %s',
  async (_label, size) => {
    const board = await openBoard({ prepare: withSample(demonstration()), size });
    const { page } = board;
    await pointButton(page, 'Pitman ball').waitFor();
    for (const [field, words, kind, point] of [
      ['Located by', 'split radius rods', 'split-rods', 'Left radius rod ball'],
      ['Located by', 'quarter-elliptics', 'quarter-elliptic', 'Left spring, eye'],
      ['Located by', 'hairpin rods', 'hairpins', 'Left hairpin pivot'],
      ['Centred by', 'a fixed spring eye', 'fixed-spring', 'Transverse spring, fixed eye'],
      ['Centred by', 'a Watt’s linkage', 'watt', 'Upper Watt bar, rocker end'],
    ] as const) {
      await choose(page, field, words);
      await saved(page);
      expect([stored(board).location.kind, stored(board).lateral.kind]).toContain(kind);
      await page.getByRole('tab', { name: 'Points', exact: true }).click();
      await pointButton(page, point).click();
      await poses(page);
    }
  },
);

test('a rocker is put on the frame, and its bar’s end is typed to another place', async () => {
  const board = await openBoard({ prepare: withSample(demonstration()) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  await choose(page, 'Centred by', 'a Watt’s linkage');
  await choose(page, 'Rocker turns on', 'the frame');
  await page.getByRole('tab', { name: 'Points', exact: true }).click();
  await pointButton(page, 'Upper Watt bar, far end').click();
  const field = page.getByRole('textbox', { name: 'Upper Watt bar, far end, above ground' });
  await field.fill('400 mm');
  await field.press('Enter');
  await saved(page);
  const { lateral } = stored(board);
  if (lateral.kind !== 'watt') throw new Error(lateral.kind);
  expect(lateral.rockerOn).toBe('frame');
  expectClose(lateral.upper.end[2], 400, 1e-9);
});
