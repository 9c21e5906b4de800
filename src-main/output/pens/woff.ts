import { inflateSync } from 'node:zlib';

const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const SFNT_HEADER = 12;
const SFNT_ENTRY = 16;

/** Tables begin at whole fours of bytes. */
const padded = (length: number) => (length + 3) & ~3;

/**
 * The OpenType font inside a WOFF file: its tables, each deflated or as it is, put behind a plain directory again.
 * The PDF library reads WOFF too, but inflates it itself, which takes most of the time of a print.
 * Source: W3C, WOFF File Format 1.0, sections 3 to 5.
 */
export function unpackWoff(woff: Buffer): Buffer {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new Error('not a WOFF font');
  const count = woff.readUInt16BE(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = WOFF_HEADER + i * WOFF_ENTRY;
    const [offset, packed, length] = [
      woff.readUInt32BE(at + 4),
      woff.readUInt32BE(at + 8),
      woff.readUInt32BE(at + 12),
    ];
    const data = woff.subarray(offset, offset + packed);
    return {
      tag: woff.subarray(at, at + 4),
      checksum: woff.readUInt32BE(at + 16),
      data: packed < length ? inflateSync(data) : data,
    };
  });
  const head = SFNT_HEADER + count * SFNT_ENTRY;
  const font = Buffer.alloc(tables.reduce((sum, { data }) => sum + padded(data.length), head));
  woff.copy(font, 0, 4, 8);
  const power = Math.floor(Math.log2(count));
  font.writeUInt16BE(count, 4);
  font.writeUInt16BE(16 * 2 ** power, 6);
  font.writeUInt16BE(power, 8);
  font.writeUInt16BE(16 * count - 16 * 2 ** power, 10);
  let at = head;
  tables.forEach(({ tag, checksum, data }, i) => {
    const entry = SFNT_HEADER + i * SFNT_ENTRY;
    tag.copy(font, entry);
    font.writeUInt32BE(checksum, entry + 4);
    font.writeUInt32BE(at, entry + 8);
    font.writeUInt32BE(data.length, entry + 12);
    data.copy(font, at);
    at += padded(data.length);
  });
  return font;
}
