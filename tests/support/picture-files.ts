import { crc32, deflateSync } from 'node:zlib';

// Picture files made by hand, for tests and for the invented photos.

function chunk(kind: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

const PNG_MARK = Buffer.from('\x89PNG\r\n\x1a\n', 'latin1');

function header(width: number, height: number): Buffer {
  const data = Buffer.alloc(13);
  data.writeUInt32BE(width, 0);
  data.writeUInt32BE(height, 4);
  data.set([8, 2, 0, 0, 0], 8);
  return chunk('IHDR', data);
}

/** A PNG of red, green and blue bytes, row by row. Each row is reported as its difference from the pixel to the left. */
export function pngFile(
  width: number,
  height: number,
  rgb: Uint8Array,
  extra: readonly Buffer[] = [],
): Buffer {
  const rows = Buffer.alloc(height * (3 * width + 1));
  for (let y = 0; y < height; y += 1) {
    const at = y * (3 * width + 1);
    rows[at] = 1;
    for (let i = 0; i < 3 * width; i += 1) {
      const left = i >= 3 ? (rgb[y * 3 * width + i - 3] as number) : 0;
      rows[at + 1 + i] = (rgb[y * 3 * width + i] as number) - left;
    }
  }
  const data = chunk('IDAT', deflateSync(rows, { level: 9 }));
  return Buffer.concat([PNG_MARK, header(width, height), ...extra, data, chunk('IEND', Buffer.alloc(0))]);
}

/** A small PNG of one grey; different greys are different photos. */
export function greyPng(grey = 128, width = 8, height = 6): Buffer {
  return pngFile(width, height, new Uint8Array(3 * width * height).fill(grey));
}

/** One that says it is animated. */
export function animatedPng(): Buffer {
  return pngFile(2, 2, new Uint8Array(12), [chunk('acTL', Buffer.alloc(8))]);
}

/** A few bytes whose header claims a picture of any size: what a decompression bomb looks like. */
export function bombPng(width: number, height: number): Buffer {
  return Buffer.concat([
    PNG_MARK,
    header(width, height),
    chunk('IDAT', deflateSync(Buffer.alloc(1000))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** An EXIF segment of a JPEG that tells the orientation, in either order of bytes. */
export function exifSegment(orientation: number, little = false): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write(little ? 'II' : 'MM', 0, 'latin1');
  const short = (value: number, at: number) =>
    little ? tiff.writeUInt16LE(value, at) : tiff.writeUInt16BE(value, at);
  const long = (value: number, at: number) =>
    little ? tiff.writeUInt32LE(value, at) : tiff.writeUInt32BE(value, at);
  short(42, 2);
  long(8, 4);
  short(1, 8);
  short(0x0112, 10);
  short(3, 12);
  long(1, 14);
  short(orientation, 18);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** An APP1 segment as a phone writes it of its lens: the focal length of a camera of 36 by 24 mm that sees as much. */
export function lensSegment(equivalent: number): Buffer {
  const tiff = Buffer.alloc(44);
  tiff.write('MM', 0, 'latin1');
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  // The first directory has one entry, which says where the camera's own begins.
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(0x8769, 10);
  tiff.writeUInt16BE(4, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt32BE(26, 18);
  tiff.writeUInt16BE(1, 26);
  tiff.writeUInt16BE(0xa405, 28);
  tiff.writeUInt16BE(3, 30);
  tiff.writeUInt32BE(1, 32);
  tiff.writeUInt16BE(equivalent, 36);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

/** The headers of a JPEG without a picture worth decoding: enough for whoever reads headers only. */
export function jpegHeaders(width: number, height: number, segments: readonly Buffer[] = []): Buffer {
  const frame = Buffer.from([0xff, 0xc0, 0, 11, 8, 0, 0, 0, 0, 1, 1, 0x11, 0]);
  frame.writeUInt16BE(height, 5);
  frame.writeUInt16BE(width, 7);
  const scan = Buffer.from([0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 0x55, 0xaa]);
  return Buffer.concat([Buffer.from([0xff, 0xd8]), ...segments, frame, scan, Buffer.from([0xff, 0xd9])]);
}

/** The header of a WebP of the extended kind. */
export function webpHeader(width: number, height: number, animated = false): Buffer {
  const out = Buffer.alloc(40);
  out.write('RIFF', 0, 'latin1');
  out.writeUInt32LE(32, 4);
  out.write('WEBPVP8X', 8, 'latin1');
  out.writeUInt32LE(10, 16);
  out[20] = animated ? 2 : 0;
  out.writeUIntLE(width - 1, 24, 3);
  out.writeUIntLE(height - 1, 27, 3);
  return out;
}
