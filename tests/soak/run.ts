// npm run soak -- MINUTES [--seed NUMBER] [--acts NUMBER] [--only KIND,KIND]: scripted work on the built program, as it goes on in a shop for
// hours, with all that goes wrong there. Ends with 1 and one plain line if something is lost, complains or grows.
import '../support/require-node.ts';
import { appendFileSync, mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { Browser, Page } from 'playwright-core';
import { quoted } from '../../shared-math/outside/index.ts';
import { launchBrowser } from '../support/browser-launch.ts';
import buildOnce from '../support/build-once.ts';
import { ACTS } from './acts/index.ts';
import { makeDisk } from './disk.ts';
import { Watch } from './figures.ts';
import { Ledger } from './ledger.ts';
import { type Act, type Kind, plan } from './plan.ts';
import { Program } from './program.ts';
import { NotNow, settle, toTheBoard, type World } from './world.ts';

const MINUTES_USUAL = 180;
/** Acts from one reading of the figures to the next. */
const READ_EVERY = 10;
/** Of the acts of one kind at most this share may have been impossible, from so many on: else the run proves nothing. */
const NOT_NOW_MOST = 0.5;
const TRIES_JUDGED = 4;
/** What a browser says by itself when nobody answers. */
const NOBODY_ANSWERS = /Failed to load resource: net::ERR_/;

function usage(reason: string): never {
  console.error(`${reason}\nnpm run soak -- [MINUTES] [--seed NUMBER] [--acts NUMBER] [--only KIND,KIND]`);
  process.exit(2);
}

function positive(text: string, what: string): number {
  const value = Number(text);
  if (!(Number.isFinite(value) && value > 0)) usage(`${what} is no number above 0: ${text}`);
  return value;
}

function kinds(text: string): ReadonlySet<Kind> {
  const wanted = text.split(',');
  const unknown = wanted.find((kind) => !Object.hasOwn(ACTS, kind));
  if (unknown !== undefined)
    usage(`--only: there is no act ${quoted(unknown)}; there are ${Object.keys(ACTS).join(', ')}`);
  return new Set(wanted as Kind[]);
}

function wishes() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { seed: { type: 'string' }, acts: { type: 'string' }, only: { type: 'string' } },
    });
    return {
      minutes: positive(positionals[0] ?? String(MINUTES_USUAL), 'MINUTES'),
      seed: values.seed === undefined ? Date.now() & 0x7fffffff || 1 : positive(values.seed, '--seed'),
      only: values.only === undefined ? undefined : kinds(values.only),
      acts: values.acts === undefined ? Number.POSITIVE_INFINITY : positive(values.acts, '--acts'),
    };
  } catch (error) {
    return usage((error as Error).message);
  }
}

const { minutes, seed, acts, only } = wishes();
const work = realpathSync(mkdtempSync(join(tmpdir(), 'toeboard-soak-')));
const logFile = join(work, `seed-${seed}.log`);
const log = (line: string) => appendFileSync(logFile, `${new Date().toISOString()} ${line}\n`);
const say = (line: string) => {
  console.log(line);
  log(line);
};

const disk = makeDisk(work);
say(`seed ${seed}, ${minutes} minutes; full disk by ${disk.how}; every act stands in ${logFile}`);

const complaints: string[] = [];
const program = new Program(disk.dataFolder, join(work, 'clock'));
const ledger = new Ledger();
const tallies = new Map<Kind, { done: number; notNow: number }>();

function listenTo(page: Page): void {
  ledger.listenTo(page);
  page.on('console', (message) => {
    if (!['error', 'warning'].includes(message.type())) return;
    if (NOBODY_ANSWERS.test(message.text()) && program.mayBeSilent) return;
    complaints.push(`the page complains: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`the page fails: ${error.stack ?? error.message}`));
}

async function makeWorld(browser: Browser): Promise<{ world: World; watch: Watch }> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: 'en-GB' });
  context.setDefaultTimeout(60_000);
  await context.addInitScript(() => {
    if (!sessionStorage.getItem('toeboard-column')) sessionStorage.setItem('toeboard-column', 'points');
    const SystemDate = Date;
    const shift = () => (window as { soakClock?: number }).soakClock ?? 0;
    window.Date = class extends SystemDate {
      constructor(...given: [] | ConstructorParameters<DateConstructor>) {
        if (given.length === 0) super(SystemDate.now() + shift());
        else super(...(given as [number]));
      }
      static override now() {
        return SystemDate.now() + shift();
      }
    } as DateConstructor;
  });
  const openPage = async () => {
    const page = await context.newPage();
    listenTo(page);
    await page.goto(await program.onceMore());
    return page;
  };
  await program.start();
  const page = await openPage();
  await page.getByRole('button', { name: 'Add the demonstration shop' }).click();
  await page.getByRole('button', { name: 'Pitman ball', exact: true }).waitFor();
  const watch = await Watch.over(page, program);
  const world: World = {
    context,
    program,
    ledger,
    disk,
    page,
    anotherPage: async () => {
      const another = await openPage();
      await another.getByRole('navigation', { name: 'Places' }).waitFor();
      return another;
    },
    pageReborn: () => {
      watch.pageLife += 1;
    },
  };
  return { world, watch };
}

async function doOne(world: World, act: Act): Promise<void> {
  const tally = tallies.get(act.kind) ?? { done: 0, notNow: 0 };
  tallies.set(act.kind, tally);
  log(`${act.number} ${act.kind} …`);
  try {
    await toTheBoard(world.page);
    const done = await ACTS[act.kind](world, act.lots);
    tally.done += 1;
    log(`${act.number} ${act.kind}: ${done}`);
  } catch (error) {
    if (!(error instanceof NotNow))
      throw new Error(`act ${act.number}, ${act.kind}: ${(error as Error).message}`);
    tally.notNow += 1;
    log(`${act.number} ${act.kind}: not now, ${error.message}`);
  }
  const faults = [...complaints, ...program.complaints.map((line) => `the program says: ${line}`)];
  if (faults.length > 0) throw new Error(`after act ${act.number}, ${act.kind}: ${faults.join('; ')}`);
}

async function readFigures(world: World, watch: Watch, at: number): Promise<void> {
  await settle(world.page);
  await toTheBoard(world.page);
  await watch.read(at);
}

/** Works until the time is up; gives what failed, one line each. */
async function soak(world: World, watch: Watch): Promise<string[]> {
  const until = Date.now() + minutes * 60_000;
  let number = 0;
  await readFigures(world, watch, 0);
  for (const act of plan(seed, only)) {
    if (Date.now() > until || act.number > acts) break;
    await doOne(world, act);
    number = act.number;
    if (number % READ_EVERY === 0) await readFigures(world, watch, number);
  }
  await settle(world.page);
  const { lines, growing } = watch.verdict();
  for (const line of lines) say(line);
  await program.kill();
  const found = ledger.check(program.folder);
  say(
    `${number} acts, ${ledger.count} saves acknowledged, ${program.lives} lives of the program; at the end ${found} saves looked for and found`,
  );
  const idle = [...tallies].filter(
    ([, { done, notNow }]) => done + notNow >= TRIES_JUDGED && notNow / (done + notNow) > NOT_NOW_MOST,
  );
  return [
    ...growing.map((line) => `grows: ${line}`),
    ...idle.map(([kind, { notNow }]) => `proves nothing: ${kind} could not be done ${notNow} times`),
  ];
}

let failures: string[] = [];
await buildOnce();
const browser = await launchBrowser();
let watched: World | undefined;
try {
  const { world, watch } = await makeWorld(browser);
  watched = world;
  failures = await soak(world, watch);
} catch (error) {
  failures = [(error as Error).message];
  await watched?.page.screenshot({ path: join(work, 'failed.png') }).catch(() => {});
  log((error as Error).stack ?? '');
}
for (const [kind, { done, notNow }] of tallies) log(`${kind}: ${done} done, ${notNow} not now`);
await program.kill();
await browser.close();
disk.remove();
for (const line of failures) console.error(`failed: ${line.replaceAll(/\s+/g, ' ')}`);
if (failures.length > 0) {
  console.error(`to see it again: npm run soak -- ${minutes} --seed ${seed}; the log stays in ${work}`);
  process.exit(1);
}
rmSync(work, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
