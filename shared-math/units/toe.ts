import { failed, type Outcome, succeeded } from '../outcome.ts';
import { quoted } from '../outside/index.ts';
import { type Degrees, formatDecimal, toDegrees } from './angles.ts';
import { degreesBeside, distinctWords } from './distinct-words.ts';
import { type LengthUnit, MM_PER_INCH, parseAngle, parseLength } from './lengths.ts';

/**
 * Toe as a length: thousandths of an inch, or tenths of a millimetre, as its usual band is one step of a sixteenth. Finer
 * where it would read as one of the others (mm) that it is not, or as 0.
 */
export function formatToeLength(mm: number, unit: LengthUnit, others: readonly number[] = []): string {
  const [per, decimals] = unit === 'in' ? [MM_PER_INCH, 3] : [1, 1];
  const form = (count: number) => (value: number) => `${formatDecimal(value / per, count)} ${unit}`;
  return distinctWords(mm, [...others, 0], [form(decimals), form(decimals + 1), form(decimals + 2)], 5e-4);
}

/** Toe in its one form everywhere: "0.091 in (2.3 mm, 0.20°)", the reader's unit first. */
export function formatToe(
  mm: number,
  degrees: Degrees,
  unit: LengthUnit,
  others: readonly number[] = [],
): string {
  const other = unit === 'in' ? 'mm' : 'in';
  return `${formatToeLength(mm, unit, others)} (${formatToeLength(mm, other)}, ${degreesBeside(degrees, [0], 2)})`;
}

/** What tells a length from an angle in what is typed: a unit of length, an inch or foot mark, a fraction. */
const LENGTH_MARK = /["'”″′/½¼¾⅛⅜⅝⅞]|[a-z]/i;

/**
 * Reads one wheel's toe as a person gives it: degrees (`0.1`, `0.1°`), or as a length over the tyre's diameter (`1/16"`,
 * `1.5 mm`), of which one wheel has `2 · tyreRadius · sin(toe)`. Answers degrees, or one plain reason.
 */
export function parseToe(text: string, unit: LengthUnit, tyreRadius: number): Outcome<Degrees, string> {
  const asAngle = /°|deg/i.test(text) || !LENGTH_MARK.test(text);
  if (asAngle) return parseAngle(text);
  const length = parseLength(text, unit);
  if (!length.ok) return length;
  const sine = length.value / (2 * tyreRadius);
  if (Math.abs(sine) > 0.5) return failed(`${quoted(text)} is no toe of this tyre`);
  return succeeded(toDegrees(Math.asin(sine)));
}
