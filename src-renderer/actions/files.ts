import { shownText } from '../../shared-math/outside/index.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import type { ImportPlace, Shop } from '../document/shop.svelte.ts';

/** Bytes. A whole car with its photos is below; anything above is not ours and would only stall the page. */
const FILE_MAX = 90_000_000;

/** Why a file is not even read as text: what it is by its bytes; undefined where it may be a layout or a car. */
async function otherKind(file: File): Promise<string | undefined> {
  const { fileKind, LOOKED_AT } = await import('../../shared-math/outside/file-kinds.ts');
  const bytes = async (part: Blob) => new Uint8Array(await part.arrayBuffer());
  const head = await bytes(file.slice(0, LOOKED_AT));
  const kind = fileKind(head, await bytes(file.slice(-LOOKED_AT)));
  if (kind === 'plain text' && /^\s*[{[]/.test(new TextDecoder().decode(head))) return undefined;
  return kind === undefined
    ? 'it is neither a layout nor a car'
    : `it is ${kind}, neither a layout nor a car`;
}

/** Takes files in one after another; each that is refused is reported by its name and the others still come. */
export async function takeFiles(
  files: Iterable<File>,
  shop: Shop,
  openLayout: OpenLayout,
  place: ImportPlace = {},
): Promise<void> {
  for (const file of files) {
    let text: string;
    try {
      const other =
        file.size === 0
          ? 'it is empty'
          : ((await otherKind(file)) ??
            (file.size > FILE_MAX ? 'it is too large to be a layout or a car' : undefined));
      if (other !== undefined) {
        openLayout.tell(`${shownText(file.name)} cannot be imported: ${other}.`);
        continue;
      }
      text = await file.text();
    } catch {
      openLayout.tell(`${shownText(file.name)} cannot be read.`);
      continue;
    }
    await shop.importText(text, file.name, place);
  }
}
