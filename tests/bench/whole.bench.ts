import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { parseLayout } from '../../shared-math/layout/index.ts';
import { openStore } from '../../src-main/store/index.ts';
import { handleOf } from '../support/board-pointer.ts';

/*
 * The whole of it, as a person has it: the program started, the board in sight, another car opened, a point dragged, the travel
 * played, a sheet printed. Each figure stands beside a peer of the same run: a bare server and an empty page, the pointer over the
 * board with nothing in the hand, the time of a frame. TOEBOARD_BEFORE=FOLDER takes another build of the program (a folder with its
 * `out` and `node_modules`) turn about with the present one, and gives the ratios of the two.
 */

const HERE = resolve(import.meta.dirname, '../..');
const BEFORE = process.env['TOEBOARD_BEFORE'];
const ROUNDS = Number(process.env['TOEBOARD_ROUNDS'] ?? 7);
const STEPS = 40;
const PROJECTS = join(HERE, 'projects');
const LAYOUTS = ['hairpins-box-too-low', 'parallel-leaf-cross-steer'].map((name) => {
  const read = parseLayout(readFileSync(join(PROJECTS, `${name}.json`), 'utf8'));
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
});

/** What each may take on an idle machine of two cores without a graphics card, ms; a drag step and a step of the travel of the page's thread. */
const BUDGETS = {
  'the program answers': 900,
  'first paint': 200,
  'board can be worked at': 1000,
  'another car opened': 400,
  'a drag step': 14,
  'a step of the travel played': 10,
  'a sheet printed': 3000,
} as const;
type Figure = keyof typeof BUDGETS;
type Figures = Record<Figure, number>;

const median = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] as number;

/** Starts a program and waits for its address. Gives that, how long it took, ms, and how to end it. */
async function started(args: readonly string[], env: Record<string, string> = {}) {
  const begun = performance.now();
  const child: ChildProcess = spawn(process.execPath, [...args], {
    env: { ...process.env, TOEBOARD_NO_WINDOW: '1', ...env },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((found) => {
    let said = '';
    child.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const [match] = said.match(/http:\/\/127\.0\.0\.1:\d+\/\S*/) ?? [];
      if (match) found(match);
    });
  });
  const ended = new Promise((done) => child.once('close', done));
  return {
    address,
    took: performance.now() - begun,
    end: () => {
      child.kill('SIGKILL');
      return ended;
    },
  };
}

const BARE = `const { createServer } = require('node:http');
const server = createServer((_, response) => {
  response.writeHead(200, { 'content-type': 'text/html' });
  response.end('<!doctype html><title>Bare</title><p>Nothing</p>');
});
server.listen(0, '127.0.0.1', () => console.log('http://127.0.0.1:' + server.address().port + '/'));`;

const painted = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<number>((done) => {
        new PerformanceObserver((list) => {
          const [entry] = list.getEntriesByName('first-contentful-paint');
          if (entry) done(entry.startTime);
        }).observe({ type: 'paint', buffered: true });
      }),
  );

/** ms of the page's own thread, all of its work. */
async function threadTime(page: Page): Promise<() => Promise<number>> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  };
}

const frame = (page: Page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(done)));

/** One whole session with a build; and, once for each round, the peers. */
async function session(build: string): Promise<{ figures: Figures; peers: Partial<Figures> }> {
  const data = mkdtempSync(join(tmpdir(), 'toeboard-whole-'));
  const store = openStore({ folder: data });
  const car = store.cars.add(store.customers.add('Sample customer', ''), 'Sample car', '');
  const [first] = LAYOUTS.map((layout) => store.variants.add(car, layout, 'Begun'));
  store.settings.write({ lastVariant: first as string, asked: true });
  store.close();
  const browser = await chromium.connect(inject('browserEndpoint'));
  const program = await started([join(build, 'out/main/loopback-main.js')], { TOEBOARD_DATA: data });
  const bare = await started(['-e', BARE]);
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
    const empty = await context.newPage();
    await empty.goto(bare.address);
    const emptyPainted = await painted(empty);
    await empty.close();

    const page = await context.newPage();
    await page.addInitScript(() => {
      sessionStorage.setItem('toeboard-column', 'points');
      const look = () => {
        if (window.toeboardBoard?.handleAt('side', 'steering.box.pitmanBall'))
          performance.mark('worked-at', { startTime: performance.now() });
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await page.goto(program.address);
    const firstPaint = await painted(page);
    const workedAt = () => page.evaluate(() => performance.getEntriesByName('worked-at')[0]?.startTime ?? 0);
    await expect.poll(workedAt, { timeout: 60_000 }).toBeGreaterThan(0);
    const board = await workedAt();
    await page.locator('.uplot canvas').first().waitFor();

    const thread = await threadTime(page);
    const start = await handleOf(page, 'side', 'steering.box.pitmanBall');
    const wave = async (from: { x: number; y: number }) => {
      const before = await thread();
      for (let step = 0; step < STEPS; step += 1) {
        await page.mouse.move(from.x + 25 * Math.sin(step / 9), from.y + 20 * Math.sin(step / 7));
        await frame(page);
      }
      return ((await thread()) - before) / STEPS;
    };
    await page.mouse.move(start.x, start.y);
    await page.mouse.down();
    await wave(start);
    const dragged = await wave(start);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    const idle = await wave({ x: start.x - 60, y: start.y + 120 });

    const frames = async () => {
      const before = await thread();
      for (let step = 0; step < STEPS; step += 1) await frame(page);
      return ((await thread()) - before) / STEPS;
    };
    const still = await frames();
    await page.getByRole('button', { name: 'Run travel' }).click();
    const played = await frames();
    await page.getByRole('button', { name: 'Stop', exact: true }).click();

    await page.getByRole('button', { name: /^Cars and variants/ }).click();
    const other = page
      .getByRole('complementary', { name: 'Cars and variants' })
      .getByRole('button', { name: LAYOUTS[1]?.name as string, exact: true });
    await other.waitFor();
    const opened = await other.evaluate(async (button, name) => {
      const begun = performance.now();
      (button as HTMLElement).click();
      while (!document.title.startsWith(name)) await new Promise((done) => requestAnimationFrame(done));
      await new Promise((done) => requestAnimationFrame(done));
      return performance.now() - begun;
    }, LAYOUTS[1]?.name as string);

    await page.getByRole('button', { name: 'Sheet', exact: true }).click();
    const print = page.getByRole('button', { name: 'Make the build sheet' });
    await print.waitFor();
    const printing = performance.now();
    const download = page.waitForEvent('download', { timeout: 120_000 });
    await print.click();
    await (await download).saveAs(join(data, 'sheet.pdf'));
    const printed = performance.now() - printing;
    await context.close();
    return {
      figures: {
        'the program answers': program.took,
        'first paint': firstPaint,
        'board can be worked at': board,
        'another car opened': opened,
        'a drag step': dragged,
        'a step of the travel played': played,
        'a sheet printed': printed,
      },
      peers: {
        'the program answers': bare.took,
        'first paint': emptyPainted,
        'board can be worked at': emptyPainted,
        'a drag step': idle,
        'a step of the travel played': still,
      },
    };
  } finally {
    await Promise.all([browser.close(), program.end(), bare.end()]);
    rmSync(data, { recursive: true, force: true });
  }
}

test('from a cold start to a printed sheet, beside peers of the same run', {
  timeout: 1_200_000,
}, async () => {
  const builds = BEFORE ? { now: HERE, before: resolve(BEFORE) } : { now: HERE };
  const runs = new Map<string, Awaited<ReturnType<typeof session>>[]>();
  // Turn about, so that a noisy machine troubles both alike.
  for (let round = 0; round < ROUNDS; round += 1)
    for (const [name, build] of Object.entries(builds))
      runs.set(name, [...(runs.get(name) ?? []), await session(build)]);
  const of = (name: string, figure: Figure) =>
    median((runs.get(name) ?? []).map(({ figures }) => figures[figure]));
  const all = [...runs.values()].flat();
  for (const [figure, budget] of Object.entries(BUDGETS) as [Figure, number][]) {
    const now = of('now', figure);
    const peers = all.flatMap(({ peers }) => peers[figure] ?? []);
    const beside =
      peers.length > 0
        ? `, ${(now / median(peers)).toFixed(1)} times the peer's ${median(peers).toFixed(1)}`
        : '';
    const pairs = (runs.get('before') ?? []).map(
      ({ figures }, at) => (runs.get('now')?.[at]?.figures[figure] ?? Number.NaN) / figures[figure],
    );
    const than =
      pairs.length > 0
        ? `; before ${of('before', figure).toFixed(1)}, ratio ${median(pairs).toFixed(2)}`
        : '';
    process.stdout.write(`${figure}: ${now.toFixed(1)} ms (budget ${budget})${beside}${than}\n`);
    expect(now).toBeGreaterThan(0);
  }
});
