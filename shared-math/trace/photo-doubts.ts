import { USUAL_DOUBT } from '../adjust/index.ts';
import type { Photo } from '../layout/index.ts';
import { DISTANCE_DOUBT } from './camera-place.ts';

// How well what a photo is put to scale by is known: one standard deviation each. All of them common practice, no published source,
// but for what a survey's own instruments leave in doubt.

/** px on the longer side beyond which a picture has more pixels than its lens draws: a click is then off by more than one. */
const SHARP_SIDE = 4800;

/** px of the upright original that one click may be off. */
export function clickDoubt({ size }: Photo): number {
  return Math.max(1, Math.max(...size) / SHARP_SIDE);
}

/** mm, of a length by the tape. */
export const TAPE_DOUBT = USUAL_DOUBT.straight;

/** mm, of where a plane stands: it is measured over the floor, with a plumb line. */
export const PLANE_DOUBT = USUAL_DOUBT.plumb;

/** rad: a spirit level on an edge of a metre or so. */
export const LEVEL_DOUBT = 0.0017;

/** rad: how far a rectangle leans or stands askew that was set up plumb and along the car. */
export const ASKEW_DOUBT = 0.0035;

/** rad: without a rectangle the photo is taken to be square to its plane, as well as a person stands, and level. */
export const STOOD_SQUARE_DOUBT = 0.05;
export const HELD_LEVEL_DOUBT = 0.02;

/** A radial term about 0 where straight lines show it, and where nothing does and the camera is taken to mend its own. */
export const LENS_DOUBT = 0.1;
export const LENS_UNSEEN_DOUBT = 0.02;
/** As good as no second term: one that nothing shows stays 0. */
export const LENS_NO_TERM = 1e-6;

/** Of what is only where the search begins: mm, rad, and of a logarithm. So wide that it says nothing. */
export const PLACE_OPEN = 2000;
export const TURN_OPEN = 0.5;
export const FOCAL_OPEN = 1;
/** px. */
export const LINE_OPEN = 1000;

/** mm, of the camera's distance: as given, else a share of it. */
export function distanceDoubt({ distance, distanceDoubt: given }: Photo): number {
  return given ?? DISTANCE_DOUBT * (distance ?? 0);
}
