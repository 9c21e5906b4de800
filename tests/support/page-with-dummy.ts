import { join, resolve } from 'node:path';
import { loadConfigFromFile } from 'electron-vite';
import { build, mergeConfig, type Plugin, type UserConfig } from 'vite';

const root = resolve(import.meta.dirname, '../..');
const LIST = 'src-renderer/places/index.ts';
const DUMMY = join(root, 'tests/support/dummy-place/place.svelte.ts').replaceAll('\\', '/');

/** The list of places with one more: its import, and its line at the end of the list. */
function withDummy(code: string): string {
  const listed = code.replace(/\n\];/, '\n  dummyPlace,\n];');
  if (listed === code) throw new Error(`${LIST} has no list of places`);
  return `import { dummyPlace } from '${DUMMY}';\n${listed}`;
}

/** Builds the page into a folder as the program's build does, with the dummy in its list of places. */
export async function buildPageWithDummy(outDir: string): Promise<void> {
  const { config } = await loadConfigFromFile(
    { command: 'build', mode: 'production' },
    join(root, 'electron.vite.config.ts'),
  );
  const { renderer } = config as { renderer: UserConfig };
  const plugin: Plugin = {
    name: 'one-more-place',
    enforce: 'pre',
    transform: (code, id) => (id.replaceAll('\\', '/').endsWith(`/${LIST}`) ? withDummy(code) : undefined),
  };
  await build(
    mergeConfig(renderer, {
      configFile: false,
      base: './',
      logLevel: 'error',
      plugins: [plugin],
      // As it is written: whether a place is found does not hang on the size of its files.
      build: { outDir, emptyOutDir: true, minify: false },
    }),
  );
}
