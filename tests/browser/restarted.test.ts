import { renameSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../src-main/store/index.ts';
import { connectBrowser, pointButton, saved, withSample } from '../support/browser-page.ts';
import { downloaded } from '../support/downloads.ts';
import { testFolder } from '../support/host-folder.ts';
import { ADDRESS, type RunningProgram, startProgram } from '../support/host-process.ts';
import { sampleLayout } from '../support/host-sample.ts';
import { holdBack, SLOWNESS, slowDown } from '../support/slow-machine.ts';

const browser = connectBrowser();

const startHost = (folder: string, env: Record<string, string> = {}, args: readonly string[] = []) =>
  startProgram('src-main/loopback-main.ts', args, { env: { TOEBOARD_DATA: folder, ...env } });

const height = (page: Page) => page.getByRole('textbox', { name: 'Pitman ball, above ground' });

/** What is shown of a chosen point comes as a file of its own: it is there before the program is killed that has it. */
async function choosePitmanBall(page: Page): Promise<void> {
  await pointButton(page, 'Pitman ball').click();
  await height(page).waitFor();
}

/** A program of its own with one layout in its shop, and its page. */
async function openBoard(env: Record<string, string> = {}) {
  const folder = testFolder();
  const store = openStore({ folder });
  withSample(sampleLayout('Arm down'))(store);
  store.close();
  const host = startHost(folder, env);
  const [address] = await host.says(ADDRESS);
  const context: BrowserContext = await browser().newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 720 },
  });
  context.setDefaultTimeout(60_000 * SLOWNESS);
  onTestFinished(() => context.close());
  await holdBack(context);
  await context.addInitScript(() => sessionStorage.setItem('toeboard-column', 'points'));
  const page = await context.newPage();
  await slowDown(page);
  await page.goto(address);
  await choosePitmanBall(page);
  return { folder, host, page, context, address };
}

async function kill(host: RunningProgram): Promise<void> {
  host.child.kill('SIGKILL');
  await host.ended;
}

async function typeHeight(page: Page, text: string): Promise<void> {
  await height(page).click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

function storedHeight(folder: string): number | undefined {
  const store = openStore({ folder });
  try {
    const id = store.shop.read()[0]?.cars[0]?.variants[0]?.id ?? '';
    return store.variants.open(id).document.steering.box.pitmanBall[2];
  } finally {
    store.close();
  }
}

// Each starts programs of its own, on machines that may be slow.
describe('a program that is killed behind its page', { timeout: 180_000 * SLOWNESS }, () => {
  test('and started again takes the page up, with what was drawn in between', async () => {
    const { folder, host, page } = await openBoard();
    await typeHeight(page, '350 mm');
    await saved(page);
    await kill(host);
    await typeHeight(page, '355 mm');
    const notice = page.getByRole('alert').filter({ hasText: 'is not answering' });
    await notice.waitFor();
    if (process.env['TOEBOARD_PICTURES'])
      await page.screenshot({ path: join(process.env['TOEBOARD_PICTURES'], 'killed.png') });
    await typeHeight(page, '360 mm');
    const again = startHost(folder);
    await again.says(ADDRESS);
    await saved(page);
    await expect.poll(() => notice.count()).toBe(0);
    expect(storedHeight(folder)).toBe(360);
    // And it goes on as if nothing had been.
    await typeHeight(page, '340 mm');
    await saved(page);
    expect(storedHeight(folder)).toBe(340);
  });

  test('leaves a page that can hand over its layout as a file by itself', async () => {
    const { host, page } = await openBoard();
    await kill(host);
    await typeHeight(page, '355 mm');
    const notice = page.getByRole('alert').filter({ hasText: 'is not answering' });
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      notice.getByRole('button', { name: 'Save a copy as a file' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('Sample car - Arm down.json');
    const document = JSON.parse((await downloaded(download)).content.toString());
    expect(document.steering.box.pitmanBall[2]).toBe(355);
  });

  test('tells two windows apart that both have something to save', async () => {
    const { folder, host, page, context } = await openBoard();
    const [, once = ''] = await host.says(/To open it once more: (\S+)/);
    const other = await context.newPage();
    await other.goto(once);
    await choosePitmanBall(other);
    await kill(host);
    await typeHeight(page, '355 mm');
    await typeHeight(other, '365 mm');
    await Promise.all([page, other].map((each) => each.getByText('is not answering').waitFor()));
    const again = startHost(folder);
    await again.says(ADDRESS);
    // One is first; the other is asked, and nothing is overwritten unseen.
    const asked = async () => {
      const counts = [page, other].map((each) => each.getByText('changed in another window').count());
      return (await Promise.all(counts)).reduce((sum, count) => sum + count, 0);
    };
    await expect.poll(asked, { timeout: 60_000 * SLOWNESS }).toBe(1);
    expect([355, 365]).toContain(storedHeight(folder));
  });

  test('is not mistaken for another that has come to its address, and no promise is made', async () => {
    const { host, page, address } = await openBoard();
    await kill(host);
    const heard: (string | undefined)[] = [];
    const stranger = createServer((request, response) => {
      heard.push(request.headers.authorization);
      response.writeHead(200, { 'content-type': 'application/json' });
      response.end('{"ok": true, "value": {"revision": 2, "savedAt": 0}, "proof": "00"}');
    });
    await typeHeight(page, '355 mm');
    await page.getByRole('alert').filter({ hasText: 'is not answering' }).waitFor();
    await new Promise<void>((done) => stranger.listen(Number(new URL(address).port), '127.0.0.1', done));
    onTestFinished(() => void stranger.close(() => {}));
    onTestFinished(() => stranger.closeAllConnections());
    const notice = page.getByRole('alert').filter({ hasText: 'can no longer save' });
    await notice.waitFor();
    await expect.poll(() => notice.textContent()).not.toMatch(/again|later/);
    await notice.getByRole('button', { name: 'Save a copy as a file' }).waitFor();
    expect(heard.length).toBeGreaterThan(0);
    expect(heard.filter((header) => header !== undefined)).toEqual([]);
  });

  test('that hangs instead is told after five seconds', async () => {
    const { host, page } = await openBoard();
    host.child.kill('SIGSTOP');
    onTestFinished(() => void host.child.kill('SIGCONT'));
    await typeHeight(page, '355 mm');
    const notice = page.getByRole('alert').filter({ hasText: 'has not answered for 5 seconds' });
    await notice.waitFor({ timeout: 30_000 * SLOWNESS });
    await notice.getByRole('button', { name: 'Save a copy as a file' }).waitFor();
    host.child.kill('SIGCONT');
    await saved(page);
    await expect.poll(() => notice.count()).toBe(0);
  });
});

test('a data folder that is renamed under the board is told, with where a copy is, and saved to again once it is back', {
  timeout: 180_000 * SLOWNESS,
}, async () => {
  const { folder, page } = await openBoard();
  onTestFinished(() => rmSync(`${folder}-rescue`, { recursive: true, force: true }));
  renameSync(folder, `${folder}-away`);
  await typeHeight(page, '355 mm');
  const notice = page.getByRole('alert').filter({ hasText: 'moved or deleted while it was open' });
  await notice.waitFor();
  await expect.poll(() => notice.textContent()).toContain(`${folder}-rescue`);
  await notice.getByRole('button', { name: 'Save a copy as a file' }).waitFor();
  if (process.env['TOEBOARD_PICTURES'])
    await page.screenshot({ path: join(process.env['TOEBOARD_PICTURES'], 'renamed.png') });
  renameSync(`${folder}-away`, folder);
  await saved(page);
  expect(storedHeight(folder)).toBe(355);
});

test('a tab that is closed is opened again by a further start, and the program ends after the last one', {
  timeout: 180_000 * SLOWNESS,
}, async () => {
  const { folder, host, page, context } = await openBoard({ TOEBOARD_END_AFTER: '0.25' });
  await typeHeight(page, '350 mm');
  await saved(page);
  await page.reload();
  await pointButton(page, 'Pitman ball').waitFor();
  await page.close();
  const second = startHost(folder, {}, ['--reopen']);
  expect(await second.ended).toBe(0);
  const [address = ''] = second.said().match(ADDRESS) ?? [];
  const again = await context.newPage();
  await again.goto(address);
  await pointButton(again, 'Pitman ball').waitFor();
  expect(host.said()).not.toContain('Toeboard ends');
  await again.close();
  expect(await host.ended).toBe(0);
  expect(host.said()).toMatch(/No page has been open for 0\.3 minutes and all is saved: Toeboard ends\./);
  expect(storedHeight(folder)).toBe(350);
});
