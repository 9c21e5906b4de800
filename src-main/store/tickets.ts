import { randomUUID } from 'node:crypto';
import { type Question, questionSchema } from '../../shared-math/counter/index.ts';
import type { Bench } from './database.ts';
import { hasReadableId, parsedJson, readableNotes, readableTime } from './readable.ts';
import { StoreError } from './store-error.ts';

/** What a person says of a question, and what it came to. */
export interface TicketText {
  /** Empty where nobody gave a name. */
  readonly customer: string;
  readonly note: string;
  readonly question: Question;
  readonly headline: string;
}

export interface Ticket extends TicketText {
  readonly id: string;
  /** When it was first kept, ms since 1970. */
  readonly at: number;
  /** Counts the saves. */
  readonly revision: number;
  /** The layout that was made of it; null if none was, or if it is gone for good. */
  readonly variantId: string | null;
}

interface Row {
  readonly id: string;
  readonly customer: string;
  readonly note: string;
  readonly question: string;
  readonly headline: string;
  readonly at: number;
  readonly revision: number;
  readonly variantId: string | null;
}

const COLUMNS = 'id, customer, note, question, headline, asked_at AS at, revision, variant_id AS variantId';

/** In SQL, the hash of the photo that a row of `ticket` names, or null; written as the index that finds it (0010-ticket-photos). */
export const TICKET_PHOTO = "CASE WHEN json_valid(question) THEN question ->> '$.photo.hash' END";

/** Characters, as in the contract. */
export const CUSTOMER_MOST = 200;
export const HEADLINE_MOST = 400;

/** A stored ticket as it can be shown; undefined if what was said cannot be read. */
function readTicket(row: Row): Ticket | undefined {
  const question = questionSchema.safeParse(parsedJson(row.question));
  if (!question.success || !hasReadableId(row)) return undefined;
  return {
    ...row,
    customer: row.customer.trim().slice(0, CUSTOMER_MOST),
    note: readableNotes(row.note),
    headline: row.headline.slice(0, HEADLINE_MOST),
    at: readableTime(row.at),
    variantId: row.variantId !== null && hasReadableId({ id: row.variantId }) ? row.variantId : null,
    question: question.data,
  };
}

/** Questions answered at the counter, each a ticket; what is thrown away lies in the bin until that is emptied. */
export function ticketsIn({ db, now, write }: Bench) {
  const all = db.prepare<[], Row>(`SELECT ${COLUMNS} FROM shown_ticket ORDER BY asked_at DESC, made DESC`);
  const one = db.prepare<[string], Row>(`SELECT ${COLUMNS} FROM shown_ticket WHERE id = ?`);
  const insert = db.prepare<[string, string, string, string, string, number]>(
    `INSERT INTO ticket (id, customer, note, question, headline, asked_at, revision) VALUES (?, ?, ?, ?, ?, ?, 1)`,
  );
  const update = db.prepare<[string, string, string, string, number, string]>(
    'UPDATE ticket SET customer = ?, note = ?, question = ?, headline = ?, revision = ? WHERE id = ?',
  );
  const became = db.prepare<[string, string]>('UPDATE ticket SET variant_id = ? WHERE id = ?');

  function row(id: string): Row {
    const found = one.get(id);
    if (!found) throw new StoreError('not-found', 'this ticket no longer exists');
    return found;
  }

  function read(id: string): Ticket {
    const ticket = readTicket(row(id));
    if (!ticket) throw new StoreError('refused-document', 'what was said on this ticket is damaged');
    return ticket;
  }

  return {
    read,

    /** Newest first, without those that cannot be read. */
    list: (): Ticket[] => all.all().flatMap((stored) => readTicket(stored) ?? []),

    /** How many tickets cannot be read, and so are not in the list. */
    broken: (): number => all.all().filter((stored) => !readTicket(stored)).length,

    add: ({ customer, note, question, headline }: TicketText): Ticket =>
      write(() => {
        const id = randomUUID();
        insert.run(id, customer, note, JSON.stringify(question), headline, now());
        return read(id);
      }),

    /** As for variants: a save from an old revision is refused, so that two windows cannot overwrite each other. */
    save: (
      id: string,
      { customer, note, question, headline }: TicketText,
      revision: number,
    ): { revision: number } =>
      write(() => {
        const stored = row(id);
        const text = JSON.stringify(question);
        if (stored.revision !== revision) {
          // Sent again because its answer was lost on the way: it stands already.
          const same = stored.question === text && stored.customer === customer && stored.note === note;
          if (same) return { revision: stored.revision };
          throw new StoreError('changed-elsewhere', 'this ticket has been changed in another window');
        }
        update.run(customer, note, text, headline, revision + 1, id);
        return { revision: revision + 1 };
      }),

    /** Remembers the layout that was made of a ticket. */
    became: (id: string, variantId: string): void =>
      write(() => {
        became.run(variantId, row(id).id);
      }),
  };
}
