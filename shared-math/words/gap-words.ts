import type { Clearance } from '../clearance/index.ts';

// How near two parts come, as a builder speaks of it.

const capitalised = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The two of a pair: "Drag link – left tyre". */
export function pairWords({ nameOfA, nameOfB }: Clearance): string {
  return `${capitalised(nameOfA)} – ${nameOfB}`;
}

/** How near two parts come: "3/8 in", or that they hit or touch; what rounds away is no distance to speak of. */
export function gapWords({ distance }: Pick<Clearance, 'distance'>, length: (mm: number) => string): string {
  if (distance <= 0) return 'hits';
  const words = length(distance);
  return words === length(0) ? 'touches' : words;
}
