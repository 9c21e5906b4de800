import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The program's own folder: the nearest one above this file with a package.json, from source and when built alike. */
export function programFolder(from: string = import.meta.dirname): string {
  for (let folder = from; ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'package.json'))) return folder;
    if (folder === dirname(folder)) throw new Error(`no package.json above ${from}`);
  }
}

/** Where the demonstrations are. */
export function projectsFolder(): string {
  return join(programFolder(), 'projects');
}

/** Where the built board is. */
export function rendererFolder(): string {
  return join(programFolder(), 'out', 'renderer');
}

export function programVersion(): string {
  const text = readFileSync(join(programFolder(), 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
