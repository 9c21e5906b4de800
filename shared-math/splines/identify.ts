import { failed, type Outcome, succeeded } from '../outcome.ts';
import { formatDecimal, formatLength, type LengthStyle, MM_PER_INCH } from '../units/index.ts';
import {
  INVOLUTE_RANGES,
  INVOLUTE_STANDARD,
  SERRATED_SIZES,
  SERRATED_STANDARD,
  STANDARD_PITCHES,
} from './standards.ts';

/** What was measured on the customer's part. */
export interface SplineMeasure {
  /** Over the teeth, mm. */
  readonly outsideDiameter: number;
  /** Teeth counted, on the whole circle or on half of it. */
  readonly counted: number;
  readonly over: 'circle' | 'half';
  /** Teeth that a flat, a notch or a blank takes away within what was counted. */
  readonly missing: number;
  /** What the caliper may be wrong by, mm. */
  readonly uncertainty: number;
}

/** mm. A workshop caliper and a worn crest: 0.002 in. */
export const CALIPER_UNCERTAINTY = 0.002 * MM_PER_INCH;

/** A standard form that the measure may be. mm. */
export interface SplineCandidate {
  /** "36 teeth, 48/96 pitch, 30°". */
  readonly name: string;
  readonly standard: string;
  readonly form: 'involute-30' | 'involute-45' | 'serrated';
  readonly teeth: number;
  /** Teeth to the inch of pitch diameter; a serrated end has none. */
  readonly pitch: number | undefined;
  readonly outsideDiameter: number;
  /** Measured less the form's outside diameter. */
  readonly difference: number;
  /** The form's count less the count that was made. */
  readonly countDifference: number;
}

/** A pair of candidates and what tells them apart. */
export interface SplineNeighbours {
  readonly first: number;
  readonly second: number;
  /** Difference of the outside diameters, mm. */
  readonly difference: number;
  /** The caliper cannot tell them apart. */
  readonly tooClose: boolean;
}

/**
 * What is known in the end: one form; several that caliper and count cannot tell apart; none but with one tooth more or
 * less; or nothing standard.
 */
export type SplineVerdict = 'match' | 'choose' | 'recount' | 'trial-fit';

export interface SplineIdentity {
  readonly teeth: number;
  /** Trade name: nominal size and full count, "13/16-36". It names no tooth form. */
  readonly tradeName: string;
  /** (N + 1) / outside diameter, per inch. */
  readonly pitchByFormula: number;
  readonly verdict: SplineVerdict;
  /** The verdict in plain words, with its figures. */
  readonly sentence: string;
  readonly candidates: readonly SplineCandidate[];
  readonly neighbours: readonly SplineNeighbours[];
  readonly warnings: readonly string[];
}

/** Share of the diameter by which crests may be under the form's: topped off, worn, or made to the low limit. */
const UNDERSIZE = 0.012;

/** The nearest sixteenth of an inch, as the trade names shafts: "13/16". */
function nominalSize(mm: number): string {
  return formatLength(mm, { unit: 'in', fraction: 16 }).replace(/ in$/, '').replace(' ', '-');
}

function candidateOf(
  measure: SplineMeasure,
  counted: number,
  form: SplineCandidate['form'],
  teeth: number,
  pitch: number | undefined,
  outsideDiameter: number,
): SplineCandidate {
  const name =
    pitch === undefined
      ? `${teeth} serrations, nominal ${nominalSize(outsideDiameter)} in`
      : `${teeth} teeth, ${pitch}/${2 * pitch} pitch, ${form === 'involute-30' ? 30 : 45}°`;
  return {
    name,
    standard: pitch === undefined ? SERRATED_STANDARD : INVOLUTE_STANDARD,
    form,
    teeth,
    pitch,
    outsideDiameter,
    difference: measure.outsideDiameter - outsideDiameter,
    countDifference: teeth - counted,
  };
}

/** Every standard form with one of these counts. */
function* formsOf(
  measure: SplineMeasure,
  counted: number,
  counts: readonly number[],
): Generator<SplineCandidate> {
  for (const teeth of counts) {
    for (const pitch of STANDARD_PITCHES)
      for (const angle of [30, 45] as const) {
        const { least, most } = INVOLUTE_RANGES[angle];
        if (pitch < least || pitch > most) continue;
        const major = ((teeth + 1) * MM_PER_INCH) / pitch;
        yield candidateOf(measure, counted, `involute-${angle}`, teeth, pitch, major);
      }
    for (const size of SERRATED_SIZES)
      if (size.teeth === teeth)
        yield candidateOf(measure, counted, 'serrated', teeth, undefined, size.nominal);
  }
}

/** Within the caliper above the form's outside diameter, or below by what crests are topped off and worn. */
function fits({ difference, outsideDiameter }: SplineCandidate, uncertainty: number): boolean {
  return difference <= uncertainty && difference >= -(UNDERSIZE * outsideDiameter + uncertainty);
}

/** The count as made comes first, then the size. A step in the count is worth as much as a large misfit in size. */
function misfit({ difference, countDifference, outsideDiameter }: SplineCandidate): number {
  return Math.abs(difference) / (UNDERSIZE * outsideDiameter) + Math.abs(countDifference);
}

/**
 * What standard spline a measured outside diameter and a count may belong to.
 *
 * Involute splines have an outside diameter of (N + 1)/P, so a count and a diameter give a pitch, which is either on the
 * standard's list or it is not. A count over half the circle is doubled; since a half holds one tooth more or less when
 * the count is odd, both odd neighbours are looked at too, as is a miscount by one of a full count. Where no standard
 * form is near, that is the answer: a trade name such as 3/4-30 proves nothing, and a trial fit decides.
 * Units:    mm; `style` for the figures in sentences.
 * Outcomes: ok, or one plain reason (a measure that is none).
 * Source:   P = (N + 1)/OD: public copy of the standard's formulas; half counts and names: common practice.
 * Checked:  tests/reference/splines.test.ts, tests/unit/splines.test.ts.
 */
export function identifySpline(measure: SplineMeasure, style: LengthStyle): Outcome<SplineIdentity, string> {
  const refusal = measureRefusal(measure);
  if (refusal) return failed(refusal);
  const { outsideDiameter, uncertainty, over } = measure;
  const within = measure.counted + measure.missing;
  const teeth = over === 'half' ? 2 * within : within;
  const counts = [teeth, teeth - 1, teeth + 1];
  const candidates = [...formsOf(measure, teeth, counts)]
    .filter((candidate) => fits(candidate, uncertainty))
    .sort((a, b) => misfit(a) - misfit(b) || a.teeth - b.teeth || a.form.localeCompare(b.form));
  const neighbours = candidates.slice(1).map((candidate, i) => {
    const difference = candidate.outsideDiameter - (candidates[i] as SplineCandidate).outsideDiameter;
    return { first: i, second: i + 1, difference, tooClose: Math.abs(difference) <= uncertainty };
  });
  const found = {
    teeth,
    tradeName: `${nominalSize(outsideDiameter)}-${teeth}`,
    pitchByFormula: ((teeth + 1) * MM_PER_INCH) / outsideDiameter,
    verdict: verdictOf(candidates, uncertainty),
    candidates,
    neighbours,
  };
  return succeeded({
    ...found,
    sentence: sentenceOf(measure, found, style),
    warnings: warningsOf(measure, found, style),
  });
}

function measureRefusal({ outsideDiameter, counted, over, missing, uncertainty }: SplineMeasure): string {
  if (!(outsideDiameter >= 5 && outsideDiameter <= 150)) return 'the outside diameter must be 5 to 150 mm';
  const most = over === 'half' ? 100 : 200;
  if (!(Number.isInteger(counted) && counted >= 3 && counted <= most))
    return `the count must be a whole number, 3 to ${most}`;
  if (!(Number.isInteger(missing) && missing >= 0 && missing <= counted))
    return 'the missing teeth must be a whole number, no more than those counted';
  if (!(uncertainty >= 0 && uncertainty <= 2)) return "the caliper's uncertainty must be 0 to 2 mm";
  return '';
}

/** A form is certain only when its count is the one made and nothing else with that count comes as near. */
function verdictOf(candidates: readonly SplineCandidate[], uncertainty: number): SplineVerdict {
  const counted = candidates.filter(({ countDifference }) => countDifference === 0);
  const [best, ...others] = counted.filter(({ form }) => form !== 'serrated');
  if (!best) {
    // A serrated end's crests have no size in the table that is held here: it is a name to try, no more.
    return counted.length === 0 && candidates.length > 0 ? 'recount' : 'trial-fit';
  }
  const rival = (other: SplineCandidate) =>
    Math.abs(other.outsideDiameter - best.outsideDiameter) <= uncertainty;
  return others.some(rival) || counted.length > 1 + others.length ? 'choose' : 'match';
}

type Found = Omit<SplineIdentity, 'sentence' | 'warnings'>;

function sentenceOf(measure: SplineMeasure, found: Found, style: LengthStyle): string {
  const { candidates, verdict, pitchByFormula, tradeName, teeth } = found;
  const measured = caliperLength(measure.outsideDiameter, style);
  const [best] = candidates;
  if (verdict === 'match')
    return `${best?.name} by ${best?.standard}: ${caliperLength(best?.outsideDiameter ?? 0, style)} over the teeth, ${measured} measured.`;
  if (verdict === 'choose')
    return `${candidates.length} standard forms are near ${teeth} teeth on ${measured}; diameter and count do not decide between them.`;
  if (verdict === 'recount')
    return `No standard form has ${teeth} teeth on ${measured}; ${best?.name} would fit. Count once more, all the way round.`;
  return `No standard involute form fits: ${teeth} teeth on ${measured} would be pitch ${formatDecimal(pitchByFormula, 1)}, which is not on the list. Trial-fit the mating part before ordering; the name ${tradeName} says nothing of the teeth's form.`;
}

function warningsOf(measure: SplineMeasure, found: Found, style: LengthStyle): string[] {
  const { candidates, neighbours } = found;
  const length = (mm: number) => caliperLength(mm, style);
  const warnings: string[] = [];
  for (const { first, second, difference, tooClose } of neighbours) {
    if (!tooClose) continue;
    const names = `${candidates[first]?.name} and ${candidates[second]?.name}`;
    const apart =
      Math.abs(difference) < 1e-6
        ? 'are one and the same over the teeth'
        : `differ by ${length(Math.abs(difference))}, less than the caliper tells (${length(measure.uncertainty)})`;
    warnings.push(`${names} ${apart}: look at the teeth's flanks, and trial-fit.`);
  }
  if (measure.over === 'half')
    warnings.push(
      'An odd number of teeth has no half: if one half holds a tooth more than the other, the full count is the sum of the two.',
    );
  if (candidates.some(({ form }) => form === 'serrated'))
    warnings.push(
      'Serrated ends are straight-sided: they do not go together with an involute of the same count and diameter. Trial-fit.',
    );
  if (measure.missing > 0)
    warnings.push(
      `${measure.missing} missing ${measure.missing === 1 ? 'tooth is' : 'teeth are'} counted in: the mating part needs its blank in the same place, or none.`,
    );
  return warnings;
}

/** Ten-thousandths of an inch or hundredths of a millimetre: finer than a tape's figures, as a caliper reads. */
function caliperLength(mm: number, style: LengthStyle): string {
  return style.unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 4)} in` : `${formatDecimal(mm, 2)} mm`;
}
