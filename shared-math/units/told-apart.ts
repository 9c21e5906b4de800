import { formatDecimal } from './angles.ts';
import { formatLength, type LengthStyle, MM_PER_INCH } from './lengths.ts';

// Figures that are read beside others: a limit, a nought, the figure before a change. Rounding must not make two of them
// look alike that are not.

/** Nearer than this share of a unit two values are the same, whatever their last digits. */
const SAME = 1e-9;

/**
 * A value in the coarsest of its forms in which it does not read as one of the others, unless it is that other.
 * The finest form is taken where none tells them apart.
 */
export function toldApart(
  value: number,
  others: readonly number[],
  forms: readonly [(value: number) => string, ...((value: number) => string)[]],
): string {
  const unlike = others.filter((other) => Math.abs(other - value) > SAME);
  const form = forms.find((one) => unlike.every((other) => one(other) !== one(value))) ?? forms.at(-1);
  return (form as (value: number) => string)(value);
}

/** An angle in degrees with as few decimals, `decimals` at least, as tell it from the others; four at the most. */
export function degreesBeside(degrees: number, others: readonly number[], decimals = 1): string {
  const forms = [decimals, decimals + 1, decimals + 2, 4].map(
    (count) => (value: number) => `${formatDecimal(value, count)}°`,
  );
  return toldApart(degrees, others, forms as [(value: number) => string]);
}

/**
 * A length that does not read as one of the others (mm): in the reader's fraction, else in thousandths of an inch, or
 * in hundredths of a millimetre where a tenth does not tell them apart.
 */
export function lengthBeside(mm: number, others: readonly number[], style: LengthStyle): string {
  return toldApart(mm, others, [
    (value) => formatLength(value, style),
    style.unit === 'in'
      ? (value) => formatLength(value, { unit: 'in', fraction: 0 })
      : (value) => `${formatDecimal(value, 2)} mm`,
    style.unit === 'in'
      ? (value) => `${formatDecimal(value / MM_PER_INCH, 4)} in`
      : (value) => `${formatDecimal(value, 3)} mm`,
  ]);
}
