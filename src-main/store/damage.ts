import { copyFileSync, existsSync, mkdirSync, renameSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Contents } from './contents.ts';
import { backupsFolder, type Copy, copyPath, listCopies, lookInto } from './copies.ts';
import type { Migration } from './migrations/index.ts';
import { salvage } from './salvage.ts';
import { dateForFileName } from './times.ts';

/** A whole database to go on with, and what is in it. */
interface Candidate {
  readonly path: string;
  readonly contents: Contents;
}

const DAY = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short' });

function counted(number: number, one: string): string {
  return `${number} ${one}${number === 1 ? '' : 's'}`;
}

function reported({ customers, layouts, photos, parts, tickets }: Contents): string {
  const cars = customers.reduce((sum, customer) => sum + customer.cars.length, 0);
  const words = [counted(customers.length, 'customer'), counted(cars, 'car'), counted(layouts, 'layout')];
  if (photos > 0) words.push(counted(photos, 'photo'));
  if (parts > 0) words.push(`${counted(parts, 'part')} on the shelf`);
  if (tickets > 0) words.push(`${counted(tickets, 'ticket')} of the counter`);
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The newest copy that can be read. One of a damaged database, or put aside before another came back, is none. */
function newestCopy(folder: string): (Candidate & { readonly copy: Copy }) | undefined {
  for (const copy of listCopies(folder).filter(({ kind }) => ['day', 'update', 'rescued'].includes(kind))) {
    try {
      const path = copyPath(folder, copy.name);
      return { copy, path, contents: lookInto(path) };
    } catch {
      // The one before may be whole.
    }
  }
  return undefined;
}

/** Whether the first holds more: more layouts, or as many and saved later. */
function isBetter(a: Contents, b: Contents): boolean {
  return a.layouts !== b.layouts ? a.layouts > b.layouts : (a.newest ?? 0) >= (b.newest ?? 0);
}

function readOut(
  kept: string,
  folder: string,
  migrations: readonly Migration[],
  now: number,
): Candidate | undefined {
  const path = join(backupsFolder(folder), `toeboard-salvaged-${dateForFileName(now)}.sqlite`);
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  return salvage(kept, path, migrations, now) ? { path, contents: lookInto(path) } : undefined;
}

/**
 * Moves a damaged database out of the way with its log, whole, so that it can still be rescued, and puts in its place
 * the better of what can be read of it row by row and the newest copy. Returns what the person has to know.
 */
export function replaceDamaged(
  path: string,
  why: string,
  migrations: readonly Migration[],
  now: number,
): string {
  const folder = dirname(path);
  const kept = path.replace(/\.sqlite$/, `-damaged-${dateForFileName(now)}.sqlite`);
  for (const end of ['-wal', '-shm', '']) if (existsSync(path + end)) renameSync(path + end, kept + end);
  const rows = readOut(kept, folder, migrations, now);
  const copy = newestCopy(folder);
  const begin = `The database was damaged${why}.`;
  const end = `The damaged one is kept as ${basename(kept)} in the data folder.`;
  if (rows && (!copy || isBetter(rows.contents, copy.contents))) {
    copyFileSync(rows.path, path);
    const other = copy
      ? ` The newest copy, of ${DAY.format(copy.copy.at)}, can be looked at and brought back under Copies.`
      : '';
    return `${begin} Read out of it row by row came back ${reported(rows.contents)}.${other} ${end}`;
  }
  if (copy) {
    copyFileSync(copy.path, path);
    const other = rows
      ? ' What could be read of the damaged one can be looked at and brought back under Copies.'
      : '';
    return `${begin} The copy of ${DAY.format(copy.copy.at)} is in its place, with ${reported(copy.contents)}; what was changed after that is not in it.${other} ${end}`;
  }
  return `${begin} Nothing of it could be read and there is no copy of it, so a new one was begun. ${end}`;
}
