import { crc32 } from 'node:zlib';
import { encode } from 'fast-png';
import type { Raster } from '../drawings/png.ts';

/*
 * An animated PNG: a PNG whose first frame every reader shows, and further frames for those that play them. Source: W3C,
 * Portable Network Graphics Specification (Third Edition), 4.9 and 11.3.6 (acTL, fcTL, fdAT). The pixels of each frame are
 * encoded by the library; here its data are put into the chunks of frames.
 */

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Of fcTL: the frame stays when the next comes, and its pixels are laid over what is there. */
const KEEP = 0;
const OVER = 1;
/** Of the compressor, 0 to 9. */
const LEVEL = 9;

function chunk(type: string, ...parts: readonly Uint8Array[]): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), ...parts]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(body.length - 4, 0);
  body.copy(framed, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}

/** The data of the chunks of one type in a PNG. */
function chunksOf(png: Uint8Array, type: string): Buffer[] {
  const bytes = Buffer.from(png.buffer, png.byteOffset, png.byteLength);
  const found: Buffer[] = [];
  for (let at = SIGNATURE.length; at < bytes.length; at += bytes.readUInt32BE(at) + 12)
    if (bytes.toString('latin1', at + 4, at + 8) === type)
      found.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  return found;
}

/** A rectangle of a picture: from x, y, as wide and high as it says. */
interface Cut {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/**
 * What of a picture differs from the one before: the least rectangle that holds it, pixels that are alike clear, so that what
 * was there shows through. Of two pictures that are alike one pixel, as a frame has at least one.
 */
function changed({ width, height, pixels }: Raster, before: Raster): Cut {
  const now = new Uint32Array(pixels.buffer, pixels.byteOffset, width * height);
  const then = new Uint32Array(before.pixels.buffer, before.pixels.byteOffset, width * height);
  let [left, top, right, bottom] = [width, height, -1, -1];
  for (let i = 0; i < now.length; i += 1) {
    if (now[i] === then[i]) continue;
    const x = i % width;
    const y = (i - x) / width;
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < top) top = y;
    bottom = y;
  }
  if (right < 0) return { x: 0, y: 0, width: 1, height: 1, data: new Uint8Array(4) };
  const wide = right - left + 1;
  const high = bottom - top + 1;
  const data = new Uint8Array(4 * wide * high);
  const cut = new Uint32Array(data.buffer);
  for (let y = 0; y < high; y += 1)
    for (let x = 0; x < wide; x += 1) {
      const at = (top + y) * width + left + x;
      if (now[at] !== then[at]) cut[y * wide + x] = now[at] as number;
    }
  return { x: left, y: top, width: wide, height: high, data };
}

const numbers = (...values: readonly number[]) => {
  const bytes = Buffer.alloc(4 * values.length);
  values.forEach((value, i) => void bytes.writeUInt32BE(value, 4 * i));
  return bytes;
};

/**
 * Writes an animated PNG frame by frame; it plays without end. All pictures are of one size and nowhere clear: the pixels of
 * a later frame that are alike are left out, which only holds where nothing shines through.
 */
export class ApngWriter {
  readonly #frames: number;
  readonly #delay: readonly [count: number, perSecond: number];
  readonly #chunks: Buffer[] = [Buffer.from(SIGNATURE)];
  #before: Raster | undefined;
  #sequence = 0;

  /** `frames` of them will come, `perSecond` of them in a second. */
  constructor(frames: number, perSecond: number) {
    this.#frames = frames;
    this.#delay = [1, perSecond];
  }

  add(picture: Raster): void {
    const before = this.#before;
    const cut: Cut = before
      ? changed(picture, before)
      : { x: 0, y: 0, width: picture.width, height: picture.height, data: picture.pixels };
    const png = encode(
      { width: cut.width, height: cut.height, data: cut.data, channels: 4, depth: 8 },
      { zlib: { level: LEVEL } },
    );
    const data = Buffer.concat(chunksOf(png, 'IDAT'));
    if (!before)
      this.#chunks.push(chunk('IHDR', ...chunksOf(png, 'IHDR')), chunk('acTL', numbers(this.#frames, 0)));
    const control = Buffer.concat([
      numbers(this.#next(), cut.width, cut.height, cut.x, cut.y),
      Buffer.from([0, this.#delay[0], 0, this.#delay[1], KEEP, OVER]),
    ]);
    this.#chunks.push(chunk('fcTL', control));
    this.#chunks.push(before ? chunk('fdAT', numbers(this.#next()), data) : chunk('IDAT', data));
    this.#before = picture;
  }

  #next(): number {
    this.#sequence += 1;
    return this.#sequence - 1;
  }

  /** The whole file's bytes; once, after the last frame. */
  end(): Uint8Array {
    return new Uint8Array(Buffer.concat([...this.#chunks, chunk('IEND')]));
  }
}
