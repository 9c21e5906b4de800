import { failed, type Outcome } from '../../../shared-math/outcome.ts';
import { type LengthUnit, parseAngle, parseLength } from '../../../shared-math/units/index.ts';

/** Reads what was typed into a row: mm or degrees. */
export function readFigure(
  typed: string,
  unit: 'length' | 'angle',
  shown: LengthUnit,
): Outcome<number, string> {
  if (unit === 'length') return parseLength(typed, shown);
  return /["']|mm|in\b/i.test(typed)
    ? failed('this is an angle: type it in degrees, as 7.5 or 7 1/2')
    : parseAngle(typed);
}

/** What was typed, as it is kept: a bare number with the unit that it was read in. */
export function asTyped(typed: string, unit: 'length' | 'angle', shown: LengthUnit): string {
  const text = typed.trim().slice(0, 100);
  if (unit === 'angle') return /°|deg/i.test(text) ? text : `${text}°`;
  return /[a-z"'”″′’]/i.test(text) ? text : `${text} ${shown}`;
}
