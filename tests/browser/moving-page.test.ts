import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { doingLines, doingWords, MovedCar } from '../../shared-math/moving/index.ts';
import { toRadians } from '../../shared-math/units/index.ts';
import { rasterOf } from '../../src-main/output/drawings/png.ts';
import { filmPreview, makeFilm } from '../../src-main/output/film/film.ts';
import type { MovingJob } from '../../src-main/output/moving/moving-model.ts';
import { movingPage } from '../../src-main/output/moving/moving-page.ts';
import { bringChecker, violations } from '../support/accessibility.ts';
import { connectBrowser } from '../support/browser-page.ts';
import { demonstration } from '../support/demonstration-files.ts';
import { testFolder } from '../support/host-folder.ts';
import { slowDown } from '../support/slow-machine.ts';

const browser = connectBrowser();
const BAD = demonstration('hairpins-box-too-low');
const GOOD = demonstration('hairpins-side-steer');
const STYLE = { unit: 'in', fraction: 16 } as const;

/** The page, opened from disk as by a double click, with no network at all. What it complains of and asks for is listened to. */
async function opened(job: Partial<MovingJob>, options: BrowserContextOptions = {}) {
  const file = join(testFolder(), 'page.html');
  const whole = {
    document: BAD,
    customer: 'Odile Farrowby',
    car: 'Two-seater',
    date: new Date(2026, 2, 14, 12),
    ...STYLE,
    ...job,
  };
  writeFileSync(file, await movingPage(whole));
  const context = await browser().newContext({
    offline: true,
    viewport: { width: 1280, height: 720 },
    ...options,
  });
  onTestFinished(() => context.close());
  await bringChecker(context);
  const page = await context.newPage();
  await slowDown(page);
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('dialog', (dialog) => {
    complaints.push(`a dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(pathToFileURL(file).href);
  return {
    page,
    complaints,
    asked: () => asked.filter((url) => !url.startsWith('file:') && !url.startsWith('data:')),
  };
}

const said = async (page: Page) => (await page.locator('#doing span').allTextContents()).join('\n');

/** Puts a slider to one of its places, as a hand does. */
async function slide(page: Page, id: string, place: number): Promise<void> {
  await page.locator(`#${id}`).fill(String(place));
}

describe('the page that moves, opened from disk without a network', () => {
  test('solves every place of its sliders as the program does, and its mark goes along', async () => {
    const { page, complaints, asked } = await opened({});
    const car = new MovedCar(resolveLayout(BAD));
    const mark = () => page.locator('#curve-0 circle').getAttribute('cy');
    const drawn = () => page.locator('#marks').innerHTML();
    const before = [await mark(), await drawn()];
    await slide(page, 'bump', 75);
    await slide(page, 'roll', -40);
    // 3 in of bump and 3° of roll are the ends of its sliders; the left end is left wheel up.
    car.put({ heave: 0.75 * 76.2, roll: toRadians(0.4 * 3), handwheel: 0 });
    await expect.poll(() => said(page)).toBe(doingWords(car, STYLE));
    await slide(page, 'roll', 0);
    await slide(page, 'bump', -100);
    car.put({ heave: -76.2, roll: 0, handwheel: 0 });
    await expect.poll(() => said(page)).toBe(doingWords(car, STYLE));
    await expect.poll(async () => [await mark(), await drawn()]).not.toEqual(before);
    await slide(page, 'steering', -50);
    await expect.poll(() => page.locator('#steering-words').textContent()).toMatch(/^\d+° to the left$/);
    await expect.poll(() => said(page)).toContain('of handwheel to the left');
    await page.getByRole('button', { name: 'Back to ride height' }).click();
    await expect.poll(() => said(page)).toBe('At ride height: the wheels stay where they are pointed.');
    expect(await violations(page)).toEqual([]);
    expect(complaints).toEqual([]);
    expect(asked()).toEqual([]);
  });

  test('goes by keyboard alone, and the car is turned by hand', async () => {
    const { page, complaints } = await opened({});
    await page.locator('#bump').focus();
    await page.keyboard.press('Home');
    await expect.poll(() => page.locator('#bump').getAttribute('aria-valuetext')).toBe('3 in down');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.locator('#bump').inputValue()).toBe('-99');
    const box = (await page.locator('#picture').boundingBox()) as {
      x: number;
      y: number;
      width: number;
      height: number;
    };
    const view = () => page.locator('#seen-words').textContent();
    await expect.poll(view).toBe('ahead and left');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 100, box.y + box.height / 2, { steps: 4 });
    await page.mouse.up();
    await expect.poll(view).toBe('ahead');
    expect(complaints).toEqual([]);
  });

  test('on a phone nothing sticks out, a finger moves it, and the picture stays in sight', async () => {
    const { page, complaints } = await opened(
      { document: GOOD, beside: BAD },
      { viewport: { width: 360, height: 640 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    );
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
    await page.locator('#bump').evaluate((slider) => slider.scrollIntoView());
    const slider = (await page.locator('#bump').boundingBox()) as {
      x: number;
      y: number;
      width: number;
      height: number;
    };
    await page.touchscreen.tap(slider.x + slider.width - 14, slider.y + slider.height / 2);
    await expect.poll(() => page.locator('#bump-words').textContent()).toBe('3 in up');
    // Two cars: a line for where they stand and one for each.
    const place = Number(await page.locator('#bump').inputValue());
    expect(place).toBeGreaterThan(95);
    const cars = [GOOD, BAD].map((document, at) => ({
      at: at as 0 | 1,
      name: document.name,
      car: new MovedCar(resolveLayout(document)),
    }));
    for (const { car } of cars) car.put({ heave: (place / 100) * 76.2, roll: 0, handwheel: 0 });
    await expect.poll(async () => (await said(page)).split('\n')).toEqual(doingLines(cars, STYLE));
    const picture = (await page.locator('#picture').boundingBox()) as { y: number };
    expect(picture.y).toBeGreaterThanOrEqual(0);
    for (const control of await page.locator('input, button').all()) {
      const box = await control.boundingBox();
      const row =
        (await control
          .locator('xpath=ancestor-or-self::*[self::label or self::button or self::input][last()]')
          .boundingBox()) ?? box;
      expect(row?.height ?? 0).toBeGreaterThanOrEqual(40);
    }
    await page.getByRole('radio', { name: 'Side steer, box too low' }).check();
    await expect.poll(() => said(page)).toBe(doingWords((cars[1] as (typeof cars)[number]).car, STYLE));
    await expect.poll(() => page.locator('#curve-0').isVisible()).toBe(false);
    expect(await violations(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test('without its script it shows the picture, the figures, the curve and the cautions, and nothing that would do nothing', async () => {
    const { page } = await opened({}, { javaScriptEnabled: false });
    await expect.poll(() => page.locator('#marks path').count()).toBeGreaterThan(100);
    await expect.poll(() => said(page)).toContain('2.44° to the right');
    for (const words of ['Both wheels hit a 2 in bump', 'Steering parts fail dangerously', '3 in down'])
      await expect.poll(() => page.getByText(words).first().isVisible()).toBe(true);
    await expect
      .poll(() =>
        page
          .locator('input, button')
          .evaluateAll((all) => all.filter((each) => (each as HTMLElement).offsetParent).length),
      )
      .toBe(0);
  });

  test('its script draws in the pose in which it opens what stands there without it', async () => {
    const without = await opened({ document: GOOD, beside: BAD }, { javaScriptEnabled: false });
    const { page } = await opened({ document: GOOD, beside: BAD });
    for (const part of ['#marks', '#doing', '#curve'])
      await expect
        .poll(() => page.locator(part).innerHTML(), { message: part })
        .toBe(await without.page.locator(part).innerHTML());
  });

  test('runs over a bump and comes back; who wants no motion is shown its top at once', async () => {
    const { page } = await opened({});
    await page.getByRole('button', { name: 'Run it over a bump' }).click();
    await expect.poll(() => page.locator('#run').textContent()).toBe('Stop');
    await expect.poll(() => said(page)).toMatch(/down/);
    await page.getByRole('button', { name: 'Stop' }).click();
    const stood = await said(page);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.getByRole('button', { name: 'Show the top of a bump' }).click();
    await expect.poll(() => said(page)).toContain('Both wheels 3 in up');
    expect(stood).not.toContain('Both wheels 3 in up');
    await expect.poll(() => page.locator('#run').textContent()).toBe('Show the top of a bump');
  });

  test('names that would be script are text', async () => {
    const hostile = '</script><script>alert(1)</script>"\'><img src=x onerror=alert(2)> \u202Eevil <b>&amp;';
    const { page, complaints } = await opened({
      customer: hostile,
      car: hostile,
      document: { ...GOOD, name: hostile },
      beside: { ...BAD, name: `${hostile}2` },
    });
    const plain = hostile.replaceAll(/[\u202E ]+/g, ' ');
    await expect.poll(() => page.locator('h1').textContent()).toBe(plain);
    await slide(page, 'bump', 50);
    await expect.poll(() => said(page)).toContain(`${plain}: `);
    await expect.poll(() => page.locator('img, h1 b').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  test('on paper it is picture, figures and cautions, without what moves it', async () => {
    const { page } = await opened({});
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => page.locator('.hands').isVisible()).toBe(false);
    await expect.poll(() => page.locator('#picture').isVisible()).toBe(true);
    const pdf = await page.pdf({ format: 'A4' });
    expect(
      Buffer.from(pdf)
        .toString('latin1')
        .match(/\/Type \/Page\b/g)?.length ?? 0,
    ).toBeLessThanOrEqual(3);
  });

  test('the film is read by the browser’s own decoder: pictures, sizes, times, the first as it was shown', async () => {
    const job = { document: BAD, over: 'bump', width: 480, seconds: 2, ...STYLE } as const;
    const film = Buffer.from(await makeFilm(job)).toString('base64');
    const still = await rasterOf(filmPreview(job)[0] as string, 480);
    const { page } = await opened({});
    const read = await page.evaluate(async (text) => {
      const data = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
      const decoder = new ImageDecoder({ data, type: 'image/png' });
      await decoder.tracks.ready;
      await decoder.completed;
      const track = decoder.tracks.selectedTrack;
      const frames: { size: string; duration: number | null; hash: number; first: number[] }[] = [];
      for (let frameIndex = 0; frameIndex < (track?.frameCount ?? 0); frameIndex += 1) {
        const { image } = await decoder.decode({ frameIndex });
        const canvas = new OffscreenCanvas(image.displayWidth, image.displayHeight);
        const pen = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
        pen.drawImage(image, 0, 0);
        const pixels = pen.getImageData(0, 0, canvas.width, canvas.height).data;
        let hash = 0;
        for (const value of pixels) hash = (Math.imul(hash, 31) + value) | 0;
        frames.push({
          size: `${image.displayWidth} × ${image.displayHeight}`,
          duration: image.duration,
          hash,
          first: frameIndex === 0 ? [...pixels] : [],
        });
        image.close();
      }
      return { repeats: track?.repetitionCount, frames };
    }, film);
    expect(read.frames).toHaveLength(24);
    expect(read.repeats).toBe(Number.POSITIVE_INFINITY);
    expect(new Set(read.frames.map(({ size }) => size))).toEqual(new Set([`480 × ${still.height}`]));
    for (const { duration } of read.frames) expect((duration ?? 0) / 1e6).toBeCloseTo(1 / 12, 2);
    expect(Buffer.from(read.frames[0]?.first as number[]).equals(still.pixels)).toBe(true);
    // Going up and coming down are the same pictures, so that half of them and the two ends are different ones.
    expect(new Set(read.frames.map(({ hash }) => hash)).size).toBeGreaterThanOrEqual(13);
  });
});
