import { statSync } from 'node:fs';
import BetterSqlite3 from 'better-sqlite3';
import type { Database } from './database.ts';
import { firstBytes, type Mark, MarkReader } from './mark.ts';
import { StoreError } from './store-error.ts';

/** What has become of the files under an open store. */
export type Loss = 'taken away' | 'replaced' | 'log removed' | 'log overwritten' | 'overwritten';

interface FileState {
  readonly dev: bigint;
  readonly ino: bigint;
  readonly size: bigint;
  readonly mtimeNs: bigint;
  readonly ctimeNs: bigint;
}

/** Bytes of a log's header; its salts, which each new beginning of the log changes, are the eight from 16 on. */
const LOG_HEADER = 32;
/** How a log begins, whichever way round its sums are written. */
const MAGIC: ReadonlySet<string> = new Set(['377f0682', '377f0683']);
const NO_SALTS = Buffer.alloc(0);

interface FileStates {
  readonly file: FileState;
  readonly log: FileState;
  readonly index: FileState;
}

function stateOf(path: string): FileState | undefined {
  return statSync(path, { bigint: true, throwIfNoEntry: false });
}

/** Looks at files that several programs write, before one of them is called a stranger's. */
const LOOKS = 3;

/**
 * A look is several reads, between which another Toeboard may bring the log into the database and empty it: the log then
 * seems another's. It has counted the mark on before, so that the next look knows it; what a stranger did stays.
 */
function surely(look: () => Loss | undefined): Loss | undefined {
  let loss = look();
  for (let i = 1; i < LOOKS && (loss === 'log overwritten' || loss === 'overwritten'); i += 1) loss = look();
  return loss;
}

function isFile(seen: FileState, now: FileState): boolean {
  return seen.dev === now.dev && seen.ino === now.ino;
}

function isUntouched(seen: FileState, now: FileState): boolean {
  return seen.size === now.size && seen.mtimeNs === now.mtimeNs && seen.ctimeNs === now.ctimeNs;
}

/**
 * Whether database and log are still the files at their paths, and still what this program, or another Toeboard on the
 * same folder, wrote. A file taken away or put in the place of another is known by device and inode. One overwritten
 * where it lies keeps both: then size or time have changed, and the mark in its bytes (mark.ts) tells whether another
 * Toeboard has brought the log into it, which counts the mark on, or a stranger has written there. The log's header
 * tells the same of the log. The usual look is three file states and one short read.
 */
export class OwnFiles {
  readonly #db: Database;
  readonly #path: string;
  readonly #reader: MarkReader;
  #file: FileState;
  #log: FileState;
  readonly #index: FileState;
  /** Empty where the log may be begun anew by whoever writes next. */
  #salts: Buffer = NO_SALTS;
  #mark: Mark | undefined;
  readonly #readLog: typeof firstBytes;

  /** @param readLog  how the log's first bytes are read; another Toeboard may be at work at that very moment */
  constructor(db: Database, path: string, readLog = firstBytes) {
    this.#readLog = readLog;
    this.#db = db;
    this.#path = path;
    this.#reader = new MarkReader(db);
    const [file, log, index] = ['', '-wal', '-shm'].map((end) => stateOf(path + end));
    if (!file || !log || !index)
      throw new StoreError('storage-failed', `${path}: it was taken away while it was opened`);
    this.#file = file;
    this.#log = log;
    this.#index = index;
    this.#remember({ file, log, index });
    // Another Toeboard may have left it so that the next writer begins it anew.
    this.#salts = NO_SALTS;
  }

  get #logPath(): string {
    return `${this.#path}-wal`;
  }

  /**
   * Looks before a write. Returns undefined if all is as it was left, or another Toeboard has been at work.
   */
  loss(): Loss | undefined {
    return surely(() => this.#lossBeforeWrite());
  }

  /** Looks after a write of our own, which may have begun the log anew. Returns undefined if it stands in our files. */
  lossAfterWrite(): Loss | undefined {
    return surely(() => this.#lossAfterWrite());
  }

  #lossBeforeWrite(): Loss | undefined {
    const now = this.#look();
    if (typeof now === 'string') return now;
    // Nobody begins the log anew without having brought it into the database.
    // Where the log may be begun anew anyhow, another Toeboard may have emptied it since too.
    const begun = this.#salts.length > 0;
    const anew = begun && (now.log.size < this.#log.size || !this.#hasOurSalts(now.log));
    const untouched = isUntouched(this.#file, now.file);
    if (untouched && !anew) return undefined;
    const loss = untouched ? undefined : this.#lossInPlace(now.file);
    if (loss !== undefined) return loss;
    // Times go by ticks of some milliseconds: a file may have been written to since and look untouched. Its mark tells.
    const mark = this.#reader.raw(this.#path, now.file.ino);
    const counted = mark?.shop === this.#mark?.shop && mark?.count !== this.#mark?.count;
    if (anew && !counted) return 'log overwritten';
    this.#mark = mark;
    this.#remember(now);
    // Whoever writes next may begin the log anew without a further sign.
    if (counted) this.#salts = NO_SALTS;
    return undefined;
  }

  #lossAfterWrite(): Loss | undefined {
    const now = this.#look();
    if (typeof now === 'string') return now;
    const loss = isUntouched(this.#file, now.file) ? undefined : this.#lossInPlace(now.file);
    if (loss !== undefined) return loss;
    if (now.log.size > 0n && !MAGIC.has(this.#readLog(this.#logPath, 4).toString('hex')))
      return 'log overwritten';
    this.#remember(now);
    return undefined;
  }

  /** Brings the log into the database file and leaves it empty; false if another reader or writer held it. */
  checkpoint(): boolean {
    const waiting = this.#db.pragma('busy_timeout', { simple: true });
    this.#db.pragma('busy_timeout = 0');
    try {
      this.#reader.countOn();
      const [reported] = this.#db.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[];
      return reported?.busy === 0;
    } catch (error) {
      // What stands in the log is safe there; it is brought over another time.
      if (error instanceof BetterSqlite3.SqliteError) return false;
      throw error;
    } finally {
      this.#db.pragma(`busy_timeout = ${waiting}`);
      const now = this.#look();
      if (typeof now !== 'string') {
        this.#remember(now);
        this.#salts = NO_SALTS;
      }
    }
  }

  /** Bytes in the log that are not in the database file yet, as last seen. */
  get logSize(): number {
    return Number(this.#log?.size ?? 0n);
  }

  /** The files at the three paths, if they are still those that were opened. */
  #look(): FileStates | Loss {
    const file = stateOf(this.#path);
    if (!file) return 'taken away';
    if (!isFile(this.#file, file)) return 'replaced';
    const log = stateOf(this.#logPath);
    const index = stateOf(`${this.#path}-shm`);
    if (!log || !index || !isFile(this.#log, log) || !isFile(this.#index, index)) return 'log removed';
    return { file, log, index };
  }

  #remember({ file, log }: FileStates): void {
    if (!this.#mark || !isUntouched(this.#file, file)) this.#mark = this.#reader.raw(this.#path, file.ino);
    this.#file = file;
    this.#log = log;
    this.#salts = log.size > 0n ? this.#saltsNow() : NO_SALTS;
  }

  #saltsNow(): Buffer {
    return this.#readLog(this.#logPath, LOG_HEADER).subarray(16, 24);
  }

  #hasOurSalts(log: FileState): boolean {
    return log.size === 0n || this.#saltsNow().equals(this.#salts);
  }

  #lossInPlace(file: FileState): Loss | undefined {
    const mark = this.#reader.raw(this.#path, file.ino);
    if (!this.#mark) return undefined;
    if (mark?.shop !== this.#mark.shop || mark.count < this.#mark.count) return 'overwritten';
    const { size, mtimeNs } = this.#file;
    if (mark.count > this.#mark.count || (size === file.size && mtimeNs === file.mtimeNs)) return undefined;
    // Written to without being counted: another Toeboard that has come halfway, or a stranger.
    return this.#db.pragma('quick_check(1)', { simple: true }) === 'ok' ? undefined : 'overwritten';
  }
}
