import { randomUUID } from 'node:crypto';
import type { Change } from './cars.ts';
import type { Bench } from './database.ts';
import { StoreError } from './store-error.ts';

interface Customer {
  readonly id: string;
  readonly name: string;
  readonly notes: string;
}

export function customersIn({ db, write }: Bench) {
  const shown = db.prepare<[string], Customer>('SELECT id, name, notes FROM shown_customer WHERE id = ?');
  const byName = db.prepare<[string], { id: string }>(
    'SELECT id FROM shown_customer WHERE name = ? ORDER BY made LIMIT 1',
  );
  const insert = db.prepare<[string, string, string]>(
    'INSERT INTO customer (id, name, notes) VALUES (?, ?, ?)',
  );
  const update = db.prepare<[string, string, string]>('UPDATE customer SET name = ?, notes = ? WHERE id = ?');

  return {
    /** The oldest customer of that name, if there is one. */
    named: (name: string): string | undefined => byName.get(name)?.id,

    add: (name: string, notes: string): string =>
      write(() => {
        const id = randomUUID();
        insert.run(id, name, notes);
        return id;
      }),

    change: (id: string, { name, notes }: Change): void =>
      write(() => {
        const customer = shown.get(id);
        if (!customer) throw new StoreError('not-found', 'this customer is not in the shop');
        update.run(name ?? customer.name, notes ?? customer.notes, id);
      }),
  };
}
