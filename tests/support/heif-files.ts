// Small HEIC and AVIF files. The two below were written by libheif's own encoder program (Debian's libheif-examples 1.15.1,
// x265 3.5 and aom 3.6.0; `heif-enc -q 60`, with `-A` for AVIF) from an invented picture of four quarters.

/** 96 by 64 px: red, green, blue and black quarters, row by row from the top left, with no word of any turning. */
const QUARTERS_AVIF = [
  'AAAAHGZ0eXBhdmlmAAAAAGF2aWZtaWYxbWlhZgAAAOptZXRhAAAAAAAAACFoZGxyAAAAAAAAAABwaWN0AAAAAAAAAAAAAAAAAAAA',
  'AA5waXRtAAAAAAABAAAAImlsb2MAAAAAREAAAQABAAAAAAEOAAEAAAAAAAAAbAAAACNpaW5mAAAAAAABAAAAFWluZmUCAAAAAAEA',
  'AGF2MDEAAAAAamlwcnAAAABLaXBjbwAAABNjb2xybmNseAACAAIABoAAAAAMYXYxQ4EADAAAAAAUaXNwZQAAAAAAAABgAAAAQAAA',
  'ABBwaXhpAAAAAAMICAgAAAAXaXBtYQAAAAAAAAABAAEEgYIDhAAAAHRtZGF0EgAKCRgZb/7BAgIGhDJdEyADDDDCgLRe82r5jIiq',
  'HJCe9Bma6P1vYVSqURZrw7Lv1jaNFDTZlpZG7vNe4J/I4MfiGS7lH+2bT18gNRS8+9LeD+Y+NHbyLX8PqGgiewEq3veJNNbGoyGh',
  'Ih5A',
];

/**
 * The same picture as a phone's chip holds it that was stood on end: 64 by 96 px, turned a quarter counter-clockwise. Its EXIF
 * block says orientation 6, by which a JPEG would be turned upright; the properties of its picture say nothing.
 */
const ON_END_HEIC = [
  'AAAAHGZ0eXBoZWljAAAAAG1pZjFoZWljbWlhZgAAAYBtZXRhAAAAAAAAACFoZGxyAAAAAAAAAABwaWN0AAAAAAAAAAAAAAAAAAAA',
  'AA5waXRtAAAAAAABAAAANGlsb2MAAAAAREAAAgABAAAAAAGkAAEAAAAAAAAA1AACAAAAAAJ4AAEAAAAAAAAAHgAAADhpaW5mAAAA',
  'AAACAAAAFWluZmUCAAAAAAEAAGh2YzEAAAAAFWluZmUCAAABAAIAAEV4aWYAAAAAv2lwcnAAAAChaXBjbwAAAHVodmNDAQNwAAAA',
  'AAAAAAAAHvAA/P34+AAADwMgAAEAGEABDAH//wNwAAADAJAAAAMAAAMAHroCQCEAAQAoQgEBA3AAAAMAkAAAAwAAAwAeoCCBhZbq',
  'SSmubAgAAAMACAAAAwAIQCIAAQAHRAHBcrAiQAAAABRpc3BlAAAAAAAAAEAAAABgAAAAEHBpeGkAAAAAAwgICAAAABZpcG1hAAAA',
  'AAAAAAEAAQOBAoMAAAAaaXJlZgAAAAAAAAAOY2RzYwACAAEAAQAAAPptZGF0AAAA0CgBrwngITl1X1/5lX//+mbX//ycx1n//9qw',
  'aHf0+RN/7mv3VCiP/85KID2Oe7/lGJJRNq256VAIkolaU7dmufrW6DuzoyBQljVoAUADB+9GuNI7bHk69HkbP3UC793EfQYT5+Vo',
  'XdCnY/OTq3pLp4rt3Pt2v+yyEUyoUzSZfb3sWi+4elPKX84w23tkitWe8RBZDzVfmJp8Y9vBvfcY3uHG9MUeUjj/xdMaDjDb0dmr',
  '2V05Rmr5YYKwNd6pcIpNY4KOILg/JT4XnxjOc/9iAlsAAAAATU0AKgAAAAgAAQESAAMAAAABAAYAAAAAAAA=',
];

const bytesOf = (lines: readonly string[]) => Buffer.from(lines.join(''), 'base64');

interface Turning {
  /** Quarter turns counter-clockwise. */
  readonly turns?: number;
  /** The axis of a mirror, as `imir` numbers it. */
  readonly mirror?: 0 | 1;
}

/** The place of a box's size, looked for by its kind. */
function boxAt(file: Buffer, kind: string): number {
  const at = file.indexOf(kind, 0, 'latin1') - 4;
  if (at < 0) throw new Error(`there is no ${kind} in this file`);
  return at;
}

/**
 * A file whose picture is to be turned or mirrored, which its encoder leaves out: one more property for its one picture, by
 * ISO/IEC 23008-12. The boxes around it grow, and what lies behind them moves on.
 */
function withTurning(file: Buffer, { turns, mirror }: Turning): Buffer {
  const properties: Buffer[] = [];
  const add = (kind: string, value: number) =>
    properties.push(Buffer.from([0, 0, 0, 9, ...Buffer.from(kind, 'latin1'), value]));
  if (turns !== undefined) add('irot', turns);
  if (mirror !== undefined) add('imir', mirror);
  const ipco = boxAt(file, 'ipco');
  const ipma = boxAt(file, 'ipma');
  const ipcoEnd = ipco + file.readUInt32BE(ipco);
  const ipmaEnd = ipma + file.readUInt32BE(ipma);
  let had = 0;
  for (let at = ipco + 8; at < ipcoEnd; at += file.readUInt32BE(at)) had += 1;
  const out = Buffer.from(file);
  const grown = properties.reduce((sum, each) => sum + each.length, 0);
  const more = grown + properties.length;
  const grow = (box: number, by: number) => out.writeUInt32BE(out.readUInt32BE(box) + by, box);
  grow(ipco, grown);
  grow(ipma, properties.length);
  grow(boxAt(file, 'iprp'), more);
  grow(boxAt(file, 'meta'), more);
  // Version, flags, number of items, item: then how many properties it has.
  const count = ipma + 8 + 4 + 4 + 2;
  out.writeUInt8(out.readUInt8(count) + properties.length, count);
  // Where the items lie, counted from the file's beginning: 44 40 says four bytes each of offset, length and base.
  const iloc = boxAt(file, 'iloc');
  const items = out.readUInt16BE(iloc + 14);
  for (let item = 0; item < items; item += 1) grow(iloc + 16 + item * 18 + 4, more);
  const essential = properties.map((_, i) => 0x80 | (had + 1 + i));
  return Buffer.concat([
    out.subarray(0, ipcoEnd),
    ...properties,
    out.subarray(ipcoEnd, ipmaEnd),
    Buffer.from(essential),
    out.subarray(ipmaEnd),
  ]);
}

/** A HEIC picture with orientation 6 in its EXIF block; without turning it stands as the chip held it. */
export function heicFile(turning: Turning = {}): Buffer {
  return withTurning(bytesOf(ON_END_HEIC), turning);
}

/** An AVIF picture of the four quarters. */
export function avifFile(turning: Turning = {}): Buffer {
  return withTurning(bytesOf(QUARTERS_AVIF), turning);
}

/** The same with another size in its header than its picture has: px. */
export function claiming(file: Buffer, width: number, height: number): Buffer {
  const out = Buffer.from(file);
  const ispe = boxAt(file, 'ispe');
  out.writeUInt32BE(width, ispe + 12);
  out.writeUInt32BE(height, ispe + 16);
  return out;
}
