import type { View } from '../../../../shared-math/drawing/index.ts';
import type { Photo } from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import { shownText } from '../../../../shared-math/outside/index.ts';
import { sendPhoto } from '../../../host/photos.ts';
import { fileFocal } from './file-focal.ts';
import type { PhotoPictures } from './photo-pictures.svelte.ts';

/** Characters that a photo's name in the document may have. */
const NAME_MOST = 200;

/** A file that has come into the store and can be shown. */
export type Incoming = Pick<Photo, 'hash' | 'name' | 'size' | 'focal'>;

/** What a file is called on the board. */
export function pictureName(file: File): string {
  return shownText(file.name, NAME_MOST) || 'Pasted photo';
}

/**
 * Brings a file into the store and decodes it, so that one that only looks like a photo leaves the layout as it was.
 *
 * @returns The failure is a sentence that names the file.
 */
export async function takeIn(file: File, pictures: PhotoPictures): Promise<Outcome<Incoming, string>> {
  const name = pictureName(file);
  const refused = (why: string) => failed(`${shownText(name)} cannot be added: ${why}.`);
  const sent = await sendPhoto(file);
  if (!sent.ok) return refused(sent.failure);
  const { hash, width, height } = sent.value;
  const brought = await pictures.want({ hash }, width && height ? [width, height] : undefined);
  if (!brought.ok) return refused(brought.failure);
  const focal = await fileFocal(file, brought.value);
  return succeeded({ hash, name, size: brought.value, ...(focal ? { focal } : {}) });
}

/** By the file's name, else the first view that has no photo yet. */
export function likelyView(name: string, photos: readonly Photo[]): View {
  const views = ['side', 'top', 'front'] as const;
  const named = views.find((view) => name.toLowerCase().includes(view));
  return named ?? views.find((view) => !photos.some((photo) => photo.view === view)) ?? 'side';
}
