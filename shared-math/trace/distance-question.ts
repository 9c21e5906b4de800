import type { Photo } from '../layout/index.ts';
import { MM_PER_INCH } from '../units/index.ts';
import { DIAGONAL_35 } from './file-focal.ts';
import { planeOf } from './planes.ts';

/** A camera's distance that no usual lens explains. */
export interface DistanceQuestion {
  /** mm, 36 by 24: the lens that the camera would have had; undefined if from there no lens shows the photo. */
  readonly equivalent: number | undefined;
  /** mm: what was probably meant; undefined if no usual slip leads to a usual lens. */
  readonly meant: number | undefined;
}

/**
 * mm, 36 by 24: lenses that people photograph cars with. Common practice, no published source.
 */
const LEAST = 13;
const MOST = 250;
/** And those that a slip is put right to. */
const USUAL = [20, 130] as const;
/** Standard deviations of the file's own focal length beyond which a distance contradicts it. */
const OFF_FILE = 4;

/** What a figure may have been read or written as: in inches for mm, in feet for inches, or the other way round. */
const SLIPS = [MM_PER_INCH, 1 / MM_PER_INCH, 12, 1 / 12];

/**
 * Whether a photo's camera distance is absurd: with it the camera would have had a lens that nobody has, or another than the
 * photo's own file says. Undefined if it is not, or was confirmed, or the camera is not known.
 */
export function distanceQuestion(photo: Photo): DistanceQuestion | undefined {
  if (photo.distance === undefined || photo.distanceSure) return undefined;
  const plane = planeOf(photo);
  const own = equivalentOf(photo);
  const impossible = !plane.ok && plane.failure.step === 'distance';
  if (own === undefined ? !impossible : isUsual(photo, own)) return undefined;
  const meant = SLIPS.map((by) => by * (photo.distance as number)).find((distance) => {
    if (distance > 20_000) return false;
    const other = equivalentOf({ ...photo, distance });
    return other !== undefined && other > USUAL[0] && other < USUAL[1] && isUsual(photo, other);
  });
  return { equivalent: own, meant };
}

/** The lens that shows what the photo shows from its distance; undefined if none does. */
function equivalentOf(photo: Photo): number | undefined {
  const plane = planeOf(photo);
  const px = plane.ok ? plane.value.camera?.focal : undefined;
  return px === undefined ? undefined : (px / Math.hypot(...photo.size)) * DIAGONAL_35;
}

function isUsual({ focal, size }: Photo, equivalent: number): boolean {
  if (!focal) return equivalent >= LEAST && equivalent <= MOST;
  const known = (focal.px / Math.hypot(...size)) * DIAGONAL_35;
  return Math.abs(Math.log(equivalent / known)) <= OFF_FILE * focal.share;
}
