import { MM_PER_INCH } from '../units/index.ts';

// The standard forms of splined shaft ends, as far as they are distinguished by outside diameter and count.

export const INVOLUTE_STANDARD = 'ANSI B92.1-1970 (R1993) / SAE J498';
export const SERRATED_STANDARD = 'SAE J500';

/**
 * Diametral pitches P of P/2P, teeth for each inch of pitch diameter: the standard's list, from memory; the ranges of
 * the forms below from a public copy.
 */
export const STANDARD_PITCHES = [2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64, 80, 128] as const;

/**
 * Pitches in which each pressure angle is standard: 30° to 48/96 (flat root to 32/64), 37.5° to 48/96, 45° from 10/20
 * to 128/256.
 */
export const INVOLUTE_RANGES = {
  30: { least: 2.5, most: 48, mostFlatRoot: 32 },
  37.5: { least: 2.5, most: 48, mostFlatRoot: undefined },
  45: { least: 10, most: 128, mostFlatRoot: undefined },
} as const;

export type PressureAngle = keyof typeof INVOLUTE_RANGES;
export const PRESSURE_ANGLES = [30, 37.5, 45] as const satisfies readonly PressureAngle[];

/**
 * Metric side-fit involutes of ISO 4156: outside diameter of the shaft m (z + crest), from two public copies of the
 * formulas; modules from the standard's abstract, mm.
 */
export const METRIC_STANDARD = 'ISO 4156';
export const METRIC_CRESTS: Readonly<Record<PressureAngle, number>> = { 30: 1, 37.5: 0.9, 45: 0.8 };
const COARSE = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4, 5, 6, 8, 10] as const;
export const METRIC_MODULES: Readonly<Record<PressureAngle, readonly number[]>> = {
  30: COARSE,
  37.5: COARSE,
  45: [0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.5],
};

/**
 * Involutes of DIN 5480, 30°, made to a reference diameter dB: dB = m (z + 1.1 + 2x), crest dB - 0.2 m, the shift x between
 * -0.05 and 0.45: from public copies. The modules and the reference diameters, mm, from memory.
 */
export const REFERENCE_STANDARD = 'DIN 5480';
export const REFERENCE_MODULES = [0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10] as const;
export const REFERENCE_DIAMETERS = [
  6, 7, 8, 9, 10, 12, 14, 15, 16, 17, 18, 20, 22, 24, 25, 26, 28, 30, 32, 34, 35, 36, 37, 38, 40, 42, 44, 45,
  46, 47, 48, 50, 52, 55, 58, 60, 62, 65, 68, 70, 72, 75, 78, 80, 82, 85, 88, 90, 92, 95, 98, 100, 105, 110,
  120, 130, 140, 150,
] as const;
export const REFERENCE_SHIFT = { least: -0.05, most: 0.45 } as const;

/**
 * Shafts with serrated ends, straight-sided: a size's name, its serrations, and the table's figures in inches: pitch
 * diameter, largest across wires on the shaft, least across wires in the hole. For service; new work uses involutes.
 * Only the rows that were read in a public copy of SAE J500-1995; the table has more.
 */
const SERRATED_ROWS = [
  ['1/4', 0.25, 36, 0.243, 0.2701, 0.2216],
  ['1/2', 0.5, 36, 0.485, 0.539, 0.4423],
  ['3/4', 0.75, 48, 0.733, 0.7934, 0.6824],
  ['1', 1, 48, 0.977, 1.0575, 0.9095],
  ['1-1/2', 1.5, 48, 1.464, 1.5846, 1.3629],
] as const;

/** A size of serrated shaft end, mm. */
export interface SerratedSize {
  readonly name: string;
  readonly nominal: number;
  readonly teeth: 36 | 48;
  readonly pitchDiameter: number;
  readonly shaftAcrossWires: number;
  readonly holeAcrossWires: number;
}

export const SERRATED_SIZES: readonly SerratedSize[] = SERRATED_ROWS.map(
  ([name, nominal, teeth, pitchDiameter, shaft, hole]) => ({
    name,
    nominal: nominal * MM_PER_INCH,
    teeth,
    pitchDiameter: pitchDiameter * MM_PER_INCH,
    shaftAcrossWires: shaft * MM_PER_INCH,
    holeAcrossWires: hole * MM_PER_INCH,
  }),
);
