// The store: customers, their cars, each car's variants and their histories, in one database in the data folder.
// Every write is one transaction; a StoreError is one plain sentence and means that nothing was written.
import { join } from 'node:path';
import { BackgroundCheck } from './background-check.ts';
import { binIn } from './bin.ts';
import { carsIn } from './cars.ts';
import { DAYS_BYTES_MOST, DayCopies } from './copies.ts';
import { customersIn } from './customers.ts';
import type { Database } from './database.ts';
import { historyIn } from './history.ts';
import { Keeper } from './keeper.ts';
import { MIGRATIONS, type Migration } from './migrations/index.ts';
import { DATABASE_FILE, openDatabase } from './open-database.ts';
import { Packer } from './packer.ts';
import { photoUseIn } from './photo-use.ts';
import { photosIn } from './photos.ts';
import { settingsIn } from './settings.ts';
import { shelfIn } from './shelf.ts';
import { shopIn } from './shop.ts';
import { shopCopies } from './shop-copies.ts';
import { statesIn } from './states.ts';
import { surveysIn } from './surveys.ts';
import { ticketsIn } from './tickets.ts';
import { variantsIn } from './variants.ts';

export type { Contents } from './contents.ts';
export type { Copy, CopyKind } from './copies.ts';
export { dataFolder, type Environment } from './data-folder.ts';
export { DATABASE_FILE } from './open-database.ts';
export { type PhotoFacts, photoHash } from './photos.ts';
export type { HistoryWish } from './shop-file/lines.ts';
export type { CheckPhoto } from './shop-file/read-shop.ts';
export { reasonOutside, StoreError, type StoreFailure, storageReason } from './store-error.ts';
export { HISTORY_MAX } from './thinning.ts';
export type { Ticket, TicketText } from './tickets.ts';

export interface StoreOptions {
  readonly folder: string;
  /** The steps of the database's build; all of them if absent. */
  readonly migrations?: readonly Migration[];
  /** ms since 1970. */
  readonly now?: () => number;
  /** Bytes that the copies of the days may take together; a few thousand millions if absent. */
  readonly copiesBytesMost?: number;
  /** ms after which a large database is read through for damage, beside other work; some seconds if absent. */
  readonly checkAfter?: number | undefined;
}

function keeperOf(db: Database, folder: string, now: () => number, onQuiet: () => void): Keeper {
  try {
    return new Keeper(db, join(folder, DATABASE_FILE), now, onQuiet);
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Opens the store of a data folder. Throws a StoreError of one line if it cannot be used. */
export function openStore({
  folder,
  migrations = MIGRATIONS,
  now = Date.now,
  copiesBytesMost = DAYS_BYTES_MOST,
  checkAfter,
}: StoreOptions) {
  const { db, notices } = openDatabase(folder, migrations, now);
  const days = new DayCopies(db, folder, now, copiesBytesMost);
  const keeper = keeperOf(db, folder, now, () => void days.keep());
  const bench = { db, now, write: keeper.write };
  const states = statesIn(db);
  const uses = photoUseIn(db);
  const history = historyIn(bench, states, uses);
  const packer = new Packer(db, keeper.write, states, uses);
  const check = new BackgroundCheck(join(folder, DATABASE_FILE), checkAfter);
  const variants = variantsIn(bench, history);
  const surveys = surveysIn(bench);
  const photos = photosIn(bench, uses);
  return {
    folder,
    notices,
    /** The connection itself: for checks of its integrity, not for work. */
    db,
    customers: customersIn(bench),
    cars: carsIn(bench, variants, surveys),
    variants,
    surveys,
    history,
    photos,
    bin: binIn(bench, photos),
    settings: settingsIn(bench),
    shop: shopIn(bench),
    shelf: shelfIn(bench),
    tickets: ticketsIn(bench),
    copies: shopCopies(bench, folder, migrations, days),
    /** Several writes as one: all of them or none. */
    together: <Value>(work: () => Value): Value => keeper.write(work),
    /** What the check for damage beside other work has found so far, in sentences for the person. */
    damageFound: (): readonly string[] => check.found,
    /** Resolves when the check for damage that goes on beside other work is through. */
    checked: check.done,
    /** Packs a few of the states that an older program left plain; false if there were none. */
    packSome: (): boolean => packer.batch(),
    close: (): void => {
      packer.stop();
      check.end();
      keeper.close();
    },
  };
}

export type Store = ReturnType<typeof openStore>;
