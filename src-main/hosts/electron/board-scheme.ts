import { Readable } from 'node:stream';
import { isOutputPath, type OutputRoutes } from '../../api/output-routes.ts';
import { isPhotoPath, PHOTO_PATH, type PhotoRoutes } from '../../api/photo-routes.ts';
import { isShopPath, SHOP_PATH, type ShopRoutes } from '../../api/shop-routes.ts';
import { PHOTO_BYTES_MAX } from '../../files/index.ts';
import { headersOf, SECURITY_HEADERS } from '../content-policy.ts';
import { findStatic } from '../static-files.ts';
import type { Electron } from './electron.ts';

/** A scheme of its own instead of file:, so that origin, content policy and fetch are as on the loopback host. */
const SCHEME = 'app';
const HOST = 'toeboard';

export const BOARD_ADDRESS = `${SCHEME}://${HOST}/`;

/** Whether an address is the board's own. */
export function isBoard(address: string): boolean {
  return address.startsWith(BOARD_ADDRESS);
}

/** Has to be called before Electron is ready. */
export function registerBoardScheme(protocol: Electron['protocol']): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** The body; undefined if it is larger than a photo may be. Its length is looked at before it is read, where it is reported. */
async function photoBytes(request: Request): Promise<Uint8Array | undefined> {
  if (Number(request.headers.get('content-length') ?? 0) > PHOTO_BYTES_MAX) return undefined;
  const content = new Uint8Array(await request.arrayBuffer());
  return content.length <= PHOTO_BYTES_MAX ? content : undefined;
}

async function answerPhoto(photos: PhotoRoutes, request: Request, path: string): Promise<Response> {
  const posting = request.method === 'POST' && path === PHOTO_PATH;
  if (!posting && (request.method !== 'GET' || path === PHOTO_PATH))
    return new Response(null, { status: 405 });
  const origin = request.headers.get('origin');
  if (origin !== null && !isBoard(`${origin}/`)) return new Response(null, { status: 403 });
  const { status, type, content } = posting ? photos.post(await photoBytes(request)) : photos.get(path);
  return new Response(new Uint8Array(content), {
    status,
    headers: { ...SECURITY_HEADERS, 'content-type': type, 'cache-control': 'no-store' },
  });
}

async function answerOutput(outputs: OutputRoutes, path: string): Promise<Response> {
  const { status, headers, content } = await outputs.get(path);
  return new Response(new Uint8Array(content), {
    status,
    headers: { ...SECURITY_HEADERS, ...headers, 'cache-control': 'no-store' },
  });
}

async function* chunksOf(body: ReadableStream<Uint8Array> | null): AsyncGenerator<Uint8Array> {
  const reader = body?.getReader();
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) yield read.value;
}

async function answerShop(shop: ShopRoutes, request: Request, path: string): Promise<Response> {
  const posting = request.method === 'POST' && path === SHOP_PATH;
  if (!posting && (request.method !== 'GET' || path === SHOP_PATH))
    return new Response(null, { status: 405 });
  const origin = request.headers.get('origin');
  if (origin !== null && !isBoard(`${origin}/`)) return new Response(null, { status: 403 });
  const { status, type, content } = posting ? await shop.post(chunksOf(request.body)) : shop.get(path);
  const stream = Readable.toWeb(Readable.from(content)) as ReadableStream<Uint8Array<ArrayBuffer>>;
  return new Response(stream, {
    status,
    headers: { ...SECURITY_HEADERS, 'content-type': type, 'cache-control': 'no-store' },
  });
}

/** Answers a request for a file of the built board, a photo, an output or the whole shop, and nothing else. */
export async function answerFromBoard(
  rendererFolder: string,
  request: Request,
  photos?: PhotoRoutes,
  outputs?: OutputRoutes,
  shop?: ShopRoutes,
): Promise<Response> {
  const { host, pathname } = new URL(request.url);
  if (host !== HOST) return new Response(null, { status: 404 });
  if (photos && isPhotoPath(pathname)) return answerPhoto(photos, request, pathname);
  if (shop && isShopPath(pathname)) return answerShop(shop, request, pathname);
  if (request.method !== 'GET') return new Response(null, { status: 405 });
  if (outputs && isOutputPath(pathname)) return answerOutput(outputs, pathname);
  const file = await findStatic(rendererFolder, pathname);
  if (file.status !== 200) return new Response(null, { status: file.status });
  return new Response(new Uint8Array(file.content), {
    headers: { ...headersOf(pathname), 'content-type': file.type },
  });
}

export function serveBoard(
  protocol: Electron['protocol'],
  rendererFolder: string,
  photos: PhotoRoutes,
  outputs: OutputRoutes,
  shop: ShopRoutes,
): void {
  protocol.handle(SCHEME, (request) => answerFromBoard(rendererFolder, request, photos, outputs, shop));
}
