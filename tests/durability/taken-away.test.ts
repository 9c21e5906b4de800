import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { DATABASE_FILE, openStore, type Store } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { startProgram } from '../support/host-process.ts';
import { withVariant } from '../support/store-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

/** A shop in a folder of its own inside the test's folder, so that what is laid beside it is found and removed. */
function shopIn(folder: string) {
  const data = join(folder, 'data');
  const store = openStore({ folder: data });
  return { data, store, id: withVariant(store), path: join(data, DATABASE_FILE) };
}

function save(store: Store, id: string, revision: number): void {
  const edit = { step: `edit ${revision}`, label: 'Drag', force: false };
  store.variants.save({ id, document: writtenLayout(revision + 1), revision, ...edit });
}

function reasonOf(work: () => void): string {
  try {
    work();
  } catch (error) {
    return (error as Error).message;
  }
  return 'saved';
}

/** The newest rescued copy of a data folder, opened elsewhere, as a person would who has heard of it. */
function rescued(data: string, folder: string): Store {
  const copies = readdirSync(`${data}-rescue`).filter((name) => name.endsWith('.sqlite'));
  expect(copies).toHaveLength(1);
  const elsewhere = join(folder, 'elsewhere');
  mkdirSync(elsewhere);
  copyFileSync(join(`${data}-rescue`, copies[0] as string), join(elsewhere, DATABASE_FILE));
  return openStore({ folder: elsewhere });
}

/** Each done to an open store that has just saved. */
const LOSSES: Record<string, (data: string) => void> = {
  'its folder is renamed': (data) => renameSync(data, `${data} of last year`),
  'its folder is deleted': (data) => rmSync(data, { recursive: true }),
  'its file is deleted': (data) => rmSync(join(data, DATABASE_FILE)),
  'another file is put in its place': (data) => {
    writeFileSync(join(data, 'other'), readFileSync(join(data, DATABASE_FILE)));
    renameSync(join(data, 'other'), join(data, DATABASE_FILE));
  },
  'its log is removed': (data) => rmSync(join(data, `${DATABASE_FILE}-wal`)),
  'its log and index are removed': (data) => {
    for (const end of ['-wal', '-shm']) rmSync(join(data, DATABASE_FILE + end));
  },
};

describe('a store whose files are taken away under it', () => {
  test.each(Object.entries(LOSSES))(
    'acknowledges nothing once %s, and says where a whole copy is',
    (_, lose) => {
      const folder = testFolder();
      const { data, store, id } = shopIn(folder);
      save(store, id, 1);
      save(store, id, 2);
      lose(data);
      for (const _time of [1, 2, 3, 4, 5]) {
        const reason = reasonOf(() => save(store, id, 3));
        expect(reason).toMatch(
          /^[^\n]*nothing can be saved there; all that was saved before is now in [^\n]*$/,
        );
        expect(reason).toContain(join(`${data}-rescue`, 'toeboard-rescued-'));
      }
      store.close();
      const copy = rescued(data, folder);
      expect(copy.variants.open(id)).toMatchObject({ revision: 3, document: writtenLayout(3) });
      copy.close();
    },
  );

  test('saves again once the folder is back in its place', () => {
    const { data, store, id } = shopIn(testFolder());
    renameSync(data, `${data}-away`);
    expect(reasonOf(() => save(store, id, 1))).toMatch(/moved or deleted/);
    renameSync(`${data}-away`, data);
    expect(reasonOf(() => save(store, id, 1))).toBe('saved');
    store.close();
    const again = openStore({ folder: data });
    expect(again.variants.open(id).revision).toBe(2);
    again.close();
  });

  test('has all that it saved in the file itself when only its log was removed, even if it is then killed', async () => {
    const folder = testFolder();
    const { data, store, id } = shopIn(folder);
    store.close();
    const writer = startProgram('tests/support/store-writer.ts', [data, id, '20', 'stay']);
    await writer.says(/\n21\n/);
    rmSync(join(data, `${DATABASE_FILE}-wal`));
    writer.child.kill('SIGUSR2');
    await writer.says(/has been removed while it was open/);
    writer.child.kill('SIGKILL');
    await writer.ended;
    const again = openStore({ folder: data });
    expect(again.variants.open(id)).toMatchObject({ revision: 21, document: writtenLayout(21) });
    again.close();
  });
});

describe('a database overwritten where it lies', () => {
  /** Each leaves the file its inode. */
  const OVERWRITINGS: Record<string, (path: string, backup: string) => void> = {
    'by an older copy of itself': (path, backup) => writeFileSync(path, readFileSync(backup)),
    'by another shop': (path) => {
      const folder = testFolder();
      const other = openStore({ folder });
      for (let cars = 0; cars < 40; cars += 1) withVariant(other);
      other.close();
      writeFileSync(path, readFileSync(join(folder, DATABASE_FILE)));
    },
    'by nothing': (path) => truncateSync(path, 0),
    'by rubbish': (path) => writeFileSync(path, Buffer.alloc(400_000, 0xa5)),
  };

  test.each(Object.entries(OVERWRITINGS))(
    '%s takes no more saves, and no log of ours is read into it',
    (_, overwrite) => {
      const folder = testFolder();
      const { data, store, id, path } = shopIn(folder);
      store.close();
      const backup = join(folder, 'backup.sqlite');
      copyFileSync(path, backup);
      const between = openStore({ folder: data });
      save(between, id, 1);
      between.close();
      const open = openStore({ folder: data });
      for (let revision = 2; revision < 4; revision += 1) save(open, id, revision);
      overwrite(path, backup);
      const overwritten = readFileSync(path);
      for (const _time of [1, 2, 3, 4, 5])
        expect(reasonOf(() => save(open, id, 4))).toMatch(
          /overwritten from outside while it was open, so nothing can be/,
        );
      open.close();
      expect(readFileSync(path).equals(overwritten)).toBe(true);
      const log = `${path}-wal`;
      expect(existsSync(log) ? readFileSync(log).length : 0).toBe(0);
    },
  );

  test('by the very bytes that it held loses nothing', () => {
    const { data, store, id, path } = shopIn(testFolder());
    store.close();
    const backup = readFileSync(path);
    const open = openStore({ folder: data });
    save(open, id, 1);
    writeFileSync(path, backup);
    save(open, id, 2);
    open.close();
    const again = openStore({ folder: data });
    expect(again.variants.open(id)).toMatchObject({ revision: 3, document: writtenLayout(3) });
    again.close();
  });

  test('with its log overwritten takes no more saves either', () => {
    const { store, id, path } = shopIn(testFolder());
    save(store, id, 1);
    truncateSync(`${path}-wal`, 0);
    expect(reasonOf(() => save(store, id, 2))).toMatch(/log beside it \(-wal\) has been overwritten/);
    store.close();
  });

  test('is told from a database into which another Toeboard has brought its log', () => {
    const { data, store, id } = shopIn(testFolder());
    for (let round = 1; round < 6; round += 1) {
      const other = openStore({ folder: data });
      save(other, id, 2 * round - 1);
      other.close();
      expect(reasonOf(() => save(store, id, 2 * round))).toBe('saved');
    }
    store.close();
  });
});

describe('the database file by itself', () => {
  afterEach(() => void vi.useRealTimers());

  /** Copies just that file and opens it elsewhere. */
  function copyAlone(path: string): Store {
    const folder = testFolder();
    copyFileSync(path, join(folder, DATABASE_FILE));
    return openStore({ folder });
  }

  test('is a whole shop a few seconds after the last save, while the board is open', async () => {
    vi.useFakeTimers();
    const { store, id, path } = shopIn(testFolder());
    for (let revision = 1; revision < 6; revision += 1) save(store, id, revision);
    await vi.advanceTimersByTimeAsync(10_000);
    expect(readFileSync(`${path}-wal`)).toHaveLength(0);
    const copy = copyAlone(path);
    expect(copy.variants.open(id)).toMatchObject({ revision: 6, document: writtenLayout(6) });
    expect(copy.variants.states(id)).toHaveLength(6);
    copy.close();
    store.close();
  });

  test('is no more than seconds behind while saves go on without a pause', async () => {
    vi.useFakeTimers();
    const { store, id, path } = shopIn(testFolder());
    let revision = 1;
    for (; revision < 60; revision += 1) {
      save(store, id, revision);
      await vi.advanceTimersByTimeAsync(500);
    }
    const copy = copyAlone(path);
    expect(copy.variants.open(id).revision).toBeGreaterThan(revision - 45);
    copy.close();
    store.close();
  });

  test('is whole again from the next start on after a kill', async () => {
    const { data, store, id, path } = shopIn(testFolder());
    store.close();
    const writer = startProgram('tests/support/store-writer.ts', [data, id, '10', 'stay']);
    await writer.says(/\n11\n/);
    writer.child.kill('SIGKILL');
    await writer.ended;
    expect(readFileSync(`${path}-wal`).length).toBeGreaterThan(0);
    const again = openStore({ folder: data });
    expect(readFileSync(`${path}-wal`)).toHaveLength(0);
    const copy = copyAlone(path);
    expect(copy.variants.open(id)).toMatchObject({ revision: 11 });
    copy.close();
    again.close();
  });
});

test('the mark stands where it is looked for, in a database built by hand as well', () => {
  const { store, path } = shopIn(testFolder());
  store.close();
  const db = new BetterSqlite3(path, { readonly: true });
  const text = db.prepare<[], string>('SELECT text FROM mark').pluck().get() ?? '';
  db.close();
  expect(text).toMatch(/^toeboard-mark [0-9a-f]{32} \d{12}$/);
  expect(readFileSync(path, 'latin1').split(text)).toHaveLength(2);
});
