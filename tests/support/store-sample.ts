import { onTestFinished } from 'vitest';
import { openStore, type Store, StoreError, type StoreOptions } from '../../src-main/store/index.ts';
import { testFolder } from './host-folder.ts';
import { sampleLayout } from './host-sample.ts';

export function testStore(options: Partial<StoreOptions> = {}): Store {
  const store = openStore({ folder: testFolder(), ...options });
  onTestFinished(store.close);
  return store;
}

/** A variant of a car of a customer. */
export function withVariant(store: Store): string {
  const carId = store.cars.add(store.customers.add('Odd Fellow', ''), 'Roadster', '');
  return store.variants.add(carId, sampleLayout(), 'Begun');
}

/** What opening a store is refused with; a success fails the test. */
export function refusal(options: StoreOptions): string {
  try {
    openStore(options).close();
  } catch (error) {
    if (error instanceof StoreError) return error.message;
    throw error;
  }
  throw new Error('the store was opened and should have been refused');
}
