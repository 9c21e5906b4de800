import { readFileSync, renameSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { DATABASE_FILE, openStore, type Store, storageReason } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { withVariant } from '../support/store-sample.ts';

const NOON = Date.UTC(2026, 2, 9, 12, 0, 0);
const KEPT = 'toeboard-damaged-2026-03-09-120000.sqlite';

/** Ways in which a file goes bad on a disk, each done to a database that is in use. */
const DAMAGES: Record<string, (path: string) => void> = {
  'is no database any more': (path) => writeFileSync(path, 'once upon a time '.repeat(500)),
  'has lost its end': (path) => truncateSync(path, 3 * 4096),
  'has a page of rubbish': (path) => {
    const bytes = readFileSync(path);
    bytes.fill(0xa5, 2 * 4096, 5 * 4096);
    writeFileSync(path, bytes);
  },
};

const TOLD = / The damaged one is kept as toeboard-damaged-2026-03-09-120000\.sqlite in the data folder\.$/;

/** A shop of many cars, so that its rows fill many pages; closed again. */
function filled(folder: string, cars = 60): string {
  const store = openStore({ folder });
  for (let car = 0; car < cars; car += 1) withVariant(store);
  store.close();
  return join(folder, DATABASE_FILE);
}

/** A whole copy of a day, as the program keeps it by itself. */
async function withDayCopy(folder: string, cars: number): Promise<void> {
  const store = openStore({ folder });
  for (let car = 0; car < cars; car += 1) withVariant(store);
  await store.copies.keepDay();
  store.close();
}

function layoutsIn(store: Store): number {
  return store.shop.read().flatMap(({ cars }) => cars.flatMap(({ variants }) => variants)).length;
}

describe('a damaged database', () => {
  test.each(Object.entries(DAMAGES))(
    'that %s is kept aside whole, told, and the board goes on',
    (_, damage) => {
      const folder = testFolder();
      const path = filled(folder, 5);
      damage(path);
      const damaged = readFileSync(path);

      const store = openStore({ folder, now: () => NOON });
      expect(store.notices).toEqual([expect.stringMatching(/^The database was damaged[^\n]*$/)]);
      expect(store.notices[0]).toMatch(TOLD);
      withVariant(store);
      store.close();
      expect(readFileSync(join(folder, KEPT)).equals(damaged)).toBe(true);
      const again = openStore({ folder });
      expect(again.notices).toEqual([]);
      again.close();
    },
  );

  test('of which one page is gone loses what stood on that page, and the rest comes back row by row', () => {
    const folder = testFolder();
    const path = filled(folder);
    const bytes = readFileSync(path);
    // A leaf of the largest table, well behind the pages that lead to it.
    const page = Math.floor(bytes.length / 4096 / 2);
    bytes.fill(0xa5, page * 4096, (page + 1) * 4096);
    writeFileSync(path, bytes);
    const store = openStore({ folder, now: () => NOON });
    expect(store.notices[0]).toMatch(
      /Read out of it row by row came back \d+ customers, \d+ cars and \d+ layouts\./,
    );
    expect(layoutsIn(store)).toBeGreaterThanOrEqual(50);
    for (const { cars } of store.shop.read())
      for (const { variants } of cars)
        for (const { id } of variants) expect(store.variants.open(id).document).toBeDefined();
    expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(store.db.pragma('foreign_key_check')).toEqual([]);
    store.close();
  });

  test('that cannot be read at all has the newest copy put in its place', async () => {
    const folder = testFolder();
    await withDayCopy(folder, 3);
    writeFileSync(join(folder, DATABASE_FILE), 'once upon a time '.repeat(500));
    const store = openStore({ folder, now: () => NOON });
    expect(store.notices[0]).toMatch(
      /The copy of [^;]+ is in its place, with 3 customers, 3 cars and 3 layouts; what was/,
    );
    expect(layoutsIn(store)).toBe(3);
    store.close();
  });

  test('that still holds more than the newest copy gives what it holds, and the copy stays to be looked at', async () => {
    const folder = testFolder();
    await withDayCopy(folder, 3);
    const path = filled(folder, 40);
    const bytes = readFileSync(path);
    const page = Math.floor(bytes.length / 4096 / 2);
    bytes.fill(0xa5, page * 4096, (page + 1) * 4096);
    writeFileSync(path, bytes);
    const store = openStore({ folder, now: () => NOON });
    expect(store.notices[0]).toMatch(
      /Read out of it row by row[^.]*\. The newest copy, of [^.]*, can be looked at and brought/,
    );
    expect(layoutsIn(store)).toBeGreaterThan(30);
    const copy = store.copies.list().find(({ kind }) => kind === 'day');
    expect(store.copies.look(copy?.name ?? '').layouts).toBe(3);
    store.close();
  });

  test('without a byte in it, or gone but for its log, is told as damaged, not begun anew in silence', async () => {
    for (const lose of [
      (path: string) => truncateSync(path, 0),
      (path: string) => renameSync(path, `${path}-wal`),
    ]) {
      const folder = testFolder();
      lose(filled(folder, 2));
      const store = openStore({ folder, now: () => NOON });
      expect(store.notices[0]).toMatch(
        /^The database was damaged: its file is empty\. Nothing of it could be read and there/,
      );
      store.close();
    }
  });

  test('that lacks a table is told so in a line, and the other tables come back', () => {
    const folder = testFolder();
    const path = filled(folder, 4);
    const db = new BetterSqlite3(path);
    db.exec('DROP TABLE history');
    db.close();
    const store = openStore({ folder, now: () => NOON });
    expect(store.notices[0]).toMatch(
      /^The database was damaged: the table history is missing in it\. Read out of it row/,
    );
    expect(layoutsIn(store)).toBe(4);
    store.close();
  });

  test('is not what a mistake of the program is taken for', () => {
    expect(storageReason(new TypeError('x'))).toBeUndefined();
    expect(storageReason('SQLITE_CORRUPT')).toBeUndefined();
    expect(storageReason(undefined)).toBeUndefined();
  });
});
