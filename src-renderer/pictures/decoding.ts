import type { Outcome } from '../../shared-math/outcome.ts';
import type { DecodedPicture, Which } from './picture-file.ts';

/**
 * The whole picture of a file, beside the page; what that takes is loaded with the first one.
 *
 * @returns Its picture at full size; the failure ends a sentence that begins with the file's name.
 */
export async function decodePicture(file: Blob, which: Which = {}): Promise<Outcome<DecodedPicture, string>> {
  const { decode } = await import('./decode-picture.ts');
  return decode(file, which);
}
