import type { ArcsDetail, GapTick } from '../../../../../shared-math/detail/index.ts';
import { gapSize } from '../gap-size.ts';

/** How lengths are written, and what is written about the detail as a whole. */
export interface DetailWords {
  readonly letter: string;
  /** A length in the reader's unit, and finer for small gaps. */
  readonly length: (mm: number) => string;
  readonly fineLength: (mm: number) => string;
  /** Instead of all else, where the axle has no pose. */
  readonly none: string;
  readonly signs: string;
  /** What the circle does not show, or what the present heave leaves out; empty where there is nothing to say. */
  readonly aside: string;
}

export type Lengths = Pick<DetailWords, 'length' | 'fineLength'>;

export const NO_GAP = 'no gap';
export const NO_PATH = 'The axle has no pose over the travel.';
export const SIGNS = '+ link too short, − too long';

/** "3 in bump", "ride height". */
export function heaveWords(heave: number, { length }: Pick<DetailWords, 'length'>): string {
  return heave === 0 ? 'ride height' : `${length(Math.abs(heave))} ${heave > 0 ? 'bump' : 'droop'}`;
}

/** "+3/16 in", "−1/32 in", "under 1/64 in" where the reader's own smallest step would show none; "no gap" where there is none. */
export function gapWords(gap: number, { fineLength }: Pick<DetailWords, 'fineLength'>): string {
  const words = gapSize(gap, fineLength);
  if (words === undefined) return NO_GAP;
  return words.startsWith('under') ? words : `${gap > 0 ? '+' : '−'}${words}`;
}

/** The largest gap that the circle does not show, as one line; empty where it shows all. */
export function beyondWords(ticks: readonly GapTick[], lengths: Lengths): string {
  const beyond = ticks.filter(({ within }) => !within);
  const largest = beyond.reduce<GapTick | undefined>(
    (most, tick) => (most && Math.abs(most.gap) >= Math.abs(tick.gap) ? most : tick),
    undefined,
  );
  return largest
    ? `beyond the circle: ${gapWords(largest.gap, lengths)} at ${heaveWords(largest.heave, lengths)}`
    : '';
}

/** What the detail shows, for whoever cannot see it. */
export function detailSentence(
  { ticks }: Pick<ArcsDetail, 'ticks'>,
  present: GapTick | undefined,
  lengths: Lengths,
): string {
  if (ticks.length === 0) return NO_PATH;
  const each = (tick: GapTick) => `${heaveWords(tick.heave, lengths)} ${gapWords(tick.gap, lengths)}`;
  const now = present ? ` The car stands at ${each(present)}.` : '';
  return `Gap between what the axle asks of the steering-arm ball and what the drag link allows: ${ticks.map(each).join('; ')}.${now}`;
}
