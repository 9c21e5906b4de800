import type { Picture, WarpOrder } from '../../../../shared-math/trace/index.ts';
import { WORKED_SIDE } from '../../../../shared-math/trace/index.ts';
import { fetchPhoto } from '../../../host/photos.ts';
import { FAILED } from '../../../jobs/worker-line.ts';
import type { PhotoWorkerLine } from './start-photo-worker.ts';
import { Straightening } from './straightening.ts';

/** A photo's reduced copy, upright, for the loupe and the previews. */
export interface WorkingPicture {
  readonly picture: Picture;
  readonly canvas: HTMLCanvasElement;
}

async function reduced(file: Blob, [width, height]: readonly [number, number]): Promise<WorkingPicture> {
  const share = Math.min(1, WORKED_SIDE / Math.max(width, height));
  // The browser turns it upright and reduces it in one go; the full picture is never kept.
  const bitmap = await createImageBitmap(file, {
    resizeWidth: Math.max(1, Math.round(width * share)),
    resizeHeight: Math.max(1, Math.round(height * share)),
    resizeQuality: 'high',
  });
  const canvas = document.createElement('canvas');
  canvas.width = bitmap.width;
  canvas.height = bitmap.height;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('this browser draws no pictures');
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
  return { picture: { data, width: canvas.width, height: canvas.height }, canvas };
}

/** The pixels of the open layout's photos: fetched once, kept reduced, straightened in a worker. */
export class PhotoPictures {
  readonly #straightening: Straightening;
  readonly #asked = new Map<string, Promise<void>>();
  /** By hash, once they have come. */
  working: Readonly<Record<string, WorkingPicture>> = $state.raw({});
  /** By hash, why one cannot be shown. */
  troubles: Readonly<Record<string, string>> = $state.raw({});

  constructor(start: () => PhotoWorkerLine) {
    this.#straightening = new Straightening(start);
  }

  /** Sees to it that a photo's picture is here, or why not. */
  want(hash: string, size: readonly [number, number]): Promise<void> {
    const asked = this.#asked.get(hash) ?? this.#bring(hash, size);
    this.#asked.set(hash, asked);
    return asked;
  }

  async #bring(hash: string, size: readonly [number, number]): Promise<void> {
    const file = await fetchPhoto(hash);
    if (!file.ok) {
      this.troubles = { ...this.troubles, [hash]: file.failure };
      // Asked again when it is wanted again: the host may answer by then.
      this.#asked.delete(hash);
      return;
    }
    try {
      const working = await reduced(file.value, size);
      this.#straightening.keep(hash, working.picture);
      this.working = { ...this.working, [hash]: working };
    } catch {
      this.troubles = { ...this.troubles, [hash]: 'its picture cannot be decoded' };
    }
  }

  /** The picture as an order wants it seen; undefined if the worker fails at it, which stands in the troubles then. */
  async warped(hash: string, order: WarpOrder): Promise<Picture | undefined> {
    const picture = await this.#straightening.warped(hash, order);
    const { [hash]: trouble, ...others } = this.troubles;
    if (!picture) this.troubles = { ...others, [hash]: FAILED };
    else if (trouble === FAILED) this.troubles = others;
    return picture;
  }
}
