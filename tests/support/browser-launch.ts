import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { type Browser, type BrowserServer, chromium, type LaunchOptions } from 'playwright-core';
import { findBrowser } from '../../src-main/hosts/loopback/browsers.ts';

/** Quiet, and without what a test machine may not have: a sandbox for root, a graphics card, the internet. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
];

/** Unpacked once for each install, out of the way of any other program's. */
const UNPACKED = resolve(import.meta.dirname, '../../node_modules/.cache/toeboard-test-browser');

/** Where the packaged browser finds its letters; its own list names folders of another machine. */
const FONTS = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(UNPACKED, 'fonts')}</dir>
  <cachedir>${join(UNPACKED, 'fonts-cache')}</cachedir>
</fontconfig>
`;

/** Runs something with the folder for temporary files elsewhere: the packaged browser unpacks itself there. */
async function withTemporaryFolder<Value>(folder: string, run: () => Promise<Value>): Promise<Value> {
  const before = process.env['TMPDIR'];
  process.env['TMPDIR'] = folder;
  try {
    return await run();
  } finally {
    if (before === undefined) delete process.env['TMPDIR'];
    else process.env['TMPDIR'] = before;
  }
}

/** Unpacks the browser of the package and the libraries that a bare Linux lacks; whole or not at all. */
async function unpackedBrowser(): Promise<string> {
  if (process.platform !== 'linux' || process.arch !== 'x64')
    throw new Error('Browser tests need Chromium, Chrome or Edge installed on this system.');
  if (!existsSync(UNPACKED)) {
    const { default: packaged, inflate } = await import('@sparticuz/chromium');
    // A setup of the whole run is loaded by the test runner, which resolves nothing by import.meta.
    const archives = join(dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium')), '../bin');
    const aside = `${UNPACKED}-${process.pid}`;
    mkdirSync(aside, { recursive: true });
    await withTemporaryFolder(aside, async () => {
      await packaged.executablePath();
      await inflate(join(archives, 'al2023.tar.br'));
    });
    writeFileSync(join(aside, 'fonts.conf'), FONTS);
    if (existsSync(UNPACKED)) rmSync(aside, { recursive: true });
    else renameSync(aside, UNPACKED);
  }
  return join(UNPACKED, 'chromium');
}

/** What a browser is started with: the system's where there is one that starts, else the packaged one. Prints which. */
async function startable<Started>(start: (options: LaunchOptions) => Promise<Started>): Promise<Started> {
  const system = findBrowser();
  if (system)
    try {
      const started = await start({ executablePath: system.path, args: FLAGS });
      process.stdout.write(`browser: ${system.path}\n`);
      return started;
    } catch (error) {
      const [reason] = (error as Error).message.split('\n');
      process.stdout.write(`browser: ${system.path} does not start (${reason})\n`);
    }
  const executablePath = await unpackedBrowser();
  process.stdout.write('browser: the one packaged with the tests\n');
  return start({
    executablePath,
    args: FLAGS,
    env: {
      ...process.env,
      LD_LIBRARY_PATH: join(UNPACKED, 'al2023/lib'),
      FONTCONFIG_FILE: join(UNPACKED, 'fonts.conf'),
    },
  });
}

/** A browser of its own, for a program that is no test run. */
export const launchBrowser = (): Promise<Browser> => startable((options) => chromium.launch(options));

/** A browser that several processes connect to; each of them makes contexts of its own in it. */
export const serveBrowser = (): Promise<BrowserServer> =>
  startable((options) => chromium.launchServer(options));
