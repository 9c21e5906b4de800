import { spawn, spawnSync } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { CAR_FILE_EXTENSION } from '../../src-main/files/index.ts';
import { build } from '../../src-main/hosts/launch/build.ts';
import { builderConfig } from '../../src-main/packages/builder-config.ts';
import { layPortable, type Portable } from '../../src-main/packages/portable.ts';
import { isNeeded, pageOnlyPackages, runtimePackages } from '../../src-main/packages/runtime-packages.ts';
import { newFolder, removeFolder, testFolder } from '../support/host-folder.ts';
import { ADDRESS, ROOT } from '../support/host-process.ts';
import { exchangeToken, httpCaller, value } from '../support/host-transports.ts';
import { programTree } from '../support/host-tree.ts';

const windows = process.platform === 'win32';
const LAYOUT = 'four-bar-cross-steer.json';

/** Nothing of the machine's own: no Node on the search path, no settings of the test run's npm. */
function bareEnvironment(more: Record<string, string> = {}): Record<string, string> {
  const { SystemRoot = '', TEMP = '', HOME = '' } = process.env;
  const system = windows
    ? { SystemRoot, TEMP, PATH: join(SystemRoot, 'System32') }
    : { PATH: '/usr/bin:/bin' };
  return { ...system, HOME, TOEBOARD_NO_WINDOW: '1', ...more };
}

function run(program: string, args: readonly string[], env = bareEnvironment()) {
  return spawnSync(program, args, { env, encoding: 'utf8', shell: windows, cwd: testFolder() });
}

/** Starts a program that opens the board, and what it says until its address has come. */
async function opened(program: string, env: Record<string, string>, args: readonly string[] = []) {
  const child = spawn(program, args, { env, stdio: ['pipe', 'pipe', 'pipe'], shell: windows });
  let said = '';
  onTestFinished(() => void child.kill());
  const address = await new Promise<string>((done, failed) => {
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (chunk: Buffer) => {
        said += chunk.toString();
        const [found] = said.match(ADDRESS) ?? [];
        if (found) done(found);
      });
    child.once('exit', () => failed(new Error(`it ended: ${said}`)));
  });
  return { child, address };
}

describe('packages', () => {
  const root = newFolder();
  const sheets = join(root, 'sheets');

  beforeAll(async () => {
    programTree(root);
    for (const name of ['NOTICE', 'README.md', 'CHANGELOG.md'])
      copyFileSync(join(ROOT, name), join(root, name));
    mkdirSync(sheets);
    expect(await build(root)).toBe(true);
  });
  afterAll(() => removeFolder(root), 60_000);

  describe('a portable folder', () => {
    let portable: Portable;
    let first = '';

    // Carried to another place, whose name has a space in it, after it was laid.
    beforeAll(() => {
      const laid = layPortable(root, join(root, 'laid'));
      first = laid.folder;
      const carried = join(root, 'a stick');
      renameSync(laid.folder, carried);
      portable = {
        folder: carried,
        board: laid.board.replace(laid.folder, carried),
        command: laid.command.replace(laid.folder, carried),
      };
    });

    test('opens the board with a Node of its own, and keeps the cars beside itself where a folder is made for them', async () => {
      mkdirSync(join(portable.folder, 'data'));
      const { address } = await opened(portable.board, bareEnvironment());
      expect(await (await fetch(new URL('/', address))).text()).toContain('<title>Toeboard</title>');
      const { token } = await exchangeToken(address);
      const call = httpCaller(address, token);
      expect((await value(call, 'demonstration.list', {})).customers.length).toBeGreaterThan(0);
      expect(existsSync(join(portable.folder, 'data', 'toeboard.sqlite'))).toBe(true);
      // Started again it finds itself.
      const again = run(portable.board, []);
      expect(again.stdout).toMatch(/^Toeboard is running already: open this address in a browser: http/);
    });

    test('is the command line too: the same figures, a sheet with its type, a picture', () => {
      const layout = join(portable.folder, 'program', 'projects', LAYOUT);
      const ours = spawnSync(process.execPath, [join(ROOT, 'src-main/command-line.ts'), 'turn', layout], {
        encoding: 'utf8',
      });
      expect(run(portable.command, ['turn', layout]).stdout).toBe(ours.stdout);
      expect(ours.stdout.length).toBeGreaterThan(1000);
      const sheet = join(sheets, 'sheet.pdf');
      const picture = join(sheets, 'side.png');
      expect(run(portable.command, ['sheet', layout, '--out', sheet]).status).toBe(0);
      expect(readFileSync(sheet).subarray(0, 5).toString()).toBe('%PDF-');
      expect(run(portable.command, ['draw', layout, '--view', 'side', '--out', picture]).status).toBe(0);
      expect(readFileSync(picture).subarray(1, 4).toString()).toBe('PNG');
    });

    test('holds what runs and the licences, and nothing that is for working on the program', () => {
      const program = join(portable.folder, 'program');
      for (const name of ['NOTICE', 'README.md', 'CHANGELOG.md', 'projects', 'out/renderer'])
        expect(existsSync(join(program, name)), name).toBe(true);
      for (const name of ['typescript', 'vite', 'vitest', 'electron', 'playwright-core'])
        expect(existsSync(join(program, 'node_modules', name)), name).toBe(false);
      expect(readFileSync(join(portable.folder, 'READ ME.txt'), 'utf8')).toMatch(
        /people die of it[\s\S]*licensed practice/,
      );
    });

    test('is laid anew over itself, data and all; over a folder of somebody else it is not', () => {
      const within = join(root, 'again');
      const folder = join(within, basename(first));
      for (const part of ['data', 'program', 'runtime']) mkdirSync(join(folder, part), { recursive: true });
      writeFileSync(join(folder, 'data', 'mine'), 'mine');
      expect(() => layPortable(root, within)).toThrow(/is there already and is not a folder of this program/);
      writeFileSync(join(folder, 'program', 'NOTICE'), 'of an earlier one');
      writeFileSync(join(folder, 'program', 'left over'), '');
      layPortable(root, within);
      expect(readFileSync(join(folder, 'data', 'mine'), 'utf8')).toBe('mine');
      expect(existsSync(join(folder, 'program', 'left over'))).toBe(false);
      expect(existsSync(join(folder, 'program', 'out', 'main', 'command-line.js'))).toBe(true);
    });
  });

  // As `npm install -g TARBALL` does it, offline: what it depends on is put into the tarball for that, which the real one fetches.
  test('npm pack, installed for everybody, gives the two commands', async () => {
    const stage = join(root, 'stage');
    const npm = (args: readonly string[], cwd: string) => {
      const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name)));
      const done = spawnSync('npm', args, { cwd, env, encoding: 'utf8', shell: windows });
      expect(done.stderr, done.stdout).not.toContain('npm error');
      return done.stdout.trim().split('\n').at(-1) ?? '';
    };
    const listed = spawnSync('npm', ['pack', '--dry-run', '--ignore-scripts', '--json'], {
      cwd: root,
      encoding: 'utf8',
      shell: windows,
    });
    const [first] = JSON.parse(listed.stdout) as [{ files: { path: string }[] }];
    const packed = first.files.map(({ path }) => path);
    // The sources stay at home: an installed Node refuses to read TypeScript there.
    expect(packed.filter((path) => path.endsWith('.ts'))).toEqual([]);
    for (const path of packed) cpSync(join(root, path), join(stage, path));
    const manifest = JSON.parse(readFileSync(join(stage, 'package.json'), 'utf8')) as Record<string, unknown>;
    // The type alone is left out, most of the weight: neither command asks for it here.
    const packages = runtimePackages(root).filter(({ place }) => !place.includes('@fontsource/'));
    const dependencies = Object.fromEntries(
      packages.map(({ place }) => [place.replace('node_modules/', ''), '*']),
    );
    writeFileSync(
      join(stage, 'package.json'),
      JSON.stringify({
        ...manifest,
        scripts: {},
        devDependencies: {},
        optionalDependencies: {},
        dependencies,
        bundleDependencies: Object.keys(dependencies),
      }),
    );
    const system = `${process.platform}-${process.arch}`;
    for (const { folder, place } of packages)
      cpSync(folder, join(stage, place), {
        recursive: true,
        dereference: true,
        filter: (path) => isNeeded(place, path.slice(folder.length + 1), system),
      });
    const tarball = npm(['pack', '--pack-destination', root], stage);
    const prefix = join(root, 'for everybody');
    npm(['install', '--global', '--offline', '--prefix', prefix, join(root, tarball)], root);
    const bin = windows ? prefix : join(prefix, 'bin');
    // With the Node of the machine this time, whose the commands are.
    const env = bareEnvironment({
      PATH: [join(process.execPath, '..'), bareEnvironment()['PATH']].join(windows ? ';' : ':'),
      TOEBOARD_DATA: join(root, 'data'),
    });
    const layout = join(ROOT, 'projects', LAYOUT);
    const check = run(join(bin, windows ? 'toeboard.cmd' : 'toeboard'), ['check', layout], env);
    expect(check.stderr).toBe('');
    expect(JSON.parse(check.stdout)).toMatchObject({ format: 'toeboard-check' });
    const { address, child } = await opened(
      join(bin, windows ? 'toeboard-board.cmd' : 'toeboard-board'),
      env,
    );
    expect((await exchangeToken(address)).status).toBe(200);
    child.kill('SIGTERM');
  });

  test('what the built program loads is found in its files, with what that asks for, and nothing of the page', () => {
    const names = runtimePackages(root).map(({ place }) => place.replace('node_modules/', ''));
    for (const name of [
      'better-sqlite3',
      'zod',
      'pdfkit',
      'fontkit',
      '@fontsource/barlow',
      'planck',
      'tiny-inflate',
    ])
      expect(names).toContain(name);
    for (const name of ['svelte', 'konva', 'uplot', 'pdfjs-dist', 'libheif-js'])
      expect(names).not.toContain(name);
    expect(pageOnlyPackages(root)).toContain('pdfjs-dist');
    const other = testFolder();
    mkdirSync(join(other, 'out', 'main'), { recursive: true });
    writeFileSync(join(other, 'out', 'main', 'a.js'), "import x from 'missing';");
    writeFileSync(join(other, 'package.json'), '{"name": "a", "dependencies": {"missing": "1"}}');
    expect(() => runtimePackages(other)).toThrow('the package missing is not installed');
  });

  test('what is compiled for another system is left out', () => {
    expect(isNeeded('node_modules/better-sqlite3', 'prebuilds/linux-x64.node', 'linux-x64')).toBe(true);
    expect(isNeeded('node_modules/better-sqlite3', 'prebuilds/win32-x64.node', 'linux-x64')).toBe(false);
    expect(isNeeded('node_modules/better-sqlite3', 'deps/sqlite3/sqlite3.c', 'linux-x64')).toBe(false);
    expect(isNeeded('node_modules/zod', 'index.js', 'linux-x64')).toBe(true);
  });

  test('a command that is not built says so', () => {
    const empty = testFolder();
    cpSync(join(ROOT, 'src-main', 'bin'), join(empty, 'src-main', 'bin'), { recursive: true });
    const { status, stderr } = spawnSync(process.execPath, [join(empty, 'src-main/bin/toeboard.cjs')], {
      encoding: 'utf8',
    });
    expect(status).toBe(1);
    expect(stderr).toBe('Toeboard is not built: run npm run build first.\n');
  });

  test('npm run package says what it needs where that is missing', () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      [join(root, 'src-main/packages/make-installer.ts')],
      {
        encoding: 'utf8',
      },
    );
    expect(status).toBe(1);
    expect(stderr).toMatch(/^electron-builder is not installed\.\n/);
    for (const need of [
      'npm install --no-save electron-builder@',
      'the network',
      'certificate',
      'npm run portable',
    ])
      expect(stderr).toContain(need);
  });
});

describe('the way installers are made', () => {
  // The fuses and their meaning: "Electron Fuses" in Electron's documentation; the keys are electron-builder's.
  test('shuts every way by which the program could be made to run something else', () => {
    expect(builderConfig(ROOT, 'icon.png', ['svelte'])['electronFuses']).toEqual({
      runAsNode: false,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableCookieEncryption: true,
      onlyLoadAppFromAsar: true,
      enableEmbeddedAsarIntegrityValidation: true,
      grantFileProtocolExtraPrivileges: false,
    });
  });

  test('takes what exists along, opens the cars that the program writes, and takes no data away', () => {
    const config = builderConfig(ROOT, 'icon.png', ['svelte']);
    const { version } = JSON.parse(readFileSync(join(ROOT, 'node_modules/electron/package.json'), 'utf8'));
    expect(config['electronVersion']).toBe(version);
    expect(config['fileAssociations']).toMatchObject([{ ext: CAR_FILE_EXTENSION }]);
    expect(config['files']).toContain('!node_modules/svelte/**');
    expect(config['nsis']).toMatchObject({ deleteAppDataOnUninstall: false });
    const { main } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { main: string };
    expect((config['files'] as string[]).some((path) => main.startsWith(`${path}/`))).toBe(true);
    for (const path of config['extraFiles'] as string[])
      expect(existsSync(join(ROOT, path)), path).toBe(true);
  });
});
