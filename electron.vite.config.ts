import { resolve } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'electron-vite';
import type { Plugin } from 'vite';
import { bundlePage } from './src-main/output/moving/bundle-page.ts';
import { BUILT_SCRIPT, BUILT_STYLE } from './src-main/output/moving/page-sources.ts';

const at = (path: string) => resolve(import.meta.dirname, path);

/** Puts the script and the style of the page that moves beside the program, as one file each. */
const pageThatMoves: Plugin = {
  name: 'page-that-moves',
  async generateBundle() {
    const { script, style } = await bundlePage();
    this.emitFile({ type: 'asset', fileName: BUILT_SCRIPT, source: script });
    this.emitFile({ type: 'asset', fileName: BUILT_STYLE, source: style });
  },
};

export default defineConfig({
  main: {
    plugins: [pageThatMoves],
    build: {
      outDir: 'out/main',
      rollupOptions: {
        input: {
          'electron-main': at('src-main/electron-main.ts'),
          'loopback-main': at('src-main/loopback-main.ts'),
          'command-line': at('src-main/command-line.ts'),
        },
      },
    },
  },
  preload: {
    build: {
      outDir: 'out/preload',
      rollupOptions: {
        input: { 'electron-preload': at('src-main/electron-preload.ts') },
        // A sandboxed preload must be one CommonJS file.
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: at('src-renderer'),
    build: {
      outDir: 'out/renderer',
      minify: true,
      // One sheet of styles: a file that is loaded late brings its script alone, and can be asked for again.
      cssCodeSplit: false,
      modulePreload: { polyfill: false },
      rollupOptions: { input: { index: at('src-renderer/index.html') } },
    },
    plugins: [svelte({ configFile: at('src-renderer/svelte.config.js') })],
  },
});
