import type { Migration } from './migration.ts';

/** The shop's own stock: each entry's figures as JSON text. `made` is the order of making. */
export const shelf: Migration = {
  number: 4,
  name: 'shelf',
  statements: `
    CREATE TABLE part (
      made INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE,
      name TEXT NOT NULL,
      figures TEXT NOT NULL CHECK (json_valid(figures)),
      binned_at INTEGER
    ) STRICT;

    CREATE VIEW shown_part AS
      SELECT * FROM part WHERE binned_at IS NULL;
  `,
};
