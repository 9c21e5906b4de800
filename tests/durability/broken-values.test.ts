import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { Call, Reply, Request } from '../../src-main/api/contract.ts';
import { dispatch } from '../../src-main/api/dispatch.ts';
import { createHandlers } from '../../src-main/api/handlers/index.ts';
import { OutputJobs } from '../../src-main/output/jobs/index.ts';
import { DATABASE_FILE } from '../../src-main/store/index.ts';
import { testStore, withVariant } from '../support/store-sample.ts';

/** A shop of three, in one of which something was broken from outside. */
function brokenBy(sql: string) {
  const store = testStore();
  const ids = [1, 2, 3].map(() => withVariant(store));
  const db = new BetterSqlite3(join(store.folder, DATABASE_FILE));
  db.pragma('foreign_keys = OFF');
  db.pragma('ignore_check_constraints = ON');
  db.exec(sql);
  db.close();
  const handlers = createHandlers({ version: '0', store, outputs: new OutputJobs(), projectsFolder: '' });
  function value<Name extends Call>(name: Name, input: Request<Name>): Reply<Name> {
    const result = dispatch(handlers, name, input);
    if (!result.ok) throw new Error(`${name}: ${result.failure.reason}`);
    return result.value as Reply<Name>;
  }
  return { store, ids, value };
}

describe('a broken value in one row', () => {
  test.each([
    ['customer', "UPDATE customer SET name = '' WHERE made = 2"],
    ['customer', "UPDATE customer SET name = '  \t ' WHERE made = 2"],
    ['car', "UPDATE car SET name = '' WHERE made = 2"],
    ['variant', "UPDATE variant SET name = '' WHERE made = 2"],
  ])('of a %s: a name that is blank is shown as unnamed, and all are there (%s)', (_, sql) => {
    const { value } = brokenBy(sql);
    const { customers, troubles } = value('shop.read', {});
    expect(customers).toHaveLength(3);
    expect(JSON.stringify(customers)).toContain('"name":"unnamed"');
    expect(troubles).toEqual([]);
  });

  test('a name, notes or a time beyond all measure do not hide the shop', () => {
    const { value } = brokenBy(`
      UPDATE customer SET name = printf('%.*c', 5000, 'x'), notes = printf('%.*c', 50000, 'y') WHERE made = 1;
      UPDATE car SET notes = printf('%.*c', 50000, 'y') WHERE made = 2;
      UPDATE variant SET saved_at = 9000000000000000000 WHERE made = 3;`);
    expect(value('shop.read', {}).customers).toHaveLength(3);
  });

  test('a thing under an id that nobody can ask for is set aside and told, and the others are there', () => {
    const { value } = brokenBy("UPDATE customer SET id = 'x' WHERE made = 2");
    const { customers, troubles } = value('shop.read', {});
    expect(customers).toHaveLength(2);
    expect(troubles).toEqual([
      '1 customer, car or layout is stored in a form that cannot be read, and left out of the lists.',
    ]);
  });

  test('a damaged document refuses itself by name, and no other layout and not its car', () => {
    const { value, ids, store } = brokenBy("UPDATE variant SET document = '{\"half' WHERE made = 2");
    expect(() => value('variant.open', { id: ids[1] ?? '' })).toThrow(
      'Arm down: the stored document is damaged',
    );
    for (const id of [ids[0], ids[2]]) expect(value('variant.open', { id: id ?? '' }).document).toBeDefined();
    const carId = store.shop.read()[1]?.cars[0]?.id ?? '';
    expect(value('file.exportCar', { id: carId }).damaged).toEqual(['Arm down']);
  });

  test('a broken entry of the shelf or of the settings is set aside, and told of the shelf', () => {
    const { value } = brokenBy(`
      INSERT INTO part (id, name, figures) VALUES ('00000000-0000-4000-8000-000000000001', '', '{"kind":');
      INSERT INTO part (id, name, figures) VALUES ('00000000-0000-4000-8000-000000000002', '', '{"kind": "no such"}');
      INSERT INTO setting VALUES ('unit', '"mm"'), ('snap', '{"');`);
    expect(value('shelf.list', {}).entries).toEqual([]);
    expect(value('settings.get', {})).toMatchObject({ unit: 'mm', snap: true });
    expect(value('shop.read', {}).troubles).toEqual([
      '2 entries of the shelf are stored in a form that cannot be read, and left out of the lists.',
    ]);
  });

  test('a ticket whose question cannot be read is set aside and told, and the others are there', () => {
    const { value, store } = brokenBy('');
    const kept = ['First', 'Second', 'Third'].map((customer) =>
      store.tickets.add({
        customer,
        note: '',
        question: { kind: 'fit', meets: 'joint' },
        headline: 'Ask what the end is.',
      }),
    );
    const breaking: readonly (readonly [column: string, stored: string, left: number])[] = [
      ['question', `'{"kind":'`, 2],
      ['question', `'{"kind": "no such"}'`, 2],
      ['customer', `printf('%.*c', 5000, 'x')`, 3],
      ['note', `printf('%.*c', 50000, 'y')`, 3],
      ['headline', `printf('%.*c', 50000, 'z')`, 3],
      ['asked_at', '-9000000000000000000', 3],
      ['variant_id', `'nobody'`, 3],
    ];
    const second = kept[1]?.id ?? '';
    const row = store.db.prepare('SELECT * FROM ticket WHERE id = ?').get(second) as Record<string, unknown>;
    store.db.pragma('foreign_keys = OFF');
    for (const [column, broken, left] of breaking) {
      store.db.exec(`UPDATE ticket SET ${column} = ${broken} WHERE id = '${second}'`);
      expect(value('ticket.list', {}).tickets, column).toHaveLength(left);
      expect(value('shop.read', {}).troubles, column).toEqual(
        left === 3
          ? []
          : ['1 ticket of the counter is stored in a form that cannot be read, and left out of the lists.'],
      );
      expect(value('bin.list', {}).entries).toEqual([]);
      store.db.prepare(`UPDATE ticket SET ${column} = ? WHERE id = ?`).run(row[column], second);
    }
    expect(value('ticket.list', {}).tickets).toHaveLength(3);
  });

  test('a blank name in the bin leaves the bin to be read, and the thing to be restored', () => {
    const { value } = brokenBy("UPDATE customer SET name = '', binned_at = 5 WHERE made = 2");
    const [entry] = value('bin.list', {}).entries;
    expect(entry).toMatchObject({ kind: 'customer', name: 'unnamed' });
    value('bin.restore', { kind: 'customer', id: entry?.id ?? '' });
    expect(value('shop.read', {}).customers).toHaveLength(3);
  });
});
