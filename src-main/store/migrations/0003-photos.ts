import type { Migration } from './migration.ts';

/** Photos as they were brought in, each once, by the SHA-256 of its content. Layouts name them by that hash. */
export const photos: Migration = {
  number: 3,
  name: 'photos',
  statements: `
    CREATE TABLE photo (
      hash TEXT PRIMARY KEY,
      type TEXT NOT NULL,
      width INTEGER NOT NULL,
      height INTEGER NOT NULL,
      added_at INTEGER NOT NULL,
      content BLOB NOT NULL
    ) STRICT;
  `,
};
