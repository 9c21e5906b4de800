import BetterSqlite3 from 'better-sqlite3';
import { expect, test } from 'vitest';
import { dispatch } from '../../src-main/api/dispatch.ts';
import type { Handlers } from '../../src-main/api/handlers/index.ts';

/** What is written down of a call whose handler throws that, and what the caller is answered. */
function met(error: Error): { written: unknown[]; answer: unknown } {
  const handlers = {
    'bin.empty': () => {
      throw error;
    },
  } as unknown as Handlers;
  const written: unknown[] = [];
  return { answer: dispatch(handlers, 'bin.empty', {}, (fault) => written.push(fault)), written };
}

test('a full disk is one line in the program’s log, and not where in the program it was met', () => {
  const { answer, written } = met(new BetterSqlite3.SqliteError('database or disk is full', 'SQLITE_FULL'));
  expect(written).toEqual(['bin.empty: the disk is full: free some space and try again']);
  expect(answer).toMatchObject({ ok: false, failure: { code: 'storage-failed' } });
});

test('what may be the program’s own mistake is written down whole', () => {
  const refused = new BetterSqlite3.SqliteError('UNIQUE constraint failed', 'SQLITE_CONSTRAINT_UNIQUE');
  expect(met(refused).written).toEqual([refused]);
  expect(met(refused).answer).toMatchObject({ failure: { reason: 'the database refused the work' } });
  const own = new TypeError('x is not a function');
  expect(met(own).written).toEqual([own]);
  expect(met(own).answer).toMatchObject({ failure: { code: 'internal' } });
});
