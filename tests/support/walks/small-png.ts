import { crc32, deflateSync } from 'node:zlib';

/** A picture's pixels: four bytes each, red, green, blue, opacity, row by row from the upper left. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}

const COLOURS_MOST = 256;

/** Sets red, green and blue apart by steps that the eye hardly tells: so many bits of each are kept. */
const keyOf = (r: number, g: number, b: number, bits: number) => {
  const drop = 8 - bits;
  return ((r >> drop) << 16) | ((g >> drop) << 8) | (b >> drop);
};

/** The palette and each pixel's place in it: the most frequent colours, every other one by the nearest of them. */
function paletted({ rgba }: Pixels): { palette: number[][]; at: Uint8Array } {
  const counts = new Map<number, { count: number; sum: [number, number, number] }>();
  const bits = 6;
  for (let i = 0; i < rgba.length; i += 4) {
    const [r, g, b] = [rgba[i] as number, rgba[i + 1] as number, rgba[i + 2] as number];
    const key = keyOf(r, g, b, bits);
    const entry = counts.get(key) ?? { count: 0, sum: [0, 0, 0] };
    entry.count += 1;
    entry.sum[0] += r;
    entry.sum[1] += g;
    entry.sum[2] += b;
    counts.set(key, entry);
  }
  const kept = [...counts].sort(([, a], [, b]) => b.count - a.count).slice(0, COLOURS_MOST);
  const palette = kept.map(([, { count, sum }]) => sum.map((value) => Math.round(value / count)));
  const place = new Map(kept.map(([key], i) => [key, i]));
  const nearest = (r: number, g: number, b: number): number => {
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (const [i, [pr = 0, pg = 0, pb = 0]] of palette.entries()) {
      const far = (r - pr) ** 2 + (g - pg) ** 2 + (b - pb) ** 2;
      if (far < least) {
        least = far;
        best = i;
      }
    }
    return best;
  };
  const at = new Uint8Array(rgba.length / 4);
  for (let i = 0; i < at.length; i += 1) {
    const [r, g, b] = [rgba[4 * i] as number, rgba[4 * i + 1] as number, rgba[4 * i + 2] as number];
    const key = keyOf(r, g, b, bits);
    let found = place.get(key);
    if (found === undefined) {
      found = nearest(r, g, b);
      place.set(key, found);
    }
    at[i] = found;
  }
  return { palette, at };
}

function chunk(kind: string, content: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), content]);
  const head = Buffer.alloc(4);
  head.writeUInt32BE(content.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([head, body, sum]);
}

/**
 * A PNG with a palette of 256 colours (ISO/IEC 15948: indexed colour, no filter), a third of one in full colour: a screen
 * has few colours and much of each.
 */
export function smallPng(pixels: Pixels): Uint8Array {
  const { width, height } = pixels;
  const { palette, at } = paletted(pixels);
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y += 1) rows.set(at.subarray(y * width, (y + 1) * width), y * (width + 1) + 1);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', header),
      chunk('PLTE', Buffer.from(palette.flat())),
      chunk('IDAT', deflateSync(rows, { level: 9 })),
      chunk('IEND', Buffer.alloc(0)),
    ]),
  );
}
