import { expect, test } from 'vitest';
import { impossibleLayout, sampleLayout } from '../../support/host-sample.ts';
import { begin, drawer, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';

export function shopTests(open: OpenSession): void {
  test('customers and cars are read back by name, changed, and there at the next start', async () => {
    const { call, reopen } = await open();
    const { customerId, carId } = await begin(call);
    await value(call, 'car.add', { customerId, name: 'car 10' });
    await value(call, 'car.add', { customerId, name: 'Car 2', notes: 'long wheelbase' });
    await value(call, 'customer.add', { name: 'An early bird' });
    await value(call, 'customer.change', { id: customerId, notes: 'rings on Fridays' });
    await value(call, 'car.change', { id: carId, name: 'Open four-seater', notes: 'dropped axle' });

    const again = await reopen();
    expect(await drawer(again)).toEqual([
      'An early bird',
      'Odd Fellow',
      '  Car 2',
      '  car 10',
      '  Open four-seater',
      '    Arm down',
    ]);
    const { customers } = await value(again, 'shop.read', {});
    expect(customers[1]?.notes).toBe('rings on Fridays');
    expect(customers[1]?.cars.map((car) => car.notes)).toEqual(['long wheelbase', '', 'dropped axle']);
  });

  test('a car is begun with its customer and its first variant, all of it or nothing', async () => {
    const { call } = await open();
    const first = await value(call, 'car.begin', {
      customer: { name: ' Odd Fellow ' },
      name: 'Roadster',
      document: sampleLayout(),
    });
    expect((await value(call, 'variant.open', { id: first.variantId })).carId).toBe(first.carId);
    // A customer of that name is there now; a car of one's own id goes to that one.
    const { customerId } = await value(call, 'car.begin', {
      customer: { name: 'Odd Fellow' },
      name: 'Pickup',
      document: sampleLayout(),
    });
    expect(customerId).toBe(first.customerId);
    await value(call, 'car.begin', { customer: { id: customerId }, name: 'Van', document: sampleLayout() });
    const before = await drawer(call);
    expect(before).toEqual([
      'Odd Fellow',
      '  Pickup',
      '    Arm down',
      '  Roadster',
      '    Arm down',
      '  Van',
      '    Arm down',
    ]);
    const refused = { customer: { name: 'Nobody' }, name: 'x', document: impossibleLayout() };
    expect(await failure(call, 'car.begin', refused)).toMatch(/^(bad-request|refused-document): /);
    const gone = { customer: { id: first.carId }, name: 'x', document: sampleLayout() };
    expect(await failure(call, 'car.begin', gone)).toMatch(/^not-found: /);
    expect(await drawer(call)).toEqual(before);
  });

  test('a car is duplicated with its variants, but without those in the bin', async () => {
    const { call } = await open();
    const { carId, id } = await begin(call);
    await value(call, 'variant.add', { carId, document: sampleLayout('Arm up') });
    await value(call, 'bin.put', { kind: 'variant', id });
    const { id: copy } = await value(call, 'car.duplicate', { id: carId });
    await value(call, 'car.duplicate', { id: copy });
    expect(await drawer(call)).toEqual([
      'Odd Fellow',
      '  Roadster',
      '    Arm up',
      '  Roadster copy',
      '    Arm up',
      '  Roadster copy 2',
      '    Arm up',
    ]);
  });

  test('a car moves to another customer', async () => {
    const { call } = await open();
    const { carId } = await begin(call);
    const { id: customerId } = await value(call, 'customer.add', { name: 'Second Hand' });
    await value(call, 'car.move', { id: carId, customerId });
    expect(await drawer(call)).toEqual(['Odd Fellow', 'Second Hand', '  Roadster', '    Arm down']);
  });

  test('the bin hides a thing with all in it and brings it back', async () => {
    const { call } = await open();
    const { customerId, carId, id } = await begin(call);
    const before = await drawer(call);

    await value(call, 'bin.put', { kind: 'customer', id: customerId });
    expect(await drawer(call)).toEqual([]);
    expect((await value(call, 'shop.read', {})).binCount).toBe(1);
    expect(await failure(call, 'variant.open', { id })).toBe('not-found: this variant lies in the bin');
    expect(await failure(call, 'car.add', { customerId, name: 'x' })).toMatch(/^not-found: /);
    expect(await failure(call, 'variant.add', { carId, document: sampleLayout() })).toMatch(/^not-found: /);

    await value(call, 'bin.restore', { kind: 'customer', id: customerId });
    expect(await drawer(call)).toEqual(before);
  });

  test('a variant comes back with the car and the customer that hold it', async () => {
    const { call } = await open();
    const { customerId, carId, id } = await begin(call);
    const { id: other } = await value(call, 'variant.add', { carId, document: sampleLayout('Arm up') });
    for (const thing of [
      { kind: 'variant', id },
      { kind: 'variant', id: other },
      { kind: 'car', id: carId },
      { kind: 'customer', id: customerId },
    ] as const)
      await value(call, 'bin.put', thing);
    const { entries } = await value(call, 'bin.list', {});
    expect(entries.map(({ kind, name, from }) => `${kind} ${name} from ${from}`).sort()).toEqual([
      'car Roadster from Odd Fellow',
      'customer Odd Fellow from ',
      'variant Arm down from Odd Fellow / Roadster',
      'variant Arm up from Odd Fellow / Roadster',
    ]);

    await value(call, 'bin.restore', { kind: 'variant', id });
    expect(await drawer(call)).toEqual(['Odd Fellow', '  Roadster', '    Arm down']);
    expect((await value(call, 'shop.read', {})).binCount).toBe(1);
  });

  test('emptying the bin deletes what lies in it, and nothing else', async () => {
    const { call } = await open();
    const { customerId, carId, id } = await begin(call);
    const { id: other } = await value(call, 'car.add', { customerId, name: 'Tourer' });
    await value(call, 'bin.put', { kind: 'car', id: carId });
    await value(call, 'bin.empty', {});
    expect(await drawer(call)).toEqual(['Odd Fellow', '  Tourer']);
    expect((await value(call, 'bin.list', {})).entries).toEqual([]);
    expect(await failure(call, 'variant.open', { id })).toBe('not-found: this variant no longer exists');
    expect(await failure(call, 'bin.restore', { kind: 'car', id: carId })).toBe(
      'not-found: this car no longer exists',
    );
    await value(call, 'car.change', { id: other, name: 'Long tourer' });
  });
}
