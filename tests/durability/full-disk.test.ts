import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { CallResult } from '../../src-main/api/contract.ts';
import { dispatch } from '../../src-main/api/dispatch.ts';
import { createHandlers } from '../../src-main/api/handlers/index.ts';
import { OutputJobs } from '../../src-main/output/jobs/index.ts';
import { DATABASE_FILE, openStore, type Store } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { refusal, testStore, withVariant } from '../support/store-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

function saver(store: Store, id: string): (revision: number) => CallResult<'variant.save'> {
  const handlers = createHandlers({ version: '0', store, outputs: new OutputJobs(), projectsFolder: '' });
  return (revision) =>
    dispatch(
      handlers,
      'variant.save',
      { id, document: writtenLayout(revision + 1), revision, step: `edit ${revision}`, label: 'Drag' },
      () => {},
    ) as CallResult<'variant.save'>;
}

function failureOf(result: CallResult<'variant.save'>): string {
  return result.ok ? 'none' : `${result.failure.code}: ${result.failure.reason}`;
}

/** Does something as a user who may not write where this one may: the superuser may everywhere. */
function asNobody<Value>(work: () => Value): Value {
  if (process.getuid?.() !== 0 || !process.seteuid) return work();
  process.seteuid(65_534);
  try {
    return work();
  } finally {
    process.seteuid(0);
  }
}

describe('a full disk', () => {
  test('refuses the save that does not fit, keeps all before it, and takes it once there is room', () => {
    const store = testStore();
    const id = withVariant(store);
    const save = saver(store, id);
    store.db.pragma(`max_page_count = ${Number(store.db.pragma('page_count', { simple: true })) + 4}`);

    let revision = 1;
    let result = save(revision);
    for (; result.ok && revision < 100; result = save(revision)) revision = result.value.revision;
    expect(failureOf(result)).toBe('storage-failed: the disk is full: free some space and try again');
    expect(revision).toBeGreaterThan(1);

    for (const _ of [1, 2, 3]) {
      expect(failureOf(save(revision))).toMatch(/^storage-failed: the disk is full/);
      expect(store.variants.open(id)).toMatchObject({ revision, document: writtenLayout(revision) });
      expect(store.variants.states(id)).toHaveLength(revision);
    }
    expect(store.db.pragma('integrity_check', { simple: true })).toBe('ok');

    store.db.pragma('max_page_count = 1000000');
    expect(save(revision)).toMatchObject({ ok: true, value: { revision: revision + 1 } });
    expect(store.variants.open(id).document).toEqual(writtenLayout(revision + 1));
  });
});

describe('a data folder that cannot be written to', () => {
  test('refuses saves plainly and goes on reading', () => {
    const store = testStore();
    const id = withVariant(store);
    store.db.pragma('query_only = ON');
    expect(failureOf(saver(store, id)(1))).toBe('storage-failed: the data folder cannot be written to');
    expect(store.variants.open(id).revision).toBe(1);
    store.db.pragma('query_only = OFF');
    expect(saver(store, id)(1).ok).toBe(true);
  });

  test('is refused by name at the start, whether a database is in it or not', () => {
    const folder = testFolder();
    const empty = join(folder, 'empty');
    const filled = join(folder, 'filled');
    for (const made of [empty, filled]) openStore({ folder: made }).close();
    chmodSync(folder, 0o755);
    chmodSync(join(filled, DATABASE_FILE), 0o444);
    for (const closed of [empty, filled]) chmodSync(closed, 0o555);
    onTestFinished(() => {
      for (const closed of [empty, filled]) chmodSync(closed, 0o755);
    });
    for (const closed of [empty, filled]) {
      const told = asNobody(() => refusal({ folder: closed }));
      expect(told).toMatch(
        new RegExp(`^${join(closed, DATABASE_FILE)}: [^\\n]*(cannot be (opened or )?written to)$`),
      );
    }
    const below = join(empty, 'below');
    expect(asNobody(() => refusal({ folder: below }))).toBe(
      `${below}: the data folder cannot be made: this program may not write there`,
    );
  });
});
