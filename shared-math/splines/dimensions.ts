import { MM_PER_INCH, toRadians } from '../units/index.ts';
import { INVOLUTE_RANGES, type PressureAngle } from './standards.ts';

/** Form of the space's bottom. */
export type SplineRoot = 'flat' | 'fillet';

/** Dimensions of a standard involute spline, side fit, mm. Undefined if the form or our copy has no figure. */
export interface InvoluteDimensions {
  readonly pitchDiameter: number;
  readonly baseDiameter: number;
  readonly circularPitch: number;
  /** Least effective width of a space at the pitch circle. */
  readonly spaceWidth: number;
  readonly externalMajor: number;
  readonly internalMinor: number | undefined;
  readonly internalMajor: number | undefined;
  readonly externalMinor: number | undefined;
  /** False where the external minor's formula is that of 12/24 and coarser: the finer row was garbled in our copy. */
  readonly externalMinorCertain: boolean;
  readonly formClearance: number;
}

/** Coarsest and finest for which the formula of the external minor diameter was read. */
const EXTERNAL_MINOR_CERTAIN_TO = 12;

/**
 * Dimensions of an involute spline by its formulas: N teeth of diametral pitch P (per inch): D = N/P, base D cos φ,
 * circular pitch π/P, space π/2P at 30° and (π/2 + 0.1)/P at 37.5° and 45°, external major (N+1)/P; at 30° also internal
 * minor (N-1)/P, internal major (N+1.35)/P flat or (N+1.8)/P fillet root, external minor (N-1.35)/P or (N-1.8)/P; at
 * 37.5°, fillet root only, internal minor (N-0.8)/P and major (N+1.6)/P. Read the standard before cutting.
 * Units:    mm; pitch per inch.
 * Source:   ANSI B92.1-1970 (R1993) / SAE J498, from public copies of the formulas.
 * Checked:  tests/reference/splines.test.ts.
 */
export function involuteDimensions(
  teeth: number,
  pitch: number,
  angle: PressureAngle,
  root: SplineRoot,
): InvoluteDimensions {
  const over = (count: number) => (count / pitch) * MM_PER_INCH;
  const pitchDiameter = over(teeth);
  const standard = pitch <= INVOLUTE_RANGES[30].mostFlatRoot || root === 'fillet';
  const hasForm = angle === 30 && standard;
  const depth = root === 'flat' ? 1.35 : 1.8;
  const filleted = angle === 37.5 && root === 'fillet';
  return {
    pitchDiameter,
    baseDiameter: pitchDiameter * Math.cos(toRadians(angle)),
    circularPitch: over(Math.PI),
    spaceWidth: over(Math.PI / 2 + (angle === 30 ? 0 : 0.1)),
    externalMajor: over(teeth + 1),
    internalMinor: angle === 30 ? over(teeth - 1) : filleted ? over(teeth - 0.8) : undefined,
    internalMajor: hasForm ? over(teeth + depth) : filleted ? over(teeth + 1.6) : undefined,
    externalMinor: hasForm ? over(teeth - depth) : undefined,
    externalMinorCertain: pitch <= EXTERNAL_MINOR_CERTAIN_TO,
    formClearance: Math.min(Math.max(0.001 * pitchDiameter, 0.002 * MM_PER_INCH), 0.01 * MM_PER_INCH),
  };
}

/** Included angle of a serration, degrees: 90 - 360/N. Source: SAE J500-1995. */
export function serrationAngle(teeth: number): number {
  return 90 - 360 / teeth;
}

/**
 * Diameters over and under the sharp points of serrations that are not topped off, as shares of the pitch diameter,
 * which is their mean. In the triangle of centre, outer and next inner point the angles are 180°/N, half the included
 * angle 45° - 180°/N, and so 135°: by the law of sines inner/outer = sin(45° - 180°/N) / sin 45°.
 * Source:   derived from the standard's angle; SAE J500-1995 prints 1.0476479 (36) and 1.0349592 (48).
 * Checked:  tests/reference/splines.test.ts.
 */
export function sharpPoints(teeth: number): { readonly over: number; readonly under: number } {
  const quarter = Math.PI / 4;
  const over = 2 / (1 + Math.sin(quarter - Math.PI / teeth) / Math.sin(quarter));
  return { over, under: 2 - over };
}
