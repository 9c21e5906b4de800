import { createHash } from 'node:crypto';
import BetterSqlite3 from 'better-sqlite3';
import { carSurveySchema } from '../../../shared-math/adjust/list/index.ts';
import { questionSchema } from '../../../shared-math/counter/index.ts';
import { shownText } from '../../../shared-math/outside/index.ts';
import type { Database } from '../database.ts';
import { LABEL_MOST } from '../history.ts';
import { parsedJson, readableNotes, readableTime } from '../readable.ts';
import { type StoredText, statesIn } from '../states.ts';
import { CUSTOMER_MOST, HEADLINE_MOST, TICKET_PHOTO } from '../tickets.ts';
import {
  type HistoryWish,
  SHOP_FORMAT,
  SHOP_VERSION,
  SHOP_VERSION_UNCOUNTED,
  SHOP_VERSION_UNMEASURED,
  SHOP_VERSION_WITHOUT_TICKET_PHOTOS,
  SHOP_VERSION_WITHOUT_TICKETS,
} from './lines.ts';

export interface ShopWish {
  readonly history: HistoryWish;
  /** ms since 1970. */
  readonly made: number;
}

/** More states than any layout has. */
const ALL = Number.MAX_SAFE_INTEGER;

interface CustomerRow {
  readonly id: string;
  readonly name: string;
  readonly notes: string;
  readonly binned: number | null;
}
interface LayoutRow {
  readonly id: string;
  readonly car: string;
  readonly name: string;
  readonly revision: number;
  readonly saved: number;
  readonly binned: number | null;
  readonly document: string;
}
interface PartRow {
  readonly id: string;
  readonly figures: string;
  readonly binned: number | null;
}
interface TicketRow {
  readonly id: string;
  readonly customer: string;
  readonly note: string;
  readonly question: string;
  readonly headline: string;
  readonly asked: number;
  readonly revision: number;
  readonly layout: string | null;
  readonly binned: number | null;
}
interface StateRow extends StoredText {
  readonly layout: string;
  readonly step: string;
  readonly label: string;
  readonly at: number;
}
interface PhotoRow {
  readonly hash: string;
  readonly added: number;
  readonly content: Buffer;
}

/** The newest `most` states of every layout, oldest first. */
function* stateValues(db: Database, most: number): Generator<object> {
  const states = statesIn(db);
  const rows = db.prepare<[number], StateRow>(`
    SELECT variant_id AS layout, step, label, at, document, base, packed, sum
    FROM (SELECT *, row_number() OVER (PARTITION BY variant_id ORDER BY id DESC) AS back FROM history)
    WHERE back <= ? ORDER BY id`);
  for (const { document, base, packed, sum, label, ...others } of rows.iterate(most)) {
    // Older programs kept labels of any length; whoever reads the file takes none that is longer.
    const rest = { ...others, label: shownText(label, LABEL_MOST) };
    const text = states.text({ document, base, packed, sum });
    // A damaged state is not taken along; all others are.
    if (text !== undefined) yield { state: { ...rest, text } };
  }
}

/** The lowest version that holds what the shop has. */
function versionOf(db: Database): number {
  const has = (rows: string) => db.prepare(`SELECT 1 FROM ${rows} LIMIT 1`).get() !== undefined;
  if (has(`ticket WHERE ${TICKET_PHOTO} IS NOT NULL`)) return SHOP_VERSION;
  if (has('ticket')) return SHOP_VERSION_WITHOUT_TICKET_PHOTOS;
  if (has('variant WHERE sheet_revision > 0')) return SHOP_VERSION_WITHOUT_TICKETS;
  return has('car WHERE survey IS NOT NULL') ? SHOP_VERSION_UNCOUNTED : SHOP_VERSION_UNMEASURED;
}

function* values(db: Database, { history, made }: ShopWish): Generator<object> {
  yield { format: SHOP_FORMAT, version: versionOf(db), made, history: history !== 'none' };
  const customers = db.prepare<[], CustomerRow>(
    'SELECT id, name, notes, binned_at AS binned FROM customer ORDER BY made',
  );
  for (const customer of customers.iterate()) yield { customer };
  const cars = db.prepare<[], CustomerRow & { customer: string; survey: string | null }>(
    'SELECT id, customer_id AS customer, name, notes, binned_at AS binned, survey FROM car ORDER BY made',
  );
  for (const { survey, ...car } of cars.iterate()) {
    // Damaged measurements are not taken along; the car is.
    const read = survey === null ? undefined : carSurveySchema.safeParse(parsedJson(survey));
    yield { car: read?.success ? { ...car, survey: read.data } : car };
  }
  /** Damaged layouts, which no ticket may name. */
  const leftOut = new Set<string>();
  const layouts = db.prepare<[], LayoutRow & { sheet: number; mark: string }>(
    `SELECT id, car_id AS car, name, revision, saved_at AS saved, binned_at AS binned, document,
       sheet_revision AS sheet, sheet_mark AS mark FROM variant ORDER BY made`,
  );
  for (const { sheet, mark, ...layout } of layouts.iterate()) {
    const document = parsedJson(layout.document);
    const counts = sheet > 0 ? { sheet: { revision: sheet, mark } } : {};
    if (document !== undefined) yield { layout: { ...layout, document, ...counts } };
    else leftOut.add(layout.id);
  }
  if (history !== 'none') yield* stateValues(db, history === 'all' ? ALL : history);
  const parts = db.prepare<[], PartRow>('SELECT id, figures, binned_at AS binned FROM part ORDER BY made');
  for (const part of parts.iterate()) yield { part: { ...part, figures: parsedJson(part.figures) } };
  const tickets = db.prepare<[], TicketRow>(
    `SELECT id, customer, note, question, headline, asked_at AS asked, revision, variant_id AS layout,
       binned_at AS binned FROM ticket ORDER BY made`,
  );
  for (const { question: text, layout, customer, note, headline, ...ticket } of tickets.iterate()) {
    const question = questionSchema.safeParse(parsedJson(text));
    // A ticket of which nothing can be read is not taken along.
    if (!question.success) continue;
    const readable = {
      customer: customer.slice(0, CUSTOMER_MOST),
      note: readableNotes(note),
      question: question.data,
      headline: headline.slice(0, HEADLINE_MOST),
    };
    const of = layout === null || leftOut.has(layout) ? {} : { layout };
    yield { ticket: { ...ticket, ...readable, asked: readableTime(ticket.asked), ...of } };
  }
  const settings = db.prepare<[], { name: string; value: string }>('SELECT name, value FROM setting');
  for (const { name, value } of settings.iterate()) yield { setting: { name, value: parsedJson(value) } };
  const photos = db.prepare<[], PhotoRow>(
    'SELECT hash, added_at AS added, content FROM photo ORDER BY added_at',
  );
  for (const { hash, added, content } of photos.iterate())
    yield { photo: { hash, added, content: content.toString('base64') } };
}

/**
 * The whole shop as the bytes of one file, made as they are asked for: of one moment, however long that takes and
 * whatever is saved meanwhile. No more than one line is in memory.
 */
export function* writeShop(path: string, wish: ShopWish): Generator<Buffer> {
  const db = new BetterSqlite3(path, { readonly: true, fileMustExist: true });
  try {
    // The first read after this fixes the moment; it holds while the transaction does.
    db.exec('BEGIN');
    const hash = createHash('sha256');
    let lines = 0;
    for (const value of values(db, wish)) {
      const line = Buffer.from(`${JSON.stringify(value)}\n`);
      hash.update(line);
      lines += 1;
      yield line;
    }
    yield Buffer.from(`${JSON.stringify({ end: { lines, sha256: hash.digest('hex') } })}\n`);
  } finally {
    db.close();
  }
}
