import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import { oneLine, parseJson } from '../../../shared-math/outside/index.ts';
import { dispatch, type FaultLog } from '../../api/dispatch.ts';
import type { Handlers } from '../../api/handlers/index.ts';
import { isOutputPath, type OutputRoutes } from '../../api/output-routes.ts';
import { isPhotoPath, PHOTO_PATH, type PhotoRoutes } from '../../api/photo-routes.ts';
import { isShopPath, SHOP_PATH, type ShopAnswer, type ShopRoutes } from '../../api/shop-routes.ts';
import { PHOTO_BYTES_MAX } from '../../files/index.ts';
import { headersOf, SECURITY_HEADERS } from '../content-policy.ts';
import { findStatic } from '../static-files.ts';
import { createKeys } from './keys.ts';
import { BODY_MAX, bodyBytes, fewBytes } from './request-body.ts';
import type { Reopened } from './running.ts';
import { keepSeat, newSecret, type Seat, seatsOf } from './seats.ts';

/*
 * The board's page over HTTP, for this machine only. The page is opened at `/#code=CODE`; the part after # is never
 * sent, so the page itself takes the code to
 *     POST /exchange  {"code": CODE}, 1 kB at most             → 200 {"token": TOKEN}, or 401 {"reason": …} if used
 * takes it out of the address, and calls
 *     POST /rpc       {"name": …, "input": …}, header `authorization: Bearer TOKEN`
 *                                                             → 200 and a CallResult, whether the call succeeded or not
 * A page whose program was gone for a while first lets whoever answers now prove that it knows the token:
 *     POST /proof     {"nonce": …}                            → 200 {"proof": HMAC-SHA-256 of "HOST NONCE", hex}
 * With the same header as a call, a page says that it is open, and as it is left that it goes,
 *     POST /here      {"page": its name for itself, "here": …}   → 200 {}
 * and a program that is started while this one runs has it open its board again:
 *     POST /again     {}                                      → 200 {"window": true} or {"window": false, "address": …},
 *                                                               or 409 if it has been built anew since this one began
 * Photos go by POST /photo and GET /photo/HASH with the same header (api/photo-routes.ts), what was made by GET
 * /output/JOB (api/output-routes.ts).
 * Everything that is turned away before a call is made gets a status of 4xx and {"reason": one plain sentence}.
 * The token may be kept in sessionStorage, so that the same tab can be reloaded. No cookies: all ports share them.
 */

export interface ServerOptions {
  readonly handlers: Handlers;
  readonly photos: PhotoRoutes;
  readonly outputs: OutputRoutes;
  readonly shop: ShopRoutes;
  readonly rendererFolder: string;
  /** Where the seat of this run is kept, for the next one to take up its pages. */
  readonly dataFolder: string;
  readonly log: FaultLog;
  /** Called each time a page has exchanged its code. */
  readonly onExchanged: () => void;
  /** Called when a page says that it is open, or that it goes. */
  readonly onPage: (page: string, here: boolean) => void;
  /** Opens the board once more for somebody who has started the program again; undefined if this run is out of date. */
  readonly onAgain: (newAddress: () => string) => Reopened | undefined;
}

export interface LoopbackServer {
  /** The page's address with a code of its own, good for one page. */
  readonly newAddress: () => string;
  readonly close: () => Promise<void>;
}

const USED_CODE =
  'This address has been opened before, or a newer one has: each works only once. Take the newest address that the program has printed, or start it again.';

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
  sendJson(response, status, { reason: oneLine(reason) });
}

/** The object that a body is, or in one sentence why it is none. */
function parsedBody(body: Buffer): Outcome<Record<string, unknown>, string> {
  const parsed = parseJson(body.toString('utf8'));
  if (!parsed.ok) return failed(`The call is not taken: ${parsed.failure}.`);
  return typeof parsed.value === 'object' && parsed.value !== null
    ? succeeded(parsed.value as Record<string, unknown>)
    : failed('The call is not taken: it is not a JSON object.');
}

/** Bytes. What is read of anybody who has no token. */
const STRANGERS_BODY_MAX = 1000;
const NONCE = /^[\w-]{16,64}$/;

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

/** Listens where an earlier run did, if that port is free, so that its pages find this one; else where the system says. */
async function takeSeat(server: Server, dataFolder: string): Promise<Seat> {
  for (const seat of seatsOf(dataFolder)) {
    try {
      await listen(server, seat.port);
      return seat;
    } catch (error) {
      if (!['EADDRINUSE', 'EACCES'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
    }
  }
  // The pages of a port that was lost may have given its new holder their token: it is not used again.
  return { port: await listen(server, 0), secret: newSecret() };
}

/** Serves the board on 127.0.0.1. */
export async function startServer(options: ServerOptions): Promise<LoopbackServer> {
  const { handlers, photos, outputs, shop, rendererFolder, dataFolder, log, onExchanged, onPage, onAgain } =
    options;
  let keys = createKeys(newSecret());
  let host = '';

  async function sendFile(response: ServerResponse, path: string): Promise<void> {
    const file = await findStatic(rendererFolder, path);
    if (file.status !== 200) return refuse(response, file.status, 'There is no such page here.');
    response.writeHead(200, {
      ...headersOf(path),
      'content-type': file.type,
      'cache-control': file.fixed ? 'max-age=31536000, immutable' : 'no-cache',
    });
    response.end(file.content);
  }

  /** What somebody says who has no token; undefined if it was refused. */
  async function strangersBody(
    request: IncomingMessage,
    response: ServerResponse,
  ): Promise<Record<string, unknown> | undefined> {
    const bytes = await fewBytes(request, STRANGERS_BODY_MAX);
    if (!bytes) {
      refuse(response, 413, `This may not be larger than ${STRANGERS_BODY_MAX} bytes.`);
      return undefined;
    }
    const body = parsedBody(bytes);
    if (body.ok) return body.value;
    refuse(response, 400, body.failure);
    return undefined;
  }

  async function exchange(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await strangersBody(request, response);
    if (!body) return;
    const token = keys.exchange(body['code']);
    if (token === undefined) refuse(response, 401, USED_CODE);
    else {
      sendJson(response, 200, { token });
      onExchanged();
    }
  }

  async function prove(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await strangersBody(request, response);
    if (!body) return;
    const nonce = body['nonce'];
    if (typeof nonce !== 'string' || !NONCE.test(nonce))
      return refuse(response, 400, 'There is no nonce to prove by.');
    sendJson(response, 200, { proof: keys.proof(host, nonce) });
  }

  const newAddress = () => `http://${host}/#code=${keys.newCode()}`;

  async function here(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await strangersBody(request, response);
    if (!body) return;
    const { page, here } = body;
    if (typeof page !== 'string' || !NONCE.test(page) || typeof here !== 'boolean')
      return refuse(response, 400, 'There is no page of that name.');
    onPage(page, here);
    sendJson(response, 200, {});
  }

  function again(response: ServerResponse): void {
    const reopened = onAgain(newAddress);
    if (reopened) sendJson(response, 200, reopened);
    else refuse(response, 409, 'The program has been built anew since this one was started.');
  }

  async function photo(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    const { status, type, content } =
      request.method === 'POST' ? photos.post(await bodyBytes(request, PHOTO_BYTES_MAX)) : photos.get(path);
    response.writeHead(status, { ...SECURITY_HEADERS, 'content-type': type, 'cache-control': 'no-store' });
    response.end(request.method === 'HEAD' ? undefined : content);
  }

  async function output(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    const { status, headers, content } = await outputs.get(path);
    response.writeHead(status, { ...SECURITY_HEADERS, ...headers, 'cache-control': 'no-store' });
    response.end(request.method === 'HEAD' ? undefined : content);
  }

  /** Sent as fast as the other side takes it, and made no faster. */
  async function sendShop(response: ServerResponse, { status, type, content }: ShopAnswer): Promise<void> {
    response.writeHead(status, { ...SECURITY_HEADERS, 'content-type': type, 'cache-control': 'no-store' });
    await pipeline(Readable.from(content), response);
  }

  async function post(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    if (request.headers.origin !== `http://${host}`)
      return refuse(response, 403, 'Calls are taken from the board only.');
    if (path === '/proof') return prove(request, response);
    if (path === '/exchange') return exchange(request, response);
    if (!keys.admits(request.headers.authorization)) return refuse(response, 401, NO_LEAVE);
    if (path === '/here') return here(request, response);
    if (path === '/again') return again(response);
    if (path === PHOTO_PATH) return photo(request, response, path);
    if (path === SHOP_PATH) return sendShop(response, await shop.post(request));
    const bytes = await bodyBytes(request);
    if (bytes === undefined)
      return refuse(response, 413, `A call may not be larger than ${BODY_MAX / 1e6} million bytes.`);
    const body = parsedBody(bytes);
    if (!body.ok) return refuse(response, 400, body.failure);
    const { name, input } = body.value;
    sendJson(response, 200, dispatch(handlers, name, input, log));
  }

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = (request.url ?? '').replace(/[?#].*$/s, '');
    // Another name for this machine may be another site's, pointed here to borrow our origin.
    if (request.headers.host !== host) return refuse(response, 421, 'This server has another name.');
    const allowed = ['/rpc', '/exchange', '/proof', '/here', '/again', PHOTO_PATH, SHOP_PATH].includes(path)
      ? ['POST']
      : ['GET', 'HEAD'];
    if (!allowed.includes(request.method ?? '')) {
      response.setHeader('allow', allowed.join(', '));
      return refuse(response, 405, `Only ${allowed.join(' and ')} here.`);
    }
    if (isPhotoPath(path) && request.method !== 'POST') {
      if (!keys.admits(request.headers.authorization)) return refuse(response, 401, NO_LEAVE);
      return photo(request, response, path);
    }
    if (isShopPath(path) && request.method === 'GET') {
      if (!keys.admits(request.headers.authorization)) return refuse(response, 401, NO_LEAVE);
      return sendShop(response, shop.get(path));
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
  const seat = await takeSeat(server, dataFolder);
  keys = createKeys(seat.secret);
  host = `127.0.0.1:${seat.port}`;
  keepSeat(dataFolder, seat);

  return {
    newAddress,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
