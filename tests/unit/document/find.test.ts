import { describe, expect, test } from 'vitest';
import { type Customer, found, isMissing, placeOf } from '../../../src-renderer/document/find.ts';

const variant = (id: string, name: string) => ({ id, name, savedAt: 0 });
const SHOP: Customer[] = [
  {
    id: 'c1',
    name: 'Élodie Farrow',
    notes: '',
    cars: [
      { id: 'a1', name: 'Tourer', notes: '', variants: [variant('v1', 'Arm down'), variant('v2', 'Arm up')] },
      { id: 'a2', name: 'Coupe', notes: '', variants: [variant('v3', 'Cross steer')] },
    ],
  },
  {
    id: 'c2',
    name: 'Bexley',
    notes: '',
    cars: [{ id: 'a3', name: 'Truck', notes: '', variants: [variant('v4', 'Cross steer')] }],
  },
];

const shown = (text: string) =>
  found(SHOP, text).flatMap((customer) =>
    customer.cars.flatMap((car) => car.variants.map((each) => each.id)),
  );

describe('finding', () => {
  test('an empty text finds everything, one that is nowhere nothing', () => {
    expect(found(SHOP, '  ')).toEqual(SHOP);
    expect(found(SHOP, 'umbrella')).toEqual([]);
  });

  test('names are found whatever their case and accents', () => {
    expect(shown('elodie')).toEqual(['v1', 'v2', 'v3']);
    expect(shown('CROSS')).toEqual(['v3', 'v4']);
  });

  test('words may stand in different names above one another', () => {
    expect(shown('bexley cross')).toEqual(['v4']);
    expect(shown('tourer up')).toEqual(['v2']);
    expect(shown('tourer cross')).toEqual([]);
  });

  test('a car that is found is shown whole', () => {
    expect(shown('tourer')).toEqual(['v1', 'v2']);
  });
});

test('a variant is placed by its id', () => {
  expect(placeOf(SHOP, 'v3')).toMatchObject({ customer: { id: 'c1' }, car: { id: 'a2' } });
  expect(placeOf(SHOP, 'v9')).toBeUndefined();
});

test('a named layout is missing unless it stands under the same customer and car', () => {
  const named = (customer: string, car: string, layout: string) => [
    { name: customer, cars: [{ name: car, layouts: [{ name: layout }] }] },
  ];
  expect(isMissing(SHOP, named('Bexley', 'Truck', 'Cross steer'))).toBe(false);
  expect(isMissing(SHOP, named('Bexley', 'Truck', 'Arm up'))).toBe(true);
  expect(isMissing(SHOP, named('Bexley', 'Coupe', 'Cross steer'))).toBe(true);
});
