import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { WALK_WINDOW, WALKS, type WalkPicture } from '../../shared-math/words/walks/index.ts';
import { startLoopback } from '../../src-main/hosts/loopback/start-loopback.ts';
import { launchBrowser } from './browser-launch.ts';
import buildOnce from './build-once.ts';
import { smallPng } from './walks/small-png.ts';
import { walkThrough } from './walks/walk-through.ts';

// Takes the handbook's pictures anew, from the built program as it is gone through by its own walks.

const root = resolve(import.meta.dirname, '../..');
const PICTURES = join(root, 'src-renderer/public/handbook');

/** Where each part of the page is. */
const PARTS: Readonly<Record<WalkPicture['of'], string>> = {
  page: 'body',
  board: 'section[aria-label="Board"]',
  column: '.column',
  strip: 'section[aria-label="Pose and curves"]',
  sheet: 'main',
};

/** The PNG as pixels, by the page itself: it knows the format. */
async function pixelsOf(page: Page, png: Buffer) {
  const { width, height, base64 } = await page.evaluate(
    async (data) => {
      const bitmap = await createImageBitmap(await (await fetch(data)).blob());
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext('2d');
      if (!context) throw new Error('this browser draws no pictures');
      context.drawImage(bitmap, 0, 0);
      const { data: bytes } = context.getImageData(0, 0, bitmap.width, bitmap.height);
      let text = '';
      for (let i = 0; i < bytes.length; i += 30_000)
        text += String.fromCharCode(...bytes.subarray(i, i + 30_000));
      return { width: bitmap.width, height: bitmap.height, base64: btoa(text) };
    },
    `data:image/png;base64,${png.toString('base64')}`,
  );
  return { width, height, rgba: new Uint8Array(Buffer.from(base64, 'base64')) };
}

await buildOnce();
rmSync(PICTURES, { recursive: true, force: true });
mkdirSync(PICTURES, { recursive: true });
const browser = await launchBrowser();
const eye = await (await browser.newContext()).newPage();
let bytes = 0;
const wrong: string[] = [];
for (const walk of WALKS) {
  const folder = mkdtempSync(join(tmpdir(), 'toeboard-handbook-'));
  const host = await startLoopback({ dataFolder: folder, rendererFolder: join(root, 'out/renderer') });
  const context = await browser.newContext({
    viewport: WALK_WINDOW,
    locale: 'en-GB',
    deviceScaleFactor: 1.25,
  });
  const page = await context.newPage();
  await page.goto(host.newAddress());
  const missing = await walkThrough(page, walk, async (_, { file, of }) => {
    // What was pointed at last is not what the picture is of.
    await page.mouse.move(2, 700);
    await page.evaluate(() => document.fonts.ready);
    const png = await page.locator(PARTS[of]).first().screenshot({ animations: 'disabled', caret: 'hide' });
    const small = smallPng(await pixelsOf(eye, png));
    writeFileSync(join(PICTURES, `${file}.png`), small);
    bytes += small.length;
    process.stdout.write(`${file}.png ${Math.round(small.length / 1000)} kB\n`);
  });
  wrong.push(...missing.map(({ step, label }) => `${walk.id}, step ${step + 1}: “${label}” stands nowhere`));
  await context.close();
  await host.close();
  rmSync(folder, { recursive: true, force: true });
}
await browser.close();
process.stdout.write(`${Math.round(bytes / 1000)} kB in all\n`);
if (wrong.length > 0) {
  process.stderr.write(`${wrong.join('\n')}\n`);
  process.exitCode = 1;
}
