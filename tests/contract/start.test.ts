import { spawnSync } from 'node:child_process';
import { globSync, mkdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { needsBuild } from '../../src-main/hosts/launch/build.ts';
import { electronBinary } from '../../src-main/hosts/launch/electron-binary.ts';
import { REFUSED_EXIT } from '../../src-main/hosts/launch/exit-codes.ts';
import { newFolder, removeFolder, testFolder } from '../support/host-folder.ts';
import { ADDRESS, ROOT, startProgram } from '../support/host-process.ts';
import { exchangeToken, httpCaller, value } from '../support/host-transports.ts';
import { fakeElectron, programTree } from '../support/host-tree.ts';

const CHECK = join(ROOT, 'src-main', 'require-node.cjs');
const { bringsNode, nodeRefusal } = createRequire(import.meta.url)(CHECK) as {
  bringsNode(platform: string, arch: string): boolean;
  nodeRefusal(version: string, platform: string, arch: string): string | undefined;
};

function put(root: string, path: string, time: number): void {
  const file = join(root, path);
  mkdirSync(join(file, '..'), { recursive: true });
  writeFileSync(file, '');
  utimesSync(file, time, time);
}

/** Sets the times of a tree's folders, which writing into them has moved on. */
function settle(root: string, time: number): void {
  for (const folder of ['src-main/store', 'src-main', 'src-renderer', 'src-page', 'shared-math'])
    utimesSync(join(root, folder), time, time);
}

const OUT = [
  'out/main/electron-main.js',
  'out/main/loopback-main.js',
  'out/main/command-line.js',
  'out/main/page-that-moves.js',
  'out/preload/electron-preload.cjs',
  'out/renderer/index.html',
];
const SOURCES = [
  'src-main/store/index.ts',
  'src-renderer/main.ts',
  'src-page/page.ts',
  'shared-math/outcome.ts',
  'electron.vite.config.ts',
  'package.json',
];

function start(root: string, env: Record<string, string> = {}) {
  return startProgram(join(root, 'src-main/start.ts'), [], {
    env: { TOEBOARD_DATA: join(root, 'data'), ...env },
  });
}

function builtTree(): string {
  const root = testFolder();
  for (const path of SOURCES) put(root, path, 1000);
  for (const path of OUT) put(root, path, 2000);
  settle(root, 1000);
  return root;
}

describe('starting', () => {
  test('refuses a Node that would crash, in one line that says what to do', () => {
    for (const old of ['18.20.1', '20.20.2', '22.6.0', '22.17.9']) {
      expect(nodeRefusal(old, 'linux', 'x64')).toBe(
        `Toeboard needs Node 22.18 or newer and this is ${old}: run npm ci and start it with npm start, which bring their own, or install Node 22.18 or newer.`,
      );
      // Where no package brings a Node, npm ci again would change nothing.
      expect(nodeRefusal(old, 'freebsd', 'x64')).toBe(
        `Toeboard needs Node 22.18 or newer and this is ${old}: no Node comes with the packages for freebsd x64, so install Node 22.18 or newer first.`,
      );
    }
    for (const good of ['22.18.0', '22.20.1', '24.0.0', '24.21.0', '26.1.0', process.versions.node])
      expect(nodeRefusal(good, 'linux', 'x64')).toBeUndefined();
  });

  test('a Node comes with the packages for every system that README names', () => {
    const { packages } = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, { version: string; os?: string; cpu?: string; bin?: Record<string, string> }>;
    };
    for (const [os, cpu] of [
      ['linux', 'x64'],
      ['linux', 'arm64'],
      ['darwin', 'x64'],
      ['darwin', 'arm64'],
      ['win32', 'x64'],
      ['win32', 'arm64'],
    ] as const) {
      expect(bringsNode(os, cpu), `${os} ${cpu}`).toBe(true);
      const brought = Object.entries(packages).find(
        ([path, entry]) => path.startsWith('node_modules/node-') && entry.os === os && entry.cpu === cpu,
      );
      expect(brought?.[1].bin, `${os} ${cpu}`).toHaveProperty('node');
      expect(nodeRefusal(brought?.[1].version ?? '', os, cpu)).toBeUndefined();
    }
    for (const [os, cpu] of [
      ['linux', 'riscv64'],
      ['freebsd', 'x64'],
      ['win32', 'ia32'],
    ] as const)
      expect(bringsNode(os, cpu)).toBe(false);
  });

  test('is the check that every way in runs, and the only one', () => {
    const script = `Object.defineProperty(process.versions, 'node', { value: '20.20.2' }); require(${JSON.stringify(CHECK)})`;
    const run = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' });
    expect(run.status).toBe(1);
    expect(run.stderr).toMatch(/^Toeboard needs Node 22\.18 or newer and this is 20\.20\.2: [^\n]+\n$/);
    const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    for (const name of ['start', 'toeboard'])
      expect(scripts[name]).toContain('--require ./src-main/require-node.cjs');
    const comparing = globSync('{src-main,src-renderer,tests}/**/*.{ts,cjs}', { cwd: ROOT }).filter(
      (path) =>
        !path.endsWith('start.test.ts') && /versions\.node\b/.test(readFileSync(join(ROOT, path), 'utf8')),
    );
    expect(comparing).toEqual([join('src-main', 'require-node.cjs')]);
  });

  test('builds what is missing or older than any source', () => {
    const root = builtTree();
    expect(needsBuild(root)).toBe(false);
    for (const path of SOURCES) {
      put(root, path, 3000);
      settle(root, 1000);
      expect(needsBuild(root), path).toBe(true);
      put(root, path, 1000);
      settle(root, 1000);
    }
    expect(needsBuild(root)).toBe(false);
    rmSync(join(root, 'shared-math/outcome.ts'));
    expect(needsBuild(root), 'a source was removed').toBe(true);
    for (const path of OUT) {
      const tree = builtTree();
      rmSync(join(tree, path));
      expect(needsBuild(tree), path).toBe(true);
    }
  });

  test("finds Electron's binary without its package's help", () => {
    const root = testFolder();
    expect(electronBinary(root)).toEqual({ ok: false, failure: 'Electron is not installed' });
    const folder = join(root, 'node_modules', 'electron');
    mkdirSync(join(folder, 'dist'), { recursive: true });
    expect(electronBinary(root)).toEqual({ ok: false, failure: "Electron's binary has not been downloaded" });
    writeFileSync(join(folder, 'path.txt'), 'electron\n');
    expect(electronBinary(root)).toEqual({ ok: false, failure: "Electron's binary is not there" });
    writeFileSync(join(folder, 'dist', 'electron'), '');
    expect(electronBinary(root)).toEqual({ ok: true, value: join(folder, 'dist', 'electron') });
  });
});

describe('npm start', () => {
  const root = newFolder();
  beforeAll(() => programTree(root));
  afterAll(() => removeFolder(root));

  async function isUp(address: string): Promise<boolean> {
    return fetch(new URL('/', address)).then(
      () => true,
      () => false,
    );
  }

  test('builds, opens the board, says which host and why, and takes the host along when it ends', async () => {
    const program = start(root);
    await program.says(
      /^Building the board…\nElectron is not installed; the board opens in a browser instead\.\n/,
    );
    const [address] = await program.says(ADDRESS);
    const page = await fetch(new URL('/', address));
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Toeboard</title>');
    const { token } = await exchangeToken(address);
    const shop = await value(httpCaller(address, token), 'demonstration.list', {});
    expect(shop.customers.length).toBeGreaterThan(0);
    program.child.kill('SIGTERM');
    expect(await program.ended).toBe(0);
    expect(await isUp(address)).toBe(false);
  });

  test('once built is not built again, and its host does not outlive it when it is killed', async () => {
    const program = start(root);
    const [address] = await program.says(ADDRESS);
    expect(program.said()).not.toContain('Building');
    program.child.kill('SIGKILL');
    await program.ended;
    await expect.poll(() => isUp(address), { timeout: 5000 }).toBe(false);
  });

  test('takes Electron where it is there, and ends as it ends', async () => {
    fakeElectron(root, `test -z "$ELECTRON_RUN_AS_NODE" && for last; do :; done && test "$last" = '${root}'`);
    const program = start(root, { ELECTRON_RUN_AS_NODE: '1' });
    expect(await program.ended).toBe(0);
    expect(program.said()).toBe('');
  });

  test('says so when Electron does not come up, and takes the browser', async () => {
    fakeElectron(root, 'exit 127');
    const program = start(root);
    await program.says(
      /^Electron does not start: it ended at once with exit code 127; the board opens in a browser instead\.\n/,
    );
    await program.says(ADDRESS);
  });

  test('does not try again in a browser what Electron has refused in one line', async () => {
    fakeElectron(root, `echo 'the data is newer' >&2; exit ${REFUSED_EXIT}`);
    const program = start(root);
    expect(await program.ended).toBe(REFUSED_EXIT);
    expect(program.said()).toBe('the data is newer\n');
  });

  test('says so when the build fails, and opens nothing', async () => {
    const page = join(root, 'src-renderer', 'index.html');
    writeFileSync(page, '<script type="module" src="./gone.ts"></script>');
    const program = start(root);
    expect(await program.ended).toBe(1);
    expect(program.said()).toMatch(/\nToeboard cannot be started: the build above has failed\.\n$/);
  });
});
