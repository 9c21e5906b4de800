import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { expect, test } from 'vitest';
import { DATABASE_FILE, openStore, type Store } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { startProgram } from '../support/host-process.ts';
import { numberedId, plainLayout, plainShop } from '../support/store-plain.ts';

const VARIANTS = 4;
const STATES = 120;

function plainCount(folder: string): number {
  const db = new BetterSqlite3(join(folder, DATABASE_FILE));
  try {
    const has = db.prepare("SELECT 1 FROM pragma_table_info('history') WHERE name = 'packed'").get();
    const where = has ? 'WHERE packed IS NULL' : '';
    return db.prepare<[], number>(`SELECT count(*) FROM history ${where}`).pluck().get() ?? 0;
  } finally {
    db.close();
  }
}

function expectAllStates(store: Store): void {
  for (let variant = 1; variant <= VARIANTS; variant += 1) {
    const texts = store.variants
      .states(numberedId(100 + variant))
      .toReversed()
      .map(({ id }) => store.history.text(id));
    expect(texts).toEqual(
      Array.from({ length: STATES }, (_, edit) => JSON.stringify(plainLayout(variant, edit + 1))),
    );
  }
}

test('the states of an older database are packed beside the work, killed at any moment, and none is changed', {
  timeout: 120_000,
}, async () => {
  const folder = testFolder();
  plainShop(folder, VARIANTS, STATES);
  const counts = [plainCount(folder)];
  for (const writes of [0, 1, 3]) {
    const packer = startProgram('tests/support/store-packer.ts', [folder]);
    await packer.says(new RegExp(`begins\\n${'packed some\\n'.repeat(writes)}`));
    packer.child.kill('SIGKILL');
    await packer.ended;
    const store = openStore({ folder });
    expect(store.notices).toEqual([]);
    expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');
    expectAllStates(store);
    store.close();
    counts.push(plainCount(folder));
  }
  expect(counts[0]).toBe(VARIANTS * STATES);
  expect(counts.at(-1)).toBeLessThan(VARIANTS * STATES);

  const store = openStore({ folder });
  while (store.packSome());
  expectAllStates(store);
  expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');
  // No text stands there twice.
  expect(store.db.prepare("SELECT count(*) AS count FROM history WHERE document <> ''").get()).toEqual({
    count: 0,
  });
  store.close();
  expect(plainCount(folder)).toBe(0);
});

test('a photo that a state names which is not packed yet stays when the bin is emptied', () => {
  const folder = testFolder();
  plainShop(folder, 1, 3);
  const hash = 'a'.repeat(64);
  const db = new BetterSqlite3(join(folder, DATABASE_FILE));
  db.prepare("INSERT INTO photo VALUES (?, 'image/png', 8, 6, 1, x'00')").run(hash);
  db.prepare('INSERT INTO photo VALUES (?, ?, 8, 6, 1, ?)').run('b'.repeat(64), 'image/png', Buffer.of(0));
  // Of the second of three states alone.
  db.prepare(
    "UPDATE history SET document = json_set(document, '$.photos', json(?)) WHERE step = 'edit 2'",
  ).run(JSON.stringify([{ hash }]));
  db.close();
  const store = openStore({ folder });
  store.bin.empty();
  expect(store.photos.count()).toBe(2);
  while (store.packSome());
  store.bin.empty();
  expect(store.photos.count()).toBe(1);
  expect(store.photos.read(hash)).toBeDefined();
  store.bin.put('variant', numberedId(101));
  store.bin.empty();
  expect(store.photos.count()).toBe(0);
  store.close();
});
