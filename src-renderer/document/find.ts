import type { Reply } from '../../src-main/api/contract.ts';
import { plainText } from './plain-text.ts';

export type Customer = Reply<'shop.read'>['customers'][number];
export type Car = Customer['cars'][number];
export type VariantSummary = Car['variants'][number];

/**
 * The customers, cars and variants that hold every word of the text somewhere in their own name or in the names
 * above them. A car that matches is shown with all its variants; an empty text finds everything.
 */
export function found(customers: readonly Customer[], text: string): Customer[] {
  const words = plainText(text).split(/\s+/).filter(Boolean);
  if (words.length === 0) return [...customers];
  const holds = (...names: string[]) => {
    const all = plainText(names.join(' '));
    return words.every((word) => all.includes(word));
  };
  const result: Customer[] = [];
  for (const customer of customers) {
    if (holds(customer.name)) {
      result.push(customer);
      continue;
    }
    const cars: Car[] = [];
    for (const car of customer.cars) {
      if (holds(customer.name, car.name)) cars.push(car);
      else {
        const variants = car.variants.filter((variant) => holds(customer.name, car.name, variant.name));
        if (variants.length > 0) cars.push({ ...car, variants });
      }
    }
    if (cars.length > 0) result.push({ ...customer, cars });
  }
  return result;
}

/** Where a variant stands, or nothing. */
export function placeOf(
  customers: readonly Customer[],
  variantId: string,
): { customer: Customer; car: Car; variant: VariantSummary } | undefined {
  for (const customer of customers)
    for (const car of customer.cars)
      for (const variant of car.variants) if (variant.id === variantId) return { customer, car, variant };
  return undefined;
}

/** A shop as far as its names go. */
type Named = readonly {
  readonly name: string;
  readonly cars: readonly {
    readonly name: string;
    readonly layouts: readonly { readonly name: string }[];
  }[];
}[];

/** Whether any of the named layouts is not among the customers' cars under the same names. */
export function isMissing(customers: readonly Customer[], named: Named): boolean {
  return named.some((customer) =>
    customer.cars.some((car) => {
      const cars = customers.find(({ name }) => name === customer.name)?.cars;
      const variants = cars?.find(({ name }) => name === car.name)?.variants ?? [];
      return car.layouts.some((layout) => !variants.some(({ name }) => name === layout.name));
    }),
  );
}
