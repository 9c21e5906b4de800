import { oneLine } from '../../shared-math/outside/index.ts';
import { checkKept } from '../files/index.ts';
import { type HistoryWish, type Store, StoreError, storageReason } from '../store/index.ts';
import type { FaultLog } from './dispatch.ts';

/*
 * The whole shop goes between the board and its host as one file, beside the calls of the contract, the same over both
 * hosts, of any size: neither side holds it in memory.
 *     GET  /shop/whole      → 200 the file, with the histories of all layouts
 *     GET  /shop/newest/N   → 200 the file, with the newest N states of each layout, 1 to 9999
 *     GET  /shop/present    → 200 the file, without histories
 *     POST /shop  the file  → 200 {"name"}: it is a copy of the shop now; or 422 {"reason": …} if it is refused
 * Who may ask is the host's business and settled before.
 */

export interface ShopAnswer {
  readonly status: number;
  readonly type: string;
  readonly content: Iterable<Uint8Array>;
}

export interface ShopRoutes {
  get(path: string): ShopAnswer;
  post(content: AsyncIterable<Uint8Array>): Promise<ShopAnswer>;
}

export const SHOP_PATH = '/shop';

export function isShopPath(path: string): boolean {
  return path === SHOP_PATH || path.startsWith(`${SHOP_PATH}/`);
}

function json(status: number, value: object): ShopAnswer {
  return { status, type: 'application/json; charset=utf-8', content: [Buffer.from(JSON.stringify(value))] };
}

/** How far the histories are to go along, by the path that asks; undefined if it is none of these. */
function historyWish(path: string): HistoryWish | undefined {
  if (path === '/shop/whole') return 'all';
  if (path === '/shop/present') return 'none';
  const newest = /^\/shop\/newest\/([1-9]\d{0,3})$/.exec(path)?.[1];
  return newest === undefined ? undefined : Number(newest);
}

export function shopRoutes({ copies }: Store, log: FaultLog = console.error): ShopRoutes {
  return {
    get: (path) => {
      const history = historyWish(path);
      if (history === undefined) return json(404, { reason: 'there is no such file here' });
      return { status: 200, type: 'application/x-ndjson', content: copies.file(history) };
    },
    post: async (content) => {
      try {
        return json(200, { name: await copies.takeFile(content, checkKept) });
      } catch (error) {
        if (error instanceof StoreError) return json(422, { reason: oneLine(error.message) });
        log(error);
        return json(500, { reason: storageReason(error) ?? 'Toeboard made a mistake of its own' });
      }
    },
  };
}
