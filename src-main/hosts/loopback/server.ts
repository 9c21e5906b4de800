import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { dispatch, type FaultLog } from '../../api/dispatch.ts';
import type { Handlers } from '../../api/handlers/index.ts';
import { isOutputPath, type OutputRoutes } from '../../api/output-routes.ts';
import { isPhotoPath, PHOTO_PATH, type PhotoRoutes } from '../../api/photo-routes.ts';
import { PHOTO_BYTES_MAX } from '../../files/index.ts';
import { SECURITY_HEADERS } from '../content-policy.ts';
import { findStatic } from '../static-files.ts';
import { createKeys } from './keys.ts';
import { BODY_MAX, bodyBytes } from './request-body.ts';

/*
 * The board's page over HTTP, for this machine only. The page is opened at `/#code=CODE`; the part after # is never
 * sent, so the page itself takes the code to
 *     POST /exchange  {"code": CODE}                          → 200 {"token": TOKEN}, or 401 {"reason": …} if used
 * takes it out of the address, and calls
 *     POST /rpc       {"name": …, "input": …}, header `authorization: Bearer TOKEN`
 *                                                             → 200 and a CallResult, whether the call succeeded or not
 * Photos go by POST /photo and GET /photo/HASH with the same header (api/photo-routes.ts), what was made by GET
 * /output/JOB (api/output-routes.ts).
 * Everything that is turned away before a call is made gets a status of 4xx and {"reason": one plain sentence}.
 * The token may be kept in sessionStorage, so that the same tab can be reloaded. No cookies: all ports share them.
 */

export interface ServerOptions {
  readonly handlers: Handlers;
  readonly photos: PhotoRoutes;
  readonly outputs: OutputRoutes;
  readonly rendererFolder: string;
  readonly log: FaultLog;
  /** Told each time a page has exchanged its code. */
  readonly onExchanged: () => void;
}

export interface LoopbackServer {
  /** The page's address with a code of its own, good for one page. */
  readonly newAddress: () => string;
  readonly close: () => Promise<void>;
}

const USED_CODE =
  'This address has been opened before and works only once. Take the newest address that the program has printed, or start it again.';

const NO_LEAVE = 'This page has no leave to call: open the address that the program printed.';

function sendJson(response: ServerResponse, status: number, value: object): void {
  response.writeHead(status, {
    ...SECURITY_HEADERS,
    'content-type': 'application/json; charset=utf-8',
    'cache-control': 'no-store',
  });
  response.end(JSON.stringify(value));
}

function refuse(response: ServerResponse, status: number, reason: string): void {
  sendJson(response, status, { reason });
}

function parsedBody(text: string): Record<string, unknown> | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : undefined;
  } catch {
    return undefined;
  }
}

/** Serves the board on 127.0.0.1, on a port the system picks. */
export async function startServer(options: ServerOptions): Promise<LoopbackServer> {
  const { handlers, photos, outputs, rendererFolder, log, onExchanged } = options;
  const keys = createKeys();
  let host = '';

  async function sendFile(response: ServerResponse, path: string): Promise<void> {
    const file = await findStatic(rendererFolder, path);
    if (file.status !== 200) return refuse(response, file.status, 'There is no such page here.');
    response.writeHead(200, { ...SECURITY_HEADERS, 'content-type': file.type, 'cache-control': 'no-cache' });
    response.end(file.content);
  }

  function exchange(response: ServerResponse, body: Record<string, unknown>): void {
    const token = keys.exchange(body['code']);
    if (token === undefined) refuse(response, 401, USED_CODE);
    else {
      sendJson(response, 200, { token });
      onExchanged();
    }
  }

  async function photo(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    const { status, type, content } =
      request.method === 'POST' ? photos.post(await bodyBytes(request, PHOTO_BYTES_MAX)) : photos.get(path);
    response.writeHead(status, { ...SECURITY_HEADERS, 'content-type': type, 'cache-control': 'no-store' });
    response.end(request.method === 'HEAD' ? undefined : content);
  }

  function output(request: IncomingMessage, response: ServerResponse, path: string): void {
    const { status, headers, content } = outputs.get(path);
    response.writeHead(status, { ...SECURITY_HEADERS, ...headers, 'cache-control': 'no-store' });
    response.end(request.method === 'HEAD' ? undefined : content);
  }

  async function post(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    if (request.headers.origin !== `http://${host}`)
      return refuse(response, 403, 'Calls are taken from the board only.');
    if (path !== '/exchange' && !keys.admits(request.headers.authorization))
      return refuse(response, 401, NO_LEAVE);
    if (path === PHOTO_PATH) return photo(request, response, path);
    const text = await bodyBytes(request);
    if (text === undefined)
      return refuse(response, 413, `A call may not be larger than ${BODY_MAX / 1e6} million bytes.`);
    const body = parsedBody(text.toString('utf8'));
    if (!body) return refuse(response, 400, 'The call is not a JSON object.');
    if (path === '/exchange') return exchange(response, body);
    sendJson(response, 200, dispatch(handlers, body['name'], body['input'], log));
  }

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = (request.url ?? '').replace(/[?#].*$/s, '');
    // Another name for this machine may be another site's, pointed here to borrow our origin.
    if (request.headers.host !== host) return refuse(response, 421, 'This server has another name.');
    const allowed = ['/rpc', '/exchange', PHOTO_PATH].includes(path) ? ['POST'] : ['GET', 'HEAD'];
    if (!allowed.includes(request.method ?? '')) {
      response.setHeader('allow', allowed.join(', '));
      return refuse(response, 405, `Only ${allowed.join(' and ')} here.`);
    }
    if (isPhotoPath(path) && request.method !== 'POST') {
      if (!keys.admits(request.headers.authorization)) return refuse(response, 401, NO_LEAVE);
      return photo(request, response, path);
    }
    if (isOutputPath(path)) {
      if (!keys.admits(request.headers.authorization)) return refuse(response, 401, NO_LEAVE);
      return output(request, response, path);
    }
    await (request.method === 'POST' ? post(request, response, path) : sendFile(response, path));
  }

  const server = createServer((request, response) => {
    answer(request, response).catch((fault: unknown) => {
      // A page that goes away in the middle of its request is no fault.
      if (request.destroyed && !request.complete) return;
      log(fault);
      if (response.headersSent) response.destroy();
      else refuse(response, 500, 'Toeboard made a mistake of its own.');
    });
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  host = `127.0.0.1:${(server.address() as AddressInfo).port}`;

  return {
    newAddress: () => `http://${host}/#code=${keys.newCode()}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
