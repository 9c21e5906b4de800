import { failed, type Outcome, succeeded } from '../outcome.ts';
import { formatDecimal, type LengthStyle, MM_PER_INCH } from '../units/index.ts';
import { nominalSize, type StandardSpline, standardSplines } from './forms.ts';

/** What was measured on the customer's part. */
export interface SplineMeasure {
  /** Over the teeth, mm. */
  readonly outsideDiameter: number;
  /** Teeth counted, on the whole circle or on half of it. */
  readonly counted: number;
  readonly over: 'circle' | 'half';
  /** Teeth counted on the other half, where the first count was over half: the two together are a full count. */
  readonly otherHalf?: number | undefined;
  /** Teeth that a flat, a notch or a blank takes away within what was counted. */
  readonly missing: number;
  /** What the caliper may be wrong by, mm. */
  readonly uncertainty: number;
}

/** mm. A workshop caliper and a worn crest: 0.002 in. */
export const CALIPER_UNCERTAINTY = 0.002 * MM_PER_INCH;

/** How a measured diameter stands to a form's: as made; over it, by a slip of the caliper; or under what is usual. */
export type SplineFit = 'fits' | 'over' | 'under';

/** A standard form that the measure may be. mm. */
export interface SplineCandidate extends StandardSpline {
  /** Measured less the form's outside diameter. */
  readonly difference: number;
  /** The form's count less the count that was made. */
  readonly countDifference: number;
  readonly fit: SplineFit;
  /** What is to be done about a misfit: "0.10 mm over: measure again"; empty where it fits with the count made. */
  readonly note: string;
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
 * less than a half count doubled; only forms that the caliper read a little over; or nothing standard.
 */
export type SplineVerdict = 'match' | 'choose' | 'recount' | 'measure-again' | 'trial-fit';

export interface SplineIdentity {
  readonly teeth: number;
  /** Trade name: nominal size and full count, "3/4-36". It names no tooth form. */
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

/**
 * Share of the diameter by which crests may be under the form's: topped off, worn, or made to the low limit. Own choice,
 * no published source.
 */
const UNDERSIZE = 0.012;
/** Share by which an end sold under a nominal size may measure under the form of its count: common practice, no published source. */
const NOMINAL_UNDERSIZE = 0.04;
/** mm over a form's diameter that a slip of the caliper explains: 0.010 in. Own choice, no published source. */
const SLIP = 0.01 * MM_PER_INCH;

/** What the lists hold, for the moment they end. */
const LIST_ENDS =
  'The list ends here: inch involutes of 30°, 37.5° and 45°, metric ones of ISO 4156, those of DIN 5480 with its usual reference diameters, and five sizes of SAE J500 serrations. Other metric serrations and makers’ own forms are not on it.';

/** How a measure stands to a form; undefined if it is not near. */
function fitOf(measure: SplineMeasure, { outsideDiameter, form }: StandardSpline): SplineFit | undefined {
  const { uncertainty } = measure;
  const difference = measure.outsideDiameter - outsideDiameter;
  if (difference > uncertainty)
    return form !== 'serrated' && difference <= uncertainty + SLIP ? 'over' : undefined;
  if (difference >= -(UNDERSIZE * outsideDiameter + uncertainty)) return 'fits';
  return difference >= -(NOMINAL_UNDERSIZE * outsideDiameter + uncertainty) ? 'under' : undefined;
}

function candidateOf(
  measure: SplineMeasure,
  counted: number,
  spline: StandardSpline,
  style: LengthStyle,
): SplineCandidate | undefined {
  const fit = fitOf(measure, spline);
  const countDifference = spline.teeth - counted;
  // A form of a neighbouring count has to fit: it already asks for a miscount.
  if (!fit || (countDifference !== 0 && fit !== 'fits')) return undefined;
  const difference = measure.outsideDiameter - spline.outsideDiameter;
  const off = caliperLength(Math.abs(difference), style);
  const notes = { fits: '', over: `${off} over: measure again`, under: `${off} under: trial-fit` };
  const note = countDifference === 0 ? notes[fit] : `only if the count is ${spline.teeth}, not ${counted}`;
  return { ...spline, difference, countDifference, fit, note };
}

/**
 * The order of candidates: what fits with the count made, then what is near with it, then what fits with a neighbouring
 * count. A half count doubled is not so firm: there a neighbouring count that fits comes before a size that does not.
 */
function inOrder(firm: boolean): (a: SplineCandidate, b: SplineCandidate) => number {
  const neighbour = firm ? 3 : 0.5;
  const rank = ({ countDifference, fit }: SplineCandidate) =>
    countDifference === 0 ? { fits: 0, over: 1, under: 2 }[fit] : neighbour;
  const misfit = ({ difference, outsideDiameter }: SplineCandidate) => Math.abs(difference) / outsideDiameter;
  return (a, b) =>
    rank(a) - rank(b) || misfit(a) - misfit(b) || a.teeth - b.teeth || a.form.localeCompare(b.form);
}

/** Around the whole circle: a count of half is doubled, unless the other half was counted too. */
function fullCount({ counted, missing, over, otherHalf }: SplineMeasure): { teeth: number; firm: boolean } {
  const within = counted + missing;
  if (over === 'circle') return { teeth: within, firm: true };
  return otherHalf === undefined
    ? { teeth: 2 * within, firm: false }
    : { teeth: within + otherHalf, firm: true };
}

/**
 * What standard spline a measured outside diameter and a count may belong to.
 *
 * Each standard form has its outside diameter by formula (`standardSplines`); an end is at that diameter or a little
 * under it. A full count stands: a neighbouring count is named last and never taken. A half is doubled; since it holds
 * one tooth more or less when the count is odd, there the odd neighbours count too, until the other half is counted. A
 * diameter a little over a form's asks for the caliper again, one well under it for a trial fit, as ends are sold by a
 * nominal size. Where no standard form is near, that is the answer: a name by size and count proves nothing.
 * Units:    mm; `style` for the figures in sentences.
 * Outcomes: ok, or one plain reason (a measure that is none).
 * Source:   the forms: at each in standards.ts; half counts and names: common practice, no published source.
 * Checked:  tests/reference/splines.test.ts, tests/thorough/splines.test.ts.
 */
export function identifySpline(measure: SplineMeasure, style: LengthStyle): Outcome<SplineIdentity, string> {
  const refusal = measureRefusal(measure);
  if (refusal) return failed(refusal);
  const { outsideDiameter, uncertainty } = measure;
  const { teeth, firm } = fullCount(measure);
  const near = [teeth, teeth - 1, teeth + 1]
    .flatMap((count) => [...standardSplines(count)])
    .flatMap((spline) => candidateOf(measure, teeth, spline, style) ?? []);
  // What only comes near is worth a word where nothing of the count that was made fits.
  const fitting = near.some(({ fit, countDifference }) => fit === 'fits' && countDifference === 0);
  const candidates = near.filter(({ fit }) => fit === 'fits' || !fitting).sort(inOrder(firm));
  const neighbours = candidates.slice(1).map((candidate, i) => {
    const difference = candidate.outsideDiameter - (candidates[i] as SplineCandidate).outsideDiameter;
    return { first: i, second: i + 1, difference, tooClose: Math.abs(difference) <= uncertainty };
  });
  const found = {
    teeth,
    tradeName: `${nominalSize(outsideDiameter)}-${teeth}`,
    pitchByFormula: ((teeth + 1) * MM_PER_INCH) / outsideDiameter,
    verdict: verdictOf(candidates, firm),
    candidates,
    neighbours,
  };
  return succeeded({
    ...found,
    sentence: sentenceOf(measure, found, style),
    warnings: warningsOf(measure, found, style),
  });
}

function measureRefusal(measure: SplineMeasure): string {
  const { outsideDiameter, counted, over, otherHalf, missing, uncertainty } = measure;
  if (!(outsideDiameter >= 5 && outsideDiameter <= 150)) return 'the outside diameter must be 5 to 150 mm';
  const most = over === 'half' ? 100 : 200;
  if (!(Number.isInteger(counted) && counted >= 3 && counted <= most))
    return `the count must be a whole number, 3 to ${most}`;
  if (!(Number.isInteger(missing) && missing >= 0 && missing <= counted))
    return 'the missing teeth must be a whole number, no more than those counted';
  if (otherHalf !== undefined) {
    if (over !== 'half')
      return 'the other half is counted only where the first count is over half the circle';
    if (!(Number.isInteger(otherHalf) && otherHalf >= 3 && otherHalf <= most))
      return `the other half’s count must be a whole number, 3 to ${most}`;
    if (Math.abs(counted + missing - otherHalf) > 1)
      return `the halves differ by more than a tooth, ${counted + missing} and ${otherHalf}: count both again, missing teeth in the first`;
  }
  if (!(uncertainty >= 0 && uncertainty <= 2)) return "the caliper's uncertainty must be 0 to 2 mm";
  return '';
}

/** A form is certain only when its count is the one made and nothing else with that count comes near. */
function verdictOf(candidates: readonly SplineCandidate[], firm: boolean): SplineVerdict {
  const counted = candidates.filter(({ countDifference }) => countDifference === 0);
  const fitting = counted.filter(({ fit }) => fit === 'fits');
  // A serrated end's crests have no size in the table that is held here: it is a name to try, no more.
  if (fitting.some(({ form }) => form !== 'serrated')) return fitting.length === 1 ? 'match' : 'choose';
  if (fitting.length > 0) return 'trial-fit';
  if (!firm && candidates.length > counted.length) return 'recount';
  return counted[0]?.fit === 'over' ? 'measure-again' : 'trial-fit';
}

type Found = Omit<SplineIdentity, 'sentence' | 'warnings'>;

function sentenceOf(measure: SplineMeasure, found: Found, style: LengthStyle): string {
  const { candidates, verdict, pitchByFormula, tradeName, teeth } = found;
  const measured = caliperLength(measure.outsideDiameter, style);
  const [best] = candidates;
  const size = caliperLength(best?.outsideDiameter ?? 0, style);
  const off = caliperLength(Math.abs(best?.difference ?? 0), style);
  if (verdict === 'match')
    return `${best?.name} by ${best?.standard}: ${size} over the teeth, ${measured} measured.`;
  if (verdict === 'choose') {
    const near = candidates.filter(({ countDifference, fit }) => countDifference === 0 && fit === 'fits');
    return `${near.length} standard forms of ${teeth} teeth are near ${measured}; diameter and count do not decide between them.`;
  }
  if (verdict === 'recount')
    return `No standard form has ${teeth} teeth on ${measured}; ${best?.name} would fit. Count once more, all the way round, or count the other half too.`;
  if (verdict === 'measure-again')
    return `${teeth} teeth on ${measured} is nearest to ${best?.name}, ${size} over the teeth, but ${off} over: measure again.`;
  if (best?.fit === 'under' && best.countDifference === 0)
    return `${teeth} teeth on ${measured} is nearest to ${best.name}, ${size} over the teeth, but ${off} under. Ends are sold by a nominal size that may measure under the standard: trial-fit the mating part before ordering.`;
  return `No standard involute form fits: ${teeth} teeth on ${measured} would be pitch ${formatDecimal(pitchByFormula, 1)}, which is not on the list. Trial-fit the mating part before ordering; the name ${tradeName} says nothing of the teeth's form.`;
}

function warningsOf(measure: SplineMeasure, found: Found, style: LengthStyle): string[] {
  const { candidates, neighbours, verdict } = found;
  const length = (mm: number) => caliperLength(mm, style);
  const warnings: string[] = [];
  for (const { first, second, difference, tooClose } of neighbours) {
    if (!tooClose || candidates[first]?.teeth !== candidates[second]?.teeth) continue;
    const names = `${candidates[first]?.name} and ${candidates[second]?.name}`;
    const apart =
      Math.abs(difference) < 1e-6
        ? 'are one and the same over the teeth'
        : `differ by ${length(Math.abs(difference))}, less than the caliper tells (${length(measure.uncertainty)})`;
    warnings.push(`${names} ${apart}: look at the teeth's flanks, and trial-fit.`);
  }
  if (measure.over === 'half' && measure.otherHalf === undefined)
    warnings.push(
      'An odd number of teeth has no half: count the other half too, and the full count is the sum of the two.',
    );
  if (candidates.some(({ form }) => form === 'serrated'))
    warnings.push(
      'Serrated ends are straight-sided: they do not go together with an involute of the same count and diameter. Trial-fit.',
    );
  if (measure.missing > 0)
    warnings.push(
      `${measure.missing} missing ${measure.missing === 1 ? 'tooth is' : 'teeth are'} counted in: the mating part needs its blank in the same place, or none.`,
    );
  if (verdict !== 'match' && verdict !== 'choose') warnings.push(LIST_ENDS);
  return warnings;
}

/** Ten-thousandths of an inch or hundredths of a millimetre: finer than a tape's figures, as a caliper reads. */
function caliperLength(mm: number, style: LengthStyle): string {
  return style.unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 4)} in` : `${formatDecimal(mm, 2)} mm`;
}
