import { readFile, stat } from 'node:fs/promises';
import { basename, extname } from 'node:path';
import { FILE_TEXT_MAX } from '../../files/index.ts';

/** A file that somebody has opened with this program, as the page takes it; or in one clause why it cannot be read. */
export type OpenedFile =
  | { readonly fileName: string; readonly text: string }
  | { readonly fileName: string; readonly reason: string };

/** The files named on a command line: what the system adds when a file is opened with the program. */
export function filesNamed(args: readonly string[]): string[] {
  return args
    .slice(1)
    .filter((path) => !path.startsWith('-') && /^\.(toeboard-car|json)$/i.test(extname(path)));
}

/** The files that were opened with the program and have not been taken by the page yet. */
export class OpenedFiles {
  readonly #paths: string[] = [];

  add(...paths: readonly string[]): void {
    this.#paths.push(...paths);
  }

  /** The next one; undefined if there is none. */
  async take(): Promise<OpenedFile | undefined> {
    const path = this.#paths.shift();
    if (path === undefined) return undefined;
    const fileName = basename(path);
    try {
      if ((await stat(path)).size > FILE_TEXT_MAX)
        return { fileName, reason: 'it is too large to be a layout or a car' };
      return { fileName, text: await readFile(path, 'utf8') };
    } catch {
      return { fileName, reason: 'it cannot be read' };
    }
  }
}
