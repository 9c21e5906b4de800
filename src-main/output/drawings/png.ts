import { DrawingRefused } from './job.ts';

/** Pixels in a millimetre of the drawing: 254 to the inch. */
const PIXELS_PER_MM = 10;
/** Pixels. More than any screen or printer needs, and what every reader still opens. */
const WIDEST = 8000;

/** A picture of an SVG whose letters are outlines. The library's own part is a native file for each system. */
export async function pngOf(svg: string, width: number, signal?: AbortSignal): Promise<Uint8Array> {
  let renderAsync: typeof import('@resvg/resvg-js').renderAsync;
  try {
    ({ renderAsync } = await import('@resvg/resvg-js'));
  } catch {
    throw new DrawingRefused(
      'pictures cannot be made on this system, as a part of the program for it is missing; svg works',
    );
  }
  const image = await renderAsync(
    svg,
    {
      font: { loadSystemFonts: false },
      fitTo: { mode: 'width', value: Math.min(WIDEST, Math.round(width * PIXELS_PER_MM)) },
      logLevel: 'off',
    },
    signal ?? null,
  );
  return new Uint8Array(image.asPng());
}
