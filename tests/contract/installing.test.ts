import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { testFolder } from '../support/host-folder.ts';
import { ROOT } from '../support/host-process.ts';

/** A project that asks for a Node of the far future, and so does what it depends on: any Node at hand is too old for both. */
function futureProject(): string {
  const folder = testFolder();
  const engines = { node: '>=99' };
  mkdirSync(join(folder, 'cog'));
  writeFileSync(join(folder, 'cog/package.json'), JSON.stringify({ name: 'cog', version: '1.0.0', engines }));
  writeFileSync(
    join(folder, 'package.json'),
    JSON.stringify({ name: 'rig', version: '1.0.0', engines, dependencies: { cog: 'file:cog' } }),
  );
  return folder;
}

/** All that npm says of installing a folder's packages; nothing of the test run's own settings reaches it. */
function install(folder: string): { status: number | null; said: string } {
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name) && name !== 'INIT_CWD'),
  );
  const windows = process.platform === 'win32';
  const { status, stdout, stderr } = spawnSync('npm', ['install', '--offline'], {
    cwd: folder,
    env,
    encoding: 'utf8',
    shell: windows,
  });
  return { status, said: `${stdout}${stderr}` };
}

describe('npm with a Node that is older than the one that comes along', () => {
  test('warns, unless told otherwise', () => {
    expect(install(futureProject()).said).toContain('EBADENGINE');
  });

  test('says nothing of it under the settings of this project, and installs', () => {
    const folder = futureProject();
    copyFileSync(join(ROOT, '.npmrc'), join(folder, '.npmrc'));
    const { status, said } = install(folder);
    expect(status).toBe(0);
    expect(said).not.toMatch(/EBADENGINE|warn/i);
    expect(readFileSync(join(folder, 'package-lock.json'), 'utf8')).toContain('cog');
  });
});

test('README says where a Node comes along, Apple silicon and Windows on ARM too, and what to do where none does', () => {
  const text = readFileSync(join(ROOT, 'README.md'), 'utf8').replaceAll(/\s+/g, ' ');
  expect(text).toMatch(
    /for Linux, macOS and Windows, each on Intel or AMD \(x64\) and on ARM \(Apple silicon, Windows on ARM\)/,
  );
  expect(text).toMatch(/On any other system install Node 22\.18 or newer first/);
});

test.each([
  ['linux', 'x64'],
  ['linux', 'arm64'],
  ['darwin', 'x64'],
  ['darwin', 'arm64'],
  ['win32', 'x64'],
  ['win32', 'arm64'],
])('the compiled parts come along for %s %s: the database’s binding, the maker of pictures', (os, cpu) => {
  const binding = join(ROOT, 'node_modules/better-sqlite3/prebuilds', `${os}-${cpu}.node`);
  expect(statSync(binding).size).toBeGreaterThan(100_000);
  const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { os?: string[]; cpu?: string[] }>;
  };
  const builds = Object.entries(packages).filter(
    ([path, build]) => path.includes('/resvg-js-') && build.os?.includes(os) && build.cpu?.includes(cpu),
  );
  expect(builds.length).toBeGreaterThan(0);
});
