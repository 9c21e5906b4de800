import { done, type Handlers, type Program } from './handlers.ts';

type ShopCalls =
  | 'shop.read'
  | 'customer.add'
  | 'customer.change'
  | 'car.add'
  | 'car.begin'
  | 'car.change'
  | 'car.duplicate'
  | 'car.move'
  | 'bin.put'
  | 'bin.list'
  | 'bin.restore'
  | 'bin.empty';

export function shopHandlers({ store }: Program): Pick<Handlers, ShopCalls> {
  const { shop, customers, cars, variants, bin, shelf, tickets } = store;

  function troubles(): string[] {
    const countWords = (number: number, what: string) =>
      number === 0
        ? []
        : [`${number} ${what} stored in a form that cannot be read, and left out of the lists.`];
    const things = shop.unaskable();
    const parts = shelf.broken();
    const asked = tickets.broken();
    return [
      ...store.damageFound(),
      ...countWords(things, things === 1 ? 'customer, car or layout is' : 'customers, cars or layouts are'),
      ...countWords(parts, parts === 1 ? 'entry of the shelf is' : 'entries of the shelf are'),
      ...countWords(asked, asked === 1 ? 'ticket of the counter is' : 'tickets of the counter are'),
    ];
  }

  return {
    'shop.read': () => ({ customers: shop.read(), binCount: bin.count(), troubles: troubles() }),

    'customer.add': ({ name, notes }) => ({ id: customers.add(name, notes) }),
    'customer.change': ({ id, ...change }) => done(() => customers.change(id, change)),

    'car.add': ({ customerId, name, notes }) => ({ id: cars.add(customerId, name, notes) }),
    'car.begin': ({ customer, name, document }) =>
      store.together(() => {
        const customerId =
          'id' in customer
            ? customer.id
            : (customers.named(customer.name) ?? customers.add(customer.name, ''));
        const carId = cars.add(customerId, name, '');
        return { customerId, carId, variantId: variants.add(carId, document, 'Begun') };
      }),
    'car.change': ({ id, ...change }) => done(() => cars.change(id, change)),
    'car.duplicate': ({ id }) => ({ id: cars.duplicate(id) }),
    'car.move': ({ id, customerId }) => done(() => cars.move(id, customerId)),

    'bin.put': ({ kind, id }) => done(() => bin.put(kind, id)),
    'bin.list': () => ({ entries: bin.list() }),
    'bin.restore': ({ kind, id }) => done(() => bin.restore(kind, id)),
    'bin.empty': () => done(() => bin.empty()),
  };
}
