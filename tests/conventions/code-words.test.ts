import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forbiddenIn, IN_COMMENTS, IN_NAMES, partsOf } from '../support/code-words.ts';

// Code says what it means in standard words; what it said in words of its own does not come back.

const root = resolve(import.meta.dirname, '../..');
const sources = globSync('{shared-math,src-main,src-renderer,src-page}/**/*.{ts,svelte}', { cwd: root });

test('comments and names of the sources keep to the words of the code', () => {
  expect(sources.length).toBeGreaterThan(600);
  const found = sources.flatMap((path) =>
    forbiddenIn(readFileSync(join(root, path), 'utf8')).map((what) => `${path}: ${what}`),
  );
  expect(found).toEqual([]);
});

/** One type to one thing: names that stood for several are declared once at most. */
test.each(['Body', 'Place', 'Motion', 'Column', 'Block', 'Need'])('%s is the name of one type', (name) => {
  const declares = new RegExp(`^(?:export )?(?:declare )?(?:interface|type|class) ${name}\\b`, 'm');
  const found = sources.filter((path) => declares.test(readFileSync(join(root, path), 'utf8')));
  expect(found.length, found.join(', ')).toBeLessThanOrEqual(1);
});

/** A factor between degrees and radians written by hand. */
const BY_HAND = /Math\.PI\)? \/ 180|\b180(?:_?000)?\)? \/ Math\.PI/;

test('degrees become radians, and radians degrees, by toRadians and toDegrees alone', () => {
  for (const sign of ['(x * Math.PI) / 180', 'x * (Math.PI / 180)', '180 / Math.PI', '(x * 180) / Math.PI'])
    expect(sign).toMatch(BY_HAND);
  const found = sources.filter((path) => BY_HAND.test(readFileSync(join(root, path), 'utf8')));
  expect(found.map((path) => path.replaceAll('\\', '/'))).toEqual(['shared-math/units/angles.ts']);
});

describe('the finder of forbidden words', () => {
  test.each([...IN_COMMENTS, ...IN_NAMES])('fires on $example', ({ example }) => {
    expect(forbiddenIn(example)).toHaveLength(1);
  });

  test('fires over the break of a line, in markup and on private names', () => {
    expect(forbiddenIn('/**\n * The way back; nothing\n * where there is none.\n */')).toHaveLength(1);
    expect(forbiddenIn('<!-- What is told here. -->')).toHaveLength(1);
    expect(forbiddenIn('class A { #told = 1; }')).toHaveLength(1);
  });

  test('lets texts, other names and a damper’s rebound be', () => {
    for (const text of [
      "const words = 'What is in the way, and not told';",
      'const reboundDamping = 1;',
      'const untoldKind = 1;',
      '// A leaf spring leaves the seat; what matters stands.',
      '<script lang="ts">\nconst a = 1;\n</script>\n<p>Stand the camera back: what is told.</p>',
      "const address = 'https://example.org/told';",
    ])
      expect(forbiddenIn(text), text).toEqual([]);
  });

  test('parts comments from code', () => {
    expect(partsOf("a; // one\nb = 'no // comment'; /* two */")).toMatchObject({
      comments: ['// one', '/* two */'],
    });
  });
});
