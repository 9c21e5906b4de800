import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

/** Kinds of file that a built board consists of; no other is served. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.wasm': 'application/wasm',
  // What a PDF asks for that has left its own letters out: their forms and their tables.
  '.ttf': 'font/ttf',
  '.pfb': 'application/octet-stream',
  '.bcmap': 'application/octet-stream',
};

export type StaticFile =
  | {
      readonly status: 200;
      readonly type: string;
      readonly content: Buffer;
      /** Whether no other content will ever have this address. */
      readonly fixed: boolean;
    }
  | { readonly status: 403 | 404 };

/** The parts of a path, decoded; undefined if any could lead elsewhere than down. */
function partsOf(urlPath: string): string[] | undefined {
  try {
    const parts = decodeURIComponent(urlPath).split('/').slice(1);
    return parts.some((part) => part === '..' || part === '.' || /[\\\0:]/.test(part)) ? undefined : parts;
  } catch {
    return undefined;
  }
}

/** A file that carries a hash of its content in its name. */
const HASHED = /^assets\/[^/]+-[\w-]{8}\.\w+$/;
/** Hashed files that have been asked for, by folder and path: read from the disk once for the life of the program. */
const kept = new Map<string, Buffer>();

/** A file of the built board by its path in the address, `/` being its page. Links out of the folder lead nowhere. */
export async function findStatic(folder: string, urlPath: string): Promise<StaticFile> {
  const parts = partsOf(urlPath === '/' ? '/index.html' : urlPath);
  if (!parts) return { status: 403 };
  const type = TYPES[extname(parts.at(-1) ?? '')];
  if (type === undefined) return { status: 404 };
  try {
    const fixed = HASHED.test(parts.join('/'));
    const key = join(folder, ...parts);
    const before = kept.get(key);
    if (before) return { status: 200, type, content: before, fixed };
    const root = await realpath(folder);
    const path = await realpath(join(root, ...parts));
    if (!path.startsWith(root + sep)) return { status: 403 };
    const content = await readFile(path);
    if (fixed) kept.set(key, content);
    return { status: 200, type, content, fixed };
  } catch {
    return { status: 404 };
  }
}
