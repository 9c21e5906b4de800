import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Call, CallHost, CallResult, Reply, Request } from '../../src-main/api/contract.ts';
import { runElectron } from '../../src-main/hosts/electron/run-electron.ts';
import { type Loopback, startLoopback } from '../../src-main/hosts/loopback/start-loopback.ts';
import { electronStandIn } from './electron-stand-ins.ts';

/** A host that has been opened on a folder, reached as the board reaches it. */
export interface OpenedHost {
  readonly call: CallHost;
  /** Sends or fetches a photo as the page does: a path and, to send, the bytes. */
  readonly photo: (path: string, content?: Uint8Array<ArrayBuffer>) => Promise<Response>;
  readonly close: () => Promise<void>;
}

export interface Transport {
  readonly name: string;
  readonly open: (dataFolder: string) => Promise<OpenedHost>;
}

/** A built board of three small files, as good as the real one to a host. */
export function fixtureRenderer(folder: string): string {
  const renderer = join(folder, 'renderer');
  mkdirSync(join(renderer, 'assets'), { recursive: true });
  writeFileSync(join(renderer, 'index.html'), '<!doctype html><title>Toeboard</title>');
  writeFileSync(join(renderer, 'assets', 'index.js'), 'export {};');
  writeFileSync(join(folder, 'secret.json'), '{"secret": true}');
  return renderer;
}

/** Buys the token of an address, as the page does. */
export async function exchangeToken(
  address: string,
): Promise<{ status: number; token: string; reason: string }> {
  const { origin, hash } = new URL(address);
  const response = await fetch(`${origin}/exchange`, {
    method: 'POST',
    headers: { origin, 'content-type': 'application/json' },
    body: JSON.stringify({ code: hash.replace('#code=', '') }),
  });
  const { token = '', reason = '' } = (await response.json()) as { token?: string; reason?: string };
  return { status: response.status, token, reason };
}

/** Calls over HTTP with a token, as the page does. */
export function httpCaller(address: string, token: string): CallHost {
  const { origin } = new URL(address);
  return async <Name extends Call>(name: Name, input: Request<Name>) => {
    const response = await fetch(`${origin}/rpc`, {
      method: 'POST',
      headers: { origin, authorization: `Bearer ${token}`, 'content-type': 'application/json' },
      body: JSON.stringify({ name, input }),
    });
    if (response.status !== 200) throw new Error(`${name} was turned away with status ${response.status}`);
    return (await response.json()) as CallResult<Name>;
  };
}

/** Faults that a test brings about on purpose need no stack on the screen. */
const quiet = () => {};

export async function openLoopback(dataFolder: string): Promise<Loopback> {
  return startLoopback({ dataFolder, rendererFolder: fixtureRenderer(dataFolder), log: quiet });
}

/**
 * Waits until nobody answers at an address of a host that is closed: the connections that were kept for the next request
 * have noticed by then. Each of them fails its one request; after the last a new connection is refused.
 */
export async function nobodyAt(origin: string): Promise<void> {
  for (let asked = 0; asked < 100; asked += 1) {
    const refused = await fetch(origin).then(
      () => false,
      (error: Error) => (error.cause as NodeJS.ErrnoException | undefined)?.code === 'ECONNREFUSED',
    );
    if (refused) return;
  }
  throw new Error(`${origin} still answers`);
}

const loopback: Transport = {
  name: 'loopback, over HTTP',
  open: async (dataFolder) => {
    const host = await openLoopback(dataFolder);
    const { token } = await exchangeToken(host.address);
    const { origin } = new URL(host.address);
    return {
      call: httpCaller(host.address, token),
      photo: (path, content) =>
        fetch(origin + path, {
          method: content ? 'POST' : 'GET',
          headers: { origin, authorization: `Bearer ${token}` },
          ...(content ? { body: content } : {}),
        }),
      close: async () => {
        await host.close();
        // The next host may be on the same port.
        await nobodyAt(origin);
      },
    };
  },
};

const electron: Transport = {
  name: 'Electron, through stand-ins of its pieces',
  open: async (dataFolder) => {
    const { electron, pieces, wire } = electronStandIn();
    await runElectron(electron, {
      dataFolder,
      rendererFolder: fixtureRenderer(dataFolder),
      preload: '/preload.cjs',
      log: quiet,
    });
    const bridge = wire.bridge();
    const [, answer] = pieces.protocol.handle.mock.calls[0] as [
      string,
      (request: globalThis.Request) => Promise<Response>,
    ];
    return {
      call: (name, input) => bridge.call(name, input) as Promise<CallResult<typeof name>>,
      photo: (path, content) =>
        answer(new Request(`app://toeboard${path}`, content ? { method: 'POST', body: content } : {})),
      close: async () => void pieces.app.emit('will-quit'),
    };
  },
};

export const TRANSPORTS: readonly Transport[] = [loopback, electron];

/** Calls and takes the value; a failure fails the test with its code and reason. */
export async function value<Name extends Call>(
  call: CallHost,
  name: Name,
  input: Request<Name>,
): Promise<Reply<Name>> {
  const result = await call(name, input);
  if (!result.ok) throw new Error(`${name} failed: ${result.failure.code}, ${result.failure.reason}`);
  return result.value;
}

/** Calls what has to fail, and gives the failure as "code: reason". */
export async function failure(call: CallHost, name: Call, input: unknown): Promise<string> {
  const result = await call(name, input as Request<Call>);
  if (result.ok) throw new Error(`${name} succeeded, and should have failed`);
  return `${result.failure.code}: ${result.failure.reason}`;
}
