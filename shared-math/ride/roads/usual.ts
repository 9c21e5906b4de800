import type { RoadKind, RoadProfile } from './index.ts';

/** A road of each kind to begin from, of a size that cars meet; the measured one is a dip of an inch. mm. */
export const USUAL_ROADS: { readonly [Kind in RoadKind]: Extract<RoadProfile, { kind: Kind }> } = {
  flat: { kind: 'flat' },
  bump: { kind: 'bump', height: 40, length: 1000, start: 2000 },
  'one-wheel': { kind: 'one-wheel', side: 'left', height: 40, length: 1000, start: 2000 },
  kerb: { kind: 'kerb', side: 'both', height: 60, start: 2000 },
  washboard: { kind: 'washboard', height: 20, length: 900, shift: 0, start: 2000 },
  random: { kind: 'random', roadClass: 'C', seed: 1, start: 2000 },
  measured: { kind: 'measured', distance: [2000, 2300, 2600], left: [0, -25, 0], right: [0, -25, 0] },
};
