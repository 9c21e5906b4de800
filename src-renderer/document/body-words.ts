import type { Obstacle } from '../../shared-math/layout/index.ts';

// Obstacles, as a builder speaks of them.

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
  other: 'another obstacle',
};
