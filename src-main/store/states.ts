import type { Database } from './database.ts';
import { DICTIONARY_MOST, type Packed, pack, unpack } from './pack.ts';

/** The text of a state as its row has it: packed against a base, packed alone, or plain as older programs left it. */
export interface StoredText {
  readonly document: string;
  readonly base: number | null;
  readonly packed: Buffer | null;
  readonly sum: number | null;
}

interface BaseRow extends Packed {
  readonly id: number;
}

/** Of the size of its base, packed alone: a state that differs by more becomes the base of those after it. */
const DIFFERS_BY = 0.25;

/**
 * The texts of a variant's states. A small edit is kept as what differs from the variant's newest base, some hundred bytes;
 * no state needs another state to be read, so that any of them can be taken away.
 */
export function statesIn(db: Database) {
  const newest = db.prepare<[string], BaseRow>(
    'SELECT id, packed, sum FROM base WHERE variant_id = ? ORDER BY id DESC LIMIT 1',
  );
  const byId = db.prepare<[number], BaseRow>('SELECT id, packed, sum FROM base WHERE id = ?');
  const addBase = db.prepare<[string, Buffer, number]>(
    'INSERT INTO base (variant_id, packed, sum) VALUES (?, ?, ?)',
  );
  const unused = db.prepare<[{ variant: string }]>(`
    DELETE FROM base WHERE variant_id = @variant
      AND id NOT IN (SELECT base FROM history WHERE variant_id = @variant AND base IS NOT NULL)`);

  return {
    /** What is to be put into the row of a state of this variant; makes a new base where none is like it. */
    packed(variantId: string, text: string): StoredText & Packed {
      const bytes = Buffer.from(text);
      const base = newest.get(variantId);
      const like = base && unpack(base);
      if (base && like) {
        const against = pack(bytes, like);
        if (against.packed.length <= base.packed.length * DIFFERS_BY)
          return { document: '', base: base.id, ...against };
      }
      const alone = pack(bytes);
      if (bytes.length > DICTIONARY_MOST) return { document: '', base: null, ...alone };
      const id = Number(addBase.run(variantId, alone.packed, alone.sum).lastInsertRowid);
      return { document: '', base: id, ...pack(bytes, bytes) };
    },

    /** The text of a state, byte for byte as it was saved; undefined if it is damaged. */
    text({ document, base, packed, sum }: StoredText): string | undefined {
      if (packed === null || sum === null) return document;
      if (base === null) return unpack({ packed, sum })?.toString('utf8');
      const row = byId.get(base);
      const like = row && unpack(row);
      return like && unpack({ packed, sum }, like)?.toString('utf8');
    },

    /** Takes away the bases of a variant that no state of it needs any more. */
    dropUnusedBases: (variantId: string): void => void unused.run({ variant: variantId }),
  };
}

export type States = ReturnType<typeof statesIn>;
