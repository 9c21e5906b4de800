/** What a photo's own file says of the camera, as the standard for such notes names it. Absent is not given. */
export interface FileNotes {
  /** mm. */
  readonly focal?: number | undefined;
  /** mm, of a camera of 36 by 24 mm that sees as much. */
  readonly focal35?: number | undefined;
  /** Pixels of the sensor to a unit across, and the unit in mm. */
  readonly perUnit?: number | undefined;
  readonly unit?: number | undefined;
  /** px of the picture as the camera wrote it. */
  readonly width?: number | undefined;
  readonly height?: number | undefined;
}

/** A focal length in px of the picture, and one standard deviation as a share of it. */
export interface FileFocal {
  readonly px: number;
  readonly share: number;
}

/** mm: the diagonal of 36 by 24. */
export const DIAGONAL_35 = Math.hypot(36, 24);

/**
 * One standard deviation: of an equivalent, which is written in whole mm, by the diagonal or by the width as makers have it, and
 * does not know how the picture was steadied; of a sensor's own pixels. Common practice, no published source.
 */
const SHARE_OF_EQUIVALENT = 0.05;
const SHARE_OF_SENSOR = 0.02;

/** A side's share by which a picture may differ in shape from what the camera wrote: more was cut off. */
const SAME_SHAPE = 0.01;

/**
 * The focal length in px of a picture by what its file says: f by the sensor's pixels to a mm, or the picture's diagonal
 * over that of 36 by 24 mm times the equivalent.
 * Units:    mm, px. Shapes: `size` of the upright picture as it is worked with.
 * Outcomes: undefined if the file does not say, or if the picture was cut since the camera wrote it.
 * Source:   CIPA DC-008 / JEITA CP-3451 (Exif 2.32): FocalLength, FocalLengthIn35mmFilm, FocalPlaneXResolution and its unit; from
 *           memory.
 * Checked:  tests/unit/trace/file-focal.test.ts.
 */
export function focalByFile(
  { focal, focal35, perUnit, unit, width, height }: FileNotes,
  size: readonly [number, number],
): FileFocal | undefined {
  const long = Math.max(...size);
  const short = Math.min(...size);
  const [asLong, asShort] =
    width && height ? [Math.max(width, height), Math.min(width, height)] : [long, short];
  if (Math.abs((long / asLong) * (asShort / short) - 1) > SAME_SHAPE) return undefined;
  const good = (value: number | undefined): value is number =>
    value !== undefined && value > 0 && value < 1e6;
  if (good(focal) && good(perUnit) && good(unit))
    return { px: ((focal * perUnit) / unit) * (long / asLong), share: SHARE_OF_SENSOR };
  if (good(focal35)) return { px: (focal35 / DIAGONAL_35) * Math.hypot(...size), share: SHARE_OF_EQUIVALENT };
  return undefined;
}
