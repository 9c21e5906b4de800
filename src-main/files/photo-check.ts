import { PHOTO_SIDE_MAX } from '../../shared-math/layout/index.ts';
import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';
import { fileKind } from '../../shared-math/outside/file-kinds.ts';
import { heifBrands, heifHeader } from './heif-header.ts';

/** Bytes of a photo's file; px of its picture. A phone's 50-megapixel photo is within both. */
export const PHOTO_BYTES_MAX = 40_000_000;
const PIXELS_MAX = 120_000_000;

/** What may be brought in, as a person reads it. */
const TAKEN = 'bring a JPEG, PNG, WebP, HEIC, AVIF or PDF';

export interface CheckedPhoto {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp' | 'image/heic' | 'image/avif' | 'application/pdf';
  /** px, upright; undefined of a PDF, whose pages have no px before they are drawn. */
  readonly width: number | undefined;
  readonly height: number | undefined;
  /** As EXIF counts: 1 upright, 5 to 8 lying on a side. HEIC and AVIF turn by themselves, whatever their EXIF says. */
  readonly orientation: number;
}

type Check = Outcome<CheckedPhoto, string>;

const TRUNCATED = 'it breaks off before its end';
const text = (bytes: Buffer, at: number, length: number) => bytes.toString('latin1', at, at + length);

function sized(type: CheckedPhoto['type'], width: number, height: number, orientation = 1): Check {
  if (width < 1 || height < 1) return failed('its picture has no size');
  if (width > PHOTO_SIDE_MAX || height > PHOTO_SIDE_MAX || width * height > PIXELS_MAX)
    return failed(
      `its picture is ${width} by ${height} pixels, more than ${PIXELS_MAX / 1e6} million or ${PHOTO_SIDE_MAX} on a side`,
    );
  const lying = orientation >= 5;
  return succeeded({ type, width: lying ? height : width, height: lying ? width : height, orientation });
}

/** The orientation that an EXIF block tells, 1 where it tells none that makes sense. */
function exifOrientation(block: Buffer): number {
  if (text(block, 0, 6) !== 'Exif\0\0' || block.length < 14) return 1;
  const tiff = block.subarray(6);
  const little = text(tiff, 0, 2) === 'II';
  const short = (at: number) => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const long = (at: number) => (little ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at));
  const directory = long(4);
  if (directory + 2 > tiff.length) return 1;
  for (let entry = 0; entry < short(directory); entry += 1) {
    const at = directory + 2 + 12 * entry;
    if (at + 12 > tiff.length) return 1;
    if (short(at) === 0x0112) {
      const given = short(at + 8);
      return given >= 1 && given <= 8 ? given : 1;
    }
  }
  return 1;
}

function checkJpeg(bytes: Buffer): Check {
  let orientation = 1;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return failed('it is damaged: a JPEG segment does not begin where it should');
    const marker = bytes[at + 1] as number;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    const length = bytes.readUInt16BE(at + 2);
    if (length < 2 || at + 2 + length > bytes.length) return failed(TRUNCATED);
    if (marker === 0xe1) orientation = exifOrientation(bytes.subarray(at + 4, at + 2 + length));
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) {
      if (length < 8) return failed('it is damaged: its size is missing');
      const size = sized('image/jpeg', bytes.readUInt16BE(at + 7), bytes.readUInt16BE(at + 5), orientation);
      // Some programs leave a little behind the end; without any end it was cut off.
      return size.ok && bytes.lastIndexOf(Buffer.from([0xff, 0xd9])) < at ? failed(TRUNCATED) : size;
    }
    at += 2 + length;
  }
  return failed(TRUNCATED);
}

function checkPng(bytes: Buffer): Check {
  if (bytes.length < 33) return failed(TRUNCATED);
  if (text(bytes, 12, 4) !== 'IHDR') return failed('it is damaged: its size is missing');
  // The size first: whatever else is wrong with it, a picture too large is reported as that.
  const size = sized('image/png', bytes.readUInt32BE(16), bytes.readUInt32BE(20));
  if (!size.ok) return size;
  let orientation = 1;
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    const kind = text(bytes, at + 4, 4);
    if (kind === 'acTL') return failed('it is animated; take a single picture');
    if (at + 12 + length > bytes.length) return failed(TRUNCATED);
    if (kind === 'eXIf')
      orientation = exifOrientation(
        Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), bytes.subarray(at + 8, at + 8 + length)]),
      );
    if (kind === 'IEND')
      return sized('image/png', bytes.readUInt32BE(16), bytes.readUInt32BE(20), orientation);
    at += 12 + length;
  }
  return failed(TRUNCATED);
}

function checkWebp(bytes: Buffer): Check {
  if (bytes.length < 30) return failed(TRUNCATED);
  const kind = text(bytes, 12, 4);
  let size: Check = failed('it is damaged: its size is missing');
  if (kind === 'VP8X') {
    size = sized('image/webp', bytes.readUIntLE(24, 3) + 1, bytes.readUIntLE(27, 3) + 1);
    if (size.ok && ((bytes[20] as number) & 0x02) !== 0)
      return failed('it is animated; take a single picture');
  } else if (kind === 'VP8 ')
    size = sized('image/webp', bytes.readUInt16LE(26) & 0x3fff, bytes.readUInt16LE(28) & 0x3fff);
  else if (kind === 'VP8L') {
    const bits = bytes.readUInt32LE(21);
    size = sized('image/webp', (bits & 0x3fff) + 1, ((bits >>> 14) & 0x3fff) + 1);
  }
  if (!size.ok) return size;
  return bytes.readUInt32LE(4) + 8 > bytes.length ? failed(TRUNCATED) : size;
}

function checkHeif(bytes: Buffer, type: 'image/heic' | 'image/avif'): Check {
  const header = heifHeader(bytes);
  return header.ok ? sized(type, header.value.width, header.value.height) : header;
}

/** Bytes of its end in which a PDF says where its list of contents begins; some programs leave a little behind it. */
const PDF_END = 2048;

function checkPdf(bytes: Buffer): Check {
  if (!text(bytes, Math.max(0, bytes.length - PDF_END), PDF_END).includes('%%EOF')) return failed(TRUNCATED);
  return succeeded({ type: 'application/pdf', width: undefined, height: undefined, orientation: 1 });
}

/** Of a still picture in the base media format: which one, by the families that it says it is of. */
function heifType(bytes: Buffer): 'image/heic' | 'image/avif' | undefined {
  const brands = heifBrands(bytes);
  if (/^(avis|hevc|hevx|msf1)$/.test(brands[0] ?? '')) return undefined;
  if (brands.some((brand) => brand === 'avif')) return 'image/avif';
  return brands.some((brand) => /^(hei[cxms]|mif[12])$/.test(brand)) ? 'image/heic' : undefined;
}

/**
 * Looks at a photo's file without decoding it: what it is by its first bytes, how large its picture is by its header,
 * whether it is whole and one picture. The failure is the end of a sentence that begins with the file's name.
 */
export function checkPhoto(content: Uint8Array): Check {
  const bytes = Buffer.from(content.buffer, content.byteOffset, content.byteLength);
  if (bytes.length > PHOTO_BYTES_MAX)
    return failed(`it is larger than ${PHOTO_BYTES_MAX / 1e6} million bytes`);
  if (bytes.length === 0) return failed('it is empty');
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return checkJpeg(bytes);
  if (text(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return checkPng(bytes);
  if (text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 4) === 'WEBP') return checkWebp(bytes);
  if (text(bytes, 0, 1024).includes('%PDF-')) return checkPdf(bytes);
  const heif = heifType(bytes);
  if (heif) return checkHeif(bytes, heif);
  const kind = fileKind(bytes, bytes);
  return failed(
    kind === undefined ? `it is no picture that is known here; ${TAKEN}` : `it is ${kind}; ${TAKEN}`,
  );
}
