import { spawn } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** What a build reads, and the last file that each of its parts writes. */
const SOURCES = [
  'src-main',
  'src-renderer',
  'src-page',
  'shared-math',
  'electron.vite.config.ts',
  'package.json',
];
const RESULTS = [
  'out/main/electron-main.js',
  'out/main/loopback-main.js',
  'out/main/command-line.js',
  'out/main/page-that-moves.js',
  'out/preload/electron-preload.cjs',
  'out/renderer/index.html',
];

/** ms since 1970 of the latest change in a file or folder; a folder's own time tells of files removed. */
function latestChange(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  const inside = readdirSync(path).map((name) => latestChange(join(path, name)));
  return Math.max(stat.mtimeMs, ...inside);
}

/** Whether the built program is missing or older than what it is built from. */
export function needsBuild(root: string): boolean {
  const results = RESULTS.map((path) => statSync(join(root, path), { throwIfNoEntry: false })?.mtimeMs ?? 0);
  const sources = SOURCES.map((path) => latestChange(join(root, path)));
  return Math.min(...results) < Math.max(...sources);
}

/** Builds the program; tells whether that went well. What went wrong has been printed by the build itself. */
export function build(root: string): Promise<boolean> {
  const command = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
  const args = [command, 'build', '--logLevel', 'warn'];
  return new Promise((resolve) => {
    spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] })
      .once('exit', (code) => resolve(code === 0))
      .once('error', () => resolve(false));
  });
}
