import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');

/** What is judged by the first look at it: the first argument of an `expect` that is no poll. */
const JUDGED_AT_ONCE = /\bexpect\(([^;]*?)\)\s*\.(?:not\.)?to\w+\(/g;

/** What an `await` stands before. */
const AWAITED = /\bawait\s+([\w.]+)/g;

/** What is whole when it comes, so that a second look would find the same: answers, files, and what waits by itself. */
const WHOLE = new Set([
  'violations',
  'walkThrough',
  'stopsOf',
  'tuned',
  'kept',
  'made',
  'downloaded',
  'bytesOf',
  'coming',
  'asked',
  'host.ended',
  'second.ended',
]);

/** Looks at the page in a text that are judged at once. */
const lookedAtOnce = (text: string) =>
  [...text.matchAll(JUDGED_AT_ONCE)]
    .flatMap(([, judged = '']) => [...judged.matchAll(AWAITED)].map(([, what = '']) => what))
    .filter((what) => !WHOLE.has(what));

test('no browser test judges the page by one look at it: what it waits for comes later on a slower machine', () => {
  const files = globSync('tests/browser/**/*.ts', { cwd: root });
  expect(files.length).toBeGreaterThan(40);
  const found = files.flatMap((path) =>
    lookedAtOnce(readFileSync(join(root, path), 'utf8')).map((what) => `${path}: ${what}`),
  );
  expect(found).toEqual([]);
});

test.each([
  "expect(await page.locator('.tally').textContent()).toBe('1 to fix');",
  'expect((await cells(page)).at(0)).toMatch(/in/);',
  'expect(Math.abs((await wheel(page)).y - rest)).not.toBeLessThan(2);',
  "expect(\n  (await row.allTextContents()).map((text) => text.trim()),\n).toContain('same');",
])('%s is found', (text) => {
  expect(lookedAtOnce(text)).toHaveLength(1);
});

test.each([
  'await expect.poll(() => row.count()).toBe(2);',
  'await expect.poll(async () => (await cells(page)).at(0)).toMatch(/in/);',
  'expect(await violations(page)).toEqual([]);',
  'const text = await row.textContent();\nexpect(text).toBe(before);',
])('%s is no such look', (text) => {
  expect(lookedAtOnce(text)).toEqual([]);
});
