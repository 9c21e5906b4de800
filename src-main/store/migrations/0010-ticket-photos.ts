import type { Migration } from './migration.ts';

/**
 * By which photo a ticket's teeth are counted: its hash, found by an index on what the ticket says, so that emptying the bin
 * searches no text. A text that is damaged names none.
 */
export const ticketPhotos: Migration = {
  number: 10,
  name: 'ticket-photos',
  statements: `
    CREATE INDEX ticket_photo
      ON ticket (CASE WHEN json_valid(question) THEN question ->> '$.photo.hash' END);
  `,
};
