import { formatDecimal, type Radians, toDegrees } from './angles.ts';
import { formatLength, type LengthStyle, MM_PER_INCH } from './lengths.ts';

// Figures that are read beside others: a limit, a nought, the figure before a change. Rounding must not make two of them
// look alike that are not.

type Form = (value: number) => string;

/**
 * A value in the coarsest of its forms in which it does not read as one of the others, unless it is that other: unless
 * they differ by no more than `same`. The finest form is taken where none tells them apart.
 */
export function distinctWords(
  value: number,
  others: readonly number[],
  forms: readonly [Form, ...Form[]],
  same: number,
): string {
  const unlike = others.filter((other) => Math.abs(other - value) > same);
  const form = forms.find((one) => unlike.every((other) => one(other) !== one(value))) ?? forms.at(-1);
  return (form as Form)(value);
}

/** Half of the last of the four decimals that a figure is reported with at the finest. */
const LEAST = 5e-5;

/** A figure with as few decimals, `decimals` at least, as tell it from the others; four at the most. */
export function decimalBeside(value: number, others: readonly number[], decimals: number): string {
  const counts = [0, 1, 2, 3, 4].filter((count) => count >= decimals);
  const forms = counts.map((count) => (one: number) => formatDecimal(one, count));
  return distinctWords(value, others, forms as [Form], LEAST);
}

/** An angle in degrees with as few decimals, `decimals` at least, as tell it from the others; four at the most. */
export function degreesBeside(degrees: number, others: readonly number[], decimals = 1): string {
  return `${decimalBeside(degrees, others, decimals)}°`;
}

/** What wheels steer by, rad, in hundredths of a degree; finer where that would read as 0 and it is not. */
export function formatSteer(steer: Radians): string {
  return degreesBeside(toDegrees(steer), [0], 2);
}

/** mm. Half of the last decimal of a length at its finest: 0.0001 in, 0.001 mm. */
const LEAST_LENGTH = { in: LEAST * MM_PER_INCH, mm: 5e-4 };

/**
 * A length that does not read as one of the others (mm): in the reader's fraction, else in thousandths of an inch, or
 * in hundredths of a millimetre where a tenth does not tell them apart.
 */
export function lengthBeside(mm: number, others: readonly number[], style: LengthStyle): string {
  const inches = style.unit === 'in';
  return distinctWords(
    mm,
    others,
    [
      (value) => formatLength(value, style),
      inches
        ? (value) => formatLength(value, { unit: 'in', fraction: 0 })
        : (value) => `${formatDecimal(value, 2)} mm`,
      inches
        ? (value) => `${formatDecimal(value / MM_PER_INCH, 4)} in`
        : (value) => `${formatDecimal(value, 3)} mm`,
    ],
    LEAST_LENGTH[style.unit],
  );
}

/** mm. Half a thousandth of an inch: nearer than this a length is its fraction. */
const AS_GOOD = 0.0125;

/** A length as it was set, as a limit is: in the reader's fraction where it is that, else in thousandths or hundredths. */
export function setLength(mm: number, style: LengthStyle): string {
  if (style.unit === 'mm') return `${String(Number(formatDecimal(mm, 2)))} mm`;
  for (const fraction of [16, 32, 64] as const) {
    const step = MM_PER_INCH / fraction;
    if (Math.abs(mm - Math.round(mm / step) * step) < AS_GOOD && style.fraction !== 0)
      return formatLength(mm, { unit: 'in', fraction });
  }
  return formatLength(mm, { unit: 'in', fraction: 0 });
}
