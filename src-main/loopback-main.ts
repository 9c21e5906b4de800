import { statSync } from 'node:fs';
import { oneLine } from '../shared-math/outside/index.ts';
import { rendererFolder } from './files/index.ts';
import { onLauncherEnd } from './hosts/lifetime.ts';
import { type Browser, findBrowser, noWindowReason } from './hosts/loopback/browsers.ts';
import { endAfter, Presence } from './hosts/loopback/presence.ts';
import { type Reopened, reopenRunning } from './hosts/loopback/running.ts';
import { type Loopback, startLoopback } from './hosts/loopback/start-loopback.ts';
import { claimProfile, openWindow } from './hosts/loopback/window.ts';
import { keepPrivate } from './hosts/private-folder.ts';
import { dataFolder, StoreError, storageReason } from './store/index.ts';

/*
 * The loopback host as a program: serves the board, opens its window where it can, ends with its window or launcher, and
 * without a window some time after its last page was closed. `--reopen`: where a program on the same data folder runs already,
 * has that one open its board again, and ends.
 */

keepPrivate();
const say = (line: string) => console.log(line);
const folder = dataFolder();
const browser = findBrowser();
const obstacle = noWindowReason() ?? (browser ? undefined : 'no Chromium, Chrome or Edge was found');

if (process.argv.includes('--reopen')) {
  const reopened = await reopenRunning(folder);
  if (reopened) {
    const how = reopened.window
      ? 'its window is opened again'
      : `open this address in a browser: ${reopened.address}`;
    say(`Toeboard is running already: ${how}`);
    process.exit(0);
  }
}

/** How many pages have come to life; a browser that ends before its own has failed, and was not closed by a person. */
let arrivals = 0;
const windows = new Set<{ readonly arrived: () => void; readonly close: () => void }>();
const presence = new Presence();
const patience = endAfter(process.env['TOEBOARD_END_AFTER']);

/** When the program that runs here was built. */
const builtAt = statSync(import.meta.filename).mtimeMs;

function openAgain(newAddress: () => string): Reopened | undefined {
  if (statSync(import.meta.filename, { throwIfNoEntry: false })?.mtimeMs !== builtAt) return undefined;
  return browser && !obstacle && openOwnWindow(browser)
    ? { window: true }
    : { window: false, address: newAddress() };
}

let host: Loopback;
try {
  host = await startLoopback({
    dataFolder: folder,
    rendererFolder: rendererFolder(),
    onExchanged: () => {
      // With a window of its own nobody needs another address; by hand, the page may be closed and wanted again.
      if (obstacle || arrivals > 0) say(`To open it once more: ${host.newAddress()}`);
      arrivals += 1;
      for (const { arrived } of windows) arrived();
    },
    onPage: (page, here) => presence.report(page, here, performance.now()),
    onAgain: openAgain,
  });
} catch (error) {
  if (!(error instanceof StoreError)) throw error;
  console.error(oneLine(error.message));
  process.exit(1);
}

async function end(): Promise<void> {
  for (const { close } of windows) close();
  await host.close();
  process.exit(0);
}

onLauncherEnd(() => void end());
say(`Toeboard: ${host.address}`);

/**
 * Opens a window; false, and said why, if it cannot. The program ends with the last one. A browser that ends before its page has
 * come to life has failed instead.
 */
function openOwnWindow(browser: Browser): boolean {
  try {
    const profile = claimProfile(folder);
    const before = arrivals;
    const { process: running, arrived } = openWindow(browser, host.newAddress(), profile);
    const window = {
      arrived,
      close: () => {
        running.kill();
        arrived();
        profile.release();
      },
    };
    windows.add(window);
    const onGone = () => {
      profile.release();
      windows.delete(window);
      if (arrivals === before) sayNoWindow(`${browser.name} did not open one`);
      else if (windows.size === 0) void end();
    };
    running.once('exit', onGone).once('error', onGone);
    return true;
  } catch (error) {
    sayNoWindow(storageReason(error) ?? String(error));
    return false;
  }
}

function minutes(ms: number): string {
  const count = Math.round(ms / 6000) / 10;
  return count === 1 ? 'a minute' : `${count} minutes`;
}

/** Looks now and then whether a page is still open; what the pages asked to keep is in the store by the time they are gone. */
function endWhenLeft(after: number): void {
  const look = () => {
    if (windows.size > 0 || (presence.emptyFor(performance.now()) ?? 0) < after) return;
    say(
      `No page has been open for ${minutes(after)} and all is saved: Toeboard ends. Start it again at any time.`,
    );
    void end();
  };
  setInterval(look, Math.min(after / 4, 30_000)).unref();
}

function sayNoWindow(reason: string): void {
  const stays =
    patience.ms === undefined
      ? ''
      : ` It ends by itself ${minutes(patience.ms)} after the last page is closed.`;
  say(`No window is opened here (${reason}): open this address in a browser.${stays}`);
}

if (patience.refusal) say(patience.refusal);
if (patience.ms !== undefined) endWhenLeft(patience.ms);
if (obstacle || !browser) sayNoWindow(obstacle ?? '');
else openOwnWindow(browser);
