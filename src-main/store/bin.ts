import type { Bench } from './database.ts';
import type { Photos } from './photos.ts';
import { hasReadableId, readableName, readableTime } from './readable.ts';
import { StoreError } from './store-error.ts';

export type BinKind = 'customer' | 'car' | 'variant' | 'part' | 'ticket';

export interface BinEntry {
  readonly kind: BinKind;
  readonly id: string;
  readonly name: string;
  /** Where it lay: "Customer / Car" for a variant, the customer for a car. */
  readonly from: string;
  readonly at: number;
}

/** What holds a thing of each kind. */
const HOLDER: Record<BinKind, { readonly kind: BinKind; readonly column: string } | undefined> = {
  customer: undefined,
  car: { kind: 'customer', column: 'customer_id' },
  variant: { kind: 'car', column: 'car_id' },
  part: undefined,
  ticket: undefined,
};

const LIST = `
  SELECT 'customer' AS kind, id, name, '' AS "from", binned_at AS at FROM customer WHERE binned_at IS NOT NULL
  UNION ALL
  SELECT 'car', car.id, car.name, customer.name, car.binned_at
    FROM car JOIN customer ON customer.id = car.customer_id WHERE car.binned_at IS NOT NULL
  UNION ALL
  SELECT 'variant', variant.id, variant.name, customer.name || ' / ' || car.name, variant.binned_at
    FROM variant JOIN car ON car.id = variant.car_id JOIN customer ON customer.id = car.customer_id
    WHERE variant.binned_at IS NOT NULL
  UNION ALL
  SELECT 'part', id, name, '', binned_at FROM part WHERE binned_at IS NOT NULL
  UNION ALL
  SELECT 'ticket', id, headline, customer, binned_at FROM ticket WHERE binned_at IS NOT NULL
  ORDER BY at DESC`;

/** A thing in the bin hides all that it holds; those keep their own place and come back with it. */
export function binIn({ db, now, write }: Bench, photos: Photos) {
  const list = db.prepare<[], BinEntry>(LIST);
  const count = db.prepare<[], number>(`SELECT count(*) FROM (${LIST})`).pluck();

  function setBinned(kind: BinKind, id: string, at: number | null): void {
    // Of the fixed kinds above, never a word from outside.
    const { changes } = db.prepare(`UPDATE ${kind} SET binned_at = ? WHERE id = ?`).run(at, id);
    if (changes === 0) throw new StoreError('not-found', `this ${kind} no longer exists`);
  }

  return {
    list: (): BinEntry[] =>
      list
        .all()
        .filter(hasReadableId)
        .map((entry) => ({ ...entry, name: readableName(entry.name), at: readableTime(entry.at) })),
    count: (): number => count.get() ?? 0,

    put: (kind: BinKind, id: string): void => write(() => setBinned(kind, id, now())),

    /** Brings a thing back, and with it those that hold it. */
    restore: (kind: BinKind, id: string): void =>
      write(() => {
        setBinned(kind, id, null);
        for (let [holder, held] = [HOLDER[kind], { kind, id }]; holder; holder = HOLDER[holder.kind]) {
          const above = db.prepare<[string], string>(
            `SELECT ${holder.column} FROM ${held.kind} WHERE id = ?`,
          );
          held = { kind: holder.kind, id: above.pluck().get(held.id) as string };
          setBinned(held.kind, held.id, null);
        }
      }),

    /** Deletes what lies in the bin, with all that it holds, and the photos that nothing names any more. */
    empty: (): void =>
      write(() => {
        for (const kind of Object.keys(HOLDER)) db.exec(`DELETE FROM ${kind} WHERE binned_at IS NOT NULL`);
        photos.forgetUnnamed();
      }),
  };
}
