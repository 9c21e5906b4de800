import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

// Not called "require": the bundler brings one of its own.
const packages = createRequire(import.meta.url);

/** The program's own type, as the page carries it: family, weight, file. Letters of other scripts are the reader's system's. */
const FACES = [
  ['Barlow', 400, 'barlow/files/barlow-latin-400-normal'],
  ['Barlow', 600, 'barlow/files/barlow-latin-600-normal'],
  ['Barlow Condensed', 600, 'barlow-condensed/files/barlow-condensed-latin-600-normal'],
] as const;

/** Style rules that bring the type within themselves. */
export function pageType(): string {
  return FACES.map(([family, weight, file]) => {
    const bytes = readFileSync(packages.resolve(`@fontsource/${file}.woff2`)).toString('base64');
    return `@font-face{font-family:"${family}";font-weight:${weight};src:url(data:font/woff2;base64,${bytes}) format("woff2")}\n`;
  }).join('');
}
