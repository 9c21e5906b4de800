export type StoreFailure = 'not-found' | 'changed-elsewhere' | 'refused-document' | 'storage-failed';

/** Why the store did not do what it was asked; the message is one plain sentence for a person. Nothing was written. */
export class StoreError extends Error {
  readonly code: StoreFailure;

  constructor(code: StoreFailure, reason: string, cause?: unknown) {
    super(reason, { cause });
    this.code = code;
  }
}

/** The database's and the file system's codes, by their beginning, in words. The first that fits is used. */
const REASONS: readonly (readonly [start: string, reason: string])[] = [
  ['SQLITE_FULL', 'the disk is full: free some space and try again'],
  ['SQLITE_READONLY', 'the data folder cannot be written to'],
  ['SQLITE_PERM', 'the data folder cannot be written to'],
  ['SQLITE_CANTOPEN', 'the database cannot be opened or written to'],
  ['SQLITE_BUSY', 'another program is at work in the database: try again in a moment'],
  ['SQLITE_LOCKED', 'another program is at work in the database: try again in a moment'],
  ['SQLITE_PROTOCOL', 'another program is at work in the database: try again in a moment'],
  ['SQLITE_CORRUPT', 'the database is damaged'],
  ['SQLITE_NOTADB', 'the database is damaged'],
  ['SQLITE_IOERR', 'the disk does not read or write as it should'],
  ['SQLITE_TOOBIG', 'this is too large to be stored'],
  ['ENOSPC', 'the disk is full: free some space and try again'],
  ['EDQUOT', 'the disk is full: free some space and try again'],
  ['EACCES', 'this program may not write there'],
  ['EPERM', 'this program may not write there'],
  ['EROFS', 'the disk is read-only'],
  ['ENOTDIR', 'a part of the path is a file, not a folder'],
  ['EEXIST', 'a file of that name is in the way'],
  ['EBUSY', 'another program holds it open'],
  ['ENOENT', 'it does not exist'],
];

/** For every other failure of the database, which may well be this program's. */
const REFUSED = 'the database refused the work';

export function codeOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return typeof code === 'string' ? code : '';
}

/** The plain reason of a failure of the database or the disk; undefined if the error is of another sort. */
export function storageReason(error: unknown): string | undefined {
  return reasonOutside(error) ?? (codeOf(error).startsWith('SQLITE_') ? REFUSED : undefined);
}

/** The same, but only if the reason lies outside this program: in the disk, its files, another program. */
export function reasonOutside(error: unknown): string | undefined {
  const code = codeOf(error);
  return REASONS.find(([start]) => code.startsWith(start))?.[1];
}

/** Whether the database file itself is spoilt, as against the disk being full or the folder closed. */
export function isDamage(error: unknown): boolean {
  return /^SQLITE_(CORRUPT|NOTADB)/.test(codeOf(error));
}
