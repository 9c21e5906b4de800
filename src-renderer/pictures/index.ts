// Pictures of all formats that a photo or a drawing comes in, decoded beside the page.
export { type DecodedPicture, decodePicture, decodesItself, type Which } from './decode-picture.ts';
export { isPictureFile, PICTURE_TYPES } from './picture-file.ts';
