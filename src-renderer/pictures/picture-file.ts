/** For the system's own window in which files are chosen. Not every system knows the types of phones' pictures. */
export const PICTURE_TYPES =
  'image/jpeg,image/png,image/webp,image/heic,image/heif,image/avif,application/pdf,.heic,.heif,.hif,.avif,.pdf';

/** Whether a file is brought as a picture, by what the system calls it; what it is indeed is seen by its bytes. */
export function isPictureFile({ name, type }: File): boolean {
  // A drawing is no picture: it is laid under a view as lines.
  if (/^image\/(svg\+xml|vnd\.dxf)$/.test(type) || /\.(svg|dxf)$/i.test(name)) return false;
  return type.startsWith('image/') || type === 'application/pdf' || /\.(heic|heif|hif|avif|pdf)$/i.test(name);
}

export interface DecodedPicture {
  /** Upright, at full size. Whoever is given it closes it. */
  readonly bitmap: ImageBitmap;
  /** Of a PDF: how many pages it has. */
  readonly pages: number | undefined;
}

/** Which picture of a file is meant: of a PDF the page, from 1, and px of it where they are settled. */
export interface Which {
  readonly page?: number | undefined;
  readonly size?: readonly [number, number] | undefined;
}

/** Types that this program decodes by itself, and no browser or not every one. */
export type OwnType = 'image/heic' | 'application/pdf';

/** Whether this program decodes a file, and not the browser; of one that is typed by what it is, as the store does. */
export function decodesItself({ type }: Blob): boolean {
  return type === 'image/heic' || type === 'application/pdf';
}
