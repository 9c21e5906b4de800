import { chmodSync, existsSync, lstatSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DATABASE_FILE, StoreError, storageReason } from '../store/index.ts';
import { SEATS_FILE } from './loopback/seats.ts';

/*
 * A shop's cars are the shop's business: the data folder and what is in it is for its owner alone. The hosts say so to
 * the system before they make their first file (umask), and mend what an earlier run has left open to others.
 */

const OTHERS = 0o077;
const FOLDER_MODE = 0o700;

/** Folders of the data folder that a browser keeps for itself, its own way. */
const BROWSERS_OWN: ReadonlySet<string> = new Set(['browser', 'electron']);

/** What the system took away from new files before this program asked it for more. */
let usualMask = 0o022;

/** From now on every file and folder that this process or one of its children makes is for its owner alone. */
export function keepPrivate(): void {
  usualMask = process.umask(OTHERS);
}

/** How a file is made that the person has asked for by its path: as any other program makes it. */
export function usualFileMode(): number {
  return 0o666 & ~usualMask;
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/** Makes a folder and those above it. One by one: Node's own way of making all of them never ends under /proc. */
export function makeFolders(folder: string): void {
  if (isFolder(folder)) return;
  const above = dirname(folder);
  if (!existsSync(above) && above !== folder) makeFolders(above);
  try {
    mkdirSync(folder, FOLDER_MODE);
  } catch (error) {
    // Another program may have been first.
    if (!isFolder(folder)) throw error;
  }
}

/** Whether a folder is one of our own, and not a place where other things lie too. */
function isOurs(folder: string, names: readonly string[]): boolean {
  const { uid, mode } = statSync(folder);
  const isSticky = (mode & 0o1000) !== 0;
  return uid === process.getuid?.() && !isSticky && (names.length === 0 || names.includes(DATABASE_FILE));
}

/**
 * Takes away what others may do with a folder's files, and with the folder. Links are left alone. A file of secrets that
 * others could read holds none any more, and goes.
 */
function closeToOthers(folder: string): void {
  chmodSync(folder, FOLDER_MODE);
  for (const name of readdirSync(folder)) {
    if (BROWSERS_OWN.has(name)) continue;
    const path = join(folder, name);
    const entry = lstatSync(path);
    if (entry.isDirectory()) closeToOthers(path);
    else if (!entry.isFile() || (entry.mode & OTHERS) === 0) continue;
    else if (name === SEATS_FILE) rmSync(path);
    else chmodSync(path, entry.mode & 0o700);
  }
}

/**
 * Makes the data folder, or takes away what others may do with one of ours. Throws a StoreError of one line where it
 * cannot be made.
 */
export function preparePrivate(folder: string): void {
  try {
    makeFolders(folder);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    // The folder above is there, or that would have been refused: there the system makes none.
    const reason = code === 'ENOENT' ? 'no folder can be made there' : (storageReason(error) ?? message);
    throw new StoreError('storage-failed', `${folder}: the data folder cannot be made: ${reason}`, error);
  }
  if (process.platform === 'win32') return;
  try {
    if (isOurs(folder, readdirSync(folder))) closeToOthers(folder);
  } catch {
    // Whoever cannot even do that learns from the store why it cannot be opened.
  }
}
