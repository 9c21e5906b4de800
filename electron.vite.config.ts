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

/** The letters of the bar and of what stands in the page first. */
const FIRST_LETTERS = /\/(?:barlow-latin-(?:400|600)|barlow-condensed-latin-600)-normal-[\w-]+\.woff2$/;

/** Names what the first of the page is made of in its HTML, so that a browser asks for all of it at once and not file by file. */
const firstFiles: Plugin = {
  name: 'first-files',
  transformIndexHtml: {
    order: 'post',
    handler(_html, { bundle = {} }) {
      const page = Object.values(bundle).find((file) => file.type === 'chunk' && file.name === 'page');
      const scripts = new Set<string>();
      const follow = (name: string) => {
        const file = bundle[name];
        if (file?.type !== 'chunk' || scripts.has(name)) return;
        scripts.add(name);
        for (const imported of file.imports) follow(imported);
      };
      if (page) follow(page.fileName);
      const letters = Object.keys(bundle).filter((name) => FIRST_LETTERS.test(`/${name}`));
      return [
        ...letters.map((name) => ({
          tag: 'link',
          attrs: { rel: 'preload', as: 'font', type: 'font/woff2', href: `./${name}`, crossorigin: true },
          injectTo: 'head' as const,
        })),
        ...[...scripts].map((name) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', href: `./${name}`, crossorigin: true },
          injectTo: 'head' as const,
        })),
      ];
    },
  },
};

/**
 * All of the first page in one file: a browser takes a hundred small ones far slower. What is only reached through a folder's door
 * by name is no part of it; the bundler sees to that for each file by itself.
 */
const FIRST_PAGE = {
  name: 'page',
  tags: ['$initial' as const],
  test: (id: string) =>
    !/\/shared-math\/(?:findings\/rules|forces|clearance)\//.test(id.replaceAll('\\', '/')),
  includeDependenciesRecursively: false,
};

/** The page checks documents and publishes no JSON schema of them: what the library has for that stays out of its script. */
const withoutJsonSchemas: Plugin = {
  name: 'without-json-schemas',
  transform: (code, id) =>
    /\/zod\/v4\/classic\/schemas\.js$/.test(id.replaceAll('\\', '/'))
      ? code
          .replaceAll(/^\s*inst\._zod\.processJSONSchema = .*;$/gm, '')
          .replaceAll(/create(?:Standard|To)JSONSchemaMethod\(this, [^)]*\)(?:\(params\))?/g, 'undefined')
      : undefined,
};

/**
 * A file of the mathematics does nothing by being loaded. Told so, the bundler follows what is used through a folder's door to the
 * file that it stands in, and leaves the others behind that door out of what the page loads first.
 */
const PURE_MATHS = { moduleSideEffects: [{ test: /\/shared-math\//, sideEffects: false }] };

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
      // kB. The first page is one file on purpose; how large it may be is held by a test.
      chunkSizeWarningLimit: 1000,
      rollupOptions: {
        // How long the plugins take is of no use to whoever starts the board.
        checks: { pluginTimings: false },
        input: { index: at('src-renderer/index.html') },
        treeshake: PURE_MATHS,
        // All of the first page in one file: a browser takes a hundred small ones far slower.
        output: { codeSplitting: { groups: [FIRST_PAGE] } },
      },
    },
    worker: { rollupOptions: { treeshake: PURE_MATHS }, plugins: () => [withoutJsonSchemas] },
    plugins: [svelte({ configFile: at('src-renderer/svelte.config.js') }), firstFiles, withoutJsonSchemas],
  },
});
