import { crc32, inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { type Raster, rasterOf } from '../../../src-main/output/drawings/png.ts';
import { ApngWriter } from '../../../src-main/output/film/apng.ts';
import { filmPreview, makeFilm } from '../../../src-main/output/film/film.ts';
import { demonstration } from '../../support/demonstration-files.ts';

// Source: W3C, Portable Network Graphics (PNG) Specification (Third Edition): 5.3 layout of chunks, 11.3.6 acTL, fcTL, fdAT.

interface Chunk {
  readonly type: string;
  readonly data: Buffer;
}

function chunksIn(bytes: Uint8Array): Chunk[] {
  const file = Buffer.from(bytes);
  expect([...file.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  const chunks: Chunk[] = [];
  let at = 8;
  while (at < file.length) {
    const length = file.readUInt32BE(at);
    expect(file.readUInt32BE(at + 8 + length), 'checksum').toBe(
      crc32(file.subarray(at + 4, at + 8 + length)),
    );
    chunks.push({
      type: file.toString('latin1', at + 4, at + 8),
      data: file.subarray(at + 8, at + 8 + length),
    });
    at += 12 + length;
  }
  expect(at).toBe(file.length);
  return chunks;
}

/** The order of chunks, their numbers and the places of frames, as the standard asks for them. */
function expectAnimated(chunks: readonly Chunk[], frames: number, width: number, height: number): void {
  expect(chunks.map(({ type }) => type).join(' ')).toBe(
    `IHDR acTL fcTL IDAT${' fcTL fdAT'.repeat(frames - 1)} IEND`,
  );
  const [header, control] = chunks as [Chunk, Chunk];
  expect([header.data.readUInt32BE(0), header.data.readUInt32BE(4)]).toEqual([width, height]);
  expect([control.data.readUInt32BE(0), control.data.readUInt32BE(4)], 'frames, and no end').toEqual([
    frames,
    0,
  ]);
  const numbered = chunks.filter(({ type }) => type === 'fcTL' || type === 'fdAT');
  expect(numbered.map(({ data }) => data.readUInt32BE(0))).toEqual(numbered.map((_, i) => i));
  const controls = chunks.filter(({ type }) => type === 'fcTL').map(({ data }) => data);
  expect([4, 8, 12, 16].map((at) => controls[0]?.readUInt32BE(at))).toEqual([width, height, 0, 0]);
  for (const data of controls) {
    const [w, h, x, y] = [4, 8, 12, 16].map((at) => data.readUInt32BE(at)) as [
      number,
      number,
      number,
      number,
    ];
    expect(Math.min(w, h)).toBeGreaterThan(0);
    expect(x + w).toBeLessThanOrEqual(width);
    expect(y + h).toBeLessThanOrEqual(height);
    expect(data.readUInt16BE(20) / data.readUInt16BE(22), 'seconds').toBeCloseTo(1 / 12, 9);
  }
}

/**
 * The pictures of an animated PNG as a reader puts them together: each frame laid over what is there. Lines here are all of
 * filter 0 (9.2), and a pixel either covers or lets through.
 */
function picturesIn(bytes: Uint8Array, width: number, height: number): Buffer[] {
  const chunks = chunksIn(bytes);
  const canvas = Buffer.alloc(4 * width * height);
  return chunks.flatMap(({ type, data }, i) => {
    if (type !== 'fcTL') return [];
    const [w, h, x, y] = [4, 8, 12, 16].map((at) => data.readUInt32BE(at)) as [
      number,
      number,
      number,
      number,
    ];
    expect([data[24], data[25]], 'left standing, laid over').toEqual([0, 1]);
    const next = chunks[i + 1] as Chunk;
    const lines = inflateSync(next.type === 'fdAT' ? next.data.subarray(4) : next.data);
    expect(lines.length).toBe(h * (1 + 4 * w));
    for (let row = 0; row < h; row += 1) {
      const start = row * (1 + 4 * w);
      expect(lines[start]).toBe(0);
      for (let column = 0; column < w; column += 1) {
        const from = start + 1 + 4 * column;
        const cover = lines[from + 3] as number;
        if (cover === 0) continue;
        if (cover !== 255) throw new Error(`a pixel that covers by ${cover}`);
        lines.copy(canvas, 4 * ((y + row) * width + x + column), from, from + 4);
      }
    }
    return [Buffer.from(canvas)];
  });
}

function painted(width: number, height: number, dot: number): Raster {
  const pixels = new Uint8Array(4 * width * height).fill(255);
  pixels.set([200, 30, 40, 255], 4 * dot);
  return { width, height, pixels };
}

describe('the writer of animated pictures', () => {
  test('gives back every picture, one that is like the one before too', () => {
    const pictures = [3, 3, 17, 0, 34].map((dot) => painted(7, 5, dot));
    const writer = new ApngWriter(pictures.length, 12);
    for (const picture of pictures) writer.add(picture);
    const bytes = writer.end();
    expectAnimated(chunksIn(bytes), 5, 7, 5);
    expect(picturesIn(bytes, 7, 5).map((picture) => [...picture])).toEqual(
      pictures.map(({ pixels }) => [...pixels]),
    );
  });
});

describe('a film', () => {
  const job = {
    document: demonstration('hairpins-box-too-low'),
    car: 'Open two-seater',
    unit: 'in',
    fraction: 16,
    over: 'bump',
    width: 480,
    seconds: 2,
  } as const;

  test('has its pictures, the first and the middle one as they are shown before it is made', async () => {
    const heard: string[] = [];
    const bytes = await makeFilm({
      ...job,
      progress: (done, of, what) => heard.push(`${what} ${done} of ${of}`),
    });
    expect(heard).toEqual(Array.from({ length: 24 }, (_, i) => `Picture ${i + 1} of 24`));
    const stills = await Promise.all(filmPreview(job).map((svg) => rasterOf(svg, 480)));
    const [top, foot] = stills as [Raster, Raster];
    expectAnimated(chunksIn(bytes), 24, 480, top.height);
    const pictures = picturesIn(bytes, 480, top.height);
    expect(pictures).toHaveLength(24);
    expect(pictures[0]?.equals(top.pixels)).toBe(true);
    expect(pictures[12]?.equals(foot.pixels)).toBe(true);
    for (let i = 1; i < 24; i += 1)
      expect(pictures[i]?.equals(pictures[i - 1] as Buffer), `${i}`).toBe(false);
  });

  test('is called off between two pictures', async () => {
    const off = new AbortController();
    let done = 0;
    const made = makeFilm({
      ...job,
      signal: off.signal,
      progress: () => {
        done += 1;
        if (done === 2) off.abort(new Error('called off'));
      },
    });
    await expect(made).rejects.toThrow('called off');
    expect(done).toBe(2);
  });

  test('two cars have a line each, and the one that is compared with is drawn over the other', () => {
    const alone = filmPreview(job)[0] as string;
    const both = filmPreview({
      ...job,
      document: demonstration('hairpins-side-steer'),
      beside: job.document,
    })[0] as string;
    expect(both.match(/stroke-dasharray/g)?.length).toBeGreaterThan(
      alone.match(/stroke-dasharray/g)?.length ?? 0,
    );
  });
});
