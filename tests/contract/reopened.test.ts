import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { endAfter, Presence, SILENT_MOST } from '../../src-main/hosts/loopback/presence.ts';
import { reopenRunning } from '../../src-main/hosts/loopback/running.ts';
import { keepSeat, newSecret } from '../../src-main/hosts/loopback/seats.ts';
import { startLoopback } from '../../src-main/hosts/loopback/start-loopback.ts';
import { testFolder } from '../support/host-folder.ts';
import { ADDRESS, startProgram } from '../support/host-process.ts';
import { exchangeToken, fixtureRenderer } from '../support/host-transports.ts';

const PROGRAM = 'src-main/loopback-main.ts';
const PAGE = '0f8fad5b-d9cb-469f-a165-70867728950e';
const OTHER_PAGE = '7c9e6679-7425-40de-944b-e07fc1f90ae7';

function start(folder: string, args: readonly string[] = [], env: Record<string, string> = {}) {
  return startProgram(PROGRAM, args, { env: { TOEBOARD_DATA: folder, ...env } });
}

/** A page as the program knows one: it has bought the token and reports of itself. */
async function pageAt(address: string, page: string) {
  const { origin } = new URL(address);
  const { token } = await exchangeToken(address);
  return async (here: unknown, name: unknown = page) => {
    const headers = { origin, authorization: `Bearer ${token}`, 'content-type': 'application/json' };
    const body = JSON.stringify({ page: name, here });
    return (await fetch(`${origin}/here`, { method: 'POST', headers, body })).status;
  };
}

describe('a program that is started while it runs', () => {
  test('finds the one that runs, says so, gives its address for a new page, and ends', async () => {
    const folder = testFolder();
    const first = start(folder);
    const [address] = await first.says(ADDRESS);
    await exchangeToken(address);
    const second = start(folder, ['--reopen']);
    expect(await second.ended).toBe(0);
    expect(second.said()).toMatch(
      /^Toeboard is running already: open this address in a browser: http:\/\/127\.0\.0\.1:\d+\/#code=[\w-]+\n$/,
    );
    const [again = ''] = second.said().match(ADDRESS) ?? [];
    expect(new URL(again).origin).toBe(new URL(address).origin);
    expect((await exchangeToken(again)).status).toBe(200);
  });

  test('is started as ever where the one before has ended', async () => {
    const folder = testFolder();
    const first = start(folder);
    await first.says(ADDRESS);
    first.child.kill('SIGTERM');
    await first.ended;
    const second = start(folder, ['--reopen']);
    await second.says(ADDRESS);
    expect(second.said()).not.toContain('running already');
  });

  test.runIf(process.platform !== 'win32')(
    'opens its window again, and ends with the last of them',
    async () => {
      const folder = testFolder();
      const opened = join(folder, 'opened');
      writeFileSync(
        join(folder, 'chromium'),
        `#!/bin/sh
page=$(printf '%s\\n' "$@" | sed -n 's,^--app=file://,,p')
address=$(sed -n 's/.*location.replace("\\([^"]*\\)").*/\\1/p' "$page")
exec ${process.execPath} -e '
  const { origin, hash } = new URL(process.argv[1]);
  fetch(origin + "/exchange", { method: "POST", headers: { origin }, body: JSON.stringify({ code: hash.slice(6) }) })
    .then(({ status }) => require("fs").appendFileSync("${opened}", process.pid + " " + status + "\\n"))
    .then(() => setInterval(() => {}, 1000));' "$address"\n`,
      );
      chmodSync(join(folder, 'chromium'), 0o755);
      const env = { PATH: `${folder}:/usr/bin:/bin`, DISPLAY: ':0', TOEBOARD_NO_WINDOW: '' };
      const seen = () => {
        try {
          return readFileSync(opened, 'utf8').trim().split('\n');
        } catch {
          return [];
        }
      };
      const first = start(join(folder, 'data'), [], env);
      await expect.poll(() => seen().length, { timeout: 10_000 }).toBe(1);
      const second = start(join(folder, 'data'), ['--reopen'], env);
      expect(await second.ended).toBe(0);
      expect(second.said()).toBe('Toeboard is running already: its window is opened again\n');
      await expect.poll(() => seen().length, { timeout: 10_000 }).toBe(2);
      expect(seen().every((line) => line.endsWith(' 200'))).toBe(true);
      const [one, two] = seen().map((line) => Number(line.split(' ')[0]));
      process.kill(one ?? 0);
      // Its first window is gone and the other is not: it still answers who starts it again.
      await expect.poll(() => reopenRunning(join(folder, 'data'))).toEqual({ window: true });
      await expect.poll(() => seen().length, { timeout: 10_000 }).toBe(3);
      process.kill(two ?? 0);
      process.kill(Number(seen()[2]?.split(' ')[0]));
      expect(await first.ended).toBe(0);
    },
  );

  test('hands its secret to nobody who has taken the port since', async () => {
    const folder = testFolder();
    const asked: string[] = [];
    const stranger = createServer((request, response) => {
      asked.push(`${request.url} ${request.headers.authorization}`);
      response.end(JSON.stringify({ proof: 'f'.repeat(64), address: 'http://127.0.0.1:1/#code=x' }));
    });
    await new Promise<void>((done) => stranger.listen(0, '127.0.0.1', done));
    onTestFinished(() => void stranger.close());
    const { port } = stranger.address() as { port: number };
    keepSeat(folder, { port, secret: newSecret() });
    expect(await reopenRunning(folder)).toBeUndefined();
    expect(asked).toEqual(['/proof undefined']);
  });

  test('is not led to a program of an older build', async () => {
    const folder = testFolder();
    const host = await startLoopback({
      dataFolder: folder,
      rendererFolder: fixtureRenderer(folder),
      onAgain: () => undefined,
    });
    onTestFinished(host.close);
    expect(await reopenRunning(folder)).toBeUndefined();
  });
});

describe('a program without a window of its own', () => {
  test('ends some time after its last page was closed, and says so before and then', async () => {
    const program = start(testFolder(), [], { TOEBOARD_END_AFTER: '0.01' });
    const [address] = await program.says(ADDRESS);
    await program.says(/It ends by itself .* after the last page is closed\./);
    const page = await pageAt(address, PAGE);
    expect(await page(true)).toBe(200);
    expect(await page(false)).toBe(200);
    expect(await program.ended).toBe(0);
    expect(program.said()).toMatch(/No page has been open for .* and all is saved: Toeboard ends\./);
  });

  test('takes a page that is loaded again as open', () => {
    const presence = new Presence();
    presence.report(PAGE, true, 0);
    presence.report(PAGE, false, 100);
    expect(presence.emptyFor(150)).toBe(50);
    presence.report(OTHER_PAGE, true, 200);
    expect(presence.emptyFor(9e6)).toBeUndefined();
  });

  test('stays where no page has come yet', () => {
    const presence = new Presence();
    expect(presence.emptyFor(9e9)).toBeUndefined();
  });

  test('takes a page that is silent for long as gone, a sleeping one as there', () => {
    const presence = new Presence();
    presence.report(PAGE, true, 0);
    presence.report(OTHER_PAGE, true, 1000);
    presence.report(PAGE, false, 2000);
    expect(presence.emptyFor(8 * 3_600_000)).toBeUndefined();
    expect(presence.emptyFor(SILENT_MOST + 1001)).toBe(0);
    expect(presence.emptyFor(SILENT_MOST + 1501)).toBe(500);
    // It wakes after all.
    presence.report(OTHER_PAGE, true, SILENT_MOST + 2000);
    expect(presence.emptyFor(SILENT_MOST + 3000)).toBeUndefined();
    // A page that nobody knew says nothing by going.
    const fresh = new Presence();
    fresh.report(PAGE, false, 0);
    expect(fresh.emptyFor(1000)).toBeUndefined();
  });

  test('takes no page’s word that has no leave, nor one of no page', async () => {
    const folder = testFolder();
    const pages: string[] = [];
    const host = await startLoopback({
      dataFolder: folder,
      rendererFolder: fixtureRenderer(folder),
      onPage: (page, here) => pages.push(`${page} ${here}`),
    });
    onTestFinished(host.close);
    const { origin } = new URL(host.address);
    const unknown = { method: 'POST', headers: { origin }, body: JSON.stringify({ page: PAGE, here: true }) };
    for (const path of ['/here', '/again'])
      expect((await fetch(`${origin}${path}`, unknown)).status).toBe(401);
    const page = await pageAt(host.address, PAGE);
    expect(await page(true, 'x')).toBe(400);
    expect(await page('yes')).toBe(400);
    expect(await page(true)).toBe(200);
    expect(pages).toEqual([`${PAGE} true`]);
  });

  test.each([
    [undefined, 600_000],
    ['', 600_000],
    ['30', 1_800_000],
    ['0', undefined],
  ])('waits as long as it is asked to: %s', (given, ms) => {
    expect(endAfter(given)).toEqual({ ms });
  });

  test.each(['soon', '-1', '1e999'])('says that %s is no time to wait, and waits as ever', (given) => {
    expect(endAfter(given)).toEqual({
      ms: 600_000,
      refusal: 'TOEBOARD_END_AFTER is not taken: it is minutes, such as 10, or 0 to stay open.',
    });
  });
});
