import {
  PLACE_DRAG_LINK,
  PLACE_HIT_FROM,
  PLACE_OK,
  PLACE_TIE_ROD,
} from '../../../../shared-math/aim/index.ts';
import type { MapHit } from '../../../../shared-math/clearance/index.ts';
import { formatDegrees, toDegrees } from '../../../../shared-math/units/index.ts';

/** Bump steer at a place: finer where it is small. */
export function bumpWords(worst: number): string {
  const degrees = toDegrees(worst);
  return formatDegrees(degrees, degrees < 0.995 ? 2 : 1);
}

/** "drag link and left rail": what is hit, as part of a sentence. */
export function pairWords({ nameOfA, nameOfB }: Pick<MapHit, 'nameOfA' | 'nameOfB'>): string {
  return `${nameOfA} and ${nameOfB}`;
}

/** Why a place is hatched, as a sentence without its full stop; empty where it is not. */
export function reasonWords(reason: number, hits: readonly MapHit[]): string {
  if (reason === PLACE_OK) return '';
  if (reason === PLACE_DRAG_LINK) return 'the drag link does not reach over the travel';
  if (reason === PLACE_TIE_ROD) return 'the tie rod does not reach over the travel';
  const hit = hits[reason - PLACE_HIT_FROM];
  return hit ? `${pairWords(hit)} touch` : 'something is hit';
}

export const NOTHING_TO_MAP = 'The links leave the axle free to move, so there is nothing to map.';
