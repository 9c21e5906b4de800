import { PHOTO_SIDE_MAX } from '../../shared-math/layout/index.ts';

/** px of an inch: what drawings are scanned at, and where a pen's line of 0.35 mm is four px wide. */
const PX_PER_INCH = 300;
/** Of a picture of a page; a sheet of A0 is drawn at 180 px per inch then. */
const PIXELS_MOST = 50e6;
/** px on the longer side of a page that is smaller than a hand: enough to click on. */
const SIDE_LEAST = 1000;
/** A PDF counts in these of an inch. */
const POINTS_PER_INCH = 72;

/**
 * How large a page of a PDF is drawn for tracing.
 *
 * @param width Points, as the page is turned to be read.
 * @param height Likewise.
 * @returns Whole px, right and down; undefined if the page has no size.
 */
export function pageSize(width: number, height: number): readonly [number, number] | undefined {
  if (!(width > 0 && height > 0 && Number.isFinite(width * height))) return undefined;
  const wanted = Math.max(PX_PER_INCH / POINTS_PER_INCH, SIDE_LEAST / Math.max(width, height));
  const scale = Math.min(
    wanted,
    Math.sqrt(PIXELS_MOST / (width * height)),
    PHOTO_SIDE_MAX / Math.max(width, height),
  );
  return [Math.max(1, Math.floor(width * scale)), Math.max(1, Math.floor(height * scale))];
}
