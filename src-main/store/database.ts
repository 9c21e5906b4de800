import type BetterSqlite3 from 'better-sqlite3';

export type Database = BetterSqlite3.Database;

/** What every part of the store works with. */
export interface Bench {
  readonly db: Database;
  /** The time of day, ms since 1970. */
  readonly now: () => number;
  /** One write, whole or not at all; it returns only once the write stands in the files at the store's own paths. */
  readonly write: <Value>(work: () => Value) => Value;
}

/** Marks the file as ours ("Toeb"), so that no other program's database is ever built upon. */
export const APPLICATION_ID = 0x546f6562;

/** One write, whole or not at all. Takes the write lock first, so that what it reads is what it changes. */
export function transaction<Value>(db: Database, work: () => Value): Value {
  return db.transaction(work).immediate();
}

export function pragmaNumber(db: Database, name: string): number {
  return Number(db.pragma(name, { simple: true }));
}
