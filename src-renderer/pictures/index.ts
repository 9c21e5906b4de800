// Pictures of all formats that a photo or a drawing comes in, decoded beside the page, and their originals as far as they are
// looked at closely.
export { decodePicture } from './decoding.ts';
export { Originals, type OriginalsLine, type Source } from './originals.ts';
export {
  type DecodedPicture,
  decodesItself,
  isPictureFile,
  PICTURE_TYPES,
  type Which,
} from './picture-file.ts';
export { startOriginals } from './start-originals.ts';
