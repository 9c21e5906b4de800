import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { programFolder } from '../../files/program-folder.ts';

/** What a page that moves runs and looks by. */
export interface PageSources {
  readonly script: string;
  readonly style: string;
}

const FOLDER = join(programFolder(), 'src-page');
const ENTRY = join(FOLDER, 'page.ts');

/**
 * Bundles the page's script into one text, minified, and reads its style. Of the mathematics only what the script calls comes
 * along: no module is kept for what it does when it is loaded, as none of them does anything then.
 */
export async function bundlePage(): Promise<PageSources> {
  const result = await build({
    configFile: false,
    root: FOLDER,
    logLevel: 'error',
    build: {
      write: false,
      target: 'es2022',
      minify: true,
      lib: { entry: ENTRY, formats: ['iife'], name: 'page' },
      rollupOptions: { treeshake: { moduleSideEffects: (id) => resolve(id) === ENTRY } },
    },
  });
  const [{ output } = { output: [] }] = [result].flat() as { output: { code?: string }[] }[];
  const script = output[0]?.code;
  if (script === undefined || output.length !== 1) throw new Error('the page is to be one script');
  return { script: script.trim(), style: readFileSync(join(FOLDER, 'page.css'), 'utf8') };
}
