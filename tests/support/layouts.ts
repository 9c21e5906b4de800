import { expect } from 'vitest';
import {
  LAYOUT_VERSION,
  type Layout,
  type LayoutDocument,
  readLayout,
  resolveLayout,
} from '../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../shared-math/linkage/index.ts';

type Json = Record<string, unknown>;

/** A plain left half: kingpin 130 long, caster near 6 degrees, inclination near 8. */
export const PLAIN_HALF = {
  kingpinTop: [-7, 631, 395],
  kingpinBottom: [7, 649, 265],
  wheelCentre: [0, 710, 330],
  camber: 1,
  toeIn: 0.1,
  tieRodBall: [-150, 606, 292],
};

export const LOCATIONS: Record<LayoutDocument['location']['kind'], Json> = {
  hairpins: { kind: 'hairpins', left: { framePivot: [-890, 415, 335] }, right: 'mirror' },
  'split-rods': { kind: 'split-rods', left: { framePivot: [-1040, 330, 320] }, right: 'mirror' },
  wishbone: { kind: 'wishbone', framePivot: [-1010, 0, 340] },
  'four-bar': {
    kind: 'four-bar',
    left: {
      upper: { axle: [-45, 430, 395], frame: [-645, 415, 405] },
      lower: { axle: [-45, 430, 262], frame: [-645, 415, 262] },
    },
    right: 'mirror',
  },
  'parallel-leaf': {
    kind: 'parallel-leaf',
    left: { fixedEye: [510, 400, 365], seat: [0, 400, 320], shackleEye: [-580, 400, 372] },
    right: 'mirror',
  },
  // Arched, and running down to the axle; the rod below, of another length.
  'quarter-elliptic': {
    kind: 'quarter-elliptic',
    eyes: 'pinned',
    left: {
      butt: [-660, 410, 452],
      clamp: [-500, 412, 445],
      eye: [-15, 420, 392],
      rod: { axle: [-30, 425, 268], frame: [-610, 410, 275] },
    },
    right: 'mirror',
  },
};

export const LATERALS: Record<LayoutDocument['lateral']['kind'], Json> = {
  bar: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 316, 370] },
  spring: { kind: 'spring', height: 480 },
  'fixed-spring': { kind: 'fixed-spring', clamp: [0, -55, 470], eye: [0, -470, 380] },
  // Neither alike nor level: no symmetry helps.
  watt: {
    kind: 'watt',
    rockerOn: 'axle',
    pivot: [-70, 12, 345],
    upper: { rocker: [-74, 18, 412], end: [-66, 395, 420] },
    lower: { rocker: [-70, 5, 285], end: [-72, -365, 278] },
  },
};

export const SIDE_STEER = {
  dragLinkTo: 'left',
  dragLinkBall: [0, 484, 395],
  box: {
    sectorCentre: [-800, 500, 490],
    sectorAxis: [0, -1, 0],
    pitmanBall: [-800, 500, 350],
    ratio: 16,
    sectorTravel: 35,
    assist: 'manual',
  },
};

export const CROSS_STEER = {
  dragLinkTo: 'right',
  dragLinkBall: [-148, -628, 352],
  box: {
    sectorCentre: [-150, 262, 510],
    sectorAxis: [-1, 0, 0],
    pitmanBall: [-150, 258, 362],
    ratio: 17,
    sectorTravel: 38,
    assist: 'power',
  },
};

/** A raw layout document: hairpins, spring, I-beam and side steer unless specified otherwise. */
export function rawLayout(over: Json = {}): Json {
  return {
    format: 'toeboard-layout',
    version: LAYOUT_VERSION,
    name: 'test layout',
    notes: '',
    car: { wheelbase: 2640, frontAxleLoad: 4900, tyreRadius: 330, tyreWidth: 150, handwheelRadius: 190 },
    axle: { beam: 'i-beam', left: PLAIN_HALF, right: 'mirror' },
    location: LOCATIONS.hairpins,
    lateral: LATERALS.spring,
    steering: SIDE_STEER,
    travel: { bump: 75, rebound: 75, roll: 3 },
    rails: [],
    obstacles: [],
    photos: [],
    shaft: null,
    ride: null,
    ...over,
  };
}

export function documentOf(raw: unknown): LayoutDocument {
  const outcome = readLayout(raw);
  expect(outcome.ok ? '' : `${outcome.failure.path}: ${outcome.failure.reason}`).toBe('');
  if (!outcome.ok) throw new Error('unreachable');
  return outcome.value;
}

export function layoutOf(over: Json = {}): Layout {
  return resolveLayout(documentOf(rawLayout(over)));
}

export function frontEndOf(over: Json = {}): FrontEnd {
  return prepareFrontEnd(layoutOf(over));
}

export interface Combination {
  readonly label: string;
  readonly over: Json;
}

/** Every combination of location, lateral and beam, by name: what the thorough tests go through. */
export const ALL_COMBINATIONS: readonly Combination[] = Object.keys(LOCATIONS).flatMap((location) =>
  Object.keys(LATERALS).flatMap((lateral) =>
    ['i-beam', 'tube'].map((beam) => ({
      label: `${location}, ${lateral}, ${beam}`,
      over: {
        axle: { beam, left: PLAIN_HALF, right: 'mirror' },
        location: LOCATIONS[location as keyof typeof LOCATIONS],
        lateral: LATERALS[lateral as keyof typeof LATERALS],
      },
    })),
  ),
);

const FULLY_COMBINED = ['hairpins', 'wishbone', 'four-bar', 'parallel-leaf', 'bar', 'spring'];

/**
 * Those that the quick tests go through: the kinds above with one another on either beam, and each other kind with each of
 * them on one beam, so that it meets both beams.
 */
export const COMBINATIONS: readonly Combination[] = ALL_COMBINATIONS.filter(({ label }, index) => {
  const others = label
    .split(', ')
    .slice(0, 2)
    .filter((kind) => !FULLY_COMBINED.includes(kind));
  return (
    others.length === 0 ||
    (others.length === 1 && (index + Math.floor(index / 2) + Math.floor(index / 8)) % 2 === 0)
  );
});

/** Both ways of steering on them. */
export const STEERED: readonly Combination[] = COMBINATIONS.flatMap(({ label, over }) => [
  { label: `${label}, side steer`, over: { ...over, steering: SIDE_STEER } },
  { label: `${label}, cross steer`, over: { ...over, steering: CROSS_STEER } },
]);
