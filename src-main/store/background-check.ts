import { existsSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { type Check, checkBeside } from './integrity.ts';

/** Bytes. A database up to this size is checked before it is worked with, in some ms; a larger one beside the work. */
const CHECKED_FIRST_MOST = 1_000_000;
/** ms from the start to the check beside the work, in which the first answers are given. */
const BEGIN = 4000;
/** ms between two reads of the check, so that it leaves the disk to those who wait for it. */
const BETWEEN = 2;

const FOUND =
  'The database is damaged: a part of it cannot be read. End Toeboard and start it again: it then reads out what can be read, compares that with the newest copy and goes on with the better.';

/** A note beside the database that the next start has to look at all of it before anything else. */
function notePath(path: string): string {
  return path.replace(/\.sqlite$/, '-damage-found.txt');
}

function sizeOf(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.size ?? 0;
}

/** Whether a database has to be checked before it is worked with: it is small, or damage was found in it. */
export function isCheckedFirst(path: string): boolean {
  return sizeOf(path) + sizeOf(`${path}-wal`) <= CHECKED_FIRST_MOST || existsSync(notePath(path));
}

/** To be called once the database is whole, or another is in its place. */
export function forgetDamage(path: string): void {
  rmSync(notePath(path), { force: true });
}

/** Reads a large database through while the program already answers. */
export class BackgroundCheck {
  readonly #timer: ReturnType<typeof setTimeout> | undefined;
  #check: Check | undefined;
  /** What it found, each a sentence for the person; empty while it found nothing. */
  readonly found: string[] = [];
  /** Resolves when it is through or was ended; at once for a database that was checked first. */
  readonly done: Promise<void>;
  #resolve: () => void = () => {};

  constructor(path: string, begin = BEGIN) {
    this.done = new Promise((resolve) => {
      this.#resolve = resolve;
    });
    if (isCheckedFirst(path)) this.#resolve();
    else this.#timer = setTimeout(() => void this.#run(path), begin).unref();
  }

  end(): void {
    clearTimeout(this.#timer);
    this.#check?.end();
    this.#resolve();
  }

  async #run(path: string): Promise<void> {
    this.#check = checkBeside(path, { between: BETWEEN });
    if ((await this.#check.found) === 'damaged') {
      this.found.push(FOUND);
      try {
        writeFileSync(notePath(path), `${FOUND}\n`, { mode: 0o600 });
      } catch {
        // It is reported; the next start checks beside its work again.
      }
    }
    this.#resolve();
  }
}
