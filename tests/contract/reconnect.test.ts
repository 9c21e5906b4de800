import { createHmac } from 'node:crypto';
import { chmodSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { SEATS_FILE } from '../../src-main/hosts/loopback/seats.ts';
import type { Loopback } from '../../src-main/hosts/loopback/start-loopback.ts';
import { testFolder } from '../support/host-folder.ts';
import { exchangeToken, httpCaller, nobodyAt, openLoopback, value } from '../support/host-transports.ts';
import { quickFolder } from '../support/quick-folder.ts';

/** A host on this folder for one test, with its port and the token of a page. */
async function seated(folder: string) {
  const host: Loopback = await openLoopback(folder);
  let open = true;
  const close = async () => {
    if (open) await host.close();
    open = false;
    await nobodyAt(new URL(host.address).origin);
  };
  onTestFinished(close);
  const { origin, port } = new URL(host.address);
  const { token } = await exchangeToken(host.address);
  return { address: host.address, origin, port, token, close };
}

async function status(origin: string, token: string): Promise<number> {
  const headers = { origin, authorization: `Bearer ${token}`, 'content-type': 'application/json' };
  const body = JSON.stringify({ name: 'shop.read', input: {} });
  return (await fetch(`${origin}/rpc`, { method: 'POST', headers, body })).status;
}

async function proofOf(origin: string, nonce: unknown): Promise<{ status: number; proof: unknown }> {
  const headers = { origin, 'content-type': 'application/json' };
  const response = await fetch(`${origin}/proof`, {
    method: 'POST',
    headers,
    body: JSON.stringify({ nonce }),
  });
  const { proof } = (await response.json()) as { proof?: unknown };
  return { status: response.status, proof };
}

describe('a host that is started again', () => {
  test('is at the same address and knows the pages of the run before', async () => {
    const folder = testFolder(quickFolder());
    const first = await seated(folder);
    await first.close();
    const second = await seated(folder);
    expect(second.port).toBe(first.port);
    expect((await value(httpCaller(first.address, first.token), 'shop.read', {})).customers).toEqual([]);
  });

  test('keeps what they know each other by for its owner alone, and trusts no file that others could have read', async () => {
    const folder = testFolder(quickFolder());
    const first = await seated(folder);
    await first.close();
    const path = join(folder, SEATS_FILE);
    expect(readFileSync(path, 'utf8')).toContain(first.token);
    if (process.platform === 'win32') return;
    expect(statSync(path).mode & 0o777).toBe(0o600);
    chmodSync(path, 0o644);
    const second = await seated(folder);
    expect(second.token).not.toBe(first.token);
    expect(await status(second.origin, first.token)).toBe(401);
    expect(statSync(path).mode & 0o777).toBe(0o600);
  });

  test('goes elsewhere, with another token, where another program holds the port', async () => {
    const folder = testFolder(quickFolder());
    const first = await seated(folder);
    const beside = await seated(folder);
    expect(beside.port).not.toBe(first.port);
    expect(beside.token).not.toBe(first.token);
    expect(await status(beside.origin, first.token)).toBe(401);
    // Each is taken up again where it was.
    await first.close();
    await beside.close();
    const again = [await seated(folder), await seated(folder)];
    expect(again.map(({ port }) => port).sort()).toEqual([first.port, beside.port].sort());
    expect(again.map(({ token }) => token).sort()).toEqual([first.token, beside.token].sort());
  });

  test.each(['', '{', '[{"port": 80, "secret": "x"}]', '[{"port": "1"}]'])(
    'starts with a broken file all the same: %s',
    async (text) => {
      const folder = testFolder(quickFolder());
      writeFileSync(join(folder, SEATS_FILE), text, { mode: 0o600 });
      const host = await seated(folder);
      expect(await status(host.origin, host.token)).toBe(200);
    },
  );

  test('proves to a page that it knows the token, and tells it to nobody', async () => {
    const { origin, token } = await seated(testFolder(quickFolder()));
    const nonce = '0f8fad5b-d9cb-469f-a165-70867728950e';
    const proof = createHmac('sha256', token)
      .update(`${new URL(origin).host} ${nonce}`)
      .digest('hex');
    expect(await proofOf(origin, nonce)).toEqual({ status: 200, proof });
    for (const broken of ['', 'short', 'x'.repeat(500), 7, null])
      expect(await proofOf(origin, broken)).toEqual({ status: 400, proof: undefined });
    expect(await proofOf(origin, 'x'.repeat(2000))).toEqual({ status: 413, proof: undefined });
  });
});
