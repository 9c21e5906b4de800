import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { findHandle, handleOf } from '../support/board-pointer.ts';
import { pointButton, useBrowser, withSample } from '../support/browser-page.ts';
import { sampleLayout } from '../support/host-sample.ts';

const openBoard = useBrowser();
const ASSETS = resolve(import.meta.dirname, '../../out/renderer/assets');

/** Bytes of script, not compressed, that the page may load before any place but the first is opened. */
const SCRIPT_MOST = 1_000_000;

/**
 * What is heavy and not of the first page, by a word of its own that no minifier takes away: names of members of the libraries,
 * and the sentences of ours.
 */
const HEAVY = {
  'the physics engine': 'm_broadPhase',
  'the reader of PDFs': 'GlobalWorkerOptions',
  'the decoder of HEIC': 'heif_context',
  'the search for arrangements': 'Kept as drawn: ',
  'the words and their sketches': 'swings fore and aft beside the rail',
  'the handbook': 'Kill bump steer',
} as const;

const ITS_OWN_FILE = [
  /(?:Measure|measure-column|Shaft|Road|Sheet)(?:Column|Page|Place)?-/,
  /(?:Drawer|HelpPanel|WordsPage|HandbookPage|CounterPage|ArrangementSheet|Welcome)-/,
  /(?:originals|photo|heic|pdf|ride|propose|counter|advice|shaft|drawing)[\w-]*-worker-/,
];

test('the page loads at most 1 MB of script until its board can be worked at, and none of what is shown later', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  // What comes while nothing else is to be done does not come here: a slow machine must not count what is fetched ahead.
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  await page.reload();
  await pointButton(page, 'Pitman ball').waitFor();
  await expect.poll(() => findHandle(page, 'side', 'steering.box.pitmanBall')).toBeTruthy();
  const { x, y } = await handleOf(page, 'side', 'steering.box.pitmanBall');
  await page.locator('.uplot canvas').first().waitFor();
  const loaded = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map(({ name }) => new URL(name).pathname)
      .filter((path) => path.endsWith('.js')),
  );
  const files = [...new Set(loaded)].map((path) => path.replace(/^\/(?:assets\/)?/, ''));
  const scripts = files.filter((name) => name !== 'at-start.js' && !/-worker-/.test(name));
  const bytes = scripts.reduce((sum, name) => sum + readFileSync(join(ASSETS, name)).length, 0);
  process.stdout.write(`first script: ${bytes} bytes in ${scripts.length} files\n`);
  expect(bytes).toBeLessThanOrEqual(SCRIPT_MOST);
  // And it is the page's script that was counted.
  expect(bytes).toBeGreaterThan(300_000);
  expect(files.filter((name) => ITS_OWN_FILE.some((form) => form.test(name)))).toEqual([]);

  const built = readdirSync(ASSETS).filter((name) => name.endsWith('.js'));
  for (const [what, word] of Object.entries(HEAVY)) {
    const holds = (name: string) => readFileSync(join(ASSETS, name), 'utf8').includes(word);
    expect(built.some(holds), `${what} is built`).toBe(true);
    expect(scripts.filter(holds), what).toEqual([]);
  }

  // It can be worked at: the point follows the pointer, and that can be undone.
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y - 20, { steps: 4 });
  await page.mouse.up();
  await page.getByRole('button', { name: /^Undo: / }).waitFor();
});

test('bar and frame are painted without the script, on the ground of last time, and nothing moves when it comes', async () => {
  const board = await openBoard({ prepare: withSample(sampleLayout('Arm down')) });
  const { page } = board;
  await pointButton(page, 'Pitman ball').waitFor();
  await page.getByRole('button', { name: 'Dark ground' }).click();
  const look = (bar: string, column: string, strip: string) =>
    page.evaluate(
      (parts) =>
        parts.map((part) => {
          const element = document.querySelector(part) as HTMLElement;
          const { left, top, right, bottom } = element.getBoundingClientRect();
          const { backgroundColor, color } = getComputedStyle(element);
          return { box: [left, top, right, bottom].map(Math.round), backgroundColor, color };
        }),
      [bar, column, strip],
    );
  const words = (bar: string) =>
    page.evaluate((selector) => {
      const range = document.createRange();
      range.selectNodeContents(document.querySelector(selector) as Element);
      const { left, top } = range.getBoundingClientRect();
      return [left, top].map(Math.round);
    }, bar);
  await expect.poll(() => page.evaluate(() => document.documentElement.dataset['ground'])).toBe('night');
  const after = await look('header.bar', 'aside.column', 'section.strip');
  const mark = await words('header.bar .mark');
  await expect.poll(() => page.locator('#frame').count()).toBe(0);

  await page.context().route(/\/assets\/.*\.js$/, (route) => route.abort());
  await page.reload();
  await page.locator('#frame').waitFor();
  await expect.poll(() => look('.frame-bar', '.frame-column', '.frame-strip')).toEqual(after);
  await expect.poll(() => words('.frame-bar')).toEqual(mark);
  await page.close();
  board.complaints.length = 0;
});

test('a file whose name has its hash is kept by the browser for good, the page itself is asked for each time', async () => {
  const { host } = await openBoard();
  const { origin } = new URL(host.newAddress());
  const html = await (await fetch(`${origin}/`)).text();
  const hashed = /assets\/page-[\w-]+\.js/.exec(html)?.[0];
  const kept = async (path: string) => (await fetch(`${origin}/${path}`)).headers.get('cache-control');
  expect(await kept(hashed ?? '')).toBe('max-age=31536000, immutable');
  for (const path of ['', 'at-start.js', 'favicon.svg', 'handbook/bump-map.png'])
    expect(await kept(path), path).toBe('no-cache');
});
