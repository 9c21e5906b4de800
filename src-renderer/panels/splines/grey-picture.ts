import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import type { GreyImage } from '../../../shared-math/splines/index.ts';
import { decodePicture } from '../../pictures/index.ts';

/** Bytes. A photo is a few million; what is larger is none. */
export const BYTES_MAX = 60_000_000;

export interface GreyPicture {
  readonly image: GreyImage;
  /** px of the file's own picture, upright, in one px of the image. */
  readonly scale: number;
}

/** A picture's file as grey levels, upright, at most so many px wide and high. The failure ends a sentence. */
export async function greyPicture(file: Blob, most: number): Promise<Outcome<GreyPicture, string>> {
  if (file.size > BYTES_MAX) return failed('it is larger than a photo may be');
  const decoded = await decodePicture(file);
  if (!decoded.ok) return decoded;
  const whole = decoded.value.bitmap;
  const share = Math.min(1, most / Math.max(whole.width, whole.height));
  const width = Math.max(1, Math.round(whole.width * share));
  const height = Math.max(1, Math.round(whole.height * share));
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const paint = canvas.getContext('2d', { willReadFrequently: true });
  if (!paint) return failed('this window cannot draw');
  paint.imageSmoothingQuality = 'high';
  paint.drawImage(whole, 0, 0, width, height);
  const scale = whole.width / width;
  whole.close();
  const { data } = paint.getImageData(0, 0, width, height);
  const grey = new Uint8Array(width * height);
  // Luma of ITU-R BT.601, in 256ths.
  for (let i = 0; i < grey.length; i += 1)
    grey[i] =
      (77 * (data[4 * i] as number) + 150 * (data[4 * i + 1] as number) + 29 * (data[4 * i + 2] as number)) >>
      8;
  return succeeded({ image: { data: grey, width, height }, scale });
}
