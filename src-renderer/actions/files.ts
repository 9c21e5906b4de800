import { shownText } from '../../shared-math/outside/index.ts';
import type { OpenLayout } from '../document/open-layout.svelte.ts';
import type { ImportPlace, Shop } from '../document/shop.svelte.ts';

/** Bytes. A whole car with its photos is below; anything above is not ours and would only stall the page. */
const FILE_MAX = 90_000_000;

/** Takes files in one after another; each that is refused is reported by its name and the others still come. */
export async function takeFiles(
  files: Iterable<File>,
  shop: Shop,
  openLayout: OpenLayout,
  place: ImportPlace = {},
): Promise<void> {
  for (const file of files) {
    if (file.size > FILE_MAX) {
      openLayout.tell(`${shownText(file.name)} is not taken in: it is too large to be a layout or a car.`);
      continue;
    }
    let text: string;
    try {
      text = await file.text();
    } catch {
      openLayout.tell(`${shownText(file.name)} cannot be read.`);
      continue;
    }
    await shop.importText(text, file.name, place);
  }
}
