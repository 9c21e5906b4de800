import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { type Contents, contentsOf } from './contents.ts';
import { backupsFolder, lookInto, readCopy } from './copies.ts';
import { APPLICATION_ID, type Bench, pragmaNumber } from './database.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/index.ts';
import { copyInto } from './rescue.ts';
import { StoreError } from './store-error.ts';
import { dateForFileName } from './times.ts';

/** All that is the shop's; the mark is the file's own. */
const TABLES =
  "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'mark'";

function refuseUnfit(path: string, newest: number): void {
  readCopy(path, (db) => {
    if (pragmaNumber(db, 'application_id') !== APPLICATION_ID)
      throw new StoreError('storage-failed', 'this copy is not a Toeboard database');
    if (pragmaNumber(db, 'user_version') > newest)
      throw new StoreError('storage-failed', 'this copy is of a newer Toeboard: use that one');
    if (db.pragma('quick_check(1)', { simple: true }) !== 'ok')
      throw new StoreError('storage-failed', 'this copy is damaged');
  });
}

/** Two may be made within the second that their names tell. */
function freePath(folder: string, stem: string): string {
  for (let number = 1; ; number += 1) {
    const path = join(folder, `${stem}${number === 1 ? '' : `-${number}`}.sqlite`);
    if (!existsSync(path)) return path;
  }
}

/**
 * Puts what a copy holds in the place of what the shop holds, in one write: all of it or nothing. What the shop held
 * before is kept as a copy itself, unless there was nothing. Returns what came back.
 */
export function bringBack(
  { db, now, write }: Bench,
  dataFolder: string,
  path: string,
  migrations: readonly Migration[],
): Contents {
  refuseUnfit(path, migrations.length);
  const before = contentsOf(db);
  const folder = mkdtempSync(join(dataFolder, '.bringing-back-'));
  const lifted = join(folder, 'toeboard.sqlite');
  try {
    copyFileSync(path, lifted);
    const copy = new BetterSqlite3(lifted);
    try {
      migrate(copy, migrations, folder, now());
      copy.pragma('journal_mode = DELETE');
    } finally {
      copy.close();
    }
    if (before.customers.length > 0 || before.parts > 0 || before.tickets > 0)
      copyInto(db, freePath(backupsFolder(dataFolder), `toeboard-before-${dateForFileName(now())}`));
    db.prepare('ATTACH ? AS copy').run(lifted);
    try {
      write(() => {
        db.pragma('defer_foreign_keys = ON');
        const tables = db.prepare<[], string>(TABLES).pluck().all();
        for (const table of tables) db.exec(`DELETE FROM main."${table}"`);
        for (const table of tables) db.exec(`INSERT INTO main."${table}" SELECT * FROM copy."${table}"`);
      });
    } finally {
      db.exec('DETACH copy');
    }
    return lookInto(lifted);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
