// Pictures of all formats that a photo or a drawing comes in, decoded beside the page.
export { type DecodedPicture, decodePicture, decodesItself, type Which } from './decode-picture.ts';
export { HELD_PIXELS_MOST, HeldOriginals } from './held-originals.ts';
export { Originals, type OriginalsLine, type Source } from './originals.ts';
export { isPictureFile, PICTURE_TYPES } from './picture-file.ts';
export { startOriginals } from './start-originals.ts';
