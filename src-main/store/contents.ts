import type { Database } from './database.ts';

/** What is in a database, as a person would look at it. */
export interface Contents {
  readonly customers: { readonly name: string; readonly cars: ContentsCar[] }[];
  readonly layouts: number;
  /** In the histories of the layouts, the present ones with them. */
  readonly states: number;
  readonly photos: number;
  readonly parts: number;
  /** Of the counter. */
  readonly tickets: number;
  /** When a layout was saved last, ms since 1970; undefined if there is none. */
  readonly newest: number | undefined;
}

export interface ContentsCar {
  readonly name: string;
  readonly layouts: number;
}

interface CarRow {
  readonly customer: string;
  readonly customerId: string;
  readonly car: string | null;
  readonly layouts: number;
}

const CARS = `
  SELECT customer.id AS customerId, customer.name AS customer, car.name AS car,
         (SELECT count(*) FROM variant WHERE variant.car_id = car.id AND variant.binned_at IS NULL) AS layouts
  FROM customer LEFT JOIN car ON car.customer_id = customer.id AND car.binned_at IS NULL
  WHERE customer.binned_at IS NULL
  ORDER BY customer.name COLLATE NOCASE, customer.made, car.name COLLATE NOCASE`;

export function hasTable(db: Database, name: string): boolean {
  return db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?").get(name) !== undefined;
}

function count(db: Database, table: string, where = 'TRUE'): number {
  if (!hasTable(db, table)) return 0;
  return db.prepare<[], number>(`SELECT count(*) FROM ${table} WHERE ${where}`).pluck().get() ?? 0;
}

/** Reads a database of any version, what lies in its bin left out. */
export function contentsOf(db: Database): Contents {
  const customers = new Map<string, { name: string; cars: ContentsCar[] }>();
  for (const { customerId, customer, car, layouts } of db.prepare<[], CarRow>(CARS).all()) {
    const entry = customers.get(customerId) ?? { name: customer, cars: [] };
    customers.set(customerId, entry);
    if (car !== null) entry.cars.push({ name: car, layouts });
  }
  const newest = db.prepare<[], number | null>('SELECT max(saved_at) FROM variant').pluck().get();
  return {
    customers: [...customers.values()],
    layouts: count(db, 'variant', 'binned_at IS NULL'),
    states: count(db, 'history', 'variant_id IN (SELECT id FROM variant WHERE binned_at IS NULL)'),
    photos: count(db, 'photo'),
    parts: count(db, 'part', 'binned_at IS NULL'),
    tickets: count(db, 'ticket', 'binned_at IS NULL'),
    newest: newest ?? undefined,
  };
}
