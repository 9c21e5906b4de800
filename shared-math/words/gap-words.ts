import { capitalised } from '../capitalised.ts';
import type { Clearance } from '../clearance/index.ts';

// How near two parts come, as a builder speaks of it.

/** The two of a pair: "Drag link – left tyre". */
export function pairWords({ nameOfA, nameOfB }: Clearance): string {
  return `${capitalised(nameOfA)} – ${nameOfB}`;
}

/** mm. Nearer than this two parts touch, for all that a tape or a feeler tells. */
const TOUCH = 0.05;

/** How near two parts come: "3/8 in", or that they hit or touch. `length` writes no length as 0 that is not 0. */
export function gapWords({ distance }: Pick<Clearance, 'distance'>, length: (mm: number) => string): string {
  if (distance <= 0) return 'hits';
  return distance < TOUCH ? 'touches' : length(distance);
}
