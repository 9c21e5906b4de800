import {
  type PhotoPart,
  type Picture,
  partShown,
  type WarpOrder,
  warpPicture,
} from '../../shared-math/trace/index.ts';
import { HeldOriginals } from './held-originals.ts';
import type { FromOriginals, ToOriginals } from './original-messages.ts';

// The script of the worker that keeps photos at full size for as long as they are looked at closely, and cuts out of them what
// is asked for. The page itself never holds one.

/** ms after which originals that nobody has asked for are let go. */
const KEPT_IDLE = 30_000;
/** Pixels of the original to one of the result, each way, that a straightened stretch is made from at most. */
const DENSITY_MOST = 1.5;

const held = new HeldOriginals<ImageBitmap>();
let idle: ReturnType<typeof setTimeout> | undefined;

function stayAwake(): void {
  clearTimeout(idle);
  idle = setTimeout(() => held.letGo(), KEPT_IDLE);
}

/** A stretch as pixels, reduced where the result has room for fewer. */
async function pixelsOf(original: ImageBitmap, part: PhotoPart, order: WarpOrder): Promise<Picture> {
  const { left, top, width, height } = part;
  const share = Math.min(1, (DENSITY_MOST * Math.max(order.width, order.height)) / Math.max(width, height));
  const wide = Math.max(1, Math.round(width * share));
  const high = Math.max(1, Math.round(height * share));
  const bitmap = await createImageBitmap(original, left, top, width, height, {
    resizeWidth: wide,
    resizeHeight: high,
    resizeQuality: 'high',
  });
  const context = new OffscreenCanvas(wide, high).getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('this browser draws no pictures');
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return { data: context.getImageData(0, 0, wide, high).data, width: wide, height: high };
}

async function straight(original: ImageBitmap, order: WarpOrder): Promise<ImageBitmap | undefined> {
  const part = partShown(order);
  if (!part) return undefined;
  const { data, width, height } = warpPicture(await pixelsOf(original, part, order), order, part);
  return createImageBitmap(new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height));
}

function answer(message: FromOriginals, transfer: Transferable[] = []): void {
  self.postMessage(message, { transfer });
}

async function open(id: number, key: string, file: Blob): Promise<void> {
  try {
    held.take(key, await createImageBitmap(file));
    answer({ id, kind: 'opened', ok: true });
  } catch {
    answer({ id, kind: 'opened', ok: false });
  }
}

type Question = Extract<ToOriginals, { kind: 'part' | 'straight' }>;

async function cutOut(original: ImageBitmap, question: Question): Promise<void> {
  const { id } = question;
  if (question.kind === 'part') {
    const { left, top, width, height } = question.part;
    const bitmap = await createImageBitmap(original, left, top, width, height);
    answer({ id, kind: 'part', bitmap }, [bitmap]);
  } else {
    const bitmap = await straight(original, question.order);
    answer({ id, kind: 'straight', bitmap }, bitmap ? [bitmap] : []);
  }
}

self.onmessage = async ({ data }: MessageEvent<ToOriginals>) => {
  stayAwake();
  if (data.kind === 'take') held.take(data.key, data.bitmap);
  else if (data.kind === 'open') await open(data.id, data.key, data.file);
  else {
    const original = held.get(data.key);
    // What memory does not suffice for, or was let go meanwhile, is as if it had never been here.
    const missing = () => answer({ id: data.id, kind: 'missing' });
    if (original) await cutOut(original, data).catch(missing);
    else missing();
  }
};
