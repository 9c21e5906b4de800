import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { hardpoints, type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTravel } from '../../shared-math/sweep/index.ts';
import { toDegrees } from '../../shared-math/units/index.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { figure } from '../support/board-pointer.ts';
import {
  openDemonstration,
  pointButton,
  saved,
  storedDocument,
  useBrowser,
  withSample,
} from '../support/browser-page.ts';
import { expectClose } from '../support/close.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { ASKEW_SHOTS, photographedCar, SHOTS, type Shot } from '../support/photo-scene.ts';
import { guessedCar, lots } from '../support/photo-world.ts';
import {
  animatedPng,
  bombPng,
  exifSegment,
  greyPng,
  jpegHeaders,
  pngFile,
} from '../support/picture-files.ts';
import { photographed } from '../support/pinhole.ts';
import { renderedPhoto } from '../support/rendered-photo.ts';
import { SLOWNESS } from '../support/slow-machine.ts';
import { clickPhoto, dropFile, type Px, pageOf } from '../support/trace-pointer.ts';

const openBoard = useBrowser();
const PHOTOS = join(import.meta.dirname, '../../projects/photos');
const [SIDE, TOP] = SHOTS as [Shot, Shot];

async function openTrace(page: Page): Promise<void> {
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Measure', exact: true }).click();
  await page.getByRole('tab', { name: 'From photos' }).click();
  await page.getByRole('complementary', { name: 'Trace over a photo' }).waitFor();
}

async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByRole('textbox', { name: label });
  await field.fill(text);
  await field.press('Enter');
}

const step = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^${name}\\b`) });
const shows = (page: Page, shot: Shot) =>
  page.locator(`canvas[data-photo="${shot.file}"][data-laid]`).waitFor();

const off = ([x, y]: Px, slip: () => number): Px => [x + slip(), y + slip()];

/** From a photo that nothing is known of to one that is to scale, all by pointer and a few typed lengths. */
async function calibrate(page: Page, shot: Shot, slip = () => 0): Promise<void> {
  await shows(page, shot);
  const click = (point: Point) => clickPhoto(page, off(photographed(shot.camera, point), slip));

  await step(page, 'Lens').click();
  const [from, to] = shot.edge;
  for (const share of [0.02, 0.25, 0.5, 0.75, 0.98])
    await click([
      from[0] + (to[0] - from[0]) * share,
      from[1] + (to[1] - from[1]) * share,
      from[2] + (to[2] - from[2]) * share,
    ]);

  await step(page, 'Straighten').click();
  await type(page, 'It is wide', `${shot.width} mm`);
  await type(page, 'It is high', `${shot.height} mm`);
  for (const corner of shot.frame) await click(corner);
  await page.getByLabel('The photo straightened').waitFor();

  await type(page, 'The plane that is to scale', `${shot.depth} mm`);
  await type(page, 'Camera from that plane', `${shot.distance} mm`);
  await step(page, 'Place').click();
  await click(resolveLayout(photographedCar()).axle.left.wheelCentre);
  await page.locator('[data-trace="scale"]').waitFor();
  await page.getByRole('button', { name: 'Whole photo' }).click();
}

/** Goes down the guided list, clicking each point where the photo shows it. */
async function trace(page: Page, shot: Shot, slip = () => 0): Promise<void> {
  const truth = hardpoints(photographedCar());
  await page.getByRole('button', { name: /^(Start|Carry on) tracing$/ }).click();
  const wanted = page.getByText(/^Click the .* on the photo\.$/);
  const traced = page.getByText('Every point is traced on this photo or known without it.');
  for (let clicks = 0; clicks < 20; clicks += 1) {
    await wanted.or(traced).waitFor();
    if ((await wanted.count()) === 0) break;
    const name = ((await wanted.textContent()) ?? '').replace(/^Click the (.*) on the photo\.$/, '$1').trim();
    const point = truth.find((each) => each.name.toLowerCase() === name);
    if (!point) throw new Error(`The list asks for "${name}"`);
    await clickPhoto(page, off(photographed(shot.camera, point.at), slip));
  }
  await traced.waitFor();
}

/** Steer over heave, degrees. */
function bumpSteer(document: LayoutDocument): number[] {
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  const { bump, rebound } = document.travel;
  return [...sweepTravel(frontEnd, 'heave', -rebound, bump, 31, 0).bumpSteer].map(toDegrees);
}

test('from two photos to the bump steer of the car that was photographed', {
  timeout: 180_000 * SLOWNESS,
}, async () => {
  const board = await openBoard({ prepare: withSample(guessedCar()) });
  const { page } = board;
  await openTrace(page);
  await page.getByLabel('Photos to add').setInputFiles(join(PHOTOS, SIDE.file));
  await calibrate(page, SIDE);
  await trace(page, SIDE);

  await dropFile(page, TOP.file, 'image/png', readFileSync(join(PHOTOS, TOP.file)));
  await page
    .getByRole('button', { name: new RegExp(TOP.file) })
    .and(page.locator('[aria-pressed="true"]'))
    .waitFor();
  await calibrate(page, TOP);
  await trace(page, TOP);
  await saved(page);

  const truth = photographedCar();
  const traced = storedDocument(board, 'From photos');
  const misses: number[] = [];
  for (const { id, at } of hardpoints(truth).filter((point) => !point.id.startsWith('shaft.'))) {
    const got = hardpoints(traced).find((point) => point.id === id)?.at as Point;
    misses.push(Math.hypot(got[0] - at[0], got[1] - at[1], got[2] - at[2]));
    expect(misses.at(-1), id).toBeLessThan(2);
  }
  const wanted = bumpSteer(truth);
  const worst = Math.max(...wanted.map(Math.abs));
  expect(worst).toBeGreaterThan(1);
  const furthest = Math.max(...bumpSteer(traced).map((value, i) => Math.abs(value - (wanted[i] as number))));
  process.stdout.write(
    `traced: points within ${Math.max(...misses).toFixed(2)} mm, bump steer within ${((100 * furthest) / worst).toFixed(2)} % of ${worst.toFixed(2)}°\n`,
  );
  expect(furthest / worst).toBeLessThan(0.02);
  // And the guess was far off, so that it is the tracing that made it right.
  expect(Math.abs(Math.max(...bumpSteer(guessedCar()).map(Math.abs)) - worst) / worst).toBeGreaterThan(0.1);
  const shown = async () => Number.parseFloat((await figure(page, 'worst')).replace(/^\D*/, ''));
  await expect.poll(async () => Math.abs((await shown()) - worst)).toBeLessThan(0.02 * worst + 0.05);

  // What was specified about the photos is in the document, the pixels are not.
  expect(traced.photos.map(({ view, marks }) => [view, marks.length])).toEqual([
    // The left wheel's centre places both photos and is not asked for.
    ['side', 7],
    ['top', 7],
  ]);
  expect(JSON.stringify(traced).length).toBeLessThan(20_000);
});

test('from photographs 15° off square, by a hand that is a pixel off, within 15 mm; a contradiction is named', {
  timeout: 300_000 * SLOWNESS,
}, async () => {
  const board = await openBoard({ prepare: withSample(guessedCar()) });
  const { page } = board;
  const hand = lots(11);
  const slip = () => hand(1);
  const [side, top] = ASKEW_SHOTS as [Shot, Shot];
  const truth = new Map(hardpoints(photographedCar()).map(({ id, at }) => [id, at]));
  await openTrace(page);
  for (const shot of [side, top]) {
    await page
      .getByLabel('Photos to add')
      .setInputFiles({ name: shot.file, mimeType: 'image/png', buffer: renderedPhoto(shot) });
    await calibrate(page, shot, slip);
    await trace(page, shot, slip);
  }
  await page.getByText('Length between two points').click();
  for (const [from, to] of [
    ['steering.box.pitmanBall', 'steering.dragLinkBall'],
    ['axle.left.kingpinTop', 'location.left.framePivot'],
  ] as const) {
    const [a, b] = [from, to].map((id) => truth.get(id) as Point) as [Point, Point];
    await page.getByRole('combobox', { name: 'From' }).selectOption(from);
    await page.getByRole('combobox', { name: 'To', exact: true }).selectOption(to);
    const length = Math.round(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]));
    await type(page, 'By the tape', `${length} mm`);
  }
  await saved(page);

  const traced = storedDocument(board, 'From photos');
  const misses = hardpoints(traced)
    .filter(({ id }) => !id.startsWith('shaft.'))
    .map(({ id, at: [x, y, z] }) => {
      const [tx, ty, tz] = truth.get(id) as Point;
      return Math.hypot(x - tx, y - ty, z - tz);
    });
  expect(Math.max(...misses)).toBeLessThan(15);
  // Every traced point has its ±, every click how far it lies off, and nothing is said not to fit.
  const doubts = page.getByText(/^± [\d.]+ in, [\d.]+ px$/);
  await expect.poll(() => doubts.count()).toBe(7);
  await expect.poll(() => page.getByRole('article', { name: /^Does not fit/ }).count()).toBe(0);

  // The bump steer lies within what the board says of its doubt.
  const worst = Math.max(...bumpSteer(photographedCar()).map(Math.abs));
  await page.getByRole('tab', { name: 'By tape' }).click();
  const headline = page.locator('[data-headline]');
  await headline.filter({ hasText: /\d° ± [\d.]+°/ }).waitFor();
  const words = (await headline.textContent()) ?? '';
  const [shown, doubt] = [...words.matchAll(/[\d.]+(?=°)/g)].map(([text]) => Number(text)) as [
    number,
    number,
  ];
  process.stdout.write(
    `15° off square: points within ${Math.max(...misses).toFixed(1)} mm; bump steer ${shown}° ± ${doubt}°, truly ${worst.toFixed(2)}°\n`,
  );
  expect(doubt).toBeLessThan(0.15 * worst);
  expect(Math.abs(shown - worst)).toBeLessThan(1.96 * doubt + 0.01);

  // A click on something else: both photos are named, and the point does not follow the last click.
  await page.getByRole('tab', { name: 'From photos' }).click();
  const before = hardpoints(storedDocument(board, 'From photos'));
  await page.getByRole('button', { name: /^!?\s*Pitman ball/ }).click();
  await clickPhoto(
    page,
    off(photographed(top.camera, truth.get('steering.box.pitmanBall') as Point), () => 45),
  );
  const named = page.getByRole('article', { name: /^Does not fit: The click on the pitman ball/ });
  await named.waitFor();
  for (const shot of [side, top])
    await named
      .getByRole('button', { name: `Go to the click on the pitman ball in “${shot.file}”` })
      .waitFor();
  await saved(page);
  const id = 'steering.box.pitmanBall';
  const [was, is] = [before, hardpoints(storedDocument(board, 'From photos'))].map(
    (points) => points.find((point) => point.id === id)?.at as Point,
  ) as [Point, Point];
  expect(Math.hypot(was[0] - is[0], was[1] - is[1], was[2] - is[2])).toBeLessThan(15);
});

describe('a photo', () => {
  async function withSidePhoto() {
    const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
    await openTrace(board.page);
    await board.page.getByLabel('Photos to add').setInputFiles(join(PHOTOS, SIDE.file));
    await shows(board.page, SIDE);
    return board;
  }
  const notice = (page: Page, text: string | RegExp) => page.getByText(text).first().waitFor();

  test('is scaled by two points and a length, shows what a pixel means, and is undone in one step', async () => {
    const board = await withSidePhoto();
    const { page } = board;
    await step(page, 'Scale').click();
    for (const corner of SIDE.frame.slice(0, 2)) await clickPhoto(page, photographed(SIDE.camera, corner));
    await type(page, 'True distance', '1400 mm');
    const words = (await page.locator('[data-trace="scale"]').textContent()) ?? '';
    // In the reader's unit, inches, to a thousandth.
    const [mm, far] = [...words.matchAll(/([\d.]+) in\b/g)].map(([, figure]) => 25.4 * Number(figure));
    const [a, b] = SIDE.frame.slice(0, 2).map((corner) => photographed(SIDE.camera, corner)) as unknown as [
      Px,
      Px,
    ];
    const px = Math.hypot(a[0] - b[0], a[1] - b[1]);
    expectClose(mm as number, 1400 / px, 0.0005 * 25.4 + 1e-6, 'mm for a pixel');
    expect(far).toBeGreaterThan(mm as number);
    await page.getByRole('button', { name: 'Undo: Set the scale' }).click();
    await saved(page);
    expect(storedDocument(board, 'Arm down').photos[0]?.scale).toBeUndefined();
  });

  test('that cannot be scaled or straightened keeps what stood and says why', async () => {
    const board = await withSidePhoto();
    const { page } = board;
    await step(page, 'Scale').click();
    const spot = photographed(SIDE.camera, SIDE.frame[0]);
    const [x, y] = await pageOf(page, spot);
    // Two clicks on one spot: beside the first by less than half a pixel of the photo.
    await page.mouse.click(x, y);
    await page.mouse.click(x, y);
    await page.mouse.click(x + 40, y);
    await type(page, 'True distance', '0');
    await notice(page, 'a length is more than nothing');
    await page.keyboard.press('Escape');

    await page.getByRole('application', { name: /^Drawing/ }).focus();
    await step(page, 'Straighten').click();
    await type(page, 'It is wide', '1400 mm');
    await type(page, 'It is high', '700 mm');
    const [left, right] = [SIDE.frame[0], SIDE.frame[1]];
    const middle: Point = [(left[0] + right[0]) / 2, left[1], left[2] + 1];
    for (const point of [left, middle, right, SIDE.frame[3]])
      await clickPhoto(page, photographed(SIDE.camera, point));
    await notice(page, 'Three of these corners lie on a line');
    await saved(page);
    const photo = storedDocument(board, 'Arm down').photos[0];
    expect([photo?.straighten, photo?.scale]).toEqual([undefined, undefined]);
  });

  test('is measured on, held against the tape, and a disagreement is told', async () => {
    const board = await withSidePhoto();
    const { page } = board;
    await step(page, 'Scale').click();
    const [a, b, c] = SIDE.frame.map((corner) => photographed(SIDE.camera, corner)) as unknown as [
      Px,
      Px,
      Px,
    ];
    await clickPhoto(page, a);
    await clickPhoto(page, b);
    await type(page, 'True distance', '1400 mm');
    await page.getByRole('button', { name: 'Dimension on the photo' }).click();
    await clickPhoto(page, b);
    await clickPhoto(page, c);
    await type(page, 'Tape: Dimension 1', '760 mm');
    await page.locator('[data-finding="tape"]').filter({ hasText: 'shorter than the tape says' }).waitFor();
    await type(page, 'Tape: Dimension 1', '700 mm');
    await saved(page);
    expect(storedDocument(board, 'Arm down').photos[0]?.notes).toHaveLength(1);
  });

  test('is hidden, faded, cropped to nothing less, and taken off; a duplicate shows it without copying it', async () => {
    const board = await withSidePhoto();
    const { page } = board;
    await page.getByRole('checkbox', { name: 'Shown' }).uncheck();
    await page.locator('canvas[data-photo]').waitFor({ state: 'detached' });
    await page.getByRole('checkbox', { name: 'Shown' }).check();
    await shows(page, SIDE);
    await page.getByRole('slider', { name: 'Strength' }).fill('40');
    await expect
      .poll(() => page.locator('canvas[data-photo]').evaluate((c) => c.parentElement?.style.opacity))
      .toBe('0.4');
    await page.keyboard.press('Control+d');
    await page.getByText('This is the copy').waitFor();
    await shows(page, SIDE);
    await page.getByRole('button', { name: 'Remove from the board' }).click();
    await page.locator('canvas[data-photo]').waitFor({ state: 'detached' });
    await saved(page);
    expect(storedDocument(board, 'Arm down').photos).toHaveLength(1);
    expect(storedDocument(board, 'Arm down copy').photos).toHaveLength(0);
  });
});

describe('rails and what is in the way', () => {
  test('are traced from the side, and once more from above', async () => {
    const board = await openBoard();
    const { page } = board;
    await openDemonstration(page, 'Side steer, box too low');
    await openTrace(page);
    const [side, top] = [SIDE, TOP].map((shot) => ({
      shot,
      choose: page.getByRole('button', { name: new RegExp(shot.file) }),
    })) as [{ shot: Shot; choose: Locator }, { shot: Shot; choose: Locator }];
    const show = async ({ shot, choose }: typeof side) => {
      await choose.click();
      await page.getByRole('checkbox', { name: 'Shown' }).check();
      await shows(page, shot);
      await page.getByRole('button', { name: 'Whole photo' }).click();
    };
    const click = (shot: Shot, point: Point) => clickPhoto(page, photographed(shot.camera, point));

    await show(side);
    await page.getByRole('button', { name: 'Trace a rail or a part' }).click();
    await page.getByRole('combobox', { name: 'What is traced' }).selectOption('a radiator');
    const put = page.getByRole('button', { name: 'Put it on the board' });
    await expect.poll(() => put.isDisabled()).toBe(true);
    await type(page, 'Where it stands, left of centre', '0 mm');
    await click(SIDE, [260, 0, 420]);
    await click(SIDE, [200, 0, 880]);
    await click(SIDE, [500, 0, 880]);
    await page.getByRole('button', { name: 'Undo the last spot' }).click();
    await put.click();
    await saved(page);
    const found = () => storedDocument(board, 'Side steer, box too low').obstacles.at(-1);
    const fromSide = found();
    if (fromSide?.kind !== 'box') throw new Error('a radiator is a box');
    for (const [axis, wanted] of [
      [0, 230],
      [2, 650],
    ] as const)
      expect(Math.abs(fromSide.centre[axis] - wanted), `middle, axis ${axis}`).toBeLessThan(4);
    expect(Math.abs(fromSide.size[2] - 460)).toBeLessThan(5);

    await show(top);
    await page.getByRole('button', { name: 'Trace a rail or a part' }).click();
    await page.getByRole('combobox', { name: 'What is traced' }).selectOption(`${fromSide.name}, once more`);
    await click(TOP, [260, 250, 650]);
    await click(TOP, [200, -250, 650]);
    await page.getByRole('button', { name: 'Set it' }).click();
    await saved(page);
    const both = found();
    if (both?.kind !== 'box') throw new Error('a radiator is a box');
    expect(Math.abs(both.size[1] - 500)).toBeLessThan(5);
    expect(both.size[2]).toBe(fromSide.size[2]);
    await page.getByRole('button', { name: /^Undo: Trace the radiator/ }).click();
    await saved(page);
    expect(found()).toEqual(fromSide);

    await page.getByRole('combobox', { name: 'What is traced' }).selectOption('Frame rail, once more');
    for (const point of [
      [420, 360, 480],
      [-300, 360, 480],
      [-900, 400, 430],
    ] as Point[])
      await click(TOP, point);
    await page.getByRole('button', { name: 'Set it' }).click();
    await saved(page);
    const { path } = storedDocument(board, 'Side steer, box too low').rails[0] as { path: Point[] };
    expect(path.length).toBeGreaterThanOrEqual(3);
    expect(Math.abs((path[0]?.[1] ?? 0) - 360)).toBeLessThan(6);
    expect(Math.abs((path.at(-1)?.[1] ?? 0) - 400)).toBeLessThan(6);
  });
});

test('a pasted photo is cropped, and its spots are set by keys alone', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await openTrace(page);
  await page.evaluate(
    (base64) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const carried = new DataTransfer();
      carried.items.add(new File([bytes], 'image.png', { type: 'image/png' }));
      document.body.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: carried, bubbles: true, cancelable: true }),
      );
    },
    readFileSync(join(PHOTOS, SIDE.file)).toString('base64'),
  );
  await page.locator('canvas[data-photo="image.png"][data-laid]').waitFor();
  await page.getByRole('button', { name: 'Crop' }).click();
  await clickPhoto(page, [300, 200]);
  await clickPhoto(page, [2000, 1400]);
  await page.getByRole('button', { name: 'Show all of it' }).waitFor();
  await saved(page);
  const crop = storedDocument(board, 'Arm down').photos[0]?.crop ?? [];
  for (const [i, wanted] of [300, 200, 2000, 1400].entries())
    expect(Math.abs((crop[i] ?? 0) - wanted)).toBeLessThan(2);

  await step(page, 'Scale').focus();
  await page.keyboard.press('Enter');
  const photo = page.getByRole('application', { name: /^The photo/ });
  await photo.focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  for (let press = 0; press < 8; press += 1) await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Enter');
  const field = page.getByRole('textbox', { name: 'True distance' });
  await field.focus();
  await page.keyboard.type('500 mm');
  await page.keyboard.press('Enter');
  await saved(page);
  const scale = storedDocument(board, 'Arm down').photos[0]?.scale;
  if (!scale) throw new Error('the scale was not taken');
  // Eight steps of the key to the right, 12 px of the screen each, one fine one down: as flat a line on the photo.
  const [right, down] = [scale.to[0] - scale.from[0], scale.to[1] - scale.from[1]];
  expect(right / down).toBeCloseTo(96, 0);
  expect(scale.distance).toBe(500);
});

test('what is no photo is refused by its name with the reason, and nothing else changes', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  for (const [name, type, content, reason] of [
    ['broken off.png', 'image/png', greyPng(9, 64, 64).subarray(0, 80), 'it breaks off before its end'],
    ['huge.png', 'image/png', bombPng(60_000, 60_000), 'its picture is 60000 by 60000 pixels'],
    ['moving.png', 'image/png', animatedPng(), 'it is animated; take a single picture'],
    [
      'letter.png',
      'image/png',
      Buffer.from('Dear customer'),
      'it is plain text; bring a JPEG, PNG, WebP, HEIC, AVIF or PDF',
    ],
    ['headers.jpg', 'image/jpeg', jpegHeaders(64, 48), 'its picture cannot be decoded'],
  ] as const) {
    await dropFile(page, name, type, content);
    await page.getByText(`${name} cannot be added: ${reason}`).waitFor();
    expect(storedDocument(board, 'Arm down')).toEqual(sampleLayout('Arm down'));
    await expect.poll(() => page.locator('canvas[data-photo]').count()).toBe(0);
  }
  // The browser notes refused requests on its console by itself.
  const others = board.complaints.filter((text) => !text.includes('status of 422'));
  board.complaints.length = 0;
  expect(others).toEqual([]);
});

test('a photo lies upright on the board whichever way the camera was held', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await openTrace(page);
  // Red, green, blue and black quarters, drawn as the camera's chip would hold them for each orientation.
  for (let orientation = 1; orientation <= 8; orientation += 1) {
    const jpeg = await page.evaluate(async (held) => {
      const upright = document.createElement('canvas');
      upright.width = 48;
      upright.height = 32;
      const paint = upright.getContext('2d') as CanvasRenderingContext2D;
      for (const [colour, x, y] of [
        ['#f00', 0, 0],
        ['#0f0', 24, 0],
        ['#00f', 0, 16],
        ['#000', 24, 16],
      ] as const) {
        paint.fillStyle = colour;
        paint.fillRect(x, y, 24, 16);
      }
      const lying = held >= 5;
      const chip = document.createElement('canvas');
      chip.width = lying ? 32 : 48;
      chip.height = lying ? 48 : 32;
      const onto = chip.getContext('2d') as CanvasRenderingContext2D;
      // Where the upright picture's axes go on the chip: the inverse of what the orientation asks of a viewer.
      const ways: Record<number, readonly number[]> = {
        1: [1, 0, 0, 1, 0, 0],
        2: [-1, 0, 0, 1, 48, 0],
        3: [-1, 0, 0, -1, 48, 32],
        4: [1, 0, 0, -1, 0, 32],
        5: [0, 1, 1, 0, 0, 0],
        6: [0, -1, 1, 0, 0, 48],
        7: [0, -1, -1, 0, 32, 48],
        8: [0, 1, -1, 0, 32, 0],
      };
      onto.setTransform(...(ways[held] as [number, number, number, number, number, number]));
      onto.drawImage(upright, 0, 0);
      const blob = await new Promise<Blob | null>((done) => chip.toBlob(done, 'image/jpeg', 0.95));
      return [...new Uint8Array(await (blob as Blob).arrayBuffer())];
    }, orientation);
    const file = Buffer.concat([
      Buffer.from(jpeg.slice(0, 2)),
      exifSegment(orientation),
      Buffer.from(jpeg.slice(2)),
    ]);
    await page
      .getByLabel('Photos to add')
      .setInputFiles({ name: `held ${orientation} side.jpg`, mimeType: 'image/jpeg', buffer: file });
    const canvas = page.locator(`canvas[data-photo="held ${orientation} side.jpg"][data-laid]`);
    await canvas.waitFor();
    const corners = await canvas.evaluate((shown: HTMLCanvasElement) => {
      const paint = shown.getContext('2d') as CanvasRenderingContext2D;
      const { width, height } = shown;
      const { data } = paint.getImageData(0, 0, width, height);
      return [
        [0.25, 0.25],
        [0.75, 0.25],
        [0.25, 0.75],
        [0.75, 0.75],
      ].map(([x = 0, y = 0]) => {
        const at = 4 * (Math.floor(height * y) * width + Math.floor(width * x));
        return [...data.slice(at, at + 3)].map((value) => (value > 127 ? 1 : 0)).join('');
      });
    });
    expect(corners, `orientation ${orientation}`).toEqual(['100', '010', '001', '000']);
    await page.getByRole('button', { name: 'Remove from the board' }).click();
    await canvas.waitFor({ state: 'detached' });
  }
});

test('two photos that contradict each other are told where points are traced, and a better click mends it', async () => {
  const { page } = await openBoard();
  await openDemonstration(page, 'Side steer, box too low');
  await openTrace(page);
  await page.getByRole('button', { name: new RegExp(`^${SIDE.file}`) }).click();
  await page.getByRole('checkbox', { name: 'Shown' }).check();
  await shows(page, SIDE);
  await page.getByRole('button', { name: 'Whole photo' }).click();
  const row = page.getByRole('button', { name: /^!?\s*Pitman ball/ });
  const alert = page.getByRole('alert').filter({ hasText: 'contradict each other' });
  const named = page.getByRole('article', {
    name: /^Does not fit: The click on the pitman ball in “from the side/,
  });
  await row.getByText(/^± [\d.]+ in, [\d.]+ px$/).waitFor();
  await expect.poll(() => alert.count()).toBe(0);
  await row.click();
  const [x, y] = photographed(SIDE.camera, photographedCar().steering.box.pitmanBall);
  await clickPhoto(page, [x + 60, y + 60]);
  await row.click();
  await alert.waitFor();
  await named.waitFor();
  await named.getByRole('button', { name: /^Go to the click on the pitman ball in “from the side/ }).click();
  await page.getByText('Click the pitman ball on the photo.').waitFor();
  await clickPhoto(page, [x, y]);
  await row.click();
  await alert.waitFor({ state: 'detached' });
  await named.waitFor({ state: 'detached' });
});

test('the place has no serious fault for those who cannot see it', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page, context } = board;
  await bringChecker(context);
  await page.reload();
  await openTrace(page);
  expect(await violations(page)).toEqual([]);
  await page.getByLabel('Photos to add').setInputFiles(join(PHOTOS, SIDE.file));
  await shows(page, SIDE);
  for (const name of ['Straighten', 'Lens', 'Scale', 'Level', 'Place']) {
    await step(page, name).click();
    expect(await violations(page), name).toEqual([]);
  }
  await page.getByRole('button', { name: 'Start tracing' }).click();
  expect(await violations(page)).toEqual([]);
});

test('a 24-megapixel photo is worked with reduced, and stays smooth under the hand', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await openTrace(page);
  const rgb = new Uint8Array(3 * 6000 * 4000);
  for (let i = 0; i < rgb.length; i += 1) rgb[i] = (i >> 9) & 0xff;
  const begun = Date.now();
  await page
    .getByLabel('Photos to add')
    .setInputFiles({ name: 'large side.png', mimeType: 'image/png', buffer: pngFile(6000, 4000, rgb) });
  const canvas = page.locator('canvas[data-photo="large side.png"][data-laid]');
  await canvas.waitFor();
  const shown = Date.now() - begun;
  const side = await canvas.evaluate((c: HTMLCanvasElement) => Math.max(c.width, c.height));
  expect(side).toBeLessThanOrEqual(2000);
  const frames = await page.evaluate(async () => {
    const { x, y, width, height } = (document.querySelector('.paper') as Element).getBoundingClientRect();
    const times: number[] = [];
    for (let i = 0; i < 30; i += 1) {
      const from = performance.now();
      const at = { clientX: x + width / 2, clientY: y + height / 2, deltaY: i % 2 ? 60 : -60 };
      document
        .querySelector('.paper')
        ?.dispatchEvent(new WheelEvent('wheel', { ...at, bubbles: true, cancelable: true }));
      await new Promise((done) => requestAnimationFrame(() => done(null)));
      times.push(performance.now() - from);
    }
    return times.toSorted((a, b) => a - b);
  });
  process.stdout.write(
    `24 megapixels: on the board in ${shown} ms, a zoom's frame ${frames[15]?.toFixed(1)} ms (median), ${frames[28]?.toFixed(1)} ms (slowest but one)\n`,
  );
});
