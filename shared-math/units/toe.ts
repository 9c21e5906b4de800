import { type Degrees, formatDecimal } from './angles.ts';
import { degreesBeside, distinctWords } from './distinct-words.ts';
import { type LengthUnit, MM_PER_INCH } from './lengths.ts';

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
