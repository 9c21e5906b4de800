import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync, readlinkSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { makeFolders } from '../private-folder.ts';
import type { Browser } from './browsers.ts';

/** A browser's profile folder, ours until released. */
export interface Profile {
  readonly folder: string;
  readonly release: () => void;
}

function isRunning(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Not ours to signal, but there.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Whether a browser still runs on the profile: that of a program that was killed may have outlived it. */
function hasBrowser(folder: string): boolean {
  try {
    // On Linux and macOS, Chromium's own lock: a link to HOST-PID.
    return isRunning(Number(readlinkSync(join(folder, 'SingletonLock')).replace(/^.*-/, '')));
  } catch {
    return false;
  }
}

/** Takes the folder if no running program holds it. A mark left behind by a killed one counts for nothing. */
function claimed(folder: string): Profile | undefined {
  makeFolders(folder);
  if (hasBrowser(folder)) return undefined;
  const mark = join(folder, 'in-use');
  for (const attempt of [1, 2]) {
    try {
      writeFileSync(mark, String(process.pid), { flag: 'wx' });
      return { folder, release: () => rmSync(mark, { force: true }) };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      if (attempt === 2 || isRunning(Number(readFileSync(mark, 'utf8')))) return undefined;
      rmSync(mark, { force: true });
    }
  }
  return undefined;
}

/**
 * A profile that no other running Toeboard uses: a second browser on the same profile would hand its window over
 * to the first and end, and with it this program.
 */
export function claimProfile(dataFolder: string): Profile {
  for (let number = 1; ; number += 1) {
    const profile = claimed(join(dataFolder, 'browser', String(number)));
    if (profile) return profile;
  }
}

const FLAGS = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-mode',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--window-size=1440,900',
];

export interface OpenWindow {
  readonly process: ChildProcess;
  /** The page has come to life: what led it to its address is taken away. */
  readonly arrived: () => void;
}

/**
 * A page that leads to an address, in a file for its owner alone. The address holds a code, and the arguments of a process
 * are there for every user of the machine to read. It leaves no entry behind to come back to.
 */
function leadingPage(address: string, profile: Profile): string {
  const path = join(profile.folder, 'open.html');
  rmSync(path, { force: true });
  const page = `<!doctype html><meta charset="utf-8"><title>Toeboard</title><script>location.replace(${JSON.stringify(address)})</script>\n`;
  writeFileSync(path, page, { mode: 0o600, flag: 'wx' });
  return path;
}

/** Opens the board as a window of its own; the process ends when that window is closed. */
export function openWindow(browser: Browser, address: string, profile: Profile): OpenWindow {
  // A browser started by the superuser refuses to run in its sandbox.
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const page = leadingPage(address, profile);
  const args = [`--app=${pathToFileURL(page)}`, `--user-data-dir=${profile.folder}`, ...FLAGS, ...asRoot];
  const arrived = () => rmSync(page, { force: true });
  const child = spawn(browser.path, args, { stdio: 'ignore' });
  child.once('exit', arrived).once('error', arrived);
  return { process: child, arrived };
}
