import { execFileSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { isCheckedFirst } from '../../src-main/store/background-check.ts';
import { DATABASE_FILE, openStore, type Store } from '../../src-main/store/index.ts';
import { thinnedOut } from '../../src-main/store/thinning.ts';
import { ROOT } from '../support/host-process.ts';
import {
  demonstrationLayouts,
  fillShop,
  momentOf,
  plainRows,
  shopSize,
  storeRows,
} from '../support/shop-of-size.ts';

/*
 * A shop as it stands after some years, beside the same rows stored plainly. TOEBOARD_SHOP_SCALE is its size: 1 is 500
 * customers, 1,500 cars, 7,500 layouts of 200 states each and 3,000 photos, and takes a quarter of an hour and 10 GB;
 * a fiftieth unless given. Photos here are 200 kB of random bytes: a photo is compressed already.
 */
const SIZE = shopSize(Number(process.env['TOEBOARD_SHOP_SCALE'] ?? 0.02));
const PHOTO_BYTES = 200_000;
const STARTS = 7;
const SAVES = 200;
const FACTS = { type: 'image/jpeg', width: 1600, height: 1200 };

function median(times: readonly number[]): number {
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] as number;
}

function timed(work: () => unknown): number {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}

function tell(line: string): void {
  process.stdout.write(`${line}\n`);
}

const ms = (time: number) => `${time.toFixed(time < 1 ? 3 : 1)} ms`;
const mb = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'toeboard-bench-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

interface Start {
  /** ms from the opening of the store to its first list. */
  readonly opening: number;
  /** ms of the whole program, from nothing to its end right after that. */
  readonly program: number;
}

function start(data: string, ...all: string[]): Start {
  const file = join(ROOT, 'tests/support/store-first-answer.ts');
  const begun = performance.now();
  const opening = Number(execFileSync(process.execPath, [file, data, ...all], { encoding: 'utf8' }));
  return { opening, program: performance.now() - begun };
}

/** The list as it was read before: a question for each customer and each car. */
function nestedList(db: BetterSqlite3.Database): void {
  const cars = db.prepare<[string], { id: string }>('SELECT id, name FROM shown_car WHERE customer_id = ?');
  const variants = db.prepare('SELECT id, name, saved_at FROM shown_variant WHERE car_id = ?');
  for (const { id } of db.prepare<[], { id: string }>('SELECT id FROM shown_customer').all())
    for (const car of cars.all(id)) variants.all(car.id);
}

function saves(store: Store, ids: readonly string[]): number {
  const times: number[] = [];
  for (let save = 0; save < SAVES; save += 1) {
    const id = ids[(save * 37) % ids.length] as string;
    const { document, revision } = store.variants.open(id);
    const car = { ...document.car, wheelbase: document.car.wheelbase + (save % 7) + 1 };
    const edit = { step: `save ${save}`, label: 'Wheelbase', force: false };
    times.push(timed(() => store.variants.save({ id, document: { ...document, car }, revision, ...edit })));
  }
  return median(times);
}

/** Layouts of a shop whose database is just below what is read through before the first answer, a million bytes. */
const SMALL_SHOP = { customers: 1, cars: 2, variants: 11, states: 200, photos: 0 };

test('a small shop, which is read through before its first answer', { timeout: 600_000 }, () => {
  const [small, empty] = [folder(), folder()];
  const store = openStore({ folder: small });
  fillShop(storeRows(store), SMALL_SHOP, demonstrationLayouts(ROOT), Date.now(), store.together);
  store.close();
  openStore({ folder: empty }).close();
  const bytes = statSync(join(small, DATABASE_FILE)).size;
  expect(isCheckedFirst(join(small, DATABASE_FILE)), mb(bytes)).toBe(true);
  const starts = { small: [] as Start[], empty: [] as Start[] };
  for (let time = 0; time < 2 * STARTS; time += 1) {
    starts.small.push(start(small));
    starts.empty.push(start(empty));
  }
  const ratio = (what: keyof Start) =>
    median(starts.small.map((each) => each[what])) / median(starts.empty.map((each) => each[what]));
  tell(
    `a shop of ${mb(bytes)} beside an empty one: a program to its first list ${ratio('program').toFixed(2)} times as long, of this the opening and the list ${ratio('opening').toFixed(2)} times`,
  );
  expect(bytes).toBeGreaterThan(800_000);
  expect(ratio('program')).toBeLessThan(1.5);
  expect(ratio('opening')).toBeLessThan(1.5);
});

test('a shop of some years', { timeout: 7_200_000 }, () => {
  const now = Date.now();
  const layouts = demonstrationLayouts(ROOT);
  const [packed, plain, empty] = [folder(), folder(), folder()];
  const store = openStore({ folder: packed });
  const ids = fillShop(storeRows(store), SIZE, layouts, now, store.together);
  store.close();
  openStore({ folder: empty }).close();
  const peer = plainRows(plain);
  fillShop(peer.rows, SIZE, layouts, now, peer.together);
  peer.close();
  const count = SIZE.variants * (SIZE.states + 1);
  tell(
    `a shop of ${SIZE.customers} customers, ${SIZE.cars} cars, ${SIZE.variants} layouts, ${count} states, ${SIZE.photos} photos`,
  );

  const bytes = statSync(join(packed, DATABASE_FILE)).size;
  const plainBytes = statSync(join(plain, DATABASE_FILE)).size;
  tell(
    `on disk without photos: ${mb(bytes)}, ${(bytes / count).toFixed(0)} bytes a state; stored plainly ${mb(plainBytes)}, ${(plainBytes / count).toFixed(0)}; ${(plainBytes / bytes).toFixed(1)} times as much`,
  );
  const moments = Array.from({ length: SIZE.states }, (_, back) => ({
    id: back,
    at: momentOf(SIZE.states - 1 - back, SIZE.states, now),
  }));
  tell(
    `of ${SIZE.states} states of ten evenings, the next save keeps ${SIZE.states - thinnedOut(moments, now).length}`,
  );

  const starts = { full: [] as Start[], empty: [] as Start[], all: [] as Start[] };
  for (let time = 0; time < STARTS; time += 1) {
    starts.full.push(start(packed));
    starts.empty.push(start(empty));
    if (time < 3) starts.all.push(start(packed, 'all'));
  }
  const of = (which: Start[], what: keyof Start) => median(which.map((each) => each[what]));
  for (const [what, words] of [
    ['program', 'a program from nothing to its first list'],
    ['opening', 'of this the opening and the list'],
  ] as const) {
    const [full, none, all] = [of(starts.full, what), of(starts.empty, what), of(starts.all, what)];
    tell(
      `${words}: ${ms(full)}; in an empty shop ${ms(none)}, ${(full / none).toFixed(2)} times as long; with a look at every page first ${ms(all)}`,
    );
  }

  const big = openStore({ folder: packed });
  const small = openStore({ folder: empty });
  const old = new BetterSqlite3(join(plain, DATABASE_FILE));
  onTestFinished(() => {
    big.close();
    small.close();
    old.close();
  });
  const times = (work: () => unknown) => median(Array.from({ length: 9 }, () => timed(work)));
  const list = times(() => big.shop.read());
  tell(`the list of all: ${ms(list)}; car by car from plain rows: ${ms(times(() => nestedList(old)))}`);
  const find = () =>
    big.shop
      .read()
      .filter(({ name, cars }) => `${name} ${cars.map((car) => car.name).join(' ')}`.includes('77'));
  tell(
    `search by name over customers and cars: ${ms(times(find))}; a customer by whole name ${ms(times(() => big.customers.named('Customer 7')))}; the bin's list ${ms(times(() => big.bin.list()))}; the history of a layout ${ms(times(() => big.variants.states(ids[0] as string)))}, one state of it ${ms(times(() => big.history.read(big.variants.states(ids[0] as string)[50]?.id as number)))}`,
  );

  const carId = small.cars.add(small.customers.add('Odd Fellow', ''), 'Roadster', '');
  const one = small.variants.add(carId, layouts[0] as (typeof layouts)[number], 'Begun');
  const [save, smallSave] = [saves(big, ids), saves(small, [one])];
  tell(`a save, median: ${ms(save)}; in a shop of one layout ${ms(smallSave)}`);

  const hashes = Array.from({ length: SIZE.photos }, () => big.photos.put(randomBytes(PHOTO_BYTES), FACTS));
  const files = folder();
  for (const hash of hashes) writeFileSync(join(files, hash), big.photos.read(hash)?.content ?? '');
  const stored = median(hashes.map((hash) => timed(() => big.photos.read(hash))));
  const filed = median(hashes.map((hash) => timed(() => readFileSync(join(files, hash)))));
  tell(`a photo of ${mb(PHOTO_BYTES)} out of the database: ${ms(stored)}; as a file of its own ${ms(filed)}`);

  for (const id of ids.slice(0, 10)) big.bin.put('variant', id);
  const emptied = timed(() => big.bin.empty());
  const search = old.prepare(
    'SELECT NOT EXISTS (SELECT 1 FROM variant WHERE instr(document, @hash) > 0) AND NOT EXISTS (SELECT 1 FROM history WHERE instr(document, @hash) > 0)',
  );
  const searched = timed(() => search.get({ hash: hashes[0] }));
  tell(
    `the bin with ten layouts emptied: ${ms(emptied)}; a search of all texts for one photo ${ms(searched)}, for each of ${SIZE.photos}`,
  );

  expect(plainBytes / bytes).toBeGreaterThan(10);
  expect(save).toBeLessThan(25);
  expect(list).toBeLessThan(50);
});
