import { chmodSync, copyFileSync, mkdirSync, renameSync, rmSync, truncateSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import type { Database } from './database.ts';
import { storageReason } from './store-error.ts';
import { dateForFileName } from './times.ts';

/** Where what an open database still holds was copied to when its files were lost. */
export interface Rescue {
  /** The end of a sentence: what is where, and what to do. */
  readonly reported: string;
  /** Copies the log beside the database there too and empties it, so that it is never read into a stranger's file. */
  readonly layLogAside: () => void;
}

/** The folder for rescued copies: beside the data folder, as that itself may be gone. */
export function rescueFolder(dataFolder: string): string {
  return `${dataFolder}-rescue`;
}

/** A whole copy of what the connection sees, under its name only once it is whole. Readable for its owner alone. */
export function copyInto(db: Database, path: string): void {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const partial = `${path}.${process.pid}.partial`;
  try {
    db.prepare('VACUUM INTO ?').run(partial);
    chmodSync(partial, 0o600);
    renameSync(partial, path);
  } finally {
    rmSync(partial, { force: true });
  }
}

/** Copies aside what the connection can still read: to the first place that takes it. */
export function rescue(db: Database, path: string, now: number): Rescue {
  const name = `${basename(path, '.sqlite')}-rescued-${dateForFileName(now)}.sqlite`;
  const places = [
    rescueFolder(dirname(path)),
    join(homedir(), 'Toeboard rescue'),
    join(tmpdir(), 'toeboard-rescue'),
  ];
  let reason = '';
  for (const place of places) {
    const copy = join(place, name);
    try {
      copyInto(db, copy);
    } catch (error) {
      reason ||= storageReason(error) ?? String(error);
      continue;
    }
    return {
      reported: `all that was saved before is now in ${copy}; end Toeboard and start it again`,
      layLogAside: () => layAside(`${path}-wal`, `${copy}-log`),
    };
  }
  return {
    reported: `and what was saved before could not be copied elsewhere: ${reason}`,
    layLogAside: () => layAside(`${path}-wal`, `${path}-log-${dateForFileName(now)}`),
  };
}

function layAside(log: string, to: string): void {
  try {
    copyFileSync(log, to);
    truncateSync(log, 0);
  } catch {
    // Gone already: then nobody reads it either.
  }
}
