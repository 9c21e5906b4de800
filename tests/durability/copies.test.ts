import { existsSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { daysKept } from '../../src-main/store/copies.ts';
import { openStore, type Store } from '../../src-main/store/index.ts';
import { testFolder } from '../support/host-folder.ts';
import { testStore, withVariant } from '../support/store-sample.ts';
import { writtenLayout } from '../support/store-written.ts';

function save(store: Store, id: string, revision: number): void {
  const edit = { step: `edit ${revision}`, label: 'Drag', force: false };
  store.variants.save({ id, document: writtenLayout(revision + 1), revision, ...edit });
}

const dayAt = (days: number) => new Date(days * 86_400_000).toISOString().slice(0, 10);

describe('the copies of the days', () => {
  test('that stay are the newest seven, and before them the last of each of four weeks', () => {
    // Sixty days on end up to Monday 30 March 2026 (a calendar: 29 March 2026 is a Sunday).
    const last = Date.UTC(2026, 2, 30) / 86_400_000;
    const days = Array.from({ length: 60 }, (_, back) => dayAt(last - back));
    expect(daysKept(days)).toEqual([
      ...['2026-03-30', '2026-03-29', '2026-03-28', '2026-03-27', '2026-03-26', '2026-03-25', '2026-03-24'],
      ...['2026-03-23', '2026-03-22', '2026-03-15', '2026-03-08'],
    ]);
  });

  test('are never more than eleven, always with the newest, whichever days had changes', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 18_000, max: 22_000 }), { minLength: 1 }), (days) => {
        const kept = daysKept(days.map(dayAt));
        expect(kept.length).toBeLessThanOrEqual(11);
        expect(kept[0]).toBe(dayAt(Math.max(...days)));
        expect(new Set(kept).size).toBe(kept.length);
        // Taking the same away again takes nothing more.
        expect(daysKept(kept)).toEqual(kept.length <= 7 ? kept : expect.arrayContaining(kept.slice(0, 7)));
      }),
    );
  });

  afterEach(() => void vi.useRealTimers());

  test('are made in a quiet moment after a change, whole, for the owner alone, and renewed at most once an hour', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const folder = testFolder();
    const store = openStore({ folder });
    const id = withVariant(store);
    save(store, id, 1);
    await vi.advanceTimersByTimeAsync(3000);
    await store.copies.settled();
    const [copy, ...others] = store.copies.list();
    expect(others).toEqual([]);
    expect(copy).toMatchObject({
      kind: 'day',
      name: expect.stringMatching(/^toeboard-day-\d{4}-\d\d-\d\d\.sqlite$/),
    });
    const path = join(folder, 'backups', copy?.name ?? '');
    if (process.platform !== 'win32') expect(statSync(path).mode & 0o777).toBe(0o600);
    expect(store.copies.look(copy?.name ?? '')).toMatchObject({
      layouts: 1,
      customers: [{ name: 'Odd Fellow' }],
    });
    expect(readdirSync(join(folder, 'backups'))).toEqual([copy?.name]);

    withVariant(store);
    await vi.advanceTimersByTimeAsync(3000);
    await store.copies.settled();
    expect(store.copies.look(copy?.name ?? '').layouts).toBe(1);
    const earlier = Date.now() / 1000 - 3700;
    utimesSync(path, earlier, earlier);
    withVariant(store);
    await vi.advanceTimersByTimeAsync(3000);
    await store.copies.settled();
    expect(store.copies.look(copy?.name ?? '').layouts).toBe(3);
    store.close();
  });

  test('take no more room than they may, but for the newest two', async () => {
    const folder = testFolder();
    const store = openStore({ folder, copiesBytesMost: 1000 });
    withVariant(store);
    await store.copies.keepDay();
    for (const day of ['2026-01-05', '2026-01-06', '2026-01-07'])
      writeFileSync(join(folder, 'backups', `toeboard-day-${day}.sqlite`), 'x'.repeat(900));
    const today = store.copies.list().find(({ name }) => !name.includes('2026-01'));
    utimesSync(join(folder, 'backups', today?.name ?? ''), 0, 0);
    await store.copies.keepDay();
    expect(readdirSync(join(folder, 'backups')).sort()).toEqual(
      ['toeboard-day-2026-01-07.sqlite', today?.name].sort(),
    );
    store.close();
  });
});

describe('bringing a copy back', () => {
  test('puts it in the place of the shop, whole, and keeps what was there as a copy', async () => {
    const store = testStore();
    const id = withVariant(store);
    save(store, id, 1);
    store.settings.write({ unit: 'mm' });
    const photo = store.photos.put(Buffer.from('a photo'), { type: 'image/png', width: 1, height: 1 });
    await store.copies.keepDay();
    const name = store.copies.list()[0]?.name ?? '';
    save(store, id, 2);
    store.settings.write({ unit: 'in' });
    const later = withVariant(store);

    expect(store.copies.bringBack(name)).toMatchObject({ layouts: 1, photos: 1 });
    expect(store.variants.open(id)).toMatchObject({ revision: 2, document: writtenLayout(2) });
    expect(store.variants.states(id)).toHaveLength(2);
    expect(store.settings.read()).toEqual({ unit: 'mm' });
    expect(store.photos.read(photo)?.content.toString()).toBe('a photo');
    expect(() => store.variants.open(later)).toThrow(/no longer exists/);
    expect(store.db.pragma('foreign_key_check')).toEqual([]);

    const before = store.copies.list().find(({ kind }) => kind === 'before');
    expect(store.copies.bringBack(before?.name ?? '')).toMatchObject({ layouts: 2 });
    expect(store.variants.open(id).revision).toBe(3);
    expect(store.variants.open(later).revision).toBe(1);
    // And it goes on being saved to.
    save(store, id, 3);
    expect(readdirSync(store.folder).filter((file) => file.startsWith('.'))).toEqual([]);
  });

  test('that is damaged, foreign or gone changes nothing, and says so', async () => {
    const store = testStore();
    const id = withVariant(store);
    await store.copies.keepDay();
    const name = store.copies.list()[0]?.name ?? '';
    const path = join(store.folder, 'backups', name);
    writeFileSync(path, 'x'.repeat(9000));
    expect(() => store.copies.look(name)).toThrow('this copy is damaged');
    expect(() => store.copies.bringBack(name)).toThrow('this copy is damaged');
    for (const wish of ['toeboard-day-1999-01-01.sqlite', '../toeboard.sqlite', '/etc/passwd', ''])
      expect(() => store.copies.bringBack(wish)).toThrow('this copy is no longer there');
    expect(store.variants.open(id).revision).toBe(1);
    expect(existsSync(path)).toBe(true);
  });
});
