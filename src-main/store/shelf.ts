import { randomUUID } from 'node:crypto';
import { type ShelfPart, type Shelved, shelfPartSchema } from '../../shared-math/shelf/index.ts';
import type { Bench } from './database.ts';
import { hasReadableId, parsedJson } from './readable.ts';
import { StoreError } from './store-error.ts';

interface Row {
  readonly id: string;
  readonly figures: string;
}

/** The shop's own stock. What is taken off the shelf lies in the bin until that is emptied. */
export function shelfIn({ db, now, write }: Bench) {
  const all = db.prepare<[], Row>('SELECT id, figures FROM shown_part ORDER BY made');
  const insert = db.prepare<[string, string, string]>(
    'INSERT INTO part (id, name, figures) VALUES (?, ?, ?)',
  );
  const update = db.prepare<[string, string, string]>(
    'UPDATE part SET name = ?, figures = ? WHERE id = ? AND binned_at IS NULL',
  );
  const bin = db.prepare<[number | null, string]>('UPDATE part SET binned_at = ? WHERE id = ?');

  function read(): { shelved: Shelved[]; broken: number } {
    const rows = all.all();
    const shelved = rows.filter(hasReadableId).flatMap(({ id, figures }) => {
      const part = shelfPartSchema.safeParse(parsedJson(figures));
      return part.success ? [{ id, part: part.data }] : [];
    });
    return { shelved, broken: rows.length - shelved.length };
  }

  function add(part: ShelfPart): string {
    const id = randomUUID();
    insert.run(id, part.name, JSON.stringify(part));
    return id;
  }

  function setBinned(ids: readonly string[], at: number | null): void {
    for (const id of ids)
      if (bin.run(at, id).changes === 0)
        throw new StoreError('not-found', 'this entry of the shelf no longer exists');
  }

  return {
    list: (): Shelved[] => read().shelved,

    /** How many entries are broken, and so not in the list. */
    broken: (): number => read().broken,

    /** Adds entries in their order and gives their ids. */
    add: (parts: readonly ShelfPart[]): string[] => write(() => parts.map(add)),

    change: (id: string, part: ShelfPart): void =>
      write(() => {
        if (update.run(part.name, JSON.stringify(part), id).changes === 0)
          throw new StoreError('not-found', 'this entry is not on the shelf');
      }),

    /** All of them or none. */
    remove: (ids: readonly string[]): void => write(() => setBinned(ids, now())),
    restore: (ids: readonly string[]): void => write(() => setBinned(ids, null)),
  };
}
