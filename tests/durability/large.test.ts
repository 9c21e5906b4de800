import { randomBytes } from 'node:crypto';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { dispatch } from '../../src-main/api/dispatch.ts';
import { createHandlers } from '../../src-main/api/handlers/index.ts';
import { OutputJobs } from '../../src-main/output/jobs/index.ts';
import { DATABASE_FILE, openStore, type Store } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { withVariant } from '../support/store-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

const FACTS = { type: 'image/png', width: 8, height: 6 };
const LAYOUTS = 20;

/** A shop with photos enough that it is not read through before it is worked with, and pages full of states; closed. */
function largeShop(folder: string): string[] {
  const store = openStore({ folder });
  const ids = Array.from({ length: LAYOUTS }, () => withVariant(store));
  for (const id of ids)
    for (let revision = 1; revision <= 12; revision += 1) {
      const edit = { step: `edit ${revision}`, label: 'Drag', force: false };
      store.variants.save({ id, document: writtenLayout(revision + 1), revision, ...edit });
    }
  for (let photo = 0; photo < 10; photo += 1) store.photos.put(randomBytes(1_000_000), FACTS);
  store.close();
  expect(statSync(join(folder, DATABASE_FILE)).size).toBeGreaterThan(4_000_000);
  return ids;
}

/** Makes rubbish of one page in the middle of those that hold the rows of a table. */
function spoilPageOf(folder: string, table: string): void {
  const path = join(folder, DATABASE_FILE);
  const db = new BetterSqlite3(path, { readonly: true });
  const pages = db
    .prepare<[string], number>(
      "SELECT pageno FROM dbstat WHERE name = ? AND pagetype = 'leaf' ORDER BY path LIMIT 100",
    )
    .pluck()
    .all(table);
  db.close();
  expect(pages.length).toBeGreaterThan(4);
  const page = pages[Math.floor(pages.length / 2)] as number;
  const bytes = readFileSync(path);
  bytes.fill(0xa5, (page - 1) * 4096, page * 4096);
  writeFileSync(path, bytes);
}

function troubles(store: Store): unknown {
  const handlers = createHandlers({ version: '0', store, outputs: new OutputJobs(), projectsFolder: '' });
  const reply = dispatch(handlers, 'shop.read', {});
  return reply.ok ? (reply.value as { troubles: string[] }).troubles : reply;
}

describe('a shop of many photos and states', { timeout: 120_000 }, () => {
  test('is worked with before all of it has been read; damage is found beside the work, told, and mended by the next start', async () => {
    const folder = testFolder();
    const ids = largeShop(folder);
    spoilPageOf(folder, 'history');
    const store = openStore({ folder, checkAfter: 0 });
    // Nothing that is asked for first lies on the spoilt page, so that nothing has read it.
    expect(store.notices).toEqual([]);
    expect(troubles(store)).toEqual([]);
    expect(store.shop.read()).toHaveLength(LAYOUTS);
    expect(store.variants.open(ids[0] as string).revision).toBe(13);
    await store.checked;
    expect(troubles(store)).toEqual([
      expect.stringMatching(/^The database is damaged: [^\n]* start it again/),
    ]);
    store.close();

    const again = openStore({ folder, checkAfter: 0 });
    expect(again.notices[0]).toMatch(
      /^The database was damaged\. Read out of it row by row came back 20 customers, 20 cars, 20 layouts and 10 photos\./,
    );
    expect(again.db.pragma('integrity_check', { simple: true })).toBe('ok');
    for (const id of ids) {
      expect(again.variants.open(id).document).toEqual(writtenLayout(13));
      for (const state of again.variants.states(id)) expect(again.history.read(state.id)).toBeDefined();
    }
    await again.checked;
    expect(troubles(again)).toEqual([]);
    again.close();
    const third = openStore({ folder });
    expect(third.notices).toEqual([]);
    third.close();
  });

  test('has its bin emptied without a look at the states of what stays', () => {
    const folder = testFolder();
    const [first = ''] = largeShop(folder);
    spoilPageOf(folder, 'history');
    let time = Date.now();
    const store = openStore({ folder, now: () => time });
    expect(store.notices).toEqual([]);
    const held = store.photos.count();
    time += 3_600_001;
    store.bin.put('variant', first);
    store.bin.empty();
    expect(held).toBe(10);
    expect(store.photos.count()).toBe(0);
    expect(store.shop.read()[0]?.cars[0]?.variants).toEqual([]);
    store.close();
  });

  test('that is whole is said nothing of', async () => {
    const folder = testFolder();
    largeShop(folder);
    const store = openStore({ folder, checkAfter: 0 });
    await store.checked;
    expect(store.damageFound()).toEqual([]);
    store.close();
  });
});
