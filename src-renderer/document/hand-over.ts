import { documentText } from '../../shared-math/layout/index.ts';
import { handOverBlob } from '../host/outputs.ts';
import type { OpenLayout } from './open-layout.svelte.ts';
import type { OutgoingFile } from './shop.svelte.ts';

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
export function saveLayoutCopy({ document, variant }: OpenLayout): void {
  if (!document) return;
  const name = plainName(`${variant?.carName ?? ''} - ${document.name}`) || 'layout';
  handOver({ fileName: `${name}.json`, text: documentText(document) });
}
