import { oneLine } from '../shared-math/outside/index.ts';
import { rendererFolder } from './files/index.ts';
import { onLauncherEnd } from './hosts/lifetime.ts';
import { type Browser, findBrowser, noWindowReason } from './hosts/loopback/browsers.ts';
import { type Loopback, startLoopback } from './hosts/loopback/start-loopback.ts';
import { claimProfile, openWindow } from './hosts/loopback/window.ts';
import { keepPrivate } from './hosts/private-folder.ts';
import { dataFolder, StoreError, storageReason } from './store/index.ts';

// The loopback host as a program: serves the board, opens its window where it can, ends with its window or launcher.

keepPrivate();
const say = (line: string) => console.log(line);
const folder = dataFolder();
const browser = findBrowser();
const obstacle = noWindowReason() ?? (browser ? undefined : 'no Chromium, Chrome or Edge was found');

/** Whether a page has come to life; a browser that ends before that has failed, and was not closed by a person. */
let opened = false;
let pageArrived = () => {};
let host: Loopback;
try {
  host = await startLoopback({
    dataFolder: folder,
    rendererFolder: rendererFolder(),
    onExchanged: () => {
      // With a window of its own nobody needs another address; by hand, the page may be closed and wanted again.
      if (obstacle || opened) say(`To open it once more: ${host.newAddress()}`);
      opened = true;
      pageArrived();
    },
  });
} catch (error) {
  if (!(error instanceof StoreError)) throw error;
  console.error(oneLine(error.message));
  process.exit(1);
}

let endWindow = () => {};

async function end(): Promise<void> {
  endWindow();
  await host.close();
  process.exit(0);
}

onLauncherEnd(() => void end());
say(`Toeboard: ${host.address}`);

/** Opens the window and ends with it. A browser that ends before its page has come to life has failed instead. */
function openOwnWindow(browser: Browser): void {
  const profile = claimProfile(folder);
  const window = openWindow(browser, host.newAddress(), profile);
  pageArrived = window.arrived;
  endWindow = () => {
    window.process.kill();
    window.arrived();
    profile.release();
  };
  const onGone = () => {
    profile.release();
    if (opened) void end();
    else sayNoWindow(`${browser.name} did not open one`);
  };
  window.process.once('exit', onGone).once('error', onGone);
}

function sayNoWindow(reason: string): void {
  say(`No window is opened here (${reason}): open this address in a browser.`);
}

if (obstacle || !browser) sayNoWindow(obstacle ?? '');
else {
  try {
    openOwnWindow(browser);
  } catch (error) {
    sayNoWindow(storageReason(error) ?? String(error));
  }
}
