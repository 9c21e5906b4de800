import { MM_PER_INCH } from '../units/index.ts';

// The standard forms of splined shaft ends, as far as they are told apart by outside diameter and count.

export const INVOLUTE_STANDARD = 'ANSI B92.1-1970 (R1993) / SAE J498';
export const SERRATED_STANDARD = 'SAE J500';

/**
 * Diametral pitches P of P/2P, teeth for each inch of pitch diameter: the standard's list, from memory; the ranges of
 * the forms below from a public copy.
 */
export const STANDARD_PITCHES = [2.5, 3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 32, 40, 48, 64, 80, 128] as const;

/** Pitches in which each pressure angle is standard: 30° to 48/96 (flat root to 32/64), 45° from 10/20 to 128/256. */
export const INVOLUTE_RANGES = {
  30: { least: 2.5, most: 48, mostFlatRoot: 32 },
  45: { least: 10, most: 128, mostFlatRoot: undefined },
} as const;

export type PressureAngle = keyof typeof INVOLUTE_RANGES;

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
