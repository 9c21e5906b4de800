import { expect, test } from 'vitest';
import { impossibleLayout, sampleLayout } from '../../support/host-sample.ts';
import { begin, drawer, labels, type OpenSession } from '../../support/host-session.ts';
import { failure, value } from '../../support/host-transports.ts';

export function fileTests(open: OpenSession): void {
  test('a variant goes out as a file and comes in as the same document', async () => {
    const { call } = await open();
    const { id, carId } = await begin(call);
    const file = await value(call, 'file.exportVariant', { id });
    expect(file.fileName).toBe('Roadster - Arm down.json');
    expect(JSON.parse(file.text)).toEqual(sampleLayout());
    expect(file.text).toContain('"pitmanBall": [-872, 500, 346],\n');

    const { variantIds } = await value(call, 'file.import', { ...file, carId });
    expect((await value(call, 'variant.open', { id: variantIds[0] ?? '' })).document).toEqual(
      sampleLayout('Arm down 2'),
    );
    expect(await labels(call, variantIds[0] ?? '')).toEqual(['Imported from Roadster - Arm down.json']);
  });

  test('a whole car goes out and comes in, in order', async () => {
    const { call } = await open();
    const { carId, customerId } = await begin(call);
    await value(call, 'variant.add', { carId, document: sampleLayout('Arm up', 400) });
    await value(call, 'car.change', { id: carId, notes: 'dropped axle' });
    const file = await value(call, 'file.exportCar', { id: carId });
    expect(JSON.parse(file.text)).toEqual({
      format: 'toeboard-car',
      version: 2,
      customer: 'Odd Fellow',
      name: 'Roadster',
      notes: 'dropped axle',
      layouts: [sampleLayout(), sampleLayout('Arm up', 400)],
    });

    const { variantIds } = await value(call, 'file.import', { ...file, customerId });
    expect(variantIds).toHaveLength(2);
    expect(await drawer(call)).toEqual([
      'Odd Fellow',
      '  Roadster',
      '    Arm down',
      '    Arm up',
      '  Roadster 2',
      '    Arm down',
      '    Arm up',
    ]);
    const { customers } = await value(call, 'shop.read', {});
    expect(customers[0]?.cars[1]?.notes).toBe('dropped axle');
  });

  test('what comes without a place goes to the customer "Imported"', async () => {
    const { call } = await open();
    const text = JSON.stringify(sampleLayout());
    await value(call, 'file.import', { text, fileName: 'from a friend.json' });
    await value(call, 'file.import', { text: `\uFEFF${text}`, fileName: 'from a friend.json' });
    expect(await drawer(call)).toEqual([
      'Imported',
      '  from a friend',
      '    Arm down',
      '  from a friend 2',
      '    Arm down',
    ]);
  });

  test('one bad layout in a car imports nothing and says which', async () => {
    const { call } = await open();
    const { customerId } = await begin(call);
    const before = await drawer(call);
    const layouts = [sampleLayout(), impossibleLayout()];
    const text = JSON.stringify({ format: 'toeboard-car', version: 1, name: 'Bad', layouts });
    expect(await failure(call, 'file.import', { text, fileName: 'bad.json', customerId })).toBe(
      'refused-document: bad.json: car file: layouts[1].steering.dragLinkBall: on the same spot as the pitman ball: the drag link has no length',
    );
    expect(await failure(call, 'file.import', { text: 'PK\u0003\u0004', fileName: 'photo.zip' })).toBe(
      'refused-document: photo.zip: it is a ZIP archive, neither a layout nor a car',
    );
    expect(await drawer(call)).toEqual(before);
  });

  test('the demonstrations are listed, read, taken, and taken again without doubles', async () => {
    const { call } = await open();
    const { customers } = await value(call, 'demonstration.list', {});
    const layouts = customers.flatMap((customer) => customer.cars.flatMap((car) => car.layouts));
    expect(layouts.length).toBeGreaterThanOrEqual(5);
    for (const { file, name, about } of layouts) {
      expect(about).not.toBe('');
      expect((await value(call, 'demonstration.read', { file })).document.name).toBe(name);
    }

    const { variantIds } = await value(call, 'demonstration.take', {});
    expect(new Set(variantIds).size).toBe(layouts.length);
    const taken = await drawer(call);
    expect(await value(call, 'demonstration.take', {})).toEqual({ variantIds });
    expect(await drawer(call)).toEqual(taken);
  });

  test('taking the demonstrations again brings only what is missing', async () => {
    const { call } = await open();
    const { variantIds } = await value(call, 'demonstration.take', {});
    const [first = '', ...others] = variantIds;
    await value(call, 'bin.put', { kind: 'variant', id: first });
    await value(call, 'bin.empty', {});
    const { variantIds: again } = await value(call, 'demonstration.take', {});
    expect(again.slice(1)).toEqual(others);
    expect(again[0]).not.toBe(first);
  });

  test('a demonstration is read by its listed name only', async () => {
    const { call } = await open();
    for (const file of ['../package.json', 'shop.json', '/etc/passwd'])
      expect(await failure(call, 'demonstration.read', { file })).toBe(
        `not-found: ${file}: there is no such demonstration`,
      );
  });

  test('a table of points is read line by line, and nothing is changed', async () => {
    const { call } = await open();
    const text = 'number;"x, in";"y, in";"z, in"\r\n3;1 1/2;;2\r\n';
    expect(await value(call, 'points.readCsv', { text, fileName: 'points.csv' })).toEqual({
      unit: 'in',
      lines: [{ line: 2, point: '3', at: ['1 1/2', '', '2'] }],
    });
    expect(await failure(call, 'points.readCsv', { text: 'a,b', fileName: 'x\u202e.csv' })).toMatch(
      /^refused-document: x[^\u202e]*\.csv: there is no column "x"/,
    );
  });
}
