import { formatDegrees } from '../../../shared-math/units/index.ts';

/** A bump steer more than twice its limit is a stop. */
const STOP_AT = 2;

/**
 * What a bump steer's doubt does to the verdict on it, degrees: that within ± the doubt it may be another one. Empty where
 * it stays what it is.
 */
export function doubtWords(
  { worst, doubt }: { readonly worst: number; readonly doubt: number },
  limit: number,
): string {
  const crossed = [limit, STOP_AT * limit].filter((each) => Math.abs(worst - each) < doubt);
  if (crossed.length === 0) return '';
  return `± ${formatDegrees(doubt, 2)} from measuring: within that the verdict may be another. Measure better before you trust it.`;
}
