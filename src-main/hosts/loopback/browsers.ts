import { accessSync, constants } from 'node:fs';
import { posix, win32 } from 'node:path';
import type { Environment } from '../../store/index.ts';

/** A browser that can open a page as a window of its own. */
export interface Browser {
  readonly name: string;
  readonly path: string;
}

/** Looked for on the search path of a Unix. */
const COMMANDS: readonly (readonly [name: string, command: string])[] = [
  ['Chromium', 'chromium'],
  ['Chromium', 'chromium-browser'],
  ['Chrome', 'google-chrome'],
  ['Chrome', 'google-chrome-stable'],
  ['Edge', 'microsoft-edge'],
  ['Edge', 'microsoft-edge-stable'],
];

const MAC: readonly (readonly [name: string, path: string])[] = [
  ['Chrome', 'Google Chrome.app/Contents/MacOS/Google Chrome'],
  ['Edge', 'Microsoft Edge.app/Contents/MacOS/Microsoft Edge'],
  ['Chromium', 'Chromium.app/Contents/MacOS/Chromium'],
];

const WINDOWS: readonly (readonly [name: string, path: string])[] = [
  ['Edge', 'Microsoft\\Edge\\Application\\msedge.exe'],
  ['Chrome', 'Google\\Chrome\\Application\\chrome.exe'],
  ['Chromium', 'Chromium\\Application\\chrome.exe'],
];

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function* candidates(platform: NodeJS.Platform, env: Environment): Generator<Browser> {
  if (platform === 'win32') {
    for (const variable of ['ProgramFiles', 'ProgramFiles(x86)', 'LOCALAPPDATA'])
      for (const [name, path] of WINDOWS)
        if (env[variable]) yield { name, path: win32.join(env[variable], path) };
    return;
  }
  if (platform === 'darwin')
    for (const root of ['/Applications', posix.join(env['HOME'] ?? '/', 'Applications')])
      for (const [name, path] of MAC) yield { name, path: posix.join(root, path) };
  const folders = (env['PATH'] ?? '').split(':').filter((folder) => posix.isAbsolute(folder));
  for (const [name, command] of COMMANDS)
    for (const folder of folders) yield { name, path: posix.join(folder, command) };
}

/** The first browser of the system that can do it, if there is one. */
export function findBrowser(
  platform: NodeJS.Platform = process.platform,
  env: Environment = process.env,
  exists: (path: string) => boolean = isProgram,
): Browser | undefined {
  for (const browser of candidates(platform, env)) if (exists(browser.path)) return browser;
  return undefined;
}

/** Why no window is to be opened here, in one plain clause; undefined if nothing stands against it. */
export function noWindowReason(
  platform: NodeJS.Platform = process.platform,
  env: Environment = process.env,
): string | undefined {
  if (env['TOEBOARD_NO_WINDOW']) return 'TOEBOARD_NO_WINDOW is set';
  if (env['CI']) return 'CI is set';
  if (platform === 'linux' && !env['DISPLAY'] && !env['WAYLAND_DISPLAY']) return 'there is no display';
  return undefined;
}
