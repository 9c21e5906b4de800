import { type Database, transaction } from './database.ts';
import { type Loss, OwnFiles } from './own-files.ts';
import { type Rescue, rescue } from './rescue.ts';
import { StoreError } from './store-error.ts';

/** ms without a write after which the log is brought into the database file, so that the file alone is a whole shop. */
const IDLE = 2000;
/** ms. The longest that this waits while writes go on. */
const LONGEST = 20_000;
/** Bytes of the log from which on it is brought over at once. */
const LOG_MOST = 16_000_000;

const WORDS: Record<Loss, string> = {
  'taken away': 'it has been moved or deleted while it was open',
  replaced: 'another file has been put in its place while it was open',
  'log removed': 'its log beside it (-wal, -shm) has been removed while it was open',
  'log overwritten': 'its log beside it (-wal) has been overwritten from outside while it was open',
  overwritten: 'it has been overwritten from outside while it was open',
};

/** After these the files at the paths are no more what the connection takes them for, and never will be again. */
const FOR_GOOD: ReadonlySet<Loss> = new Set(['overwritten', 'log overwritten']);

/**
 * Keeps an open database: every write is checked to stand in the files at its paths before it counts as done, and the
 * log is brought into the database file whenever there is a quiet moment.
 */
export class Keeper {
  readonly #db: Database;
  readonly #path: string;
  readonly #now: () => number;
  readonly #files: OwnFiles;
  readonly #onQuiet: () => void;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** When the oldest write was made that may not be in the database file yet; 0 if there is none. */
  #since = 0;
  /** The rescue of the present loss; a new loss gets its own. */
  #rescue: Rescue | undefined;
  #lostForGood: Loss | undefined;

  constructor(db: Database, path: string, now: () => number, onQuiet: () => void = () => {}) {
    this.#db = db;
    this.#path = path;
    this.#now = now;
    this.#onQuiet = onQuiet;
    this.#files = new OwnFiles(db, path);
    if (this.#files.logSize > 0) this.#files.checkpoint();
  }

  readonly write = <Value>(work: () => Value): Value => {
    if (this.#db.inTransaction) return transaction(this.#db, work);
    this.#refuseIf(this.#lossNow());
    this.#rescue = undefined;
    const value = transaction(this.#db, work);
    this.#refuseIf(this.#files.lossAfterWrite());
    if (this.#files.logSize > LOG_MOST) this.#files.checkpoint();
    this.#waitForQuiet();
    return value;
  };

  /** Lets go of the database. */
  close(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    // Closing brings the log over too, but does not count it.
    if (this.#db.open && this.#lossNow() === undefined && this.#files.logSize > 0) this.#files.checkpoint();
    this.#db.close();
  }

  #lossNow(): Loss | undefined {
    return this.#lostForGood ?? this.#files.loss();
  }

  #waitForQuiet(): void {
    clearTimeout(this.#timer);
    this.#since ||= Date.now();
    const wait = Math.max(0, Math.min(IDLE, this.#since + LONGEST - Date.now()));
    // A program that ends brings the log over by closing the database.
    this.#timer = setTimeout(() => this.#quiet(), wait).unref();
  }

  #quiet(): void {
    // Reported, and copied aside, when somebody next has something to save.
    if (this.#lossNow() !== undefined) return;
    this.#since = 0;
    if (!this.#files.checkpoint()) this.#waitForQuiet();
    this.#onQuiet();
  }

  /** @throws StoreError if the files are lost, in one sentence that tells where all that was saved is now. */
  #refuseIf(loss: Loss | undefined): void {
    if (loss === undefined) return;
    this.#rescue ??= rescue(this.#db, this.#path, this.#now());
    if (FOR_GOOD.has(loss) && this.#lostForGood === undefined) {
      this.#lostForGood = loss;
      this.#rescue.layLogAside();
    }
    // The database file itself is still ours: what only the lost log held is brought into it.
    if (loss === 'log removed') this.#files.checkpoint();
    throw new StoreError(
      'storage-failed',
      `${this.#path}: ${WORDS[loss]}, so nothing can be saved there; ${this.#rescue.reported}`,
    );
  }
}
