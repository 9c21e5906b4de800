import { execFileSync } from 'node:child_process';
import { closeSync, mkdirSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type { Program } from './program.ts';

/** A place for the data folder that can be filled up, and emptied again. */
export interface Disk {
  /** What stands in for a full disk here, for the report. */
  readonly how: string;
  readonly dataFolder: string;
  readonly fill: (program: Program) => void;
  readonly free: (program: Program) => void;
  readonly remove: () => void;
}

/** MB. Room for the shop, its copies and a rescue. */
const SIZE = 256;

function run(command: string, args: readonly string[]): boolean {
  try {
    execFileSync(command, args, { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** A small file system in memory of its own: full is full, as on a disk. */
function ownDisk(folder: string): Disk | undefined {
  const place = join(folder, 'disk');
  mkdirSync(place);
  if (!run('mount', ['-t', 'tmpfs', '-o', `size=${SIZE}m,mode=0700`, 'tmpfs', place])) return undefined;
  const ballast = join(place, 'ballast');
  return {
    how: `a file system of ${SIZE} MB in memory`,
    dataFolder: join(place, 'data'),
    fill: () => {
      const file = openSync(ballast, 'w');
      for (const size of [1_048_576, 4096, 1]) {
        const block = Buffer.alloc(size);
        try {
          while (writeSync(file, block) === size);
        } catch {
          // Full to this block's size.
        }
      }
      closeSync(file);
    },
    free: () => rmSync(ballast, { force: true }),
    // What still holds a file of it open a moment longer does not keep it in its place.
    remove: () => void run('umount', ['-l', place]),
  };
}

/** A limit on the size of any file that the program writes: the stand-in where nothing may be mounted. */
function limitedFiles(folder: string): Disk {
  const limit = (program: Program, bytes: string) =>
    run('prlimit', ['--pid', String(program.pid), `--fsize=${bytes}:unlimited`]);
  return {
    how: 'a limit on the size of files, as nothing may be mounted here',
    dataFolder: join(folder, 'data'),
    fill: (program) => {
      if (!limit(program, '4096')) throw new Error('the size of files cannot be limited here');
    },
    free: (program) => void limit(program, 'unlimited'),
    remove: () => {},
  };
}

export function makeDisk(folder: string): Disk {
  return (process.platform === 'linux' ? ownDisk(folder) : undefined) ?? limitedFiles(folder);
}
