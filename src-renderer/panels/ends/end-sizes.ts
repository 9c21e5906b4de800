import { BORE_OVER } from '../../../shared-math/shaft/index.ts';
import { MM_PER_INCH } from '../../../shared-math/units/index.ts';
import { type Fit, fieldValue, withField } from './end-forms.ts';

// Sizes that shafts and joints are sold in: common practice, no published source. Makers differ, so the mate is measured.

/** A size that is often met, for the choice beside free entry. */
export interface UsualSize {
  readonly words: string;
  readonly size: Readonly<Record<string, number | string | undefined>>;
}

const inches = (value: number) => value * MM_PER_INCH;

const ROUND_SIZES: readonly UsualSize[] = (
  [
    ['3/4', 0.75],
    ['13/16', 0.8125],
    ['7/8', 0.875],
    ['1', 1],
  ] as const
).map(([words, diameter]) => ({ words: `${words} in`, size: { diameter: inches(diameter) } }));

/** Trade sizes of double-D, of which makers' flats differ. */
const DOUBLE_D_SIZES: readonly UsualSize[] = (
  [
    ['3/4', 0.75, 0.55],
    ['3/4', 0.75, 0.56],
    ['1', 1, 0.75],
    ['1', 1, 0.8],
  ] as const
).map(([words, diameter, acrossFlats]) => ({
  words: `${words} in, ${acrossFlats.toFixed(3)} in across the flats`,
  size: { diameter: inches(diameter), acrossFlats: inches(acrossFlats) },
}));

/** Counts, pitches and angles of the inch standard that come out near 3/4 and 1 in; what a form is, not who sells it. */
const SPLINE_FORMS = [
  [36, 48, 45],
  [35, 48, 45],
  [29, 40, 45],
  [23, 32, 30],
  [47, 48, 45],
  [31, 32, 30],
] as const;

/** Forms of the inch standard, as large as its formula has them: (N + 1)/P. */
const SPLINE_SIZES: readonly UsualSize[] = SPLINE_FORMS.map(([teeth, pitch, angle]) => ({
  words: `${teeth} teeth, ${pitch}/${2 * pitch} pitch, ${angle}°`,
  size: {
    form: `involute-${angle}`,
    teeth,
    pitch,
    module: undefined,
    diameter: inches((teeth + 1) / pitch),
  },
}));

/** The usual sizes of a part's kind, as its own fields have them: a joint's bore is a little over its shaft. */
export function usualSizes(fit: Fit): readonly UsualSize[] {
  if ('teeth' in fit) return SPLINE_SIZES;
  const sizes = 'acrossFlats' in fit ? DOUBLE_D_SIZES : ROUND_SIZES;
  if (!('bore' in fit)) return sizes;
  return sizes.map(({ words, size }) => {
    const { diameter, acrossFlats } = size as { diameter: number; acrossFlats?: number };
    return {
      words: `for ${words}`,
      size: {
        bore: diameter + BORE_OVER,
        ...(acrossFlats === undefined ? {} : { acrossFlats: acrossFlats + BORE_OVER }),
      },
    };
  });
}

/** Sizes that read alike on a caliper are one, mm. */
const ALIKE = 0.02;

/** Which of the usual sizes a part has; undefined if it has one of its own. */
export function usualSizeOf(fit: Fit): UsualSize | undefined {
  return usualSizes(fit).find(({ size }) =>
    Object.entries(size).every(([path, value]) => {
      const stands = fieldValue(fit, path);
      return typeof value === 'number' && typeof stands === 'number'
        ? Math.abs(value - stands) <= ALIKE
        : value === stands;
    }),
  );
}

/** A part in a usual size; everything else about it stays. */
export function withSize<Value extends Fit>(fit: Value, { size }: UsualSize): Value {
  return Object.entries(size).reduce((each, [path, value]) => withField(each, path, value), fit);
}
