import { MM_PER_INCH, NEWTONS_PER_POUND } from '../units/index.ts';

// Bolts and set screws of joint ends: rough figures for the sheet. The maker's figure rules.

/** N·m in a pound-force inch and foot, exactly. */
export const NEWTON_METRES_PER_POUND_INCH = (NEWTONS_PER_POUND * MM_PER_INCH) / 1000;
export const NEWTON_METRES_PER_POUND_FOOT = 12 * NEWTON_METRES_PER_POUND_INCH;
/** MPa in a thousand pounds a square inch. */
export const MEGAPASCALS_PER_KSI = (1000 * NEWTONS_PER_POUND) / MM_PER_INCH ** 2;

/** Nut factor of dry threads, and of lubricated ones; scatter of a quarter or more either way. Shigley. */
export const NUT_FACTOR = { dry: 0.2, lubricated: 0.15 } as const;

/** Share of the proof load to which a bolt that is used again is tightened. Shigley. */
export const PRELOAD_SHARE = 0.75;

/** Inch bolts, SAE J429, 1/4 to 1 in (grade 2 to 3/4 in): proof, yield and tensile strength, ksi. */
export const BOLT_GRADES = {
  2: { proof: undefined, yield: 57, tensile: 74 },
  5: { proof: 85, yield: 92, tensile: 120 },
  8: { proof: 120, yield: 130, tensile: 150 },
} as const;

/** Stress area of an inch thread, mm²: 0.7854 (D - 0.9743/n)² in inches. Source: ASME B1.1. */
export function threadStressArea(diameter: number, threadsPerInch: number): number {
  return 0.7854 * (diameter - (0.9743 / threadsPerInch) * MM_PER_INCH) ** 2;
}

/** Tension in a bolt, N, tightened to a torque in N·m: F = T / (K D). Units: mm. */
export function boltTension(torque: number, diameter: number, nutFactor: number = NUT_FACTOR.dry): number {
  return (torque * 1000) / (nutFactor * diameter);
}

/** Torque, N·m, that gives a bolt a tension in N: T = K D F. Units: mm. */
export function tighteningTorque(
  tension: number,
  diameter: number,
  nutFactor: number = NUT_FACTOR.dry,
): number {
  return (nutFactor * diameter * tension) / 1000;
}

/** Tension, N, to which an inch bolt that is used again is tightened: 0.75 of proof strength times stress area. */
export function preloadTension(diameter: number, threadsPerInch: number, grade: 5 | 8): number {
  return (
    PRELOAD_SHARE *
    BOLT_GRADES[grade].proof *
    MEGAPASCALS_PER_KSI *
    threadStressArea(diameter, threadsPerInch)
  );
}

/**
 * What a split hub pinched on a plain round shaft holds by friction alone, N·m: from two lines of contact (least) to
 * even pressure all around (most). Little beside what flats, splines or a notch carry: the bolt has to cross the shaft.
 * Units: N, mm. Source: split-hub theory.
 */
export function pinchFriction(
  tension: number,
  diameter: number,
  friction = 0.15,
): { least: number; most: number } {
  const least = (friction * tension * diameter) / 1000;
  return { least, most: (least * Math.PI) / 2 };
}

/** A cup-point set screw: diameter in mm, seating torque in N·m, axial hold in N. */
export interface SetScrew {
  readonly name: string;
  readonly diameter: number;
  readonly seatingTorque: number;
  readonly axialHold: number;
}

/**
 * Shigley, Table 7-4 (torques found in several charts, holding from memory). Another published chart gives 400, 700,
 * 1000 and 1500 lbf for the same torques: half as much, so the hold is reported as between the two.
 */
const SET_SCREW_ROWS = [
  ['1/4', 0.25, 87, 1000, 400],
  ['5/16', 0.3125, 165, 1500, 700],
  ['3/8', 0.375, 290, 2000, 1000],
  ['1/2', 0.5, 620, 3000, 1500],
] as const;

export const SET_SCREWS: readonly (SetScrew & { readonly cautiousHold: number })[] = SET_SCREW_ROWS.map(
  ([name, inches, torque, hold, cautious]) => ({
    name,
    diameter: inches * MM_PER_INCH,
    seatingTorque: torque * NEWTON_METRES_PER_POUND_INCH,
    axialHold: hold * NEWTONS_PER_POUND,
    cautiousHold: cautious * NEWTONS_PER_POUND,
  }),
);

/** Torque, N·m, that a set screw holds by its point alone on a plain shaft: F d / 2. Units: N, mm. */
export function setScrewTorque(axialHold: number, shaftDiameter: number): number {
  return (axialHold * shaftDiameter) / 2000;
}

/** The listed set screw of this diameter (mm), or undefined if the list has none so large. */
export function setScrewOf(diameter: number): (typeof SET_SCREWS)[number] | undefined {
  return SET_SCREWS.find((screw) => Math.abs(screw.diameter - diameter) < 0.4);
}
