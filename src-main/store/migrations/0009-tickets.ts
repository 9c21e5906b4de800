import type { Migration } from './migration.ts';

/**
 * Questions that were answered at the counter: for whom, what was said as JSON text, what it came to in one sentence, and the
 * layout that was made of it. `made` is the order of making.
 */
export const tickets: Migration = {
  number: 9,
  name: 'tickets',
  statements: `
    CREATE TABLE ticket (
      made INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE,
      customer TEXT NOT NULL,
      note TEXT NOT NULL,
      question TEXT NOT NULL,
      headline TEXT NOT NULL,
      asked_at INTEGER NOT NULL,
      revision INTEGER NOT NULL,
      variant_id TEXT REFERENCES variant (id) ON DELETE SET NULL,
      binned_at INTEGER
    ) STRICT;
    CREATE INDEX ticket_of_variant ON ticket (variant_id) WHERE variant_id IS NOT NULL;
    CREATE INDEX ticket_binned ON ticket (binned_at) WHERE binned_at IS NOT NULL;

    CREATE VIEW shown_ticket AS
      SELECT * FROM ticket WHERE binned_at IS NULL;
  `,
};
