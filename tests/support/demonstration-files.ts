import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type LayoutDocument, readLayout } from '../../shared-math/layout/index.ts';

const folder = resolve(import.meta.dirname, '../../projects');

/** The demonstrations' layouts, by file name. */
export const DEMONSTRATIONS: readonly (readonly [file: string, document: LayoutDocument])[] = readdirSync(
  folder,
)
  .filter((file) => file.endsWith('.json') && file !== 'shop.json')
  .map((file) => {
    const read = readLayout(JSON.parse(readFileSync(join(folder, file), 'utf8')));
    if (!read.ok) throw new Error(`${file}: ${read.failure.path} ${read.failure.reason}`);
    return [file, read.value] as const;
  });

/** A demonstration by the name of its file, without the ending. */
export function demonstration(name: string): LayoutDocument {
  const found = DEMONSTRATIONS.find(([file]) => file === `${name}.json`);
  if (!found) throw new Error(`there is no demonstration called ${name}`);
  return found[1];
}
