import { closeSync, copyFileSync, existsSync, mkdtempSync, openSync, readSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { APPLICATION_ID, type Database } from './database.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/index.ts';
import { photoUseIn } from './photo-use.ts';
import { type StoredText, statesIn } from './states.ts';

/** Rows tried one by one between those that can be followed from either end. */
const PROBES_MOST = 200_000;
/** Of these, unreadable ones on end after which nothing more is hoped for: the page that leads to all is gone. */
const UNREADABLE_MOST = 2000;
/** Whose cars those are whose customer could not be read. */
const FOUND = 'Found in the damaged database';
/** In an order in which what holds comes before what is held. */
const TABLES = [
  'customer',
  'car',
  'variant',
  'base',
  'history',
  'setting',
  'photo',
  'part',
  'ticket',
] as const;

/** Of things whose holder could not be read, so that nothing that was read is dropped. */
const HOLDERS = `
  INSERT INTO customer (id, name, notes)
    SELECT DISTINCT customer_id, '${FOUND}', '' FROM car WHERE customer_id NOT IN (SELECT id FROM customer);
  INSERT INTO customer (id, name, notes)
    SELECT lower(hex(randomblob(4)) || '-0000-4000-8000-' || hex(randomblob(6))), '${FOUND}', ''
    WHERE EXISTS (SELECT 1 FROM variant WHERE car_id NOT IN (SELECT id FROM car))
      AND NOT EXISTS (SELECT 1 FROM customer WHERE name = '${FOUND}');
  INSERT INTO car (id, customer_id, name, notes)
    SELECT DISTINCT car_id, (SELECT id FROM customer WHERE name = '${FOUND}' LIMIT 1), 'Unnamed car', ''
    FROM variant WHERE car_id NOT IN (SELECT id FROM car);
  DELETE FROM history WHERE variant_id NOT IN (SELECT id FROM variant);`;

type Row = Record<string, unknown> & { readonly row_number: number };

/**
 * Every row of a table that can be read: on from the first until a page cannot be read, then back from the last, then
 * what lies between row by row. Never throws.
 */
function* readableRows(db: Database, table: string): Generator<Row> {
  const row = (condition: string, order: string) =>
    db.prepare<[number], Row>(
      `SELECT *, rowid AS row_number FROM "${table}" WHERE rowid ${condition} ORDER BY rowid ${order} LIMIT 1`,
    );
  let onward: ReturnType<typeof row>;
  let backward: ReturnType<typeof row>;
  let single: ReturnType<typeof row>;
  try {
    onward = row('> ?', 'ASC');
    backward = row('< ?', 'DESC');
    single = row('= ?', 'ASC');
  } catch {
    return;
  }
  const next = (statement: typeof onward, from: number): Row | 'unreadable' | undefined => {
    try {
      return statement.get(from);
    } catch {
      return 'unreadable';
    }
  };
  let first = Number.MIN_SAFE_INTEGER;
  for (let read = next(onward, first); ; read = next(onward, first)) {
    if (read === undefined) return;
    if (read === 'unreadable') break;
    first = read.row_number;
    yield read;
  }
  let last = Number.MAX_SAFE_INTEGER;
  for (
    let read = next(backward, last);
    read !== undefined && read !== 'unreadable';
    read = next(backward, last)
  ) {
    if (read.row_number <= first) return;
    last = read.row_number;
    yield read;
  }
  const begin = Math.max(first, 0) + 1;
  let unreadable = 0;
  for (let number = begin; number < Math.min(last, begin + PROBES_MOST); number += 1) {
    const read = next(single, number);
    if (read === 'unreadable') unreadable += 1;
    else unreadable = 0;
    if (unreadable > UNREADABLE_MOST) return;
    if (read !== undefined && read !== 'unreadable') yield read;
  }
}

/** Drops what cannot be read without something that is lost, and notes anew which photos are named. */
function settle(db: Database): void {
  db.exec(`DELETE FROM base WHERE variant_id NOT IN (SELECT id FROM variant);
           DELETE FROM history WHERE base NOT IN (SELECT id FROM base);
           UPDATE ticket SET variant_id = NULL WHERE variant_id NOT IN (SELECT id FROM variant);`);
  const uses = photoUseIn(db);
  const states = statesIn(db);
  const rows = db.prepare<[number], StoredText & { id: number; variant_id: string }>(
    'SELECT * FROM history WHERE id > ? ORDER BY id LIMIT 500',
  );
  db.transaction(() => {
    uses.noteDocuments();
    for (let batch = rows.all(0); batch.length > 0; batch = rows.all(batch.at(-1)?.id ?? 0))
      for (const row of batch) uses.note(row.variant_id, states.text(row) ?? '', row.id);
  })();
}

/** The version that stands in the header of a database file; undefined where there is no such header. */
function versionIn(path: string): number | undefined {
  const header = Buffer.alloc(100);
  const handle = openSync(path, 'r');
  try {
    const length = readSync(handle, header, 0, 100, 0);
    const ours = length === 100 && header.readUInt32BE(68) === APPLICATION_ID;
    return ours ? header.readUInt32BE(60) : undefined;
  } finally {
    closeSync(handle);
  }
}

function takeRows(from: Database, to: Database): number {
  let taken = 0;
  for (const table of TABLES) {
    const columns = to.prepare<[string], string>('SELECT name FROM pragma_table_info(?)').pluck().all(table);
    if (columns.length === 0) continue;
    const insert = to.prepare(
      `INSERT OR IGNORE INTO "${table}" (${columns.join(', ')}) VALUES (${columns.map((name) => `@${name}`).join(', ')})`,
    );
    to.transaction(() => {
      for (const row of readableRows(from, table)) {
        try {
          taken += insert.run(row).changes;
        } catch {
          // A row that does not fit its own table has been read out of rubbish.
        }
      }
    })();
  }
  return taken;
}

/**
 * Reads what can be read of a damaged database into a new one of today's build at `to`. The damaged file and its log
 * are left as they are. Returns whether anything could be read.
 */
export function salvage(damaged: string, to: string, migrations: readonly Migration[], now: number): boolean {
  const version = existsSync(damaged) ? (versionIn(damaged) ?? migrations.length) : migrations.length;
  if (version === 0 || version > migrations.length) return false;
  const folder = mkdtempSync(join(dirname(to), '.salvage-'));
  const work = join(folder, 'damaged.sqlite');
  let from: Database | undefined;
  let into: Database | undefined;
  let taken = 0;
  try {
    for (const end of ['', '-wal']) if (existsSync(damaged + end)) copyFileSync(damaged + end, work + end);
    from = new BetterSqlite3(work);
    into = new BetterSqlite3(to);
    into.pragma('foreign_keys = OFF');
    migrate(into, migrations.slice(0, version), folder, now);
    into.pragma('foreign_keys = OFF');
    taken = takeRows(from, into);
    into.exec(HOLDERS);
    into.pragma('foreign_keys = ON');
    migrate(into, migrations, folder, now);
    settle(into);
  } catch {
    // What the database's own reading refuses from the first page on cannot be read at all.
    taken = 0;
  } finally {
    from?.close();
    into?.close();
    rmSync(folder, { recursive: true, force: true });
    if (taken === 0) rmSync(to, { force: true });
  }
  return taken > 0;
}
