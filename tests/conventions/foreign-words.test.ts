import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { foreignWordFinder, hashesIn, hashOfWord, wordsOf } from '../support/foreign-words.ts';

// No make, brand or program stands in what the project holds. The list of such words is kept beside the clone and hashed,
// so that the rule against them does not have to spell them.

const root = resolve(import.meta.dirname, '../..');
const LIST = resolve(root, '../shared/hooks/before-stop');

/** Paths of all tracked files that hold text and are there; undefined if this is no clone. */
function trackedTexts(): Map<string, string> | undefined {
  let paths: string[];
  try {
    paths = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' })
      .split('\0')
      .filter(Boolean);
  } catch {
    return undefined;
  }
  const texts = new Map<string, string>();
  for (const path of paths.filter((path) => existsSync(join(root, path)))) {
    const text = readFileSync(join(root, path), 'utf8');
    if (!text.includes('\0')) texts.set(path, text);
  }
  return texts;
}

test('no listed make, brand or program stands in tracked text or in the name of a file', (context) => {
  if (!existsSync(LIST)) return context.skip('not checked: the list of words is not kept beside this clone');
  const hashes = hashesIn(readFileSync(LIST, 'utf8'));
  expect(hashes.size, 'the list holds words').toBeGreaterThan(0);
  const texts = trackedTexts();
  if (!texts) return context.skip('not checked: this is not a clone, so what is tracked is not known');
  expect(texts.size, 'tracked texts are read').toBeGreaterThan(500);
  const find = foreignWordFinder(hashes);
  expect([...texts].flatMap(([path, text]) => find(path, text))).toEqual([]);
});

describe('the finder of listed words', () => {
  // Made up for this check; a list as it is kept: hashes among other text.
  const list = `looks at = """${hashOfWord('quorlibrix')}\n${hashOfWord('zemtor')}""".split()`;
  const find = foreignWordFinder(hashesIn(list));

  test('reads a list out of the text around it', () => {
    expect(hashesIn(list).size).toBe(2);
    expect(hashesIn('no hashes: 0123, 0123456789abcdef0').size).toBe(0);
    // The list is made by `printf toe:zemtor | sha256sum | cut -c1-16`.
    expect(hashOfWord('zemtor')).toBe('4aa878ad7aac515a');
  });

  test('finds a word in any letters, with its line, in the name of a file and in names of the code', () => {
    expect(find('a.md', 'First line\nlike a QUORLIBRIX of old')).toEqual([
      { path: 'a.md', line: 2, word: 'quorlibrix' },
    ]);
    expect(find('docs/zemtor.md', 'nothing')).toEqual([{ path: 'docs/zemtor.md', line: 0, word: 'zemtor' }]);
    for (const text of [
      'zemtorLike()',
      'nearZemtor',
      'ZEMTORBox',
      'two Zemtors',
      'zémtör',
      'zemtor2',
      '_zemtor_',
    ])
      expect(find('a.ts', text), text).toHaveLength(1);
  });

  test('lets words be that only hold a listed one', () => {
    for (const text of ['zemtorial', 'quorlibri', 'azemtor', ''])
      expect(find('a.ts', text), text).toEqual([]);
  });

  test('parts names of the code into words', () => {
    expect([...wordsOf('pitmanBALLCentre')].sort()).toEqual(['ball', 'centre', 'pitman', 'pitmanballcentre']);
  });
});
