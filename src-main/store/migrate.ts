import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { APPLICATION_ID, type Database, pragmaNumber, transaction } from './database.ts';
import type { Migration } from './migrations/index.ts';
import { dateForFileName } from './times.ts';

/** A whole copy, its name telling version and date. A copy broken off halfway never carries that name. */
function copyAside(db: Database, version: number, folder: string, now: number): void {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `toeboard-version-${version}-${dateForFileName(now)}.sqlite`);
  const partial = `${path}.${process.pid}.partial`;
  try {
    db.prepare('VACUUM INTO ?').run(partial);
    renameSync(partial, path);
  } finally {
    rmSync(partial, { force: true });
  }
}

/** Brings a database up to date: a copy aside first, then each step in a transaction of its own. */
export function migrate(db: Database, migrations: readonly Migration[], backups: string, now: number): void {
  const version = pragmaNumber(db, 'user_version');
  if (version === migrations.length) return;
  if (version > 0) copyAside(db, version, backups, now);

  // A step may rebuild a table that others refer to; whether all references hold is checked at its end instead.
  db.pragma('foreign_keys = OFF');
  for (const { number, statements } of migrations)
    transaction(db, () => {
      // Looked up inside the lock: another program may have taken this very step in the meantime.
      if (pragmaNumber(db, 'user_version') !== number - 1) return;
      db.exec(statements);
      const broken = db.pragma('foreign_key_check') as unknown[];
      if (broken.length > 0) throw new Error(`migration ${number} leaves ${broken.length} broken references`);
      db.pragma(`application_id = ${APPLICATION_ID}`);
      db.pragma(`user_version = ${number}`);
    });
  db.pragma('foreign_keys = ON');
}
