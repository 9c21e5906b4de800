import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { writeAside } from '../../../src-main/files/index.ts';
import { testFolder } from '../../support/host-folder.ts';

test('a file is written over whole, and nothing else is left in the folder', async () => {
  const folder = testFolder();
  const path = join(folder, 'sheet.json');
  writeFileSync(path, 'the former, which is longer');
  await writeAside(path, 'the new');
  expect(readFileSync(path, 'utf8')).toBe('the new');
  await writeAside(path, new Uint8Array([1, 2, 3]));
  expect([...readFileSync(path)]).toEqual([1, 2, 3]);
  expect(readdirSync(folder)).toEqual(['sheet.json']);
});

test('what fails leaves the former file and no litter', async () => {
  const folder = testFolder();
  // A folder of that name cannot be renamed over: the last step fails, after all has been written.
  mkdirSync(join(folder, 'taken', 'inside'), { recursive: true });
  await expect(writeAside(join(folder, 'taken'), 'new')).rejects.toThrow();
  expect(readdirSync(folder)).toEqual(['taken']);
  expect(readdirSync(join(folder, 'taken'))).toEqual(['inside']);
  await expect(writeAside(join(folder, 'nowhere', 'sheet.json'), 'new')).rejects.toThrow(/ENOENT/);
});

test('many writes of one file at once leave one of them whole', async () => {
  const folder = testFolder();
  const path = join(folder, 'sheet.json');
  const texts = Array.from({ length: 20 }, (_, index) => String(index).repeat(10_000));
  await Promise.all(texts.map((text) => writeAside(path, text)));
  expect(texts).toContain(readFileSync(path, 'utf8'));
  expect(readdirSync(folder)).toEqual(['sheet.json']);
});
