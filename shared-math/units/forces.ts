import { formatDecimal } from './angles.ts';
import type { LengthUnit } from './lengths.ts';

/** N in a pound-force, exactly: 0.45359237 kg at 9.80665 m/s². */
export const NEWTONS_PER_POUND = 4.4482216152605;

/** N that the weight of a kilogram presses with, by the standard acceleration of free fall. */
const NEWTONS_PER_KILOGRAM = 9.80665;

/** What a scale under the wheels shows: whole pounds with inches, whole kilograms with millimetres: "1102 lb", "500 kg". */
export function formatLoad(newtons: number, unit: LengthUnit): string {
  return unit === 'in'
    ? `${formatDecimal(newtons / NEWTONS_PER_POUND, 0)} lb`
    : `${formatDecimal(newtons / NEWTONS_PER_KILOGRAM, 0)} kg`;
}

/** A force in whole pounds for those who measure in inches, else in whole newtons: "36 lb", "160 N". */
export function formatForce(newtons: number, unit: LengthUnit): string {
  return unit === 'in'
    ? `${formatDecimal(newtons / NEWTONS_PER_POUND, 0)} lb`
    : `${formatDecimal(newtons, 0)} N`;
}

/**
 * N. Near a dead centre the linkage asks for any force; beyond what a strong person can pull at a rim its size says no more.
 * Common practice, no published source.
 */
export const TURNED_BY_NOBODY = 2000;

/** A force at the handwheel's rim: "36 lb"; "more than 450 lb" where nobody turns it. */
export function formatRimForce(newtons: number, unit: LengthUnit): string {
  return newtons > TURNED_BY_NOBODY
    ? `more than ${formatForce(TURNED_BY_NOBODY, unit)}`
    : formatForce(newtons, unit);
}

/** N·m in a pound-force foot, exactly: a pound-force over a foot of 0.3048 m. */
const NEWTON_METRES_PER_POUND_FOOT = NEWTONS_PER_POUND * 0.3048;

/** A moment in whole foot-pounds for those who measure in inches, else in whole newton metres: "210 lb·ft", "285 N·m". */
export function formatMoment(newtonMetres: number, unit: LengthUnit): string {
  return unit === 'in'
    ? `${formatDecimal(newtonMetres / NEWTON_METRES_PER_POUND_FOOT, 0)} lb·ft`
    : `${formatDecimal(newtonMetres, 0)} N·m`;
}

/** mm² in a square inch, exactly. */
const SQUARE_MM_PER_SQUARE_INCH = 25.4 ** 2;

/** A stress in whole thousands of pounds a square inch for those who measure in inches, else in whole N/mm²: "60 ksi", "414 N/mm²". */
export function formatStress(newtonsPerSquareMm: number, unit: LengthUnit): string {
  return unit === 'in'
    ? `${formatDecimal((newtonsPerSquareMm * SQUARE_MM_PER_SQUARE_INCH) / NEWTONS_PER_POUND / 1000, 0)} ksi`
    : `${formatDecimal(newtonsPerSquareMm, 0)} N/mm²`;
}
