import { codeOf, storageReason } from '../store/store-error.ts';

/** What these mean for a file that was to be written; the rest as for any work on the disk. */
const OF_WRITING: Readonly<Record<string, string>> = {
  ENOENT: 'its folder does not exist',
  EISDIR: 'a folder of that name is in the way',
  ENXIO: 'what stands there is a device or a pipe, not a file',
  ENAMETOOLONG: 'the name is too long',
  EFBIG: 'the disk does not take a file this large',
};

/** Why a file could not be written, in plain words; undefined where the error is of another sort. */
export function writeReason(error: unknown): string | undefined {
  return OF_WRITING[codeOf(error)] ?? storageReason(error);
}
