import { chmodSync, cpSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './host-process.ts';

const COPIED = [
  'src-main',
  'src-page',
  'shared-math',
  'projects',
  'package.json',
  'electron.vite.config.ts',
  '.tsconfig.base.json',
  'src-renderer/svelte.config.js',
];

/**
 * A copy of the program with a board of one line and without Electron: what a start builds and opens there
 * disturbs no other test, and whether Electron is there is the test's to say.
 */
export function programTree(root: string): string {
  for (const path of COPIED) cpSync(join(ROOT, path), join(root, path), { recursive: true });
  writeFileSync(join(root, 'src-renderer', 'index.html'), '<!doctype html><title>Toeboard</title>');
  mkdirSync(join(root, 'node_modules'));
  for (const name of readdirSync(join(ROOT, 'node_modules')))
    if (name !== 'electron' && name !== '.bin')
      symlinkSync(join(ROOT, 'node_modules', name), join(root, 'node_modules', name), 'junction');
  return root;
}

/** Puts a program in the place of Electron's binary, written for the shell. */
export function fakeElectron(root: string, script: string): void {
  const folder = join(root, 'node_modules', 'electron');
  const binary = join(folder, 'dist', 'electron');
  mkdirSync(join(folder, 'dist'), { recursive: true });
  writeFileSync(join(folder, 'path.txt'), 'electron');
  writeFileSync(binary, `#!/bin/sh\n${script}\n`);
  chmodSync(binary, 0o755);
}
