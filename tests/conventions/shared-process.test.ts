import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** What loads or replaces modules while a test runs, and would be found by the next file of the same process. */
const LOADS = /\bawait import\(|\bvi\.(?:mock|doMock)\(/;

test('a test file that loads modules of its own leaves none of them to the files that share its process', () => {
  const files = globSync('tests/{unit,reference,thorough}/**/*.test.ts', { cwd: root });
  expect(files.length).toBeGreaterThan(100);
  const loading = files
    .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }))
    .filter(({ text }) => LOADS.test(text));
  expect(loading.length).toBeGreaterThan(0);
  expect(loading.filter(({ text }) => !text.includes('useFreshModules();')).map(({ path }) => path)).toEqual(
    [],
  );
});
