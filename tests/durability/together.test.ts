import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { dispatch } from '../../src-main/api/dispatch.ts';
import { createHandlers } from '../../src-main/api/handlers/index.ts';
import { OutputJobs } from '../../src-main/output/jobs/index.ts';
import { DATABASE_FILE, openStore } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { startProgram } from '../support/host-process.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { testStore, withVariant } from '../support/store-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

describe('several programs on one database', () => {
  test('save the same variant without one overwriting another unseen', async () => {
    const store = testStore();
    const id = withVariant(store);
    const writers = [1, 2].map(() => startProgram('tests/support/store-writer.ts', [store.folder, id, '60']));
    for (const writer of writers) expect(await writer.ended, writer.said()).toBe(0);

    const revisions = writers.flatMap((writer) => writer.said().trim().split('\n').map(Number));
    expect(revisions.sort((a, b) => a - b)).toEqual(Array.from({ length: 120 }, (_, index) => index + 2));
    expect(store.variants.open(id)).toMatchObject({ revision: 121, document: writtenLayout(121) });
    expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');
  });

  test('make a new database together, once', async () => {
    const folder = join(testFolder(), 'not', 'there', 'yet');
    const openers = ['a', 'b', 'c', 'd'].map((name) =>
      startProgram('tests/support/store-opener.ts', [folder, name]),
    );
    for (const opener of openers) {
      expect(await opener.ended, opener.said()).toBe(0);
      expect(opener.said()).toBe('opened\n');
    }
    const store = openStore({ folder });
    expect(store.shop.read().map(({ name }) => name)).toEqual(['a', 'b', 'c', 'd']);
    store.close();
  });

  test('wait for one another, and say so plainly when that takes too long', () => {
    const store = testStore();
    const id = withVariant(store);
    const handlers = createHandlers({ version: '0', store, outputs: new OutputJobs(), projectsFolder: '' });
    const save = { id, document: sampleLayout('Arm down', 300), revision: 1, step: 's', label: 'Drag' };
    const other = new BetterSqlite3(join(store.folder, DATABASE_FILE));
    expect(store.db.pragma('busy_timeout', { simple: true })).toBeGreaterThanOrEqual(1000);
    store.db.pragma('busy_timeout = 20');

    other.exec('BEGIN IMMEDIATE');
    expect(dispatch(handlers, 'variant.save', save, () => {})).toEqual({
      ok: false,
      failure: {
        code: 'storage-failed',
        reason: 'another program is at work in the database: try again in a moment',
      },
    });
    // Reading goes on meanwhile.
    expect(dispatch(handlers, 'variant.open', { id })).toMatchObject({ ok: true, value: { revision: 1 } });
    other.exec('ROLLBACK');
    other.close();
    expect(dispatch(handlers, 'variant.save', save)).toMatchObject({ ok: true, value: { revision: 2 } });
  });
});
