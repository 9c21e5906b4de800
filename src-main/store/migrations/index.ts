// Every step of the database's build, in order. A new one is one new file and one line here.
import { shop } from './0001-shop.ts';
import { settings } from './0002-settings.ts';
import { photos } from './0003-photos.ts';
import { shelf } from './0004-shelf.ts';
import { mark } from './0005-mark.ts';
import { packedHistory } from './0006-packed-history.ts';
import { survey } from './0007-survey.ts';
import { sheetRevision } from './0008-sheet-revision.ts';
import { tickets } from './0009-tickets.ts';
import { ticketPhotos } from './0010-ticket-photos.ts';
import type { Migration } from './migration.ts';

export type { Migration };

export const MIGRATIONS: readonly Migration[] = [
  shop,
  settings,
  photos,
  shelf,
  mark,
  packedHistory,
  survey,
  sheetRevision,
  tickets,
  ticketPhotos,
];
