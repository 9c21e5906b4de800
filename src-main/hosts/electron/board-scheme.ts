import { SECURITY_HEADERS } from '../content-policy.ts';
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

/** Answers a request for a file of the built board, and nothing else. */
export async function answerFromBoard(rendererFolder: string, request: Request): Promise<Response> {
  const { host, pathname } = new URL(request.url);
  if (host !== HOST) return new Response(null, { status: 404 });
  if (request.method !== 'GET') return new Response(null, { status: 405 });
  const file = await findStatic(rendererFolder, pathname);
  if (file.status !== 200) return new Response(null, { status: file.status });
  return new Response(new Uint8Array(file.content), {
    headers: { ...SECURITY_HEADERS, 'content-type': file.type },
  });
}

export function serveBoard(protocol: Electron['protocol'], rendererFolder: string): void {
  protocol.handle(SCHEME, (request) => answerFromBoard(rendererFolder, request));
}
