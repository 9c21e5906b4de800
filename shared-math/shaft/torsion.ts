import type { ShaftStock } from '../layout/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import type { Radians } from '../units/index.ts';

/** How a cross-section takes twisting. */
export interface TorsionSection {
  /** mm². */
  readonly area: number;
  /** Torsion constant, mm⁴: twist = T L / (G · stiffness). */
  readonly stiffness: number;
  /** Torque over greatest shear stress, mm³. */
  readonly modulus: number;
}

/** MPa. Steel in shear: 11.5 million psi. */
export const STEEL_SHEAR_MODULUS = 79_290;

/** A solid round shaft: J = π d⁴/32, T/τ = π d³/16. Units: mm. Source: any strength text. */
export function roundSection(diameter: number): TorsionSection {
  return {
    area: (Math.PI * diameter ** 2) / 4,
    stiffness: (Math.PI * diameter ** 4) / 32,
    modulus: (Math.PI * diameter ** 3) / 16,
  };
}

/** Width of each flat of a double-D, mm: 2 √(r² - w²/4), w across the flats. */
export function flatWidth(diameter: number, acrossFlats: number): number {
  return Math.sqrt(diameter ** 2 - acrossFlats ** 2);
}

/** Cut of a flat over the radius. Beyond it the fitted formula is not known to hold. */
const DEEPEST_FLAT = 0.6;

/**
 * A round shaft with two parallel flats, each cut h = r - w/2 deep, q = h/r: K = 2 C r⁴ and τ = T B / r³ with fitted
 * polynomials C and B of q.
 * Units:    mm.
 * Outcomes: ok; too-flat beyond q = 0.6, where the fit ends.
 * Source:   Roark's Formulas for Stress and Strain, 7th ed., Table 10.1.
 * Checked:  tests/reference/shaft-strength.test.ts.
 */
export function doubleDSection(diameter: number, acrossFlats: number): Outcome<TorsionSection, 'too-flat'> {
  const r = diameter / 2;
  const q = 1 - acrossFlats / diameter;
  if (!(q >= 0 && q <= DEEPEST_FLAT)) return failed('too-flat');
  const C = 0.7854 - 0.4053 * q - 3.581 * q ** 2 + 5.2708 * q ** 3 - 2.0772 * q ** 4;
  const B = 0.6366 + 2.5303 * q - 11.157 * q ** 2 + 49.568 * q ** 3 - 85.886 * q ** 4 + 69.849 * q ** 5;
  const half = Math.acos(acrossFlats / diameter);
  return succeeded({
    // The circle less two segments, each of half-angle acos(w/d).
    area: r ** 2 * (Math.PI - 2 * half + Math.sin(2 * half)),
    stiffness: 2 * C * r ** 4,
    modulus: r ** 3 / B,
  });
}

/** Greatest shear stress, MPa, of a torque in N·m. */
export function shearStress(torque: number, section: TorsionSection): number {
  return (torque * 1000) / section.modulus;
}

/** Twist over a length in mm under a torque in N·m; the shear modulus in MPa. */
export function twistOf(
  torque: number,
  length: number,
  section: TorsionSection,
  shearModulus: number = STEEL_SHEAR_MODULUS,
): Radians {
  return (torque * 1000 * length) / (shearModulus * section.stiffness);
}

/**
 * The weakest section of a piece of stock: with flats where it has them. Of splined stock none is reported, since the
 * outside diameter does not say how deep the teeth are cut.
 */
export function stockSection(stock: ShaftStock): Outcome<TorsionSection, 'too-flat' | 'spline'> {
  if (stock.kind === 'round') return succeeded(roundSection(stock.diameter));
  if (stock.kind === 'splined') return failed('spline');
  return doubleDSection(stock.diameter, stock.acrossFlats);
}
