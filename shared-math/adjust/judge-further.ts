import type { FurtherRow } from './further.ts';

/** Residuals correlated above this cannot be distinguished. */
export const ALIKE_ABOVE = 0.9;

/** A residual this many of its own standard deviations large does not fit: one in a thousand does by chance (Baarda 1968). */
export const FITS_WITHIN = 3.29;

/** What was observed beside the survey's rows, after the adjustment, in its own units. */
export interface AdjustedFurther {
  readonly id: string;
  /** Observed less computed, each number of it. */
  readonly residuals: readonly number[];
  /** The least that the others check of one of them, 0 to 1; null if it is left out. */
  readonly redundancy: number | null;
  /** The largest residual in its own standard deviations, without its sign; null where nothing checks it. */
  readonly w: number | null;
  readonly fits: boolean | null;
  /** Where it does not fit: what else the data cannot tell from it. */
  readonly alike: readonly string[];
}

/** What is asked of a number among all that were observed, the survey's rows first. */
interface Judged {
  w(i: number): number | null;
  readonly redundancy: readonly number[];
  correlated(i: number, k: number): number;
}

/**
 * Each of what was observed further, judged by that number of it which is furthest off in its own standard deviations; and
 * which of them a survey's row cannot be distinguished from.
 */
export function judgeFurther(
  all: readonly FurtherRow[],
  usedFurther: readonly FurtherRow[],
  used: readonly string[],
  { w, redundancy, correlated }: Judged,
) {
  const starts = new Map<string, number>();
  let end = used.length;
  for (const { id, observed } of usedFurther) {
    starts.set(id, end);
    end += observed.length;
  }
  const numbersOf = ({ id, observed }: FurtherRow): number[] => {
    const first = starts.get(id);
    return first === undefined ? [] : observed.map((_, i) => first + i);
  };
  /** The further rows of which one number goes along with number i. */
  const alikeTo = (i: number, own?: FurtherRow) =>
    usedFurther.flatMap((other) =>
      other !== own && numbersOf(other).some((k) => correlated(i, k) > ALIKE_ABOVE) ? [other.id] : [],
    );
  const value = new Float64Array(Math.max(1, ...all.map(({ observed }) => observed.length)));
  const rows = all.map((row): AdjustedFurther => {
    const residuals = row.compute(value, 0) ? row.observed.map((each, i) => each - (value[i] as number)) : [];
    const numbers = numbersOf(row);
    const { id } = row;
    if (numbers.length === 0) return { id, residuals, redundancy: null, w: null, fits: null, alike: [] };
    const [worst] = numbers
      .flatMap((i) => {
        const own = w(i);
        return own === null ? [] : [{ i, w: Math.abs(own) }];
      })
      .sort((a, b) => b.w - a.w);
    const fits = worst ? worst.w <= FITS_WITHIN : null;
    const alike =
      worst && !fits
        ? [
            ...used.flatMap((other, k) => (correlated(worst.i, k) > ALIKE_ABOVE ? [other] : [])),
            ...alikeTo(worst.i, row),
          ]
        : [];
    const least = Math.min(...numbers.map((i) => redundancy[i] as number));
    return { id, residuals, redundancy: least, w: worst?.w ?? null, fits, alike };
  });
  return { rows, alikeTo };
}
