import type { Database } from './database.ts';
import type { PhotoUse } from './photo-use.ts';
import type { States } from './states.ts';

/** States packed in one write: a few ms. */
const AT_ONCE = 40;
/** ms from the start to the first, so that the first answer is not waited for. */
const BEGIN = 1500;
/** ms between two writes, in which the program answers. */
const BETWEEN = 25;

/** Whether states stand there as older programs wrote them, unpacked. */
export function hasPlainStates(db: Database): boolean {
  return db.prepare('SELECT 1 FROM history WHERE packed IS NULL LIMIT 1').get() !== undefined;
}

/**
 * Packs the states that older programs left plain, a few in each write, beside other work. Each write is whole or not at
 * all and a plain state is as readable as a packed one, so that it may be broken off at any moment and goes on with the
 * next start.
 */
export class Packer {
  readonly #db: Database;
  readonly #batch: () => boolean;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(db: Database, write: <Value>(work: () => Value) => Value, states: States, uses: PhotoUse) {
    this.#db = db;
    const plain = db.prepare<[], { id: number; variant_id: string; document: string }>(
      `SELECT id, variant_id, document FROM history WHERE packed IS NULL ORDER BY variant_id, id LIMIT ${AT_ONCE}`,
    );
    const put = db.prepare<[number | null, Buffer, number, number]>(
      "UPDATE history SET document = '', base = ?, packed = ?, sum = ? WHERE id = ?",
    );
    this.#batch = () =>
      write(() => {
        const rows = plain.all();
        for (const { id, variant_id, document } of rows) {
          const { base, packed, sum } = states.packed(variant_id, document);
          put.run(base, packed, sum, id);
          uses.note(variant_id, document, id);
        }
        return rows.length > 0;
      });
    if (hasPlainStates(db)) this.#later(BEGIN);
  }

  /** Packs a few; false if none were left. */
  batch(): boolean {
    return this.#batch();
  }

  stop(): void {
    clearTimeout(this.#timer);
  }

  #later(wait: number): void {
    this.#timer = setTimeout(() => {
      if (!this.#db.open) return;
      try {
        if (this.#batch()) this.#later(BETWEEN);
      } catch {
        // The disk may be full or the files taken away:who saves next hears of it, and the next start goes on here.
      }
    }, wait).unref();
  }
}
