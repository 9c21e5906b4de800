import type { Migration } from './migration.ts';

/** The revision of each variant's sheet that went out last, 0 before the first, and the mark of what it was made from. */
export const sheetRevision: Migration = {
  number: 8,
  name: 'sheet-revision',
  statements: `
    ALTER TABLE variant ADD COLUMN sheet_revision INTEGER NOT NULL DEFAULT 0;
    ALTER TABLE variant ADD COLUMN sheet_mark TEXT NOT NULL DEFAULT '';
  `,
};
