import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';

/*
 * The header of a still picture in the base media format (HEIC, AVIF): ISO/IEC 14496-12 for the boxes, ISO/IEC 23008-12 for
 * items and their properties. Of the items the primary one is the picture; its properties `ispe`, `clap` and `irot`
 * say how large it is and how it is cropped and turned, which a reader does by itself. An EXIF orientation beside them only
 * repeats that, and is not followed (from memory of the same standard; the readers that are used here do as much).
 */

export interface HeifHeader {
  /** px, upright. */
  readonly width: number;
  readonly height: number;
}

interface Box {
  readonly kind: string;
  /** Of its content. */
  readonly from: number;
  readonly to: number;
}

const TRUNCATED = 'it breaks off before its end';
const DAMAGED = 'it is damaged: its header makes no sense';
/** Boxes, items and properties in one list: a phone's picture in tiles has a hundred, a hostile file any number. */
const LISTED_MOST = 4096;
/** Stretches of the file that items lie in, all together. */
const STRETCHES_MOST = 65_536;

class Unreadable extends Error {}

/** The boxes that a stretch of the file is made of. */
function* boxesIn(bytes: Buffer, from: number, to: number): Generator<Box> {
  let at = from;
  for (let count = 0; at + 8 <= to; count += 1) {
    if (count > LISTED_MOST) throw new Unreadable(DAMAGED);
    const short = bytes.readUInt32BE(at);
    const kind = bytes.toString('latin1', at + 4, at + 8);
    let head = 8;
    let length = short;
    if (short === 1) {
      if (at + 16 > to) throw new Unreadable(TRUNCATED);
      length = Number(bytes.readBigUInt64BE(at + 8));
      head = 16;
    } else if (short === 0) length = to - at;
    if (length < head) throw new Unreadable(DAMAGED);
    if (at + length > to) throw new Unreadable(TRUNCATED);
    yield { kind, from: at + head, to: at + length };
    at += length;
  }
}

function inside(bytes: Buffer, box: Box, kind: string, skip = 0): Box {
  for (const each of boxesIn(bytes, box.from + skip, box.to)) if (each.kind === kind) return each;
  throw new Unreadable(DAMAGED);
}

/** Numbers of whole bytes, read one after another. */
class Reader {
  readonly #bytes: Buffer;
  readonly #end: number;
  #at: number;

  constructor(bytes: Buffer, { from, to }: Box) {
    this.#bytes = bytes;
    this.#at = from;
    this.#end = to;
  }

  next(size: number): number {
    if (this.#at + size > this.#end) throw new Unreadable(DAMAGED);
    let value = 0;
    for (let i = 0; i < size; i += 1) value = value * 256 + this.#bytes.readUInt8(this.#at + i);
    this.#at += size;
    return value;
  }
}

/** Places among the properties that belong to an item, in their order. */
function propertiesOf(bytes: Buffer, ipma: Box, item: number): number[] {
  const read = new Reader(bytes, ipma);
  const version = read.next(1);
  const wide = (read.next(3) & 1) === 1;
  const entries = read.next(4);
  for (let entry = 0; entry < Math.min(entries, LISTED_MOST); entry += 1) {
    const id = read.next(version < 1 ? 2 : 4);
    const count = read.next(1);
    const places = Array.from({ length: count }, () => (wide ? read.next(2) & 0x7fff : read.next(1) & 0x7f));
    if (id === item) return places;
  }
  throw new Unreadable(DAMAGED);
}

/** Whether all that the items say of where they lie is within the file. */
function isWhole(bytes: Buffer, iloc: Box): boolean {
  const read = new Reader(bytes, iloc);
  const version = read.next(1);
  read.next(3);
  const [sizes, more] = [read.next(1), read.next(1)];
  const [offsetSize, lengthSize, baseSize] = [sizes >> 4, sizes & 15, more >> 4];
  const indexSize = version > 0 ? more & 15 : 0;
  const items = read.next(version < 2 ? 2 : 4);
  let stretches = 0;
  for (let item = 0; item < Math.min(items, LISTED_MOST); item += 1) {
    read.next(version < 2 ? 2 : 4);
    const inFile = version === 0 || (read.next(2) & 15) === 0;
    read.next(2);
    const base = read.next(baseSize);
    const extents = read.next(2);
    // A stretch may be said in no bytes at all, so that few bytes could claim any number of them.
    stretches += extents;
    if (stretches > STRETCHES_MOST) throw new Unreadable(DAMAGED);
    for (let extent = 0; extent < extents; extent += 1) {
      read.next(indexSize);
      const offset = read.next(offsetSize);
      const length = read.next(lengthSize);
      if (inFile && base + offset + length > bytes.length) return false;
    }
  }
  return true;
}

function primaryItem(bytes: Buffer, pitm: Box): number {
  const read = new Reader(bytes, pitm);
  const version = read.next(1);
  read.next(3);
  return read.next(version === 0 ? 2 : 4);
}

function headerIn(bytes: Buffer): Outcome<HeifHeader, string> {
  const file: Box = { kind: '', from: 0, to: bytes.length };
  const meta = inside(bytes, file, 'meta');
  const item = primaryItem(bytes, inside(bytes, meta, 'pitm', 4));
  const iprp = inside(bytes, meta, 'iprp', 4);
  const { from, to } = inside(bytes, iprp, 'ipco');
  const properties = [...boxesIn(bytes, from, to)];
  let [width, height] = [0, 0];
  for (const place of propertiesOf(bytes, inside(bytes, iprp, 'ipma'), item)) {
    const property = properties[place - 1];
    if (!property) continue;
    const read = new Reader(bytes, property);
    if (property.kind === 'ispe') {
      read.next(4);
      width = read.next(4);
      height = read.next(4);
    } else if (property.kind === 'clap') {
      const [across, acrossOf, down, downOf] = [read.next(4), read.next(4), read.next(4), read.next(4)];
      if (acrossOf === 0 || downOf === 0) return failed(DAMAGED);
      width = Math.min(width, Math.round(across / acrossOf));
      height = Math.min(height, Math.round(down / downOf));
    } else if (property.kind === 'irot') {
      // Quarter turns.
      if ((read.next(1) & 1) === 1) [width, height] = [height, width];
    }
  }
  if (!isWhole(bytes, inside(bytes, meta, 'iloc', 4))) return failed(TRUNCATED);
  return succeeded({ width, height });
}

/** What the header of a HEIC or AVIF file says. The failure is the end of a sentence that begins with the file's name. */
export function heifHeader(bytes: Buffer): Outcome<HeifHeader, string> {
  try {
    return headerIn(bytes);
  } catch (error) {
    if (error instanceof Unreadable) return failed(error.message);
    throw error;
  }
}

/** The family that a file says it is of first, and the others that it may be read as; empty if it says none. */
export function heifBrands(bytes: Buffer): string[] {
  if (bytes.length < 16 || bytes.toString('latin1', 4, 8) !== 'ftyp') return [];
  const end = Math.min(bytes.readUInt32BE(0), bytes.length, 256);
  const brands = [bytes.toString('latin1', 8, 12)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(bytes.toString('latin1', at, at + 4));
  return brands;
}
