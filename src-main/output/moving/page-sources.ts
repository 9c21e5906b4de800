import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { programFolder } from '../../files/program-folder.ts';
import type { PageSources } from './bundle-page.ts';

/** Where a build puts them. */
export const BUILT_SCRIPT = 'page-that-moves.js';
export const BUILT_STYLE = 'page-that-moves.css';

/** Whether this is a source, run as it is. */
const FROM_SOURCE = import.meta.filename.endsWith('.ts');

let known: Promise<PageSources> | undefined;

/**
 * The script of the page that moves, bundled with the mathematics and minified, and its style. The built program has both as
 * files; run from source, they are made anew, so that they are never older than the sources.
 */
export function pageSources(): Promise<PageSources> {
  known ??= FROM_SOURCE ? bundled() : built();
  return known;
}

async function built(): Promise<PageSources> {
  const read = (name: string) => readFileSync(join(programFolder(), 'out', 'main', name), 'utf8');
  return { script: read(BUILT_SCRIPT), style: read(BUILT_STYLE) };
}

async function bundled(): Promise<PageSources> {
  // Named apart from the call, so that no bundler takes the bundler into the program.
  const bundler = new URL('./bundle-page.ts', import.meta.url).href;
  const { bundlePage } = (await import(/* @vite-ignore */ bundler)) as typeof import('./bundle-page.ts');
  return bundlePage();
}
