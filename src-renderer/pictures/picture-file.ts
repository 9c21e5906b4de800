/** For the system's own window in which files are chosen. Not every system knows the types of phones' pictures. */
export const PICTURE_TYPES =
  'image/jpeg,image/png,image/webp,image/heic,image/heif,image/avif,application/pdf,.heic,.heif,.hif,.avif,.pdf';

/** Whether a file is brought as a picture, by what the system calls it; what it is indeed is seen by its bytes. */
export function isPictureFile({ name, type }: File): boolean {
  // A drawing is no picture: it is laid under a view as lines.
  if (/^image\/(svg\+xml|vnd\.dxf)$/.test(type) || /\.(svg|dxf)$/i.test(name)) return false;
  return type.startsWith('image/') || type === 'application/pdf' || /\.(heic|heif|hif|avif|pdf)$/i.test(name);
}
