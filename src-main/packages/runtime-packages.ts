import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join } from 'node:path';

/** A package that the built program loads when it runs. */
export interface RuntimePackage {
  /** Its folder. */
  readonly folder: string;
  /** Where it lies below the program, with slashes: `node_modules/NAME`, or within the package that alone asks for it. */
  readonly place: string;
}

interface Manifest {
  readonly name: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
}

const manifestOf = (folder: string) =>
  JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;

/** What stands in quotes behind from, import, import(, require( or resolve(. */
const NAMED = /(?:\bfrom|\bimport|\b(?:import|require|resolve)\()\s*["'`]([^"'`./][^"'`]*)["'`]/g;

/** The packages that built files name, and the families of type, whose files are found by names put together. */
function namedBy(main: string, root: string): string[] {
  const names = new Set<string>();
  const files = readdirSync(main, { recursive: true, encoding: 'utf8' }).filter((path) =>
    /\.c?js$/.test(path),
  );
  for (const path of files) {
    const text = readFileSync(join(main, path), 'utf8');
    for (const [, specifier = ''] of text.matchAll(NAMED)) {
      const parts = specifier.split('/');
      names.add(specifier.startsWith('@') ? parts.slice(0, 2).join('/') : (parts[0] ?? ''));
    }
    if (text.includes('@fontsource/'))
      for (const name of Object.keys(manifestOf(root).dependencies ?? {}))
        if (name.startsWith('@fontsource/')) names.add(name);
  }
  const known = new Set(Object.keys(manifestOf(root).dependencies ?? {}));
  return [...names].filter((name) => known.has(name) && !builtinModules.includes(name)).sort();
}

/** Where a package finds another, as Node looks for it. */
function found(from: string, name: string): string | undefined {
  for (let folder = from; ; folder = dirname(folder)) {
    const path = join(folder, 'node_modules', name);
    if (existsSync(join(path, 'package.json'))) return path;
    if (folder === dirname(folder)) return undefined;
  }
}

/**
 * All packages that the built program at `root` loads, with all that they ask for, as the folder of packages of `root` has them.
 * Throws where one is missing that is not optional.
 */
export function runtimePackages(root: string): readonly RuntimePackage[] {
  const packages = new Map<string, RuntimePackage>();
  const visit = (name: string, from: string, fromPlace: string, optional: boolean) => {
    const link = found(from, name);
    if (link === undefined) {
      if (optional) return;
      throw new Error(`the package ${name} is not installed: run npm ci first`);
    }
    // Found beside or above who asks: it lies at the top. Else within.
    const within = link.startsWith(join(from, 'node_modules'));
    const place = within && fromPlace !== '' ? `${fromPlace}/node_modules/${name}` : `node_modules/${name}`;
    if (packages.has(place)) return;
    const folder = realpathSync(link);
    packages.set(place, { folder, place });
    const { dependencies = {}, optionalDependencies = {} } = manifestOf(folder);
    for (const next of Object.keys({ ...dependencies, ...optionalDependencies }))
      visit(next, folder, place, next in optionalDependencies);
  };
  for (const name of namedBy(join(root, 'out', 'main'), root)) visit(name, root, '', false);
  return [...packages.values()].sort((a, b) => a.place.localeCompare(b.place));
}

/** The packages that the program names and does not load when it runs: what the built page has taken in. */
export function pageOnlyPackages(root: string): readonly string[] {
  const loaded = new Set(runtimePackages(root).map(({ place }) => place.replace('node_modules/', '')));
  return Object.keys(manifestOf(root).dependencies ?? {}).filter((name) => !loaded.has(name));
}

/** Whether a file of a package is needed where it runs: not the sources of what is compiled, nor what is compiled for other systems. */
export function isNeeded(place: string, path: string, system: string): boolean {
  const parts = path.split(/[\\/]/);
  if (place === 'node_modules/better-sqlite3') {
    if (['deps', 'src', 'build'].includes(parts[0] ?? '')) return false;
    if (parts[0] === 'prebuilds' && parts.length > 1) return parts.at(-1)?.startsWith(system) === true;
  }
  if (place.startsWith('node_modules/@fontsource/')) return !/\.(css|scss|woff2)$/.test(path);
  return !/\.(map|d\.[cm]?ts)$/.test(path);
}
