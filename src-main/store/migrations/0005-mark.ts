import type { Migration } from './migration.ts';

/**
 * One row, by which a database file is known again from its raw bytes: the shop, in 32 signs made once, and how often
 * its log was brought into the file, in 12 digits. Its length never changes, so that it is always overwritten in place.
 */
export const mark: Migration = {
  number: 5,
  name: 'mark',
  statements: `
    CREATE TABLE mark (
      only INTEGER PRIMARY KEY CHECK (only = 1),
      text TEXT NOT NULL
    ) STRICT;
    INSERT INTO mark VALUES (1, 'toeboard-mark ' || lower(hex(randomblob(16))) || ' 000000000000');
  `,
};
