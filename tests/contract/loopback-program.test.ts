import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { findBrowser, noWindowReason } from '../../src-main/hosts/loopback/browsers.ts';
import { claimProfile } from '../../src-main/hosts/loopback/window.ts';
import { testFolder } from '../support/host-folder.ts';
import { ADDRESS, startProgram } from '../support/host-process.ts';
import { exchangeToken, httpCaller, value } from '../support/host-transports.ts';

const PROGRAM = 'src-main/loopback-main.ts';

/** A browser of two lines on a search path of its own: says what it was opened with, and does as it is asked. */
function fakeBrowser(folder: string, does: string): Record<string, string> {
  const path = join(folder, 'chromium');
  writeFileSync(path, `#!/bin/sh\nprintf '%s\\n' "$@" > "${folder}/opened"\n${does}\n`);
  chmodSync(path, 0o755);
  return { PATH: `${folder}:/usr/bin:/bin`, DISPLAY: ':0', TOEBOARD_NO_WINDOW: '' };
}

/** Follows the file that the browser was opened with, exchanges the code as the page would, then goes on. */
const OPENS_PAGE = (then: string) =>
  `page=$(sed -n 's,^--app=file://,,p' "$(dirname "$0")/opened")
   ls -l "$page" > "$(dirname "$0")/page"
   address=$(sed -n 's/.*location.replace("\\([^"]*\\)").*/\\1/p' "$page")
   exec ${process.execPath} -e '
     const { origin, hash } = new URL(process.argv[1]);
     fetch(origin + "/exchange", { method: "POST", headers: { origin }, body: JSON.stringify({ code: hash.slice(6) }) })
       .then(() => ${then});' "$address"`;

describe('the loopback program', () => {
  test('prints its address, serves, and prints a further one for the page to be opened again', async () => {
    const program = startProgram(PROGRAM, [], { env: { TOEBOARD_DATA: testFolder() } });
    const [address] = await program.says(ADDRESS);
    await program.says(/No window is opened here \(TOEBOARD_NO_WINDOW is set\)/);
    const { token } = await exchangeToken(address);
    expect((await value(httpCaller(address, token), 'shop.read', {})).customers).toEqual([]);
    const [, again = ''] = await program.says(/To open it once more: (\S+)/);
    expect(again).not.toBe(address);
    expect((await exchangeToken(again)).status).toBe(200);
  });

  test.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('ends well on %s', async (signal) => {
    const program = startProgram(PROGRAM, [], { env: { TOEBOARD_DATA: testFolder() } });
    await program.says(ADDRESS);
    program.child.kill(signal);
    expect(await program.ended).toBe(0);
  });

  test('ends when its launcher lets go of its standard input', async () => {
    const program = startProgram(PROGRAM, [], { env: { TOEBOARD_DATA: testFolder() }, stdin: 'pipe' });
    await program.says(ADDRESS);
    program.child.stdin?.end();
    expect(await program.ended).toBe(0);
  });

  test('opens a window with a profile of its own and ends when it is closed', async () => {
    const folder = testFolder();
    const tries = (code: string) =>
      `fetch(origin + "/exchange", { method: "POST", headers: { origin }, body: JSON.stringify({ code: ${code} }) })`;
    const first = `require("fs").readFileSync("${join(folder, 'printed')}", "utf8")`;
    const env = fakeBrowser(
      folder,
      `while [ ! -s "${join(folder, 'printed')}" ]; do sleep 0.05; done\n${OPENS_PAGE(
        `${tries(first)}.then(({ status }) => require("fs").writeFileSync("${join(folder, 'lapsed')}", String(status)))`,
      )}`,
    );
    const program = startProgram(PROGRAM, [], { env: { ...env, TOEBOARD_DATA: join(folder, 'data') } });
    const [printed] = await program.says(ADDRESS);
    writeFileSync(join(folder, 'printed'), new URL(printed).hash.slice(6));
    expect(await program.ended).toBe(0);
    const args = readFileSync(join(folder, 'opened'), 'utf8').split('\n');
    expect(args).toContain(`--user-data-dir=${join(folder, 'data', 'browser', '1')}`);
    // What every user of the machine can read of another's process tells no code, only where a file is that he cannot read.
    expect(args[0]).toBe(`--app=${pathToFileURL(join(folder, 'data', 'browser', '1', 'open.html'))}`);
    expect(args.join('\n')).not.toMatch(/code=|127\.0\.0\.1/);
    expect(readFileSync(join(folder, 'page'), 'utf8')).toMatch(/^-rw-------/);
    // It was read, and is gone; so is the printed code, which nobody needs once the page has come to life.
    expect(existsSync(join(folder, 'data', 'browser', '1', 'open.html'))).toBe(false);
    expect(readFileSync(join(folder, 'lapsed'), 'utf8')).toBe('401');
    expect(existsSync(join(folder, 'data', 'browser', '1', 'in-use'))).toBe(false);
  });

  test('closes its window when it is told to end', async () => {
    const folder = testFolder();
    const note = (name: string) => `require("fs").writeFileSync("${join(folder, name)}", "")`;
    const told = `process.once("SIGTERM", () => process.exit(${note('closed')}))`;
    const env = fakeBrowser(folder, OPENS_PAGE(`[${told}, ${note('up')}, setInterval(() => {}, 1000)]`));
    const program = startProgram(PROGRAM, [], { env: { ...env, TOEBOARD_DATA: join(folder, 'data') } });
    await program.says(ADDRESS);
    await expect.poll(() => existsSync(join(folder, 'up')), { timeout: 5000 }).toBe(true);
    program.child.kill('SIGTERM');
    expect(await program.ended).toBe(0);
    await expect.poll(() => existsSync(join(folder, 'closed')), { timeout: 5000 }).toBe(true);
  });

  test('goes on without a window when the browser fails to open one', async () => {
    const folder = testFolder();
    const env = fakeBrowser(folder, 'exit 1');
    const program = startProgram(PROGRAM, [], { env: { ...env, TOEBOARD_DATA: join(folder, 'data') } });
    await program.says(
      /No window is opened here \(Chromium did not open one\): open this address in a browser/,
    );
    const address = program.said().match(ADDRESS)?.[0] ?? '';
    expect((await exchangeToken(address)).status).toBe(200);
  });

  test('goes on without a window when there is no room for its profile', async () => {
    const folder = testFolder();
    mkdirSync(join(folder, 'data'));
    writeFileSync(join(folder, 'data', 'browser'), 'a file where the folder should be');
    const env = fakeBrowser(folder, 'exit 0');
    const program = startProgram(PROGRAM, [], { env: { ...env, TOEBOARD_DATA: join(folder, 'data') } });
    await program.says(/No window is opened here \(a part of the path is a file, not a folder\)/);
    expect((await exchangeToken(program.said().match(ADDRESS)?.[0] ?? '')).status).toBe(200);
  });

  test.runIf(process.platform === 'linux')(
    'says in one line that its data folder cannot be made where the system makes none, and does not hang',
    async () => {
      const program = startProgram(PROGRAM, [], { env: { TOEBOARD_DATA: '/proc/toeboard/data' } });
      expect(await program.ended).toBe(1);
      expect(program.said()).toBe(
        '/proc/toeboard/data: the data folder cannot be made: no folder can be made there\n',
      );
    },
  );

  test.runIf(process.platform !== 'win32')(
    'keeps its data for its owner alone, also what an earlier run left open to others',
    async () => {
      const folder = join(testFolder(), 'data');
      const modes = () =>
        Object.fromEntries(
          ['.', ...readdirSync(folder, { recursive: true, encoding: 'utf8' })].map((path) => {
            const entry = statSync(join(folder, path));
            return [path, `${entry.isDirectory() ? 'd' : '-'}${(entry.mode & 0o777).toString(8)}`];
          }),
        );
      const run = async () => {
        const program = startProgram(PROGRAM, [], { env: { TOEBOARD_DATA: folder } });
        const [address] = await program.says(ADDRESS);
        const { token } = await exchangeToken(address);
        await value(httpCaller(address, token), 'customer.add', { name: 'A', notes: '' });
        const found = modes();
        program.child.kill('SIGTERM');
        await program.ended;
        return found;
      };
      const first = await run();
      expect(Object.keys(first)).toContain('toeboard.sqlite-wal');
      expect(new Set(Object.values(first))).toEqual(new Set(['d700', '-600']));
      for (const path of Object.keys(first))
        if (existsSync(join(folder, path))) chmodSync(join(folder, path), 0o755);
      mkdirSync(join(folder, 'backups'), { recursive: true });
      writeFileSync(join(folder, 'backups', 'old.sqlite'), '');
      chmodSync(join(folder, 'backups'), 0o755);
      const then = Object.entries(await run());
      for (const [path, mode] of then)
        expect([path, mode]).toEqual([path, expect.stringMatching(/^(d700|-[67]00)$/)]);
    },
  );

  test('says in one line why its data cannot be opened', async () => {
    const folder = testFolder();
    writeFileSync(join(folder, 'in the way'), '');
    const program = startProgram(PROGRAM, [], { env: { TOEBOARD_DATA: join(folder, 'in the way', 'data') } });
    expect(await program.ended).toBe(1);
    expect(program.said()).toBe(
      `${join(folder, 'in the way', 'data')}: the data folder cannot be made: a part of the path is a file, not a folder\n`,
    );
  });
});

describe('the browser for the window', () => {
  test("is looked for in each platform's places", () => {
    const only = (wanted: string) => (path: string) => path === wanted;
    const edge = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe';
    expect(findBrowser('win32', { 'ProgramFiles(x86)': 'C:\\Program Files (x86)' }, only(edge))).toEqual({
      name: 'Edge',
      path: edge,
    });
    const chrome = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
    expect(findBrowser('darwin', {}, only(chrome))?.name).toBe('Chrome');
    const path = { PATH: '/usr/local/bin:/usr/bin:relative' };
    expect(findBrowser('linux', path, only('/usr/bin/google-chrome'))?.path).toBe('/usr/bin/google-chrome');
    expect(findBrowser('linux', path, () => false)).toBeUndefined();
    expect(findBrowser('linux', path, (tried) => !tried.startsWith('/'))).toBeUndefined();
  });

  test('is not opened where nobody would see it', () => {
    expect(noWindowReason('linux', { DISPLAY: ':0' })).toBeUndefined();
    expect(noWindowReason('linux', { WAYLAND_DISPLAY: 'wayland-0' })).toBeUndefined();
    expect(noWindowReason('linux', {})).toBe('there is no display');
    expect(noWindowReason('win32', {})).toBeUndefined();
    expect(noWindowReason('darwin', { CI: 'true' })).toBe('CI is set');
    expect(noWindowReason('linux', { DISPLAY: ':0', TOEBOARD_NO_WINDOW: '1' })).toBe(
      'TOEBOARD_NO_WINDOW is set',
    );
  });

  test('has a profile that no other running program uses', () => {
    const folder = testFolder();
    const first = claimProfile(folder);
    const second = claimProfile(folder);
    expect([first.folder, second.folder]).toEqual([
      join(folder, 'browser', '1'),
      join(folder, 'browser', '2'),
    ]);
    first.release();
    expect(claimProfile(folder).folder).toBe(first.folder);
    // The mark of a program that was killed.
    writeFileSync(join(second.folder, 'in-use'), '999999999');
    const again = claimProfile(folder);
    expect(again.folder).toBe(second.folder);
    again.release();
    // A browser that has outlived its program holds the profile by a link of its own to HOST-PID.
    if (process.platform === 'win32') return;
    symlinkSync(`some-host-${process.pid}`, join(second.folder, 'SingletonLock'));
    expect(claimProfile(folder).folder).toBe(join(folder, 'browser', '3'));
  });
});
