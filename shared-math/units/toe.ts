import { type Degrees, formatDecimal, formatDegrees } from './angles.ts';
import { type LengthUnit, MM_PER_INCH } from './lengths.ts';

/** Toe as a length: thousandths of an inch, or tenths of a millimetre: its usual band is one step of a sixteenth. */
export function formatToeLength(mm: number, unit: LengthUnit): string {
  return unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 3)} in` : `${formatDecimal(mm, 1)} mm`;
}

/** Toe in its one form everywhere: "0.091 in (2.3 mm, 0.20°)", the reader's unit first. */
export function formatToe(mm: number, degrees: Degrees, unit: LengthUnit): string {
  const other = unit === 'in' ? 'mm' : 'in';
  return `${formatToeLength(mm, unit)} (${formatToeLength(mm, other)}, ${formatDegrees(degrees, 2)})`;
}
