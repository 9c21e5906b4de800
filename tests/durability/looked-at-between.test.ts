import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { DATABASE_FILE } from '../../src-main/store/index.ts';
import { firstBytes } from '../../src-main/store/mark.ts';
import { OwnFiles } from '../../src-main/store/own-files.ts';
import { testStore } from '../support/store-sample.ts';

/** Files of a store, looked at while another Toeboard brings the log over and empties it just as the log is read. */
function lookedAtBetween() {
  const { folder } = testStore();
  const path = join(folder, DATABASE_FILE);
  const [db, otherDb] = [new BetterSqlite3(path), new BetterSqlite3(path)];
  onTestFinished(() => {
    db.close();
    otherDb.close();
  });
  const write = (name: string) => db.prepare("INSERT INTO setting (name, value) VALUES (?, '1')").run(name);
  write('begun');
  let meddles = false;
  let meddled = 0;
  const files = new OwnFiles(db, path, (file, count) => {
    if (meddles) {
      meddles = false;
      meddled += 1;
      expect(new OwnFiles(otherDb, path).checkpoint()).toBe(true);
    }
    return firstBytes(file, count);
  });
  return {
    files,
    write,
    meddle: () => {
      meddles = true;
    },
    meddled: () => meddled,
  };
}

test('a log that another program empties while it is looked at after a write is no stranger’s work', () => {
  const { files, write, meddle, meddled } = lookedAtBetween();
  write('one');
  meddle();
  expect(files.lossAfterWrite()).toBeUndefined();
  expect(meddled()).toBe(1);
  write('two');
  expect(files.lossAfterWrite()).toBeUndefined();
});

test('nor is one that is emptied while it is looked at before a write', () => {
  const { files, write, meddle, meddled } = lookedAtBetween();
  write('one');
  expect(files.lossAfterWrite()).toBeUndefined();
  meddle();
  expect(files.loss()).toBeUndefined();
  expect(meddled()).toBe(1);
});
