import type { Migration } from './migration.ts';

/** Customers, their cars, each car's variants, each variant's history; and the views without what is in the bin. `made` is the order of making. */
export const shop: Migration = {
  number: 1,
  name: 'shop',
  statements: `
    CREATE TABLE customer (
      made INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE,
      name TEXT NOT NULL,
      notes TEXT NOT NULL,
      binned_at INTEGER
    ) STRICT;

    CREATE TABLE car (
      made INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE,
      customer_id TEXT NOT NULL REFERENCES customer (id) ON DELETE CASCADE,
      name TEXT NOT NULL,
      notes TEXT NOT NULL,
      binned_at INTEGER
    ) STRICT;
    CREATE INDEX car_of_customer ON car (customer_id);

    CREATE TABLE variant (
      made INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE,
      car_id TEXT NOT NULL REFERENCES car (id) ON DELETE CASCADE,
      name TEXT NOT NULL,
      document TEXT NOT NULL,
      revision INTEGER NOT NULL,
      saved_at INTEGER NOT NULL,
      binned_at INTEGER
    ) STRICT;
    CREATE INDEX variant_of_car ON variant (car_id);

    CREATE TABLE history (
      id INTEGER PRIMARY KEY AUTOINCREMENT,
      variant_id TEXT NOT NULL REFERENCES variant (id) ON DELETE CASCADE,
      step TEXT NOT NULL,
      label TEXT NOT NULL,
      at INTEGER NOT NULL,
      document TEXT NOT NULL
    ) STRICT;
    CREATE INDEX history_of_variant ON history (variant_id, id);

    CREATE VIEW shown_customer AS
      SELECT * FROM customer WHERE binned_at IS NULL;
    CREATE VIEW shown_car AS
      SELECT car.*, shown_customer.name AS customer_name
      FROM car JOIN shown_customer ON shown_customer.id = car.customer_id
      WHERE car.binned_at IS NULL;
    CREATE VIEW shown_variant AS
      SELECT variant.*, shown_car.name AS car_name, shown_car.customer_name
      FROM variant JOIN shown_car ON shown_car.id = variant.car_id
      WHERE variant.binned_at IS NULL;
  `,
};
