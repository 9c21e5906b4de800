import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, readFileSync, readlinkSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
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
  mkdirSync(folder, { recursive: true });
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

/** Opens the board as a window of its own; the process ends when that window is closed. */
export function openWindow(browser: Browser, address: string, profile: Profile): ChildProcess {
  // A browser started by the superuser refuses to run in its sandbox.
  const asRoot = process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const args = [`--app=${address}`, `--user-data-dir=${profile.folder}`, ...FLAGS, ...asRoot];
  return spawn(browser.path, args, { stdio: 'ignore' });
}
