import { closeSync, openSync, readSync } from 'node:fs';
import {
  LAYOUT_TEXT_MAX,
  type LayoutDocument,
  parseLayout,
  refusalLine,
} from '../../shared-math/layout/index.ts';
import { shownEnd, shownText } from '../../shared-math/outside/index.ts';
import { InputError } from './usage.ts';

const REASONS: Record<string, string> = {
  ENOENT: 'no such file',
  EACCES: 'may not be read',
  EISDIR: 'is a folder, not a file',
  ENOTDIR: 'no such file',
};

/** Reads a file up to a size (bytes), whatever it is: a pipe or an endless device is cut off, not followed. */
export function readText(file: string, most: number, what: string): string {
  const buffer = Buffer.alloc(most + 1);
  let length = 0;
  try {
    const handle = openSync(file, 'r');
    try {
      for (;;) {
        const count = readSync(handle, buffer, length, buffer.length - length, null);
        length += count;
        if (count === 0 || length === buffer.length) break;
      }
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    const { code = '', message } = error as NodeJS.ErrnoException;
    throw new InputError(`${shown(file)}: ${REASONS[code] ?? shownText(message)}`);
  }
  if (length > most)
    throw new InputError(`${shown(file)}: too large to be ${what} (more than ${most / 1e6} MB)`);
  return buffer.toString('utf8', 0, length);
}

/** A file's path for a one-line message: the whole of it, or its end. */
export function shown(file: string): string {
  return shownEnd(file);
}

/** The layout document in a file; an InputError names the file, the place in it and the reason. */
export function readLayoutFile(file: string): LayoutDocument {
  const outcome = parseLayout(readText(file, LAYOUT_TEXT_MAX, 'a layout document'));
  if (!outcome.ok) throw new InputError(`${shown(file)}: ${refusalLine(outcome.failure)}`);
  return outcome.value;
}
