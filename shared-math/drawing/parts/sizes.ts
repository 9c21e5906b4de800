/**
 * What a layout does not say is drawn, and judged for clearance, at a size common on hand-built cars; mm. The kinematics
 * do not know these.
 */
export const SIZES = {
  kingpin: 11,
  kingpinBoss: 26,
  spindleEar: 19,
  /** Stub axle at its root and at its end. */
  stubRoot: 23,
  stubEnd: 15,
  /** I-beam: half height, half width, and how far in from its edge the flange ends. */
  beamUp: 27,
  beamOut: 23,
  flange: 9,
  /** How far a dropped beam's middle lies below its ends where nothing on it says so. */
  beamDrop: 58,
  tubeBeam: 29,
  /** Rods and bars, and the balls, eyes and bushings at their ends. */
  rod: 11,
  hairpin: 9.5,
  radiusRod: 16,
  ball: 17,
  eye: 19,
  eyeHalfWidth: 20,
  /** Arms: where they begin and where they hold a ball. */
  armRoot: 22,
  armEnd: 15,
  /** Leaf springs: half thickness of a leaf, half width, and how many leaves in a pack. */
  leaf: 3.2,
  leafHalfWidth: 25,
  sectorShaft: 16,
  pitmanHub: 26,
} as const;

/** Shares of the tyre's radius. */
export const WHEEL_SHARES = { rim: 0.64, hub: 0.2, drum: 0.43, shoulder: 0.14 } as const;

/** Radius of a tube, mm: half the diameter that the layout states, else the usual one. */
export function tubeRadius(diameter: number | undefined, usual: number): number {
  return diameter === undefined ? usual : diameter / 2;
}
