import { createHash } from 'node:crypto';
import type { Bench } from './database.ts';
import { hasPlainStates } from './packer.ts';
import type { PhotoUse } from './photo-use.ts';
import { TICKET_PHOTO } from './tickets.ts';

export interface StoredPhoto {
  readonly type: string;
  readonly content: Uint8Array;
}

/** What a photo is known to be once it has been looked at; px upright, undefined where it has no px of its own (PDF). */
export interface PhotoFacts {
  readonly type: string;
  readonly width: number | undefined;
  readonly height: number | undefined;
}

/** What stands in the table for a size that a file does not have. Nothing reads it as one. */
const NO_SIZE = 0;

/** ms. A photo just brought in may be in a layout that is not saved yet. */
const KEPT_UNNAMED = 3_600_000;

export function photoHash(content: Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** Photos, each kept once however many layouts show it. What is stored is the file as it came, never changed. */
export function photosIn({ db, now, write }: Bench, uses: PhotoUse) {
  const insert = db.prepare<[string, string, number, number, number, Uint8Array]>(
    `INSERT INTO photo (hash, type, width, height, added_at, content) VALUES (?, ?, ?, ?, ?, ?)
       ON CONFLICT (hash) DO UPDATE SET added_at = excluded.added_at`,
  );
  const byHash = db.prepare<[string], StoredPhoto>('SELECT type, content FROM photo WHERE hash = ?');
  const count = db.prepare<[], number>('SELECT count(*) FROM photo').pluck();
  const unnamed = db.prepare<[number]>(`
    DELETE FROM photo WHERE hash IN (
      SELECT hash FROM photo AS old WHERE added_at < ?
        AND NOT EXISTS (SELECT 1 FROM photo_use WHERE photo_use.hash = old.hash)
        AND NOT EXISTS (SELECT 1 FROM ticket WHERE ${TICKET_PHOTO} = old.hash))`);

  return {
    /** Keeps a photo and gives its hash; one that is there already is not written again. */
    put: (content: Uint8Array, { type, width, height }: PhotoFacts): string =>
      write(() => {
        const hash = photoHash(content);
        insert.run(hash, type, width ?? NO_SIZE, height ?? NO_SIZE, now(), content);
        return hash;
      }),

    read: (hash: string): StoredPhoto | undefined => byHash.get(hash),

    count: (): number => count.get() ?? 0,

    /** Deletes those that no layout, no earlier state of one and no ticket names; none while states wait to be looked through. */
    forgetUnnamed(): void {
      if (hasPlainStates(db)) return;
      uses.forget();
      unnamed.run(now() - KEPT_UNNAMED);
    },
  };
}

export type Photos = ReturnType<typeof photosIn>;
