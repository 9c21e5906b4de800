import { documentText } from '../../shared-math/layout/index.ts';
import type { ImportPlace, OutgoingFile, Shop } from '../document/shop.svelte.ts';
import type { Workbench } from '../document/workbench.svelte.ts';
import { handOverBlob } from '../host/outputs.ts';

/** Bytes. A whole car with its photos is below; anything above is not ours and would only stall the page. */
const FILE_MAX = 90_000_000;

/** Hands a file to the person, through the browser's own way of saving. */
export function handOver(file: OutgoingFile, type = 'application/json'): void {
  handOverBlob(new Blob([file.text], { type }), file.fileName);
}

/** A file name that every system takes, as near to the wish as a page can say without its program. */
function plainName(wish: string): string {
  return wish
    .replace(/[<>:"/\\|?*\p{Cc}\p{Cf}]/gu, '-')
    .replace(/^[=+@. -]+/, '')
    .slice(0, 120)
    .trim();
}

/** Hands the open layout to the person as a file, by the page alone: also when its program is gone. */
export function saveLayoutCopy({ document, variant }: Workbench): void {
  if (!document) return;
  const name = plainName(`${variant?.carName ?? ''} - ${document.name}`) || 'layout';
  handOver({ fileName: `${name}.json`, text: documentText(document) });
}

/** Takes files in one after another; each that is refused is told by its name and the others still come. */
export async function takeFiles(
  files: Iterable<File>,
  shop: Shop,
  bench: Workbench,
  place: ImportPlace = {},
): Promise<void> {
  for (const file of files) {
    if (file.size > FILE_MAX) {
      bench.tell(`${file.name} is not taken in: it is too large to be a layout or a car.`);
      continue;
    }
    let text: string;
    try {
      text = await file.text();
    } catch {
      bench.tell(`${file.name} cannot be read.`);
      continue;
    }
    await shop.importText(text, file.name, place);
  }
}
