import { failed, type Outcome, succeeded } from '../outcome.ts';
import { quoted } from '../outside/index.ts';
import { COORDINATE_MAX } from '../tolerances.ts';
import { type Degrees, formatDecimal } from './angles.ts';

/** mm in an inch, exactly (international inch, 1959). */
export const MM_PER_INCH = 25.4;

const MM_PER_FOOT = 304.8;

export type LengthUnit = 'in' | 'mm';

/** How lengths are shown: inches to the nearest 1/fraction, or decimal inches at 0; or mm. */
export interface LengthStyle {
  readonly unit: LengthUnit;
  readonly fraction: 0 | 16 | 32 | 64;
}

const UNIT_MM: Record<string, number> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  ft: MM_PER_FOOT,
  feet: MM_PER_FOOT,
  foot: MM_PER_FOOT,
  "'": MM_PER_FOOT,
};

/** A decimal point or a decimal comma; thousands are not set apart in lengths of a car. */
const NUMBER = String.raw`(?:\d+(?:[.,]\d*)?|[.,]\d+)`;
/** "3", "3.25", "3,25", "5/8", "3 1/4", "3-1/4", "3+1/4". */
const QUANTITY = String.raw`(?:(\d+)(?:\s*[-+]\s*|\s+))?(\d+)\s*/\s*(\d+)|(${NUMBER})`;
const TERM = new RegExp(
  String.raw`^\s*(?:${QUANTITY})\s*(?:(['"])|(mm|cm|m|inches|inch|in|feet|foot|ft)\.?(?![\w.,])|(?![\w.,]))`,
);

function decimalNumber(text: string): number {
  return Number.parseFloat(text.replace(',', '.'));
}

/** Prime marks and typographic minus, quotes and fraction slash, as keyboards and pasted text bring them. */
function plain(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[’‘′]/g, "'")
    .replaceAll(/[“”″]|''/g, '"')
    .replaceAll('−', '-')
    .replaceAll('⁄', '/')
    .replaceAll('½', ' 1/2')
    .replaceAll('¼', ' 1/4')
    .replaceAll('¾', ' 3/4')
    .replaceAll('⅛', ' 1/8')
    .replaceAll('⅜', ' 3/8')
    .replaceAll('⅝', ' 5/8')
    .replaceAll('⅞', ' 7/8')
    .trim();
}

/**
 * Reads a length as a person writes it: `3 1/4`, `3-1/4"`, `3+1/4`, `5/8`, `82.55 mm`, `82,55 mm`, `1' 6 1/2"`, `-2 in`.
 * A number without a unit is in `unit`; after feet it is in inches. Answers mm, or one plain reason.
 */
export function parseLength(text: string, unit: LengthUnit): Outcome<number, string> {
  let rest = plain(text);
  if (rest === '') return failed('a length is missing');
  let sign = 1;
  const signed = /^([+-])\s*/.exec(rest);
  if (signed) {
    sign = signed[1] === '-' ? -1 : 1;
    rest = rest.slice(signed[0].length);
  }
  let total = 0;
  let smallest = Number.POSITIVE_INFINITY;
  for (let terms = 0; terms === 0 || rest !== ''; terms += 1) {
    const term = TERM.exec(rest);
    if (!term) return failed(`${quoted(text)} is not a length; write for example 3 1/4, 3.25 in or 82.5 mm`);
    const [matched, whole, numerator, denominator, decimal, mark, word] = term;
    const name = mark ?? word;
    if (denominator !== undefined && Number(denominator) === 0)
      return failed(`${quoted(text)} divides by nothing`);
    const quantity =
      decimal === undefined
        ? Number(whole ?? 0) + Number(numerator) / Number(denominator)
        : decimalNumber(decimal);
    const size =
      name === undefined
        ? terms > 0
          ? MM_PER_INCH
          : unit === 'in'
            ? MM_PER_INCH
            : 1
        : (UNIT_MM[name] as number);
    // Only feet are followed by a second term, and only by inches.
    if (terms > 0 && !(smallest === MM_PER_FOOT && size === MM_PER_INCH))
      return failed(`${quoted(text)} mixes units; write one length`);
    smallest = size;
    total += quantity * size;
    rest = rest.slice(matched.length).replace(/^\s*-/, '');
  }
  if (!Number.isFinite(total) || total > COORDINATE_MAX)
    return failed(`${quoted(text)} is longer than ${COORDINATE_MAX / 1000} metres`);
  // Documents keep what was meant: 6 in is 152.4 mm, not 152.39999999999998.
  return succeeded((sign * Math.round(total * 1e9)) / 1e9);
}

/** Reads an angle in degrees: `2.5`, `2 1/2`, `2.5°`, `-1 deg`. */
export function parseAngle(text: string): Outcome<Degrees, string> {
  const refused = failed(
    text.trim() === '' ? 'an angle is missing' : `${quoted(text)} is not an angle; write for example 2.5`,
  );
  const match = new RegExp(
    `^([+-]?)\\s*(?:(${NUMBER})|(?:(\\d+)[\\s-]+)?(\\d+)/(\\d+))\\s*(?:°|deg|degrees)?$`,
  ).exec(plain(text));
  if (!match) return refused;
  const [, sign, decimal, whole = '0', top, bottom] = match;
  const value = decimal ? decimalNumber(decimal) : Number(whole) + Number(top) / Number(bottom);
  // A dial has halves and quarters; nothing divides by 0.
  if (!Number.isFinite(value)) return refused;
  return succeeded(sign === '-' ? -value : value);
}

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

/** Inches to the nearest 1/fraction, lowest terms, without the unit: "3 1/4", "5/8", "-2". */
function inchFraction(inches: number, fraction: 16 | 32 | 64): string {
  const parts = Math.round(Math.abs(inches) * fraction);
  const whole = Math.floor(parts / fraction);
  const over = parts - whole * fraction;
  const sign = inches < 0 && parts > 0 ? '-' : '';
  if (over === 0) return `${sign}${whole}`;
  const divisor = greatestDivisor(over, fraction);
  return `${sign}${whole === 0 ? '' : `${whole} `}${over / divisor}/${fraction / divisor}`;
}

/** A length with its unit: "3 1/4 in", "3.250 in", "82.6 mm". */
export function formatLength(mm: number, style: LengthStyle): string {
  if (style.unit === 'mm') return `${formatDecimal(mm, 1)} mm`;
  const inches = mm / MM_PER_INCH;
  return style.fraction === 0
    ? `${formatDecimal(inches, 3)} in`
    : `${inchFraction(inches, style.fraction)} in`;
}

/** A length below what a rule shows, to a thousandth of an inch or a hundredth of a millimetre: "0.051 in", "1.29 mm". */
export function formatFine(mm: number, unit: LengthUnit): string {
  return unit === 'in' ? `${formatDecimal(mm / MM_PER_INCH, 3)} in` : `${formatDecimal(mm, 2)} mm`;
}

/** mm. Nearer than this to a mark of a rule, a doubt is meant as that mark: 1.6 mm is a sixteenth. */
const MARK = 0.03;

/** How far off a length may be: as a mark of a rule where it is one, "1/16 in", else to a thousandth of an inch: "0.004 in". */
export function formatDoubt(mm: number, unit: LengthUnit): string {
  const parts = Math.round((mm / MM_PER_INCH) * 32);
  const onMark = parts > 0 && Math.abs((parts / 32) * MM_PER_INCH - mm) < MARK;
  return unit === 'in' && onMark ? formatLength(mm, { unit, fraction: 64 }) : formatFine(mm, unit);
}

/** A length of car size and beyond, to the inch or centimetre: "36 ft 4 in", "11.08 m". */
export function formatSpan(mm: number, unit: LengthUnit): string {
  if (unit === 'mm') return `${formatDecimal(mm / 1000, 2)} m`;
  const inches = Math.round(Math.abs(mm) / MM_PER_INCH);
  const sign = mm < 0 && inches > 0 ? '-' : '';
  const feet = Math.floor(inches / 12);
  return `${sign}${feet === 0 ? '' : `${feet} ft `}${inches - 12 * feet} in`;
}
