import type { Photo } from '../../../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../../../shared-math/outcome.ts';
import type { PhotoPart, Picture, WarpOrder } from '../../../../shared-math/trace/index.ts';
import { WORKED_SIDE } from '../../../../shared-math/trace/index.ts';
import { fetchPhoto } from '../../../host/photos.ts';
import { FAILED } from '../../../jobs/worker-line.ts';
import { decodePicture, decodesItself, Originals, type OriginalsLine } from '../../../pictures/index.ts';
import type { PhotoWorkerLine } from './start-photo-worker.ts';
import { Straightening } from './straightening.ts';

/** px right and down. */
export type PictureSize = readonly [number, number];

/** A photo's reduced copy, upright, for the loupe and the previews. */
export interface WorkingPicture {
  readonly picture: Picture;
  readonly canvas: HTMLCanvasElement;
}

/** Which picture of which file a photo shows. */
export type PhotoSource = Pick<Photo, 'hash' | 'page'>;
/** The same with px of the upright original, which a page of a PDF is drawn at. */
export type SizedSource = PhotoSource & Pick<Photo, 'size'>;

/** What a photo's picture goes by: its file, and the page of it. */
export function pictureKey({ hash, page = 1 }: PhotoSource): string {
  return page === 1 ? hash : `${hash} ${page}`;
}

async function reduced(
  from: Blob | ImageBitmap,
  [width, height]: readonly [number, number],
): Promise<WorkingPicture> {
  const share = Math.min(1, WORKED_SIDE / Math.max(width, height));
  // Of a file the browser turns it upright and reduces it in one go; the full picture is never kept.
  const bitmap = await createImageBitmap(from, {
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
  readonly #originals: Originals;
  readonly #asked = new Map<string, Promise<Outcome<PictureSize, string>>>();
  /** By key, once they have come. */
  #working: Readonly<Record<string, WorkingPicture>> = $state.raw({});
  /** By key, why one cannot be shown. */
  #troubles: Readonly<Record<string, string>> = $state.raw({});
  /** By hash of a PDF, how many pages it has. */
  #pages: Readonly<Record<string, number>> = $state.raw({});

  constructor(start: () => PhotoWorkerLine, startOriginals: () => OriginalsLine) {
    this.#straightening = new Straightening(start);
    this.#originals = new Originals(startOriginals);
  }

  workingOf(photo: PhotoSource): WorkingPicture | undefined {
    return this.#working[pictureKey(photo)];
  }

  troubleOf(photo: PhotoSource): string | undefined {
    return this.#troubles[pictureKey(photo)];
  }

  /** How many pages the file of a photo has; undefined if it is none with pages, or has not come yet. */
  pagesOf({ hash }: PhotoSource): number | undefined {
    return this.#pages[hash];
  }

  /**
   * Sees to it that a photo's picture is here, or why not.
   *
   * @param size px of the upright original, where they are known; a page of a PDF is drawn as large as suits it where not.
   * @returns The size.
   */
  want(photo: PhotoSource, size?: PictureSize): Promise<Outcome<PictureSize, string>> {
    const key = pictureKey(photo);
    const asked = this.#asked.get(key) ?? this.#bring(photo, size);
    this.#asked.set(key, asked);
    return asked;
  }

  #refused(key: string, trouble: string): Outcome<PictureSize, string> {
    this.#troubles = { ...this.#troubles, [key]: trouble };
    return failed(trouble);
  }

  async #bring(photo: PhotoSource, size?: PictureSize): Promise<Outcome<PictureSize, string>> {
    const key = pictureKey(photo);
    const file = await fetchPhoto(photo.hash);
    if (!file.ok) {
      // Asked again when it is wanted again: the host may answer by then.
      this.#asked.delete(key);
      return this.#refused(key, file.failure);
    }
    try {
      if (size && !decodesItself(file.value)) return this.#keep(key, await reduced(file.value, size), size);
      const decoded = await decodePicture(file.value, { page: photo.page, size });
      if (!decoded.ok) return this.#refused(key, decoded.failure);
      const { bitmap, pages } = decoded.value;
      const own: PictureSize = [bitmap.width, bitmap.height];
      if (pages !== undefined) this.#pages = { ...this.#pages, [photo.hash]: pages };
      const working = await reduced(bitmap, own);
      // What took long to decode is at hand for the first close look.
      this.#originals.take(key, bitmap);
      if (size && (size[0] !== own[0] || size[1] !== own[1]))
        return this.#refused(
          key,
          `it is ${own[0]} by ${own[1]} pixels, not ${size[0]} by ${size[1]} as it says`,
        );
      return this.#keep(key, working, own);
    } catch {
      return this.#refused(key, 'its picture cannot be decoded');
    }
  }

  #keep(key: string, working: WorkingPicture, size: PictureSize): Outcome<PictureSize, string> {
    this.#straightening.keep(key, working.picture);
    this.#working = { ...this.#working, [key]: working };
    return succeeded(size);
  }

  /** The picture as an order wants it seen; undefined if the worker fails at it, which stands in the troubles then. */
  async warped(photo: PhotoSource, order: WarpOrder): Promise<Picture | undefined> {
    const key = pictureKey(photo);
    const picture = await this.#straightening.warped(key, order);
    const { [key]: trouble, ...others } = this.#troubles;
    if (!picture) this.#troubles = { ...others, [key]: FAILED };
    else if (trouble === FAILED) this.#troubles = others;
    return picture;
  }

  /** A stretch of a photo as it is in the original; undefined if that cannot be had. Whoever is given it closes it. */
  part(photo: SizedSource, part: PhotoPart): Promise<ImageBitmap | undefined> {
    return this.#originals.part(pictureKey(photo), () => this.#original(photo), part);
  }

  /** The picture as an order wants it seen, from the original's own pixels; undefined if that cannot be had. */
  sharp(photo: SizedSource, order: WarpOrder): Promise<ImageBitmap | undefined> {
    return this.#originals.straight(pictureKey(photo), () => this.#original(photo), order);
  }

  async #original({ hash, page, size }: SizedSource): Promise<Blob | ImageBitmap | undefined> {
    const file = await fetchPhoto(hash);
    if (!file.ok) return undefined;
    if (!decodesItself(file.value)) return file.value;
    const decoded = await decodePicture(file.value, { page, size });
    return decoded.ok ? decoded.value.bitmap : undefined;
  }
}
