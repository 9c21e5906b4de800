import { accessSync, constants, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';

/** Where Linux keeps files in memory. */
const IN_MEMORY = '/dev/shm';
/** Bytes that have to be free there: photos of 48 megapixels are among what tests keep. */
const ROOM = 2 ** 30;

/**
 * Where the folders of tests are that need no disk: in memory if the system has room for them there, else among its temporary
 * files. A new store on a disk waits some 0.4 s for it. What is promised of the disk itself is tested on it, and no program is
 * started from here: a system may forbid it.
 */
export function quickFolder(): string {
  try {
    accessSync(IN_MEMORY, constants.W_OK);
    const { bavail, bsize } = statfsSync(IN_MEMORY);
    return bavail * bsize >= ROOM ? IN_MEMORY : tmpdir();
  } catch {
    return tmpdir();
  }
}
