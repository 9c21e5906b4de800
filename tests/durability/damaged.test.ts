import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { DATABASE_FILE, openStore, storageReason } from '../../src-main/store/index.ts';
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

describe('a damaged database', () => {
  test.each(Object.entries(DAMAGES))('that %s is kept aside, told, and a new one begun', (_, damage) => {
    const folder = testFolder();
    const path = join(folder, DATABASE_FILE);
    const before = openStore({ folder });
    for (let cars = 0; cars < 5; cars += 1) withVariant(before);
    before.close();
    damage(path);
    const damaged = readFileSync(path);

    const store = openStore({ folder, now: () => NOON });
    expect(store.notices).toEqual([
      `The database was damaged and a new one was begun. The damaged one is kept as ${KEPT} in the data folder.`,
    ]);
    expect(store.shop.read()).toEqual([]);
    withVariant(store);
    store.close();
    expect(readFileSync(join(folder, KEPT)).equals(damaged)).toBe(true);
    expect(readdirSync(folder).sort()).toEqual([KEPT, DATABASE_FILE].sort());

    const again = openStore({ folder });
    expect(again.notices).toEqual([]);
    expect(again.shop.read()).toHaveLength(1);
    again.close();
  });

  test('is not what a mistake of the program is taken for', () => {
    expect(storageReason(new TypeError('x'))).toBeUndefined();
    expect(storageReason('SQLITE_CORRUPT')).toBeUndefined();
    expect(storageReason(undefined)).toBeUndefined();
  });
});
