import { oneLine } from '../../shared-math/outside/index.ts';
import { checkKept } from '../files/index.ts';
import { type Store, StoreError, storageReason } from '../store/index.ts';
import type { FaultLog } from './dispatch.ts';

/*
 * Photos go between the board and its host as they are, beside the calls of the contract, the same over both hosts:
 *     POST /photo        the file      → 200 {"hash", "type", "width", "height"}, or 422 {"reason": …} if it is refused;
 *                                        a PDF's answer has no width and height, as its pages have no px of their own, nor
 *                                        has that of a drawing (DXF, SVG), which is kept in the same way
 *     GET  /photo/HASH                 → 200 the file, or 404
 * Who may ask is the host's business and settled before.
 */

export interface PhotoAnswer {
  readonly status: number;
  readonly type: string;
  readonly content: Uint8Array;
}

export interface PhotoRoutes {
  /** `content` is undefined where the body was larger than any photo may be. */
  post(content: Uint8Array | undefined): PhotoAnswer;
  get(path: string): PhotoAnswer;
}

export const PHOTO_PATH = '/photo';

export function isPhotoPath(path: string): boolean {
  return path === PHOTO_PATH || path.startsWith(`${PHOTO_PATH}/`);
}

function json(status: number, value: object): PhotoAnswer {
  return { status, type: 'application/json; charset=utf-8', content: Buffer.from(JSON.stringify(value)) };
}

export function photoRoutes({ photos }: Store, log: FaultLog = console.error): PhotoRoutes {
  const guarded = (work: () => PhotoAnswer): PhotoAnswer => {
    try {
      return work();
    } catch (error) {
      if (error instanceof StoreError) return json(422, { reason: oneLine(error.message) });
      log(error);
      return json(500, { reason: storageReason(error) ?? 'Toeboard made a mistake of its own' });
    }
  };
  return {
    post: (content) =>
      guarded(() => {
        if (!content) return json(413, { reason: 'it is larger than a photo may be' });
        const checked = checkKept(content);
        if (!checked.ok) return json(422, { reason: checked.failure });
        const { type, width, height } = checked.value;
        return json(200, { hash: photos.put(content, checked.value), type, width, height });
      }),
    get: (path) =>
      guarded(() => {
        const photo = photos.read(path.slice(PHOTO_PATH.length + 1));
        return photo
          ? { status: 200, type: photo.type, content: photo.content }
          : json(404, { reason: 'this photo is not in the store' });
      }),
  };
}
