import type { Bench } from './database.ts';
import { hasReadableId, readableName, readableNotes, readableTime } from './readable.ts';

export interface VariantSummary {
  readonly id: string;
  readonly name: string;
  readonly savedAt: number;
}

export interface CarSummary {
  readonly id: string;
  readonly name: string;
  readonly notes: string;
  readonly variants: VariantSummary[];
}

export interface CustomerSummary {
  readonly id: string;
  readonly name: string;
  readonly notes: string;
  readonly cars: CarSummary[];
}

/** By name as a person sorts, "Car 2" before "Car 10". */
function byName(a: { readonly name: string }, b: { readonly name: string }): number {
  return a.name.localeCompare(b.name, undefined, { numeric: true, sensitivity: 'base' });
}

/** Everything that is not in the bin, as the drawer shows it: customers and cars by name, variants as they were made. */
export function shopIn({ db }: Bench) {
  const customers = db.prepare<[], Omit<CustomerSummary, 'cars'>>(
    'SELECT id, name, notes FROM shown_customer ORDER BY made',
  );
  const cars = db.prepare<[string], Omit<CarSummary, 'variants'>>(
    'SELECT id, name, notes FROM shown_car WHERE customer_id = ? ORDER BY made',
  );
  const variants = db.prepare<[string], VariantSummary>(
    'SELECT id, name, saved_at AS savedAt FROM shown_variant WHERE car_id = ? ORDER BY made',
  );
  const unaskable = db
    .prepare<[], number>(
      `SELECT count(*) FROM (SELECT id FROM customer UNION ALL SELECT id FROM car UNION ALL SELECT id FROM variant)
         WHERE length(id) <> 36 OR id GLOB '*[^0-9a-f-]*'`,
    )
    .pluck();

  function summary<Row extends { readonly name: string }>(row: Row): Row {
    return { ...row, name: readableName(row.name) };
  }

  return {
    // In one transaction, so that another window's move is seen whole.
    read: db.transaction((): CustomerSummary[] =>
      customers
        .all()
        .filter(hasReadableId)
        .map((customer) => ({
          ...summary(customer),
          notes: readableNotes(customer.notes),
          cars: cars
            .all(customer.id)
            .filter(hasReadableId)
            .map((car) => ({
              ...summary(car),
              notes: readableNotes(car.notes),
              variants: variants
                .all(car.id)
                .filter(hasReadableId)
                .map((variant) => ({ ...summary(variant), savedAt: readableTime(variant.savedAt) })),
            }))
            .toSorted(byName),
        }))
        .toSorted(byName),
    ),

    /** How many customers, cars and layouts are stored under an id by which nobody can ask for them. */
    unaskable: (): number => unaskable.get() ?? 0,
  };
}
