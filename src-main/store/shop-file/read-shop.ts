import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { refusalLine, refusalOf } from '../../../shared-math/layout/index.ts';
import type { Outcome } from '../../../shared-math/outcome.ts';
import { parseJson } from '../../../shared-math/outside/index.ts';
import type { Database } from '../database.ts';
import { historyIn } from '../history.ts';
import { migrate } from '../migrate.ts';
import type { Migration } from '../migrations/index.ts';
import { photoUseIn } from '../photo-use.ts';
import type { PhotoFacts } from '../photos.ts';
import { statesIn } from '../states.ts';
import { StoreError } from '../store-error.ts';
import { endSchema, headSchema, lineSchema, SHOP_FORMAT, SHOP_VERSION, type ShopLine } from './lines.ts';

/** Bytes. A photo of the largest size in base64 is below. */
const LINE_MOST = 64_000_000;

/** Looks at a photo's file by its header. */
export type CheckPhoto = (content: Uint8Array) => Outcome<PhotoFacts, string>;

function refused(reason: string): StoreError {
  return new StoreError('refused-document', reason);
}

/** A stream of bytes in its lines, without their ends; never more than one in memory. */
async function* linesOf(stream: AsyncIterable<Uint8Array>): AsyncGenerator<Buffer> {
  let waiting: Buffer[] = [];
  let length = 0;
  for await (const chunk of stream) {
    let begin = 0;
    const bytes = Buffer.from(chunk.buffer, chunk.byteOffset, chunk.byteLength);
    for (let end = bytes.indexOf(10); end >= 0; end = bytes.indexOf(10, begin)) {
      yield Buffer.concat([...waiting, bytes.subarray(begin, end)]);
      waiting = [];
      length = 0;
      begin = end + 1;
    }
    length += bytes.length - begin;
    if (length > LINE_MOST) throw refused('a line of it is longer than any that Toeboard writes');
    waiting.push(Buffer.from(bytes.subarray(begin)));
  }
  if (length > 0) yield Buffer.concat(waiting);
}

function parsedLine(bytes: Buffer, number: number): unknown {
  const parsed = parseJson(bytes.toString('utf8'));
  if (parsed.ok) return parsed.value;
  throw refused(number === 1 ? 'this is not the file of a whole shop' : `line ${number} of it is not JSON`);
}

function requireHead(value: unknown): void {
  if (typeof value !== 'object' || value === null || !('format' in value) || value.format !== SHOP_FORMAT)
    throw refused('this is not the file of a whole shop');
  if ('version' in value && typeof value.version === 'number' && value.version > SHOP_VERSION)
    throw refused(
      `it is version ${value.version}, newer than this program reads (${SHOP_VERSION}); use a newer Toeboard`,
    );
  const head = headSchema.safeParse(value);
  if (!head.success) throw refused(`line 1: ${refusalLine(refusalOf(head.error, value))}`);
}

/** Puts lines into a new database. What holds a thing must have come before it. */
function inserter(db: Database, checkPhoto: CheckPhoto): (line: ShopLine) => void {
  const customer = db.prepare(
    'INSERT INTO customer (id, name, notes, binned_at) VALUES (@id, @name, @notes, @binned)',
  );
  const car = db.prepare(
    `INSERT INTO car (id, customer_id, name, notes, binned_at, survey, survey_revision)
       VALUES (@id, @customer, @name, @notes, @binned, @survey, @revision)`,
  );
  const layout = db.prepare(
    `INSERT INTO variant (id, car_id, name, document, revision, saved_at, binned_at, sheet_revision, sheet_mark)
       VALUES (@id, @car, @name, @text, @revision, @saved, @binned, @sheetRevision, @sheetMark)`,
  );
  const history = historyIn({ db, now: Date.now }, statesIn(db), photoUseIn(db));
  const part = db.prepare(
    'INSERT INTO part (id, name, figures, binned_at) VALUES (@id, @name, @text, @binned)',
  );
  const ticket = db.prepare(
    `INSERT INTO ticket (id, customer, note, question, headline, asked_at, revision, variant_id, binned_at)
       VALUES (@id, @customer, @note, @text, @headline, @asked, @revision, @layout, @binned)`,
  );
  const setting = db.prepare('INSERT INTO setting (name, value) VALUES (@name, @text)');
  const photo = db.prepare(
    `INSERT INTO photo (hash, type, width, height, added_at, content)
       VALUES (@hash, @type, @width, @height, @added, @content)`,
  );
  return (line) => {
    if ('customer' in line) customer.run(line.customer);
    else if ('car' in line) {
      const { survey, ...rest } = line.car;
      const text = survey === undefined ? null : JSON.stringify(survey);
      car.run({ ...rest, survey: text, revision: text === null ? 0 : 1 });
    } else if ('layout' in line) {
      const { document, sheet = { revision: 0, mark: '' }, ...rest } = line.layout;
      layout.run({
        ...rest,
        text: JSON.stringify(document),
        sheetRevision: sheet.revision,
        sheetMark: sheet.mark,
      });
    } else if ('state' in line) {
      const { layout: of, at, text, ...edit } = line.state;
      history.add(of, edit, at, text);
    } else if ('part' in line) {
      const { figures, ...rest } = line.part;
      part.run({ ...rest, name: figures.name, text: JSON.stringify(figures) });
    } else if ('ticket' in line) {
      const { question, layout: of = null, ...rest } = line.ticket;
      ticket.run({ ...rest, layout: of, text: JSON.stringify(question) });
    } else if ('setting' in line)
      setting.run({ name: line.setting.name, text: JSON.stringify(line.setting.value ?? null) });
    else {
      const content = Buffer.from(line.photo.content, 'base64');
      const facts = checkPhoto(content);
      if (!facts.ok) throw refused(`a photo ${facts.failure}`);
      const { type, width, height } = facts.value;
      const hash = createHash('sha256').update(content).digest('hex');
      if (hash !== line.photo.hash) throw refused('a photo is not the one that its hash names');
      photo.run({ hash, type, width: width ?? 0, height: height ?? 0, added: line.photo.added, content });
    }
  };
}

async function takeLines(
  db: Database,
  stream: AsyncIterable<Uint8Array>,
  checkPhoto: CheckPhoto,
): Promise<void> {
  const insert = inserter(db, checkPhoto);
  const hash = createHash('sha256');
  let number = 0;
  let ended = false;
  for await (const bytes of linesOf(stream)) {
    number += 1;
    if (ended) throw refused('something follows its last line');
    const value = parsedLine(bytes, number);
    if (number === 1) requireHead(value);
    else if (typeof value === 'object' && value !== null && 'end' in value) {
      const reported = endSchema.safeParse(value);
      if (
        !reported.success ||
        reported.data.end.lines !== number - 1 ||
        reported.data.end.sha256 !== hash.digest('hex')
      )
        throw refused('it was changed or damaged after it was written: its sum does not fit');
      ended = true;
      continue;
    } else {
      const line = lineSchema.safeParse(value);
      if (!line.success) throw refused(`line ${number}: ${refusalLine(refusalOf(line.error, value))}`);
      try {
        insert(line.data);
      } catch (error) {
        if (error instanceof BetterSqlite3.SqliteError && error.code.startsWith('SQLITE_CONSTRAINT'))
          throw refused(`line ${number} does not fit those before it`);
        if (error instanceof StoreError) throw refused(`line ${number}: ${error.message}`);
        throw error;
      }
    }
    hash.update(bytes).update('\n');
  }
  if (!ended) throw refused('it breaks off before its end');
}

/**
 * Reads the file of a whole shop, line by line, into a new database at `path`: all of it, or no file there.
 * @throws StoreError `refused-document`, which says in one clause what is wrong with the file.
 */
export async function readShop(
  stream: AsyncIterable<Uint8Array>,
  path: string,
  migrations: readonly Migration[],
  checkPhoto: CheckPhoto,
  now: number,
): Promise<void> {
  const partial = `${path}.${process.pid}.partial`;
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  rmSync(partial, { force: true });
  const db = new BetterSqlite3(partial);
  try {
    migrate(db, migrations, dirname(path), now);
    db.pragma('synchronous = NORMAL');
    db.exec('BEGIN');
    await takeLines(db, stream, checkPhoto);
    photoUseIn(db).noteDocuments();
    db.exec('COMMIT');
    db.close();
    chmodSync(partial, 0o600);
    renameSync(partial, path);
  } finally {
    if (db.open) db.close();
    for (const end of ['', '-journal']) rmSync(partial + end, { force: true });
  }
}
