import { existsSync, linkSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { forgetDamage, isCheckedFirst } from './background-check.ts';
import { replaceDamaged } from './damage.ts';
import { APPLICATION_ID, type Database, pragmaNumber } from './database.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/index.ts';
import { codeOf, isDamage, StoreError, storageReason } from './store-error.ts';

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
    if (isCheckedFirst(path)) {
      const check = db.pragma('quick_check(1)', { simple: true });
      if (check !== 'ok') throw new BetterSqlite3.SqliteError(String(check), 'SQLITE_CORRUPT');
    }
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** What a database of this build consists of, as "table customer". */
function partsOf(db: Database): string[] {
  return db
    .prepare<[], string>(
      "SELECT type || ' ' || name FROM sqlite_schema WHERE type IN ('table', 'view') AND name NOT LIKE 'sqlite_%'",
    )
    .pluck()
    .all();
}

/** A database whose version says that it is whole and that lacks a table is as damaged as one that cannot be read. */
function requireParts(db: Database, migrations: readonly Migration[]): void {
  const model = new BetterSqlite3(':memory:');
  try {
    for (const { statements } of migrations) model.exec(statements);
    const there = new Set(partsOf(db));
    const missing = partsOf(model).find((part) => !there.has(part));
    if (missing)
      throw new BetterSqlite3.SqliteError(`: the ${missing} is missing in it`, 'SQLITE_CORRUPT_MISSING');
  } finally {
    model.close();
  }
}

/**
 * Makes a new database aside and puts it at its path whole, so that a file at that path that is empty has lost what it
 * held. Another program that is first wins.
 */
function makeNew(path: string, migrations: readonly Migration[], now: number): void {
  const aside = `${path}.${process.pid}.new`;
  rmSync(aside, { force: true });
  try {
    const db = new BetterSqlite3(aside);
    try {
      migrate(db, migrations, dirname(path), now);
    } finally {
      db.close();
    }
    try {
      linkSync(aside, path);
    } catch (error) {
      if (existsSync(path)) return;
      // Not every file system knows links.
      if (['ENOSPC', 'EDQUOT', 'EACCES', 'EROFS'].includes(codeOf(error))) throw error;
      renameSync(aside, path);
    }
  } finally {
    rmSync(aside, { force: true });
  }
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

/** Whether files lie there that held a shop: an emptied database, or a log that has lost its database. */
function isEmptied(path: string): boolean {
  return existsSync(path) ? sizeOf(path) === 0 : sizeOf(`${path}-wal`) > 0;
}

export interface OpenedDatabase {
  readonly db: Database;
  /** What the person has to know, each one sentence or two. */
  readonly notices: readonly string[];
}

/**
 * Opens the database of a data folder, makes it if there is none, and brings an older one up to date.
 * Throws a StoreError of one line, and changes nothing, if it is newer than this program, another program's, or
 * the folder cannot be used. A damaged one is set aside, and the better of what can be read of it and of the newest copy
 * put in its place, and said so in the notices.
 */
export function openDatabase(
  folder: string,
  migrations: readonly Migration[],
  now: () => number,
): OpenedDatabase {
  const path = join(folder, DATABASE_FILE);
  const notices: string[] = [];
  makeFolder(folder);
  const open = (): Database => {
    if (!existsSync(path)) makeNew(path, migrations, now());
    const db = connect(path, migrations.length);
    try {
      migrate(db, migrations, join(folder, 'backups'), now());
      requireParts(db, migrations);
      forgetDamage(path);
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  };
  try {
    if (isEmptied(path)) notices.push(replaceDamaged(path, ': its file is empty', migrations, now()));
    try {
      return { db: open(), notices };
    } catch (error) {
      if (!isDamage(error)) throw error;
      const why = codeOf(error) === 'SQLITE_CORRUPT_MISSING' ? (error as Error).message : '';
      notices.push(replaceDamaged(path, why, migrations, now()));
      return { db: open(), notices };
    }
  } catch (error) {
    if (error instanceof StoreError) throw error;
    const reason = storageReason(error);
    if (reason === undefined) throw error;
    throw new StoreError('storage-failed', `${path}: ${reason}`, error);
  }
}
