import { DrawingRefused } from './job.ts';

/** Pixels in a millimetre of the drawing: 254 to the inch. */
const PIXELS_PER_MM = 10;
/** Pixels. More than any screen or printer needs, and what every reader still opens. */
const WIDEST = 8000;

/** A picture as pixels: 4 bytes each, red, green, blue and how far it covers, row by row from the top. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
}

/** An SVG whose letters are outlines, drawn `width` pixels wide. The library's own part is a native file for each system. */
async function rendered(svg: string, width: number, signal?: AbortSignal) {
  let renderAsync: typeof import('@resvg/resvg-js').renderAsync;
  try {
    ({ renderAsync } = await import('@resvg/resvg-js'));
  } catch {
    throw new DrawingRefused(
      'pictures cannot be made on this system, as a part of the program for it is missing; svg works',
    );
  }
  return renderAsync(
    svg,
    {
      font: { loadSystemFonts: false },
      fitTo: { mode: 'width', value: Math.min(WIDEST, width) },
      logLevel: 'off',
    },
    signal ?? null,
  );
}

/** A picture of an SVG whose letters are outlines, `width` mm wide, as a file's bytes. */
export async function pngOf(svg: string, width: number, signal?: AbortSignal): Promise<Uint8Array> {
  const image = await rendered(svg, Math.round(width * PIXELS_PER_MM), signal);
  return new Uint8Array(image.asPng());
}

/** The same as pixels, `width` of them wide. It is not called off: the library takes a signal once only, and a film has many pictures. */
export async function rasterOf(svg: string, width: number): Promise<Raster> {
  const { width: wide, height, pixels } = await rendered(svg, width);
  return { width: wide, height, pixels: new Uint8Array(pixels) };
}
