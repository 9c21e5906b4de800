import type { Clearance } from '../../shared-math/clearance/index.ts';
import type { Obstacle } from '../../shared-math/layout/index.ts';

// What is in the way, as a builder speaks of it.

export const ROLE_WORDS: readonly (readonly [Obstacle['role'], string])[] = [
  ['engine', 'engine'],
  ['sump', 'sump'],
  ['header', 'header tube'],
  ['crossmember', 'crossmember'],
  ['radiator', 'radiator'],
  ['other', 'something else'],
];

export const KIND_WORDS: readonly (readonly [Obstacle['kind'], string])[] = [
  ['box', 'box'],
  ['cylinder', 'tube, flat ends'],
  ['capsule', 'tube, round ends'],
];

/** What a role is called in the middle of a sentence: "Add an engine". */
export const ROLE_ADDED: Readonly<Record<Obstacle['role'], string>> = {
  engine: 'an engine',
  sump: 'a sump',
  header: 'a header tube',
  crossmember: 'a crossmember',
  radiator: 'a radiator',
  other: 'something in the way',
};

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
