import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** The lines of the table of promises: what is promised, the tests that hold it, what was measured last. */
function promises(text: string): string[][] {
  const section = text.split('## What is promised, and what holds it')[1]?.split('\n## ')[0] ?? '';
  return section
    .split('\n')
    .filter((line) => line.startsWith('| ') && !/^\| (promise|---)/.test(line))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

const filesIn = (cell: string) => [...cell.matchAll(/`([^`]+)`/g)].map((match) => match[1] as string);
const table = promises(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'));

test('every promise names tests that there are, and what was measured last', () => {
  expect(table.length).toBe(17);
  for (const [promise = '', tests = '', measured = ''] of table) {
    expect(filesIn(tests).length, promise).toBeGreaterThan(0);
    for (const file of filesIn(tests)) {
      expect(file, promise).toMatch(/^tests\/.+\.ts$/);
      expect(existsSync(join(root, file)), `${promise}: ${file}`).toBe(true);
    }
    expect(measured, promise).not.toBe('');
  }
});

test('a promise without a test, or by a file that is gone, would be found', () => {
  const read = promises(
    '## What is promised, and what holds it\n\n| promise | tests | last |\n| --- | --- | --- |\n| x | `tests/gone.ts` | 1 |\n| y |  | 2 |\n\n## Next\n| z | `a` | 3 |\n',
  );
  expect(read).toEqual([
    ['x', '`tests/gone.ts`', '1'],
    ['y', '', '2'],
  ]);
  expect(filesIn(read[0]?.[1] ?? '').map((file) => existsSync(join(root, file)))).toEqual([false]);
  expect(filesIn(read[1]?.[1] ?? '')).toEqual([]);
});
