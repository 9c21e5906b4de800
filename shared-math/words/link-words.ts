import { formatDecimal, formatLength, type LengthStyle, MM_PER_INCH, toRadians } from '../units/index.ts';

/** rad. A step of a length that turns the wheel by this much is too coarse to set the link by. */
const TOO_COARSE = toRadians(0.25);

/**
 * A steering link's length (mm): in mm too where one step of the reader's fraction turns the wheel by a quarter of a
 * degree or more. A link that turns an arm of radius r by its length turns it by step / (r sin μ), μ the angle between
 * them: step / r at the least.
 */
export function linkWords(mm: number, arm: number, style: LengthStyle): string {
  const words = formatLength(mm, style);
  if (style.unit === 'mm') return words;
  const step = MM_PER_INCH / (style.fraction || 1000);
  return step / arm >= TOO_COARSE ? `${words} (${formatDecimal(mm, 1)} mm)` : words;
}
