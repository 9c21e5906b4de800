import { join } from 'node:path';
import type { Contents } from './contents.ts';
import { backupsFolder, type Copy, copyPath, type DayCopies, listCopies, lookInto } from './copies.ts';
import type { Bench } from './database.ts';
import type { Migration } from './migrations/index.ts';
import { DATABASE_FILE } from './open-database.ts';
import { bringBack } from './restore.ts';
import type { HistoryWish } from './shop-file/lines.ts';
import { type CheckPhoto, readShop } from './shop-file/read-shop.ts';
import { writeShop } from './shop-file/write-shop.ts';
import { dateForFileName } from './times.ts';

/** Whole copies of the shop: those kept by the program, and the files that a person takes elsewhere and brings back. */
export function shopCopies(bench: Bench, folder: string, migrations: readonly Migration[], days: DayCopies) {
  return {
    list: (): Copy[] => listCopies(folder),
    look: (name: string): Contents => lookInto(copyPath(folder, name)),
    bringBack: (name: string): Contents => bringBack(bench, folder, copyPath(folder, name), migrations),

    /** Makes the copy of this day now, unless one of this hour is there. */
    keepDay: (): Promise<void> => days.keep(),
    /** Resolves when no copy is being made. */
    settled: (): Promise<void> => days.settled(),
    /** Why the last copy of a day could not be made; empty if it was. */
    trouble: (): string => days.trouble,

    /** The whole shop as the bytes of one file, made as they are asked for. */
    file: (history: HistoryWish): Generator<Buffer> =>
      writeShop(join(folder, DATABASE_FILE), { history, made: bench.now() }),

    /** Takes in such a file as one more copy, to be looked into; returns its name. */
    takeFile: async (stream: AsyncIterable<Uint8Array>, checkPhoto: CheckPhoto): Promise<string> => {
      const name = `toeboard-file-${dateForFileName(bench.now())}.sqlite`;
      await readShop(stream, join(backupsFolder(folder), name), migrations, checkPhoto, bench.now());
      return name;
    },
  };
}
