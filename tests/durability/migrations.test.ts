import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import {
  documentText,
  LAYOUT_VERSION,
  type LayoutDocument,
  parseLayout,
} from '../../shared-math/layout/index.ts';
import { APPLICATION_ID } from '../../src-main/store/database.ts';
import { DATABASE_FILE, openStore } from '../../src-main/store/index.ts';
import { MIGRATIONS, type Migration } from '../../src-main/store/migrations/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { ROOT } from '../support/host-process.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { greyPng } from '../support/picture-files.ts';
import { refusal, withVariant } from '../support/store-sample.ts';

const NOON = Date.UTC(2026, 2, 9, 12, 0, 0);
const VARIANT = '6f1c7a52-4f0e-4a55-9f6e-0c1d2e3f4a5b';

/** What today's program makes of a layout that says nothing of what later versions brought. */
function lifted(): LayoutDocument {
  const { origins: _, car, steering, ...rest } = sampleLayout();
  const { driverSide: _d, ...plainCar } = car;
  const { inputAngle: _i, ...box } = steering.box;
  return { ...rest, car: plainCar, steering: { ...steering, box } };
}

/** A layout as it was written before it spoke of springs and masses. */
function layoutOfVersionOne(): Record<string, unknown> {
  const { ride: _, ...rest } = lifted();
  return { ...rest, version: 1 };
}

/** A database as the first version of the program left it, written by hand. */
function versionOne(folder: string): string {
  const path = join(folder, DATABASE_FILE);
  const db = new BetterSqlite3(path);
  db.exec(MIGRATIONS[0]?.statements ?? '');
  const car = VARIANT.replace('6', '7');
  const customer = VARIANT.replace('6', '8');
  const text = JSON.stringify(layoutOfVersionOne());
  db.prepare(`INSERT INTO customer (id, name, notes) VALUES (?, 'Odd Fellow', 'old')`).run(customer);
  db.prepare(`INSERT INTO car (id, customer_id, name, notes) VALUES (?, ?, 'Roadster', '')`).run(
    car,
    customer,
  );
  db.prepare(
    `INSERT INTO variant (id, car_id, name, document, revision, saved_at) VALUES (?, ?, 'Arm down', ?, 7, 1)`,
  ).run(VARIANT, car, text);
  db.prepare(
    `INSERT INTO history (variant_id, step, label, at, document) VALUES (?, 's', 'Begun', 1, ?)`,
  ).run(VARIANT, text);
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.pragma('user_version = 1');
  db.close();
  return path;
}

function migration(number: number, statements: string): Migration {
  return { number, name: 'test', statements };
}

test('a layout file as version 1 wrote it is read as it was, lifted, and can be driven', () => {
  const text = readFileSync(join(ROOT, 'tests/durability/layout-version-1.json'), 'utf8');
  const written = JSON.parse(text);
  expect(written.version).toBe(1);
  const read = parseLayout(text);
  expect(read).toEqual({ ok: true, value: { ...written, version: LAYOUT_VERSION, ride: null } });
  // What is written is of today's version, and is read back as itself.
  if (read.ok) expect(parseLayout(documentText(read.value))).toEqual(read);
});

test('a layout file as version 2 wrote it is read as it was, and its box is not given the angle that it draws', () => {
  const text = readFileSync(join(ROOT, 'tests/durability/layout-version-2.json'), 'utf8');
  const written = JSON.parse(text);
  expect(written.version).toBe(2);
  const { sectorAxis } = written.steering.box;
  const { axis } = written.shaft.box;
  const along = [0, 1, 2].reduce((sum, i) => sum + sectorAxis[i] * axis[i], 0);
  const drawn = Math.acos(Math.abs(along) / (Math.hypot(...sectorAxis) * Math.hypot(...axis)));
  // The box of this file never existed: 31 degrees between its input and its sector shaft.
  expect((drawn * 180) / Math.PI).toBeCloseTo(30.8, 1);
  const read = parseLayout(text);
  expect(read).toEqual({ ok: true, value: { ...written, version: LAYOUT_VERSION, ride: null } });
  if (read.ok) {
    expect(read.value.steering.box).not.toHaveProperty('inputAngle');
    expect(parseLayout(documentText(read.value))).toEqual(read);
  }
});

test('a layout file as version 3 wrote it is read as it was, and nothing is said of loads that it does not name', () => {
  const text = readFileSync(join(ROOT, 'tests/durability/layout-version-3.json'), 'utf8');
  const written = JSON.parse(text);
  expect(written.version).toBe(3);
  const read = parseLayout(text);
  expect(read).toEqual({ ok: true, value: { ...written, version: LAYOUT_VERSION, ride: null } });
  if (read.ok) expect(parseLayout(documentText(read.value))).toEqual(read);
});

describe('the migrations', () => {
  test('are numbered one by one, each file in the list, each run on the way from nothing', () => {
    expect(MIGRATIONS.map(({ number }) => number)).toEqual(MIGRATIONS.map((_, index) => index + 1));
    const files = readdirSync(join(ROOT, 'src-main/store/migrations')).filter((file) => /^\d/.test(file));
    expect(files).toEqual(
      MIGRATIONS.map(({ number, name }) => `${String(number).padStart(4, '0')}-${name}.ts`),
    );
    const folder = testFolder();
    const store = openStore({ folder });
    expect(store.db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    const settings = ['journal_mode', 'synchronous', 'foreign_keys', 'application_id'].map((name) =>
      store.db.pragma(name, { simple: true }),
    );
    expect(settings).toEqual(['wal', 2, 1, APPLICATION_ID]);
    const loose = store.db.prepare(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
    );
    expect(loose.all()).toEqual([]);
    store.close();
    // Nothing was older, so nothing was copied aside.
    expect(readdirSync(folder)).toEqual([DATABASE_FILE]);
  });

  test('lift an older database, with all that is in it, and keep a whole copy under its version and date', () => {
    const folder = testFolder();
    versionOne(folder);
    const store = openStore({ folder, now: () => NOON });
    expect(store.db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    expect(store.variants.open(VARIANT)).toMatchObject({
      customerName: 'Odd Fellow',
      carName: 'Roadster',
      document: lifted(),
      revision: 7,
    });
    expect(store.variants.states(VARIANT).map(({ label }) => label)).toEqual(['Begun']);
    store.settings.write({ unit: 'mm' });
    expect(store.settings.read()).toEqual({ unit: 'mm' });
    store.close();

    expect(readdirSync(join(folder, 'backups'))).toEqual(['toeboard-version-1-2026-03-09-120000.sqlite']);
    const copy = new BetterSqlite3(join(folder, 'backups', 'toeboard-version-1-2026-03-09-120000.sqlite'));
    expect(copy.pragma('user_version', { simple: true })).toBe(1);
    expect(copy.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(copy.prepare('SELECT name, notes FROM customer').all()).toEqual([
      { name: 'Odd Fellow', notes: 'old' },
    ]);
    expect(copy.prepare('SELECT count(*) AS count FROM history').get()).toEqual({ count: 1 });
    copy.close();
  });

  test('lift the tickets of a store that knew no photos of them, and keep photos for them from then on', () => {
    const folder = testFolder();
    const photo = (hash: string) => ({
      kind: 'spline',
      over: 'half',
      fromPhoto: true,
      photo: { hash, rim: [] },
    });
    const asked = { kind: 'spline', over: 'half', fromPhoto: true, counted: 18 } as const;
    const old = openStore({ folder, migrations: MIGRATIONS.slice(0, 9), now: () => NOON });
    const add = old.db.prepare(
      "INSERT INTO ticket (id, customer, note, question, headline, asked_at, revision) VALUES (?, 'Kim', '', ?, '', 1, 4)",
    );
    add.run(VARIANT, JSON.stringify(asked));
    add.run(VARIANT.replace('6', '7'), 'torn');
    old.close();

    let time = NOON;
    const store = openStore({ folder, now: () => time });
    expect(store.tickets.list()).toMatchObject([{ id: VARIANT, revision: 4, question: asked }]);
    expect(store.tickets.broken()).toBe(1);
    const hash = store.photos.put(greyPng(), { type: 'image/png', width: 8, height: 6 });
    const text = { customer: 'Kim', note: '', headline: '', question: photo(hash) as never };
    store.tickets.save(VARIANT, text, 4);
    time += 86_400_000;
    store.bin.empty();
    store.close();
    const again = openStore({ folder });
    expect(again.tickets.read(VARIANT).question).toEqual(photo(hash));
    expect(again.photos.read(hash)?.content).toEqual(greyPng());
    again.close();
    expect(readdirSync(join(folder, 'backups'))).toContain('toeboard-version-9-2026-03-09-120000.sqlite');
  });

  test('leave the documents in it as they were written; each is lifted when it is read, and written anew when saved', () => {
    const folder = testFolder();
    versionOne(folder);
    const store = openStore({ folder });
    const versionOf = (text: string | undefined) => JSON.parse(text ?? '').version as number;
    const rows = () => [
      store.db.prepare<[], string>('SELECT document FROM variant').pluck().all().map(versionOf),
      store.variants
        .states(VARIANT)
        .map(({ id }) => versionOf(store.history.text(id)))
        .reverse(),
    ];
    expect(rows()).toEqual([[1], [1]]);
    const { document, revision } = store.variants.open(VARIANT);
    expect(document).toEqual(lifted());
    const state = store.variants.states(VARIANT)[0];
    expect(store.variants.restore(VARIANT, state?.id ?? 0).document).toEqual(document);
    store.variants.save({
      id: VARIANT,
      document: { ...document, ride: { tyreRate: 180 } },
      revision: revision + 1,
      force: false,
      step: 't',
      label: 'Tyre rate',
    });
    expect(store.variants.open(VARIANT).document.ride).toEqual({ tyreRate: 180 });
    expect(rows()).toEqual([[LAYOUT_VERSION], [1, LAYOUT_VERSION, LAYOUT_VERSION]]);
    store.close();
  });

  test('that fail leave the database as it was, however far they came', () => {
    const folder = testFolder();
    versionOne(folder);
    for (const [statements, reason] of [
      [
        'CREATE TABLE half (a INTEGER) STRICT; CREATE TABLE half (a INTEGER) STRICT;',
        /the database refused the work/,
      ],
      ['DELETE FROM customer;', /migration 3 leaves 1 broken references/],
    ] as const) {
      const migrations = [...MIGRATIONS.slice(0, 2), migration(3, statements)];
      expect(() => openStore({ folder, migrations, now: () => NOON })).toThrow(reason);
      const db = new BetterSqlite3(join(folder, DATABASE_FILE), { readonly: true });
      expect(db.pragma('user_version', { simple: true })).toBe(2);
      expect(db.prepare("SELECT name FROM sqlite_schema WHERE name = 'half'").all()).toEqual([]);
      expect(db.prepare('SELECT count(*) AS count FROM customer').get()).toEqual({ count: 1 });
      db.close();
    }
    const store = openStore({ folder });
    expect(store.variants.open(VARIANT).revision).toBe(7);
    store.close();
  });

  test('do not begin when the copy aside cannot be made', () => {
    const folder = testFolder();
    const path = versionOne(folder);
    writeFileSync(join(folder, 'backups'), 'a file where the folder should be');
    expect(refusal({ folder })).toBe(`${path}: a file of that name is in the way`);
    const db = new BetterSqlite3(path, { readonly: true });
    expect(db.pragma('user_version', { simple: true })).toBe(1);
    db.close();
  });
});

describe('a database that is not for this program', () => {
  test('is refused by name if it is newer, and not touched', () => {
    const folder = testFolder();
    const store = openStore({ folder });
    withVariant(store);
    store.db.pragma('user_version = 99');
    store.close();
    const path = join(folder, DATABASE_FILE);
    const before = readFileSync(path);
    expect(refusal({ folder })).toBe(
      `${path}: this database is version 99, newer than this program reads (${MIGRATIONS.length}); use a newer Toeboard`,
    );
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(readdirSync(folder)).toEqual([DATABASE_FILE]);
  });

  test('is refused if it is another program’s, and not touched', () => {
    const folder = testFolder();
    const path = join(folder, DATABASE_FILE);
    const db = new BetterSqlite3(path);
    db.exec('CREATE TABLE customer (mine TEXT)');
    db.close();
    const before = readFileSync(path);
    expect(refusal({ folder })).toBe(`${path}: this is not a Toeboard database`);
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});
