import { formatDegrees, formatLength, type LengthStyle } from '../../../../shared-math/units/index.ts';
import { type CurveColumn, endsOf } from '../../../curves/curve-column.ts';
import { brakingWords } from '../../../document/braked-car.ts';
import type { Along, TravelData } from './travel-data.ts';

/** What one end of the travel is called: "droop 3 in", "left wheel up 3°", "brakes off". */
export function endWords(along: Along, at: number, style: LengthStyle): string {
  if (along === 'braking') return at === 0 ? 'brakes off' : brakingWords(at);
  if (along === 'heave') return `${at < 0 ? 'droop' : 'bump'} ${formatLength(Math.abs(at), style)}`;
  return `${at < 0 ? 'right' : 'left'} wheel up ${formatDegrees(Math.abs(at), Number.isInteger(at) ? 0 : 1)}`;
}

/** Where a value stands, for a sentence: "at 3 in of droop", "at ride height". */
export function placeWords(along: Along, at: number, style: LengthStyle): string {
  if (along === 'braking') return at === 0 ? 'with the brakes off' : `braking at ${brakingWords(at)}`;
  if (at === 0) return 'at ride height';
  if (along === 'heave') return `at ${formatLength(Math.abs(at), style)} of ${at < 0 ? 'droop' : 'bump'}`;
  return `at ${formatDegrees(Math.abs(at), 1)} of roll, ${at < 0 ? 'right' : 'left'} wheel up`;
}

/** A curve in one sentence, for those who do not see it. */
export function curveSentence(
  name: string,
  data: TravelData,
  column: CurveColumn,
  words: (value: number) => string,
  style: LengthStyle,
): string {
  const ends = endsOf(column);
  if (!ends) return `${name}: nowhere in reach.`;
  const tell = (row: number) =>
    `${words(column[row] as number)} ${placeWords(data.along, data.at[row] as number, style)}`;
  return `${name}: from ${tell(ends.first)} to ${tell(ends.last)}.`;
}
