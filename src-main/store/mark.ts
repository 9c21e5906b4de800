import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { type Database, pragmaNumber } from './database.ts';

/** By what a database file is known again: whose it is, and how often a log was brought into it. */
export interface Mark {
  readonly shop: string;
  readonly count: number;
}

const TEXT = /toeboard-mark ([0-9a-f]{32}) (\d{12})/;

function markIn(text: string): Mark | undefined {
  const [, shop, count] = text.match(TEXT) ?? [];
  return shop === undefined ? undefined : { shop, count: Number(count) };
}

/**
 * Files read raw, by their path, and never closed: closing any handle of a file takes away all locks that this very
 * process has on it, among them those of the database. One stays for each file that was ever looked at so.
 */
const handles = new Map<string, number>();

function rawHandle(path: string, inode: bigint): number {
  const handle = handles.get(path);
  if (handle !== undefined && fstatSync(handle, { bigint: true }).ino === inode) return handle;
  const fresh = openSync(path, 'r');
  handles.set(path, fresh);
  return fresh;
}

/** The mark of a database, as its connection sees it and as it stands in the bytes of its file. */
export class MarkReader {
  readonly #db: Database;
  readonly #page: number;
  readonly #pageSize: number;

  constructor(db: Database) {
    this.#db = db;
    const root = db
      .prepare<[], number>("SELECT rootpage FROM sqlite_schema WHERE type = 'table' AND name = 'mark'")
      .pluck()
      .get();
    this.#page = root ?? 0;
    this.#pageSize = pragmaNumber(db, 'page_size');
  }

  /** Counts on by one. To be called before the log is brought into the file, so that the file tells it. */
  countOn(): void {
    if (this.#page === 0) return;
    this.#db.exec(
      "UPDATE mark SET text = substr(text, 1, 47) || printf('%012d', CAST(substr(text, 48) AS INTEGER) + 1)",
    );
  }

  /** What the file at this path holds where our mark stands, whatever lies in the log; undefined if no mark does. */
  raw(path: string, inode: bigint): Mark | undefined {
    if (this.#page === 0) return undefined;
    const page = Buffer.alloc(this.#pageSize);
    const length = readSync(rawHandle(path, inode), page, 0, page.length, (this.#page - 1) * page.length);
    return markIn(page.toString('latin1', 0, length));
  }
}

/** The first bytes of a file that no lock hangs on. */
export function firstBytes(path: string, count: number): Buffer {
  const handle = openSync(path, 'r');
  try {
    const bytes = Buffer.alloc(count);
    return bytes.subarray(0, readSync(handle, bytes, 0, count, 0));
  } finally {
    closeSync(handle);
  }
}
