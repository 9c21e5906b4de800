/// <reference path="./exifr-lite.d.ts" />
import { type FileFocal, focalByFile } from '../../../../shared-math/trace/index.ts';

/** mm in the units that a file counts its sensor's pixels by. */
const UNITS: Readonly<Record<number, number>> = { 2: 25.4, 3: 10, 4: 1, 5: 0.001 };

const number = (value: unknown): number | undefined =>
  typeof value === 'number' && Number.isFinite(value) ? value : undefined;

/** The focal length that a photo's own file gives, px of the upright picture; undefined if it gives none that can be read. */
export async function fileFocal(file: Blob, size: readonly [number, number]): Promise<FileFocal | undefined> {
  try {
    const { parse } = await import('exifr/dist/lite.esm.mjs');
    // Where the photo was taken is nobody's business here.
    const notes = await parse(await file.arrayBuffer(), { gps: false, translateValues: false });
    if (!notes) return undefined;
    return focalByFile(
      {
        focal: number(notes['FocalLength']),
        focal35: number(notes['FocalLengthIn35mmFormat']),
        perUnit: number(notes['FocalPlaneXResolution']),
        unit: UNITS[number(notes['FocalPlaneResolutionUnit']) ?? 0],
        width: number(notes['ExifImageWidth']),
        height: number(notes['ExifImageHeight']),
      },
      size,
    );
  } catch {
    // A file whose notes cannot be read gives no focal length; the picture itself is none the worse.
    return undefined;
  }
}
