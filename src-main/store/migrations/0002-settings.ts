import type { Migration } from './migration.ts';

/** What a person has set, by name; each value is JSON text, so that a new setting needs no new table. */
export const settings: Migration = {
  number: 2,
  name: 'settings',
  statements: `
    CREATE TABLE setting (
      name TEXT PRIMARY KEY,
      value TEXT NOT NULL CHECK (json_valid(value))
    ) STRICT;
  `,
};
