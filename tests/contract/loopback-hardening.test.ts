import { symlinkSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { BODY_MAX } from '../../src-main/hosts/loopback/request-body.ts';
import { testFolder } from '../support/host-folder.ts';
import { exchangeToken, httpCaller, openLoopback, value } from '../support/host-transports.ts';
import { quickFolder } from '../support/quick-folder.ts';

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

interface Asked {
  readonly method?: string;
  readonly path?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
}

/** A request just as it is written here; fetch would mend its path and its Host. */
function ask(port: string, { method = 'GET', path = '/', headers = {}, body = '' }: Asked): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = httpRequest({ host: '127.0.0.1', port, method, path, headers }, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(chunks).toString(),
        }),
      );
    });
    request.on('error', reject);
    request.end(body);
  });
}

async function open() {
  const folder = testFolder(quickFolder());
  const host = await openLoopback(folder);
  onTestFinished(() => host.close());
  const { origin, port } = new URL(host.address);
  const { token } = await exchangeToken(host.address);
  const call: Asked = {
    method: 'POST',
    path: '/rpc',
    headers: { origin, authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'shop.read', input: {} }),
  };
  const without = (header: string): Asked => {
    const { [header]: _, ...headers } = call.headers ?? {};
    return { ...call, headers };
  };
  return { folder, host, port, origin, call, without };
}

const withHeader = (asked: Asked, name: string, text: string): Asked => ({
  ...asked,
  headers: { ...asked.headers, [name]: text },
});

describe('the loopback host', () => {
  test('serves the built page with a strict policy', async () => {
    const { port } = await open();
    const page = await ask(port, {});
    expect(page.status).toBe(200);
    expect(page.body).toContain('<title>Toeboard</title>');
    const policy = String(page.headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    // Workers from the program's own files, none made up in the page.
    expect(policy).toContain("worker-src 'self'");
    expect(policy).not.toMatch(/worker-src[^;]*(blob|data):/);
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(page.headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
    });
    const script = await ask(port, { path: '/assets/index.js?v=1' });
    expect(script.status).toBe(200);
    expect(script.headers['content-type']).toMatch(/^text\/javascript/);
    expect((await ask(port, { method: 'HEAD' })).body).toBe('');
  });

  test('answers a call that is made as the page makes it, and lets nobody store the answer', async () => {
    const { port, call } = await open();
    const answer = await ask(port, call);
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.body)).toEqual({
      ok: true,
      value: { customers: [], binCount: 0, troubles: [] },
    });
    expect(answer.headers['cache-control']).toBe('no-store');
    expect(answer.headers['set-cookie']).toBeUndefined();
  });

  test('knows one name only', async () => {
    const { port, call } = await open();
    for (const host of [`localhost:${port}`, '127.0.0.1', `127.0.0.1:${port}.evil.example`, 'evil.example']) {
      expect((await ask(port, withHeader(call, 'host', host))).status).toBe(421);
      expect((await ask(port, { headers: { host } })).status).toBe(421);
    }
  });

  test('takes calls from its own origin only', async () => {
    const { port, call, without, origin } = await open();
    for (const other of [
      'http://evil.example',
      'null',
      `http://localhost:${port}`,
      `${origin}/`,
      'http://127.0.0.1:1',
    ])
      expect((await ask(port, withHeader(call, 'origin', other))).status).toBe(403);
    expect((await ask(port, without('origin'))).status).toBe(403);
    const code = { ...call, path: '/exchange', body: '{"code": "x"}' };
    expect((await ask(port, withHeader(code, 'origin', 'http://evil.example'))).status).toBe(403);
  });

  test('hands out what was made with its token only, by reading alone', async () => {
    const { port, call, without } = await open();
    const path = '/output/00000000-0000-4000-8000-000000000000';
    const get = { ...call, method: 'GET', body: '', path };
    expect((await ask(port, get)).status).toBe(404);
    const { headers = {} } = without('authorization');
    expect((await ask(port, { ...get, headers })).status).toBe(401);
    expect((await ask(port, { ...get, path: '/output', headers })).status).toBe(401);
    expect((await ask(port, { ...call, path })).status).toBe(405);
  });

  test('takes calls with its token only, and tells a stranger why', async () => {
    const { port, call, without } = await open();
    const token = call.headers?.['authorization'] ?? '';
    for (const wrong of ['', 'Bearer ', 'Bearer x', token.slice(0, -1), `${token}x`, token.toLowerCase()])
      expect((await ask(port, withHeader(call, 'authorization', wrong))).status).toBe(401);
    const answer = await ask(port, without('authorization'));
    expect(answer.status).toBe(401);
    expect(JSON.parse(answer.body).reason).toMatch(/^This page has no leave to call: [^\n]+\.$/);
    expect((await ask(port, withHeader(without('authorization'), 'cookie', `token=${token}`))).status).toBe(
      401,
    );
  });

  test('exchanges a code once; the token goes on working, as after a reload', async () => {
    const { host } = await open();
    const address = host.newAddress();
    const first = await exchangeToken(address);
    expect(first.status).toBe(200);
    const second = await exchangeToken(address);
    expect(second.status).toBe(401);
    expect(second.reason).toMatch(/^This address has been opened before/);
    expect(second.token).toBe('');
    for (const _ of [1, 2])
      expect(await value(httpCaller(address, first.token), 'bin.list', {})).toEqual({ entries: [] });
    const other = await exchangeToken(host.newAddress());
    expect(other.status).toBe(200);
  });

  test('refuses codes of every other sort', async () => {
    const { port, origin } = await open();
    for (const body of ['{}', '{"code": null}', '{"code": ["x"]}', '{"code": ""}'])
      expect((await ask(port, { method: 'POST', path: '/exchange', headers: { origin }, body })).status).toBe(
        401,
      );
  });

  test('knows two methods, each in its place', async () => {
    const { port, call } = await open();
    for (const method of ['PUT', 'DELETE', 'OPTIONS', 'PATCH', 'GET']) {
      const answer = await ask(port, { ...call, method, body: '' });
      expect(answer.status).toBe(405);
      expect(answer.headers['allow']).toBe('POST');
    }
    for (const method of ['PUT', 'DELETE', 'OPTIONS', 'POST'])
      expect((await ask(port, { ...call, path: '/', method, body: '' })).status).toBe(405);
  });

  test('serves nothing outside the built board', async () => {
    const { port, folder } = await open();
    symlinkSync(join(folder, 'secret.json'), join(folder, 'renderer', 'linked.json'));
    for (const path of [
      '/../secret.json',
      '/%2e%2e/secret.json',
      '/..%2fsecret.json',
      '/assets/..%2f..%2fsecret.json',
      '/..\\secret.json',
      '/%2e%2e%5csecret.json',
      '//../secret.json',
      '/linked.json',
      '/%00/secret.json',
      '/%',
      '/assets/',
      '/toeboard.sqlite',
      `/${folder}/secret.json`,
      'http://127.0.0.1/../secret.json',
    ]) {
      const answer = await ask(port, { path });
      expect([403, 404]).toContain(answer.status);
      expect(answer.body).not.toContain('true');
    }
  });

  test('refuses a body beyond all calls with a plain reason, and goes on', async () => {
    const { port, call } = await open();
    const answer = await ask(port, { ...call, body: 'x'.repeat(BODY_MAX + 1) });
    expect(answer.status).toBe(413);
    expect(JSON.parse(answer.body).reason).toBe('A call may not be larger than 96 million bytes.');
    expect((await ask(port, call)).status).toBe(200);
  });

  test.each(['/exchange', '/proof'])(
    'reads a thousand bytes of a stranger at most, and parses none of what is deeper than any call: %s',
    async (path) => {
      const { port, origin, call } = await open();
      const stranger: Asked = { method: 'POST', path, headers: { origin } };
      // Before a byte of it has come: the length that is announced is enough.
      const announced = await new Promise<number>((resolve, reject) => {
        const headers = { origin, 'content-length': '90000000' };
        const request = httpRequest({ host: '127.0.0.1', port, method: 'POST', path, headers });
        request.on('response', (response) => {
          resolve(response.statusCode ?? 0);
          request.destroy();
        });
        request.on('error', reject);
        request.flushHeaders();
      });
      expect(announced).toBe(413);
      const large = await ask(port, { ...stranger, body: '['.repeat(20_000_000) });
      expect(large.status).toBe(413);
      expect(JSON.parse(large.body).reason).toBe('This may not be larger than 1000 bytes.');
      const chunked = withHeader(
        { ...stranger, body: '['.repeat(2_000_000) },
        'transfer-encoding',
        'chunked',
      );
      expect((await ask(port, chunked)).status).toBe(413);
      expect((await ask(port, { ...stranger, body: '['.repeat(1000) })).body).toContain('more than 64 deep');
      expect((await ask(port, { ...stranger, body: `{"code":"${'x'.repeat(991)}"}` })).status).toBe(413);
      expect((await ask(port, call)).status).toBe(200);
    },
  );

  test('refuses a call whose brackets are deeper than any', async () => {
    const { port, call } = await open();
    const input = `${'['.repeat(64)}${']'.repeat(64)}`;
    const deep = await ask(port, { ...call, body: `{"name": "shop.read", "input": ${input}}` });
    expect(deep.status).toBe(400);
    expect(JSON.parse(deep.body).reason).toMatch(/more than 64 deep\.$/);
    expect((await ask(port, call)).status).toBe(200);
  });

  test('names what it does not know in one harmless line', async () => {
    const { port, call } = await open();
    const name = `\u001b[31m\u202e\n${'x'.repeat(500)}`;
    for (const body of [{ name }, { name: 'shop.read', input: { [name]: 1 } }]) {
      const answer = await ask(port, { ...call, body: JSON.stringify(body) });
      const { reason } = JSON.parse(answer.body).failure as { reason: string };
      expect(reason).toMatch(/^[ -~…]+$/);
      expect(reason.length).toBeLessThan(120);
    }
  });

  test('refuses what is no call at all', async () => {
    const { port, call } = await open();
    for (const body of ['', 'torn {', '[', '"text"', 'null'])
      expect((await ask(port, { ...call, body })).status).toBe(400);
    const unnamed = await ask(port, { ...call, body: '{}' });
    expect(JSON.parse(unnamed.body).failure).toEqual({
      code: 'bad-request',
      reason: 'there is no call without a name',
    });
  });

  test('survives a page that goes away in the middle of its call, and rubbish on the line', async () => {
    const { port, call } = await open();
    for (const text of [
      `POST /rpc HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nOrigin: http://127.0.0.1:${port}\r\n` +
        `Authorization: ${call.headers?.['authorization']}\r\nContent-Length: 1000\r\n\r\n{"name"`,
      '\u0016\u0003\u0001 no HTTP at all\r\n\r\n',
    ])
      await new Promise<void>((resolve) => {
        const socket = connect(Number(port), '127.0.0.1', () => {
          socket.write(text, () => socket.destroy());
        });
        socket.on('close', () => resolve());
        socket.on('error', () => {});
      });
    expect((await ask(port, call)).status).toBe(200);
  });

  test('is reached from this machine only', async () => {
    const { host } = await open();
    expect(new URL(host.address).hostname).toBe('127.0.0.1');
    const { port } = new URL(host.address);
    // Another address of this same machine: a server on all addresses would answer there.
    await expect(
      new Promise((resolve, reject) => {
        const socket = connect({ host: '127.0.0.2', port: Number(port) }, () => resolve(socket.destroy()));
        socket.setTimeout(2000, () => socket.destroy(new Error('no answer')));
        socket.on('error', reject);
      }),
    ).rejects.toThrow();
  });
});
