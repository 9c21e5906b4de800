import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import { decodePicture } from '../../pictures/index.ts';
import { BYTES_MAX } from './grey-picture.ts';

/** px of the longer side: teeth of a shaft that fills a third of the photo are still ten wide. */
const SIDE_MOST = 1600;
/** Bytes up to which a picture that is no larger than that is kept as it came. */
const BYTES_MOST = 1_500_000;
const QUALITY = 0.9;
/** What every program shows, so that it is kept as it is. */
const KEPT_AS_IT_IS = /^image\/(jpeg|png|webp)$/;

/**
 * What is kept of the photo of a shaft's end: the file as it came where that is small, else its picture as a JPEG, upright,
 * 1600 px at most. The failure ends a sentence that begins with the file's name.
 */
export async function photoToKeep(file: Blob): Promise<Outcome<Blob, string>> {
  if (file.size > BYTES_MAX) return failed('it is larger than a photo may be');
  const decoded = await decodePicture(file);
  if (!decoded.ok) return decoded;
  const whole = decoded.value.bitmap;
  const longer = Math.max(whole.width, whole.height);
  if (longer <= SIDE_MOST && file.size <= BYTES_MOST && KEPT_AS_IT_IS.test(file.type)) {
    whole.close();
    return succeeded(file);
  }
  const share = Math.min(1, SIDE_MOST / longer);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(whole.width * share));
  canvas.height = Math.max(1, Math.round(whole.height * share));
  const paint = canvas.getContext('2d');
  if (!paint) return failed('this window cannot draw');
  paint.imageSmoothingQuality = 'high';
  // A clear ground comes out black in a JPEG.
  paint.fillStyle = 'white';
  paint.fillRect(0, 0, canvas.width, canvas.height);
  paint.drawImage(whole, 0, 0, canvas.width, canvas.height);
  whole.close();
  const made = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  return made ? succeeded(made) : failed('it cannot be made smaller');
}
