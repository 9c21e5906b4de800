import { existsSync, mkdirSync, renameSync } from 'node:fs';
import { basename, join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { APPLICATION_ID, type Database, pragmaNumber } from './database.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/index.ts';
import { isDamage, StoreError, storageReason } from './store-error.ts';
import { dateForFileName } from './times.ts';

export const DATABASE_FILE = 'toeboard.sqlite';

/** ms. How long a write waits for another window's or program's write before it is refused. */
const BUSY_WAIT = 5000;

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (error) {
    const reason = storageReason(error) ?? (error as Error).message;
    throw new StoreError('storage-failed', `${folder}: the data folder cannot be made: ${reason}`, error);
  }
}

/** Refused before anything is written to it: a file of another program, or of a later Toeboard. */
function refuseForeign(db: Database, path: string, newest: number): void {
  const version = pragmaNumber(db, 'user_version');
  const empty = db.prepare('SELECT 1 FROM sqlite_schema LIMIT 1').get() === undefined;
  if (!empty && pragmaNumber(db, 'application_id') !== APPLICATION_ID)
    throw new StoreError('storage-failed', `${path}: this is not a Toeboard database`);
  if (version > newest)
    throw new StoreError(
      'storage-failed',
      `${path}: this database is version ${version}, newer than this program reads (${newest}); use a newer Toeboard`,
    );
}

function connect(path: string, newest: number): Database {
  const db = new BetterSqlite3(path, { timeout: BUSY_WAIT });
  try {
    refuseForeign(db, path, newest);
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    // The log is brought over by the keeper alone, which counts it.
    db.pragma('wal_autocheckpoint = 0');
    const check = db.pragma('quick_check(1)', { simple: true });
    if (check !== 'ok') throw new BetterSqlite3.SqliteError(String(check), 'SQLITE_CORRUPT');
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Moves a damaged database out of the way with its log, whole, so that it can still be rescued. */
function setAside(path: string, now: number): string {
  const kept = path.replace(/\.sqlite$/, `-damaged-${dateForFileName(now)}.sqlite`);
  for (const end of ['-wal', '-shm', '']) if (existsSync(path + end)) renameSync(path + end, kept + end);
  return `The database was damaged and a new one was begun. The damaged one is kept as ${basename(kept)} in the data folder.`;
}

export interface OpenedDatabase {
  readonly db: Database;
  /** What the person has to be told, each one sentence or two. */
  readonly notices: readonly string[];
}

/**
 * Opens the database of a data folder, makes it if there is none, and brings an older one up to date.
 * Throws a StoreError of one line, and changes nothing, if it is newer than this program, another program's, or
 * the folder cannot be used. A damaged one is set aside and said so in the notices.
 */
export function openDatabase(
  folder: string,
  migrations: readonly Migration[],
  now: () => number,
): OpenedDatabase {
  const path = join(folder, DATABASE_FILE);
  const notices: string[] = [];
  makeFolder(folder);
  try {
    let db: Database;
    try {
      db = connect(path, migrations.length);
    } catch (error) {
      if (!isDamage(error)) throw error;
      notices.push(setAside(path, now()));
      db = connect(path, migrations.length);
    }
    try {
      migrate(db, migrations, join(folder, 'backups'), now());
    } catch (error) {
      db.close();
      throw error;
    }
    return { db, notices };
  } catch (error) {
    if (error instanceof StoreError) throw error;
    const reason = storageReason(error);
    if (reason === undefined) throw error;
    throw new StoreError('storage-failed', `${path}: ${reason}`, error);
  }
}
