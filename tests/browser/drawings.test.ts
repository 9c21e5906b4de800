import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { View } from '../../shared-math/drawing/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { drag, handleOf, scale } from '../support/board-pointer.ts';
import { pointButton, saved, storedDocument, useBrowser, withSample } from '../support/browser-page.ts';
import { FRAME_DXF } from '../support/drawing-files.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { pixelsOf } from '../support/pictures.ts';
import { dropFile, settled } from '../support/trace-pointer.ts';

const openBoard = useBrowser();
const NAME = sampleLayout().name;

async function openDrawings(page: Page): Promise<void> {
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'Drawings' }).click();
}

/** Where a view shows a place, by a handle that is known: right and up from the car's origin, mm. */
async function spotOf(page: Page, view: View, right: number, up: number) {
  const { wheelCentre } = sampleLayout().axle.left;
  const handle = await handleOf(page, view, 'axle.left.wheelCentre');
  const px = await scale(page);
  return { x: handle.x + (right + wheelCentre[0]) * px, y: handle.y - (up - wheelCentre[2]) * px };
}

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label });
  await field.fill(text);
  await field.press('Enter');
}

/** Darkness of the board's pixels near a spot of the page: least brightness of 9 by 9. */
async function darkest(page: Page, x: number, y: number): Promise<number> {
  const shot = await page.screenshot({ clip: { x: x - 4, y: y - 4, width: 9, height: 9 } });
  const { rgba } = pixelsOf(shot, 9);
  let least = 255;
  for (let i = 0; i < rgba.length; i += 4)
    least = Math.min(least, ((rgba[i] ?? 0) + (rgba[i + 1] ?? 0) + (rgba[i + 2] ?? 0)) / 3);
  return least;
}

describe('a drawing under a view', () => {
  test('is brought in, shown, drawn to, taken as a rail, and undone; its file is in the store by its hash', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout()) });
    const { page } = board;
    await openDrawings(page);
    await page.getByRole('button', { name: 'Side', exact: true }).click();
    const content = Buffer.from(FRAME_DXF);
    await dropFile(page, 'frame side.dxf', '', content);
    await page.getByText('frame side lies under the side view: 4 lines on 3 layers').waitFor();
    await page.getByText('Its unit is the one that the file names.').waitFor();
    await page.getByText('1 text left out: only lines are taken').first().waitFor();
    await saved(page);
    const hash = createHash('sha256').update(content).digest('hex');
    expect(storedDocument(board, NAME).underlays).toEqual([
      {
        view: 'side',
        hash,
        name: 'frame side',
        unit: 25.4,
        unitFrom: 'file',
        turn: 0,
        at: [0, 0],
        shown: true,
        layersOff: [],
      },
    ]);

    // The crossing of the two marks at (34, 14) in: a point let go beside it stands on it.
    await page.getByRole('button', { name: 'Layout', exact: true }).click();
    const from = await handleOf(page, 'side', 'steering.box.sectorCentre');
    const to = await spotOf(page, 'side', 34 * 25.4, 14 * 25.4);
    await drag(page, from, to.x - from.x + 4, to.y - from.y + 3);
    await saved(page);
    const { sectorCentre } = storedDocument(board, NAME).steering.box;
    expect(sectorCentre[0]).toBeCloseTo(-34 * 25.4, 2);
    expect(sectorCentre[2]).toBeCloseTo(14 * 25.4, 2);
    await page.keyboard.press('Control+z');

    // The rail's line, taken.
    await page.getByRole('button', { name: 'Measure', exact: true }).click();
    const before = storedDocument(board, NAME).rails.length;
    await page.getByRole('button', { name: 'Copy a line', exact: true }).click();
    await page.getByText('A usual place, assumed: type yours.').waitFor();
    const rail = await spotOf(page, 'side', 24 * 25.4, 18.4 * 25.4);
    await page.mouse.click(rail.x, rail.y);
    await page.getByText('is on the board, at a usual place along its width').waitFor();
    await saved(page);
    const taken = storedDocument(board, NAME).rails;
    expect(taken).toHaveLength(before + 1);
    const inches = [
      [12, 18],
      [-20, 18],
      [-40, 20],
      [-70, 20],
    ] as const;
    expect(taken.at(-1)?.path).toHaveLength(4);
    inches.forEach(([x, z], i) => {
      const at = taken.at(-1)?.path[i];
      expect(at?.[0]).toBeCloseTo(x * 25.4, 1);
      expect(at?.[2]).toBeCloseTo(z * 25.4, 1);
    });
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+z');
    await saved(page);
    expect(storedDocument(board, NAME).rails).toHaveLength(before);
  });

  test('is put to scale and place by two known points, and its layers go off and on', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout()) });
    const { page } = board;
    await openDrawings(page);
    await page.getByRole('button', { name: 'Side', exact: true }).click();
    // Drawn without a unit: millimetres are assumed, and said so.
    const unitless = FRAME_DXF.replace('$INSUNITS\n70\n1', '$INSUNITS\n70\n0');
    await dropFile(page, 'no unit.dxf', '', Buffer.from(unitless));
    await page.getByText('The file names no unit: this one is assumed.').waitFor();
    await page.getByRole('button', { name: 'Place it by two known points' }).click();
    const ask = page.getByLabel('The drawing shows this point');
    await ask.selectOption({ label: 'Left wheel centre' });
    const origin = await handleOf(page, 'side', 'axle.left.wheelCentre');
    // As millimetres the drawing is small: its rail's front end is 12 mm ahead of its origin, 18 mm up.
    const px = await scale(page);
    const { wheelCentre } = sampleLayout().axle.left;
    const at = (x: number, y: number) => ({
      x: origin.x + (x + wheelCentre[0]) * px,
      y: origin.y - (y - wheelCentre[2]) * px,
    });
    const first = at(-12, 18);
    await page.mouse.click(first.x, first.y);
    await page.getByText('Second of two').waitFor();
    await ask.selectOption({ label: 'Pitman ball' });
    const second = at(70, 20);
    await page.mouse.click(second.x, second.y);
    await page.getByText('Its scale comes from two known points.').waitFor();
    await saved(page);
    const [underlay] = storedDocument(board, NAME).underlays ?? [];
    const ball = sampleLayout().steering.box.pitmanBall;
    const far = Math.hypot(ball[0] - wheelCentre[0], ball[2] - wheelCentre[2]);
    expect(underlay?.unit).toBeCloseTo(far / Math.hypot(82, 2), 6);
    expect(underlay?.unitFrom).toBe('points');

    await page.getByRole('checkbox', { name: /^rail/ }).uncheck();
    await saved(page);
    expect(storedDocument(board, NAME).underlays?.[0]?.layersOff).toEqual(['rail']);
    await page.getByRole('checkbox', { name: 'Show it' }).uncheck();
    await saved(page);
    expect(storedDocument(board, NAME).underlays?.[0]?.shown).toBe(false);
    await page.getByRole('button', { name: 'Remove no unit' }).click();
    await saved(page);
    expect(storedDocument(board, NAME).underlays).toEqual([]);
  });

  test('is placed by typing alone, and is seen where it was put', async () => {
    const board = await openBoard({
      prepare: withSample(sampleLayout()),
      size: { width: 1280, height: 720 },
    });
    await bringChecker(board.context);
    const page = await board.anotherWindow();
    await openDrawings(page);
    await page.getByRole('button', { name: 'Side', exact: true }).click();
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="400mm" viewBox="0 0 400 200"><g id="post"><rect x="0" y="0" width="40" height="200"/></g></svg>';
    await dropFile(page, 'post.svg', 'image/svg+xml', Buffer.from(svg));
    await page.getByText('post lies under the side view').waitFor();
    await type(page, 'Where its 0, 0 lies above the ground', '900 mm');
    await type(page, "Where its 0, 0 lies, rearward of the car's origin", '1300 mm');
    await settled(page);
    const edge = await spotOf(page, 'side', 1300, 800);
    const paper = await spotOf(page, 'side', 1320, 800);
    const darker = async () =>
      (await darkest(page, paper.x, paper.y)) - (await darkest(page, edge.x, edge.y));
    await expect.poll(darker).toBeGreaterThan(25);
    expect(await violations(page)).toEqual([]);
  });

  test('one that is none is refused in a line, and nothing of it stays', async () => {
    const board = await openBoard({ prepare: withSample(sampleLayout()) });
    const { page } = board;
    await openDrawings(page);
    for (const [name, content, said] of [
      [
        'model.dxf',
        Buffer.from('SomeCAD Binary DXF\r\n\u001a\u0000\u0001'),
        'it is a binary DXF; save it as a DXF in text',
      ],
      [
        'words.svg',
        Buffer.from('<svg><text>a</text></svg>'),
        'it holds no lines that can be laid under a view',
      ],
      [
        'entities.svg',
        Buffer.from('<!DOCTYPE svg [<!ENTITY a "b">]><svg/>'),
        'it declares entities of its own',
      ],
    ] as const) {
      await dropFile(page, name, '', content);
      await page.getByText(`${name}: ${said}`).waitFor();
    }
    expect(storedDocument(board, NAME).underlays).toBeUndefined();
  });
});

test('a table of points shows what would move, moves it as one step, and takes it back', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout()) });
  const { page } = board;
  await openDrawings(page);
  const [x, y, z] = sampleLayout().steering.box.pitmanBall;
  const table = `point,"x, mm","y, mm","z, mm"\nPitman ball,${x - 10},${y},${z}\nElbow,1,2,3\n`;
  await page
    .getByLabel('Table of points to import')
    .setInputFiles({ name: 'points.csv', mimeType: 'text/csv', buffer: Buffer.from(table) });
  await page.getByText('points.csv: 1 point would move').waitFor();
  await page.getByText('Line 3, "Elbow": this layout has no point "Elbow".').waitFor();
  expect(storedDocument(board, NAME).steering.box.pitmanBall).toEqual([x, y, z]);
  await page.getByRole('button', { name: 'Move them' }).click();
  await page.getByText('1 point moved; all that the table names are planned there now.').waitFor();
  await saved(page);
  const moved = storedDocument(board, NAME);
  expect(moved.steering.box.pitmanBall).toEqual([x - 10, y, z]);
  expect(moved.origins?.['steering.box.pitmanBall']).toBe('plan');
  await page.keyboard.press('Control+z');
  await saved(page);
  expect(storedDocument(board, NAME).steering.box.pitmanBall).toEqual([x, y, z]);
});
