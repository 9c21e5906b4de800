import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { testFolder } from '../support/host-folder.ts';
import { notice } from '../support/notice.ts';

const root = resolve(import.meta.dirname, '../..');

test('NOTICE is what npm run notice writes from the lock file and the packages', () => {
  expect(readFileSync(join(root, 'NOTICE'), 'utf8') === notice(root), 'run npm run notice').toBe(true);
});

test('it names every package that the program asks for itself, and none that only its makers use', () => {
  const { dependencies, optionalDependencies, devDependencies } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  ) as Record<string, Record<string, string>>;
  const lines = readFileSync(join(root, 'NOTICE'), 'utf8').split('\n');
  const named = (name: string, version: string) => lines.includes(`${name} ${version}`);
  for (const [name, version] of Object.entries({ ...dependencies, ...optionalDependencies }))
    expect(named(name, version), name).toBe(true);
  for (const [name, version] of Object.entries(devDependencies ?? {}))
    expect(named(name, version), name).toBe(false);
});

test('it holds the whole text of the licences that ask for it: type, and parts whose source is to be had', () => {
  const text = readFileSync(join(root, 'NOTICE'), 'utf8');
  expect(text).toContain('SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007');
  expect(text).toContain('Mozilla Public License Version 2.0');
  // The library that reads phones' pictures: its licence, the one that it refers to, and where its source is.
  expect(text).toMatch(/GNU LESSER GENERAL PUBLIC LICENSE\s+Version 3, 29 June 2007/);
  expect(text).toMatch(/GNU GENERAL PUBLIC LICENSE\s+Version 3, 29 June 2007/);
  expect(text).toMatch(/libheif-js 1\.\S+ {2}https:\/\/github\.com\//);
  expect(text).toContain('https://github.com/strukturag/libheif');
  expect(text).toMatch(/@resvg\/resvg-js 2\.\S+ {2}https:\/\/github\.com\//);
});

describe('of other packages', () => {
  /** A project with one package in its lock file and, unless left out, in its folder. */
  function project(locked: object, installed?: { version: string; licence?: string }): string {
    const folder = testFolder();
    const packages = { '': {}, 'node_modules/cog': { version: '1.0.0', ...locked } };
    writeFileSync(join(folder, 'package-lock.json'), JSON.stringify({ packages }));
    if (installed) {
      const at = join(folder, 'node_modules/cog');
      mkdirSync(at, { recursive: true });
      const { version, licence } = installed;
      writeFileSync(
        join(at, 'package.json'),
        JSON.stringify({
          version,
          author: 'A. Wright <a@example.org>',
          repository: 'git@example.org:wright/cog.git',
        }),
      );
      if (licence !== undefined) writeFileSync(join(at, 'LICENCE.txt'), licence);
    }
    return folder;
  }

  test('list and text are told; a package without a text is told as that', () => {
    const held = notice(project({ license: 'MIT' }, { version: '1.0.0', licence: 'As you like it \r\n' }));
    expect(held).toContain('MIT (1)');
    expect(held).toContain('  cog 1.0.0  https://example.org/wright/cog\n');
    expect(held).toContain('cog 1.0.0\n\nAs you like it\n');
    const without = notice(project({ license: 'MIT' }, { version: '1.0.0' }));
    expect(without).toContain(
      'no text of its licence. It names MIT as its licence and A. Wright as its author.',
    );
  });

  test('a tool of the makers is left out', () => {
    expect(notice(project({ license: 'MIT', dev: true }))).not.toContain('cog');
  });

  test.each<[string, object, { version: string } | undefined, RegExp]>([
    [
      'a licence that nobody has looked at',
      { license: 'GPL-3.0' },
      { version: '1.0.0' },
      /cog: nobody .* \(GPL-3\.0\)/,
    ],
    ['no licence', {}, { version: '1.0.0' }, /cog: nobody .* \(it names none\)/],
    [
      'another version than the locked one',
      { license: 'MIT' },
      { version: '1.1.0' },
      /has 1\.1\.0, the lock file 1\.0\.0/,
    ],
    ['a package that is missing', { license: 'MIT' }, undefined, /cog: not in node_modules/],
  ])('%s is refused', (_, locked, installed, reason) => {
    expect(() => notice(project(locked, installed))).toThrow(reason);
  });

  test('another version in the lock file makes the file stale', () => {
    const folder = testFolder();
    cpSync(join(root, 'package-lock.json'), join(folder, 'package-lock.json'));
    expect(() => notice(folder)).toThrow(/run npm ci first/);
  });
});
