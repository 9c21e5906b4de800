import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleLayout } from '../../support/host-sample.ts';
import { testStore } from '../../support/store-sample.ts';

type Kind = 'customer' | 'car' | 'variant';
interface Thing {
  readonly kind: Kind;
  readonly id: string;
  readonly holder: Thing | undefined;
  binned: boolean;
}

/** The slow and obvious way to say what is to be seen. */
function isShown(thing: Thing): boolean {
  return !thing.binned && (thing.holder === undefined || isShown(thing.holder));
}

test('whatever is put in the bin and brought back in whatever order, the drawer shows what it should', () => {
  const store = testStore();
  const things: Thing[] = [];
  const keep = (kind: Kind, id: string, holder?: Thing): Thing => {
    const thing = { kind, id, holder, binned: false };
    things.push(thing);
    return thing;
  };
  for (const customerName of ['A', 'B']) {
    const customer = keep('customer', store.customers.add(customerName, ''));
    for (const carName of ['C', 'D']) {
      const car = keep('car', store.cars.add(customer.id, carName, ''), customer);
      for (const name of ['E', 'F'])
        keep('variant', store.variants.add(car.id, sampleLayout(name), 'Begun'), car);
    }
  }

  const step = fc.record({ put: fc.boolean(), index: fc.nat(things.length - 1) });
  fc.assert(
    fc.property(fc.array(step, { maxLength: 20 }), (steps) => {
      for (const { put, index } of steps) {
        const thing = things[index] as Thing;
        if (put) {
          store.bin.put(thing.kind, thing.id);
          thing.binned = true;
        } else {
          store.bin.restore(thing.kind, thing.id);
          for (let back: Thing | undefined = thing; back; back = back.holder) back.binned = false;
        }
      }
      const shown = store.shop
        .read()
        .flatMap((customer) => [
          customer.id,
          ...customer.cars.flatMap((car) => [car.id, ...car.variants.map((variant) => variant.id)]),
        ]);
      expect(shown.sort()).toEqual(
        things
          .filter(isShown)
          .map(({ id }) => id)
          .sort(),
      );
      expect(store.bin.count()).toBe(things.filter(({ binned }) => binned).length);
      expect(store.bin.list()).toHaveLength(store.bin.count());
    }),
    { numRuns: 60, seed: 20_260_309 },
  );
});
