import { chmodSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { type Contents, contentsOf } from './contents.ts';
import type { Database } from './database.ts';
import { checkBeside } from './integrity.ts';
import { rescueFolder } from './rescue.ts';
import { isDamage, StoreError } from './store-error.ts';

/** A whole copy of the shop that can be looked into and brought back. */
export interface Copy {
  /** Its file's name: by this it is asked for. */
  readonly name: string;
  readonly kind: CopyKind;
  /** When it was made, ms since 1970. */
  readonly at: number;
  readonly bytes: number;
}

/** Of a day; before an update of the database; before another copy was brought back; rescued; read out of a damaged one; from a file. */
export type CopyKind = 'day' | 'update' | 'before' | 'rescued' | 'salvaged' | 'file';

const NAMES: readonly (readonly [CopyKind, RegExp])[] = [
  ['day', /^toeboard-day-\d{4}-\d{2}-\d{2}\.sqlite$/],
  ['update', /^toeboard-version-\d+-[\d-]+\.sqlite$/],
  ['before', /^toeboard-before-[\d-]+\.sqlite$/],
  ['rescued', /^toeboard-rescued-[\d-]+\.sqlite$/],
  ['salvaged', /^toeboard-salvaged-[\d-]+\.sqlite$/],
  ['file', /^toeboard-file-[\d-]+\.sqlite$/],
];

const DAYS_KEPT = 7;
const WEEKS_KEPT = 4;
/** Bytes that the days' copies may take together; beyond that the oldest go first, but for the newest two. */
export const DAYS_BYTES_MOST = 4_000_000_000;
/** ms. The copy of a day is made anew when it is older than this and something has changed since. */
const RENEWED_AFTER = 3_600_000;
/** Pages that are copied in one go, between which the program answers. */
const PAGES_AT_ONCE = 400;

export function backupsFolder(dataFolder: string): string {
  return join(dataFolder, 'backups');
}

function copiesIn(folder: string): Copy[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).flatMap((name) => {
    const kind = NAMES.find(([, pattern]) => pattern.test(name))?.[0];
    const file = statSync(join(folder, name), { throwIfNoEntry: false });
    return kind && file?.isFile() ? [{ name, kind, at: Math.round(file.mtimeMs), bytes: file.size }] : [];
  });
}

/** All copies of a shop, newest first. */
export function listCopies(dataFolder: string): Copy[] {
  return [backupsFolder(dataFolder), rescueFolder(dataFolder)]
    .flatMap(copiesIn)
    .toSorted((a, b) => b.at - a.at);
}

/** @throws StoreError `not-found` if there is no copy of that name. */
export function copyPath(dataFolder: string, name: string): string {
  const folder = [backupsFolder(dataFolder), rescueFolder(dataFolder)].find((each) =>
    copiesIn(each).some((copy) => copy.name === name),
  );
  if (folder === undefined) throw new StoreError('not-found', 'this copy is no longer there');
  return join(folder, name);
}

/** Opens a copy to look at it, never to write to it. */
export function readCopy<Value>(path: string, read: (db: Database) => Value): Value {
  let db: Database | undefined;
  try {
    db = new BetterSqlite3(path, { readonly: true, fileMustExist: true });
    return read(db);
  } catch (error) {
    if (isDamage(error)) throw new StoreError('storage-failed', 'this copy is damaged', error);
    throw error;
  } finally {
    db?.close();
  }
}

export function lookInto(path: string): Contents {
  return readCopy(path, contentsOf);
}

function dayOf(time: number): string {
  const date = new Date(time);
  const two = (part: number) => String(part).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** The Monday of a day's week, as days since 1970. */
function weekOf(day: string): number {
  const days = Date.parse(`${day}T00:00:00Z`) / 86_400_000;
  // 1 January 1970 was a Thursday.
  return days - ((days + 3) % 7);
}

/** Which of the days' copies (by their dates) stay: the newest seven, and of those before, the last of each of four weeks. */
export function daysKept(days: readonly string[]): string[] {
  const newestFirst = days.toSorted().reverse();
  const kept = newestFirst.slice(0, DAYS_KEPT);
  const weeks = new Set<number>();
  for (const day of newestFirst.slice(DAYS_KEPT)) {
    if (weeks.size === WEEKS_KEPT) break;
    if (weeks.has(weekOf(day))) continue;
    weeks.add(weekOf(day));
    kept.push(day);
  }
  return kept;
}

function thinOut(folder: string, bytesMost: number): void {
  const copies = copiesIn(folder)
    .filter(({ kind }) => kind === 'day')
    .toSorted((a, b) => b.name.localeCompare(a.name));
  const dated = copies.map((copy) => ({
    ...copy,
    day: copy.name.slice('toeboard-day-'.length, -'.sqlite'.length),
  }));
  const kept = new Set(daysKept(dated.map(({ day }) => day)));
  let bytes = 0;
  for (const [index, copy] of dated.entries()) {
    bytes += copy.bytes;
    if (!kept.has(copy.day) || (index >= 2 && bytes > bytesMost)) rmSync(join(folder, copy.name));
  }
}

/** Makes the finished file of a copy: whole, checked beside other work, without a log beside it, for its owner alone. */
async function finish(partial: string, path: string): Promise<void> {
  const found = await checkBeside(partial, { finish: true }).found;
  if (found === 'damaged') throw new BetterSqlite3.SqliteError('the copy is not whole', 'SQLITE_CORRUPT');
  if (found === 'unknown') throw new Error('the copy could not be checked');
  chmodSync(partial, 0o600);
  renameSync(partial, path);
}

/** What a program left that ended in the middle of a copy; none takes that long. */
function removeUnfinished(folder: string): void {
  for (const name of readdirSync(folder).filter(
    (each) => each.includes('.sqlite.') && each.includes('.partial'),
  )) {
    const file = statSync(join(folder, name), { throwIfNoEntry: false });
    if (file && Date.now() - file.mtimeMs > RENEWED_AFTER) rmSync(join(folder, name), { force: true });
  }
}

/** Keeps a copy of each day on which something was changed, beside other work. */
export class DayCopies {
  readonly #db: Database;
  readonly #folder: string;
  readonly #now: () => number;
  readonly #bytesMost: number;
  #making: Promise<void> | undefined;
  /** Why the last one could not be made; empty if it was. */
  trouble = '';

  constructor(db: Database, dataFolder: string, now: () => number, bytesMost = DAYS_BYTES_MOST) {
    this.#db = db;
    this.#folder = backupsFolder(dataFolder);
    this.#now = now;
    this.#bytesMost = bytesMost;
  }

  /** To be called in a quiet moment after a change. Resolves when the day's copy stands; never rejects. */
  keep(): Promise<void> {
    this.#making ??= this.#make().finally(() => {
      this.#making = undefined;
    });
    return this.#making;
  }

  async settled(): Promise<void> {
    await this.#making;
  }

  async #make(): Promise<void> {
    const path = join(this.#folder, `toeboard-day-${dayOf(this.#now())}.sqlite`);
    const there = statSync(path, { throwIfNoEntry: false });
    if (there && Date.now() - there.mtimeMs < RENEWED_AFTER) return;
    const partial = `${path}.${process.pid}.partial`;
    try {
      mkdirSync(this.#folder, { recursive: true, mode: 0o700 });
      removeUnfinished(this.#folder);
      await this.#db.backup(partial, { progress: () => PAGES_AT_ONCE });
      await finish(partial, path);
      thinOut(this.#folder, this.#bytesMost);
      this.trouble = '';
    } catch (error) {
      // The program may be ending; the work goes on without a copy, and the window's list of copies tells why.
      this.trouble = error instanceof Error ? error.message : String(error);
    } finally {
      for (const end of ['', '-journal', '-wal', '-shm']) rmSync(partial + end, { force: true });
    }
  }
}
