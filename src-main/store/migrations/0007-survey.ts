import type { Migration } from './migration.ts';

/** What was measured on each car, as JSON text; NULL where nothing was. Its revision counts the saves. */
export const survey: Migration = {
  number: 7,
  name: 'survey',
  statements: `
    ALTER TABLE car ADD COLUMN survey TEXT;
    ALTER TABLE car ADD COLUMN survey_revision INTEGER NOT NULL DEFAULT 0;
  `,
};
