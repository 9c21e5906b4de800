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

// One for all comparisons: making one takes longer than comparing.
const names = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** By name as a person sorts, "Car 2" before "Car 10". */
function byName(a: { readonly name: string }, b: { readonly name: string }): number {
  return names.compare(a.name, b.name);
}

/** Everything that is not in the bin, as the drawer shows it: customers and cars by name, variants as they were made. */
export function shopIn({ db }: Bench) {
  const customers = db.prepare<[], Omit<CustomerSummary, 'cars'>>(
    'SELECT id, name, notes FROM shown_customer ORDER BY made',
  );
  const cars = db.prepare<[], Omit<CarSummary, 'variants'> & { customerId: string }>(
    'SELECT id, customer_id AS customerId, name, notes FROM car WHERE binned_at IS NULL ORDER BY made',
  );
  // Answered from the index variant_shown alone: a variant's row holds its document, and that is not read for a list.
  const variants = db.prepare<[], VariantSummary & { carId: string }>(
    `SELECT id, car_id AS carId, name, saved_at AS savedAt FROM variant WHERE binned_at IS NULL
       ORDER BY car_id, made`,
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
    read: db.transaction((): CustomerSummary[] => {
      const variantsOf = Map.groupBy(variants.all().filter(hasReadableId), ({ carId }) => carId);
      const carsOf = Map.groupBy(cars.all().filter(hasReadableId), ({ customerId }) => customerId);
      return customers
        .all()
        .filter(hasReadableId)
        .map((customer) => ({
          ...summary(customer),
          notes: readableNotes(customer.notes),
          cars: (carsOf.get(customer.id) ?? [])
            .map(({ customerId: _, ...car }) => ({
              ...summary(car),
              notes: readableNotes(car.notes),
              variants: (variantsOf.get(car.id) ?? []).map(({ carId: _of, ...variant }) => ({
                ...summary(variant),
                savedAt: readableTime(variant.savedAt),
              })),
            }))
            .toSorted(byName),
        }))
        .toSorted(byName);
    }),

    /** How many customers, cars and layouts are stored under an id by which nobody can ask for them. */
    unaskable: (): number => unaskable.get() ?? 0,
  };
}
