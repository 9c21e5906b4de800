import { randomUUID } from 'node:crypto';
import type { Bench } from './database.ts';
import { copyName, distinctName } from './names.ts';
import { readableName, readableNotes } from './readable.ts';
import { StoreError } from './store-error.ts';
import type { Surveys } from './surveys.ts';
import type { Variants } from './variants.ts';

export interface Car {
  readonly id: string;
  readonly customerId: string;
  readonly customerName: string;
  readonly name: string;
  readonly notes: string;
}

/** What a person may change of a car or a customer; what is left out stays. */
export interface Change {
  readonly name?: string | undefined;
  readonly notes?: string | undefined;
}

/** Each customer's cars. */
export function carsIn({ db, write }: Bench, variants: Variants, surveys: Surveys) {
  const shown = db.prepare<[string], Car>(
    'SELECT id, customer_id AS customerId, customer_name AS customerName, name, notes FROM shown_car WHERE id = ?',
  );
  const ofCustomer = db.prepare<[string], { id: string; name: string }>(
    'SELECT id, name FROM shown_car WHERE customer_id = ? ORDER BY made',
  );
  const shownCustomer = db.prepare<[string]>('SELECT 1 FROM shown_customer WHERE id = ?');
  const insert = db.prepare<[string, string, string, string]>(
    'INSERT INTO car (id, customer_id, name, notes) VALUES (?, ?, ?, ?)',
  );
  const update = db.prepare<[string, string, string]>('UPDATE car SET name = ?, notes = ? WHERE id = ?');
  const moveTo = db.prepare<[string, string]>('UPDATE car SET customer_id = ? WHERE id = ?');

  function read(id: string): Car {
    const car = shown.get(id);
    if (!car) throw new StoreError('not-found', 'this car is not in the shop');
    return {
      ...car,
      customerName: readableName(car.customerName),
      name: readableName(car.name),
      notes: readableNotes(car.notes),
    };
  }

  function requireCustomer(id: string): void {
    if (!shownCustomer.get(id)) throw new StoreError('not-found', 'this customer is not in the shop');
  }

  function add(customerId: string, name: string, notes: string): string {
    return write(() => {
      requireCustomer(customerId);
      const id = randomUUID();
      insert.run(id, customerId, name, notes);
      return id;
    });
  }

  const namesOf = (customerId: string) => ofCustomer.all(customerId).map((car) => car.name);

  return {
    read,
    add,

    named: (customerId: string, name: string): string | undefined =>
      ofCustomer.all(customerId).find((car) => car.name === name)?.id,

    /** Adds a car whose name no person typed, so that it may be made distinct. */
    addDistinct: (customerId: string, name: string, notes: string): string =>
      write(() => add(customerId, distinctName(name, namesOf(customerId)), notes)),

    change: (id: string, { name, notes }: Change): void =>
      write(() => {
        const car = read(id);
        update.run(name ?? car.name, notes ?? car.notes, id);
      }),

    /** A copy with its measurements and all variants that are not in the bin. Their histories start anew. */
    duplicate: (id: string): string =>
      write(() => {
        const car = read(id);
        const copy = add(car.customerId, copyName(car.name, namesOf(car.customerId)), car.notes);
        const survey = surveys.readable(id);
        if (survey) surveys.begin(copy, survey);
        for (const document of variants.documentsIn(id))
          variants.add(copy, document, `Copied from ${car.name}`);
        return copy;
      }),

    move: (id: string, customerId: string): void =>
      write(() => {
        requireCustomer(customerId);
        moveTo.run(customerId, read(id).id);
      }),
  };
}
