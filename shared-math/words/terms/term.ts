import { LIMITS, type LimitName } from '../../findings/index.ts';
import { formatDecimal, MM_PER_INCH } from '../../units/index.ts';
import type { Sketch } from '../sketches/index.ts';

/** What is usual of a thing, and who says so. */
export interface Usual {
  readonly words: string;
  readonly source: string;
}

/** A word of the trade or of this board that a person with a tape measure may not know. */
export interface Term {
  /** As it stands at the head of its entry: "Caster". */
  readonly name: string;
  /** Other words for it, which are found too. */
  readonly also?: readonly string[];
  /** What it is: one or two plain sentences. */
  readonly what: string;
  /** How it is measured, or where the board takes it from. */
  readonly measured: string;
  readonly usual: Usual;
  readonly sketch: Sketch;
  /** Words that go with it, by id. */
  readonly see?: readonly string[];
}

export const PRACTICE = 'common practice, no published source';
/** Of what the board itself makes up or works out: there is nothing to be usual. */
export const BOARD = 'how this board works';

/** A term that nothing is usual of, and why. */
export const noUsual = (words: string, source: string = BOARD): Usual => ({ words, source });
export const usually = (words: string, source: string = PRACTICE): Usual => ({ words, source });

const short = (value: number, decimals = 2) => String(Number(formatDecimal(value, decimals)));

/** A length in both units, the inches as a tape has them: "1/2 in (12.7 mm)". */
export function bothLengths(mm: number): string {
  const parts = (mm / MM_PER_INCH) * 32;
  const whole = Math.round(parts);
  const inches = Math.abs(parts - whole) < 0.1 && whole > 0 ? fraction(whole) : short(mm / MM_PER_INCH, 3);
  return `${inches} in (${short(mm, 1)} mm)`;
}

/** "1 1/2" of so many thirty-seconds. */
function fraction(parts: number): string {
  let top = parts % 32;
  let bottom = 32;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const inches = Math.floor(parts / 32);
  return [inches > 0 ? String(inches) : '', top > 0 ? `${top}/${bottom}` : ''].filter(Boolean).join(' ');
}

/** The usual figure of a limit, with its unit. The shop's own may differ: the page Limits has both. */
export function figureOf(name: LimitName): string {
  const { usual, unit } = LIMITS[name];
  switch (unit) {
    case 'degrees':
      return `${short(usual)}°`;
    case 'degrees-per-inch':
      return `${short(usual)}° per inch (25 mm)`;
    case 'length':
      return bothLengths(usual);
    case 'force':
      return `${short(usual / 4.4482216, 0)} lb (${short(usual, 0)} N)`;
    case 'share':
      return `${short(100 * usual, 0)} per cent`;
    case 'turns':
      return `${short(usual)} turns`;
    case 'ratio':
      return short(usual);
  }
}

/** "4° to 8°": what lies between two limits. */
export const between = (least: LimitName, most: LimitName): Usual => ({
  words: `${figureOf(least)} to ${figureOf(most)}.`,
  source: LIMITS[least].source,
});

/** "At most 0.5°." or "At least 40°.". */
export const atMost = (name: LimitName, after = ''): Usual => ({
  words: `At most ${figureOf(name)}${after}.`,
  source: LIMITS[name].source,
});
export const atLeast = (name: LimitName, after = ''): Usual => ({
  words: `At least ${figureOf(name)}${after}.`,
  source: LIMITS[name].source,
});
