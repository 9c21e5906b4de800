import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';

/*
 * Plain script text, because the built program is one file and a worker needs a file of its own or a text; the library is
 * handed in as the path that this module would load. It reads every row of every table, and every whole index, in short
 * reads: between two of them it can be ended, and the log can be brought into the database. It answers 'ok' or what is wrong.
 */
const WORK = `
const { parentPort, workerData } = require('node:worker_threads');
const Database = require(workerData.library);
const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
async function check() {
  const db = new Database(workerData.path, { fileMustExist: true, readonly: !workerData.finish });
  try {
    if (workerData.finish) db.pragma('journal_mode = DELETE');
    const tables = db.prepare("SELECT name, wr FROM pragma_table_list WHERE schema = 'main' AND type = 'table'").all();
    for (const { name, wr } of tables) {
      if (name.startsWith('sqlite_')) continue;
      const indices = db.prepare('SELECT name FROM pragma_index_list(?) WHERE partial = 0').pluck().all(name);
      for (const index of indices) {
        db.prepare('SELECT count(*) FROM "' + name + '"' + (wr ? '' : ' INDEXED BY "' + index + '"')).get();
        await pause(0);
      }
      if (wr) continue;
      const rows = db.prepare('SELECT *, rowid AS row_number FROM "' + name + '" WHERE rowid > ? ORDER BY rowid LIMIT 200');
      let last = Number.MIN_SAFE_INTEGER;
      for (let read = true; read; ) {
        read = false;
        let bytes = 0;
        for (const row of rows.iterate(last)) {
          last = row.row_number;
          read = true;
          for (const value of Object.values(row)) bytes += value === null ? 0 : value.length || 8;
          if (bytes > 4000000) break;
        }
        await pause(workerData.between);
      }
    }
    return 'ok';
  } finally {
    db.close();
  }
}
check().then((said) => parentPort.postMessage(said), (error) =>
  parentPort.postMessage(/^SQLITE_(CORRUPT|NOTADB)/.test(error.code || '') ? 'damaged' : 'unknown: ' + error.message));
`;

export interface Check {
  /** 'unknown' if it could not be found out, or was ended. Never rejects. */
  readonly found: Promise<'ok' | 'damaged' | 'unknown'>;
  readonly end: () => void;
}

export interface CheckWish {
  /** ms between two reads. */
  readonly between?: number;
  /** Whether this is a new copy that is to stand without a log beside it. */
  readonly finish?: boolean;
}

/** Reads a whole database through in a thread of its own. */
export function checkBeside(path: string, { between = 0, finish = false }: CheckWish = {}): Check {
  const library = createRequire(import.meta.url).resolve('better-sqlite3');
  const workerData = { path, library, between, finish };
  const worker = new Worker(WORK, { eval: true, workerData, execArgv: [] });
  // The program may end while it reads.
  worker.unref();
  const found = new Promise<'ok' | 'damaged' | 'unknown'>((resolve) => {
    worker.once('message', (said) => resolve(said === 'ok' || said === 'damaged' ? said : 'unknown'));
    worker.once('error', () => resolve('unknown'));
    worker.once('exit', () => resolve('unknown'));
  });
  return { found, end: () => void worker.terminate() };
}
