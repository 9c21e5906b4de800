import { formatLength, MM_PER_INCH } from '../units/index.ts';
import {
  INVOLUTE_RANGES,
  INVOLUTE_STANDARD,
  METRIC_CRESTS,
  METRIC_MODULES,
  METRIC_STANDARD,
  PRESSURE_ANGLES,
  type PressureAngle,
  REFERENCE_DIAMETERS,
  REFERENCE_MODULES,
  REFERENCE_SHIFT,
  REFERENCE_STANDARD,
  SERRATED_SIZES,
  SERRATED_STANDARD,
  STANDARD_PITCHES,
} from './standards.ts';

/** Forms of teeth that the lists hold: inch involutes, metric ones, those made to a reference diameter, serrations. */
export type StandardForm =
  | `involute-${PressureAngle}`
  | `metric-${PressureAngle}`
  | 'reference-30'
  | 'serrated';

/** One standard spline. mm. */
export interface StandardSpline {
  /** "36 teeth, 48/96 pitch, 30°"; "24 teeth, module 0.75, 30°"; "24 teeth, reference diameter 25, module 1". */
  readonly name: string;
  readonly standard: string;
  readonly form: StandardForm;
  readonly teeth: number;
  /** Teeth to the inch of pitch diameter, where it is an inch form. */
  readonly pitch: number | undefined;
  /** mm of pitch diameter for each tooth, where it is a metric form. */
  readonly module: number | undefined;
  /** Over the teeth of the shaft; of serrations the size they are named by, as the table held here gives no other. */
  readonly outsideDiameter: number;
}

/** The nearest sixteenth of an inch, as shafts are named: "13/16". */
export function nominalSize(mm: number): string {
  return formatLength(mm, { unit: 'in', fraction: 16 }).replace(/ in$/, '').replace(' ', '-');
}

/**
 * Every standard spline of one count, with its outside diameter by its standard's formula.
 * Inch involutes (N + 1)/P at all three pressure angles; metric side fit m (z + 1), m (z + 0.9), m (z + 0.8) at 30°, 37.5°,
 * 45°; to a reference diameter dB, dB - 0.2 m where x = (dB/m - z - 1.1)/2 lies within its limits.
 * Units:    mm.
 * Source:   ANSI B92.1-1970 (R1993), ISO 4156, DIN 5480, SAE J500, as at each list in standards.ts.
 * Checked:  tests/reference/splines.test.ts.
 */
export function* standardSplines(teeth: number): Generator<StandardSpline> {
  const inch = { standard: INVOLUTE_STANDARD, teeth, module: undefined };
  for (const pitch of STANDARD_PITCHES)
    for (const angle of PRESSURE_ANGLES) {
      const { least, most } = INVOLUTE_RANGES[angle];
      if (pitch < least || pitch > most) continue;
      const name = `${teeth} teeth, ${pitch}/${2 * pitch} pitch, ${angle}°`;
      const outsideDiameter = ((teeth + 1) * MM_PER_INCH) / pitch;
      yield { ...inch, name, form: `involute-${angle}`, pitch, outsideDiameter };
    }
  for (const angle of PRESSURE_ANGLES)
    for (const module of METRIC_MODULES[angle]) {
      const name = `${teeth} teeth, module ${module}, ${angle}°`;
      const outsideDiameter = module * (teeth + METRIC_CRESTS[angle]);
      const form = `metric-${angle}` as const;
      yield { name, standard: METRIC_STANDARD, form, teeth, pitch: undefined, module, outsideDiameter };
    }
  for (const module of REFERENCE_MODULES) {
    const { least, most } = REFERENCE_SHIFT;
    for (const reference of REFERENCE_DIAMETERS) {
      const shift = (reference / module - teeth - 1.1) / 2;
      // Rounding of a shift that lies on its limit is no fault.
      if (shift < least - 1e-9 || shift > most + 1e-9) continue;
      yield {
        name: `${teeth} teeth, reference diameter ${reference}, module ${module}`,
        standard: REFERENCE_STANDARD,
        form: 'reference-30',
        teeth,
        pitch: undefined,
        module,
        outsideDiameter: reference - 0.2 * module,
      };
    }
  }
  for (const size of SERRATED_SIZES)
    if (size.teeth === teeth)
      yield {
        name: `${teeth} serrations, nominal ${nominalSize(size.nominal)} in`,
        standard: SERRATED_STANDARD,
        form: 'serrated',
        teeth,
        pitch: undefined,
        module: undefined,
        outsideDiameter: size.nominal,
      };
}
