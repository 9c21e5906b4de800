import type { Assumed } from '../../../shared-math/counter/index.ts';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import {
  formatDegrees,
  formatLength,
  type LengthStyle,
  NEWTONS_PER_POUND,
  parseAngle,
  parseLength,
} from '../../../shared-math/units/index.ts';

/** Fields whose figure is assumed only once that of another is known. */
const LATER: readonly string[] = ['lower', 'out'];

/** What holds in a field's place while nobody has said anything: the assumed figure, or that it has to be asked. */
export function placeholderOf(assumed: readonly Assumed[], field: string): string {
  const found = assumed.find((each) => each.field === field);
  if (found) return `${found.figure}, assumed`;
  return LATER.includes(field) ? '' : 'ask';
}

type Taken = Outcome<number | undefined, string>;

/** Longest that anything on a car is asked for, mm; beyond it a unit was slipped. */
const LONGEST = 20_000;

/** Reads a length; an empty field says nothing. `least` is what it has to be more than, mm. */
export function readLength(text: string, { unit }: LengthStyle, least = -LONGEST): Taken {
  if (text.trim() === '') return succeeded(undefined);
  const read = parseLength(text, unit);
  if (!read.ok) return read;
  if (read.value <= least && least >= 0) return failed('it is more than nothing');
  return Math.abs(read.value) > LONGEST ? failed('that is longer than any car') : read;
}

/** Reads a slope in degrees; an empty field says nothing. */
export function readSlope(text: string): Taken {
  if (text.trim() === '') return succeeded(undefined);
  const read = parseAngle(text);
  if (!read.ok) return read;
  return Math.abs(read.value) < 90 ? read : failed('it is less than 90° either way');
}

export function readWhole(text: string, most: number): Taken {
  if (text.trim() === '') return succeeded(undefined);
  if (!/^\s*\d{1,3}\s*$/.test(text)) return failed('a whole number is expected');
  return Number(text) > most ? failed(`at most ${most}`) : succeeded(Number(text));
}

/** N that the weight of a kilogram presses with. */
const NEWTONS_PER_KILOGRAM = 9.80665;
/** N: lighter than a cart, heavier than a lorry. */
const LOAD = { least: 500, most: 50_000 } as const;

/** Reads a load as scales show it: pounds with inches, kilograms with millimetres, either if its unit is written. */
export function readLoad(text: string, { unit }: LengthStyle): Taken {
  if (text.trim() === '') return succeeded(undefined);
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*(lb|lbs|kg)?\s*$/i.exec(text);
  if (!match) return failed('a load is expected; write for example 1100 lb or 500 kg');
  const kilograms = match[2] === undefined ? unit === 'mm' : match[2].toLowerCase() === 'kg';
  const newtons =
    Number((match[1] as string).replace(',', '.')) * (kilograms ? NEWTONS_PER_KILOGRAM : NEWTONS_PER_POUND);
  if (newtons < LOAD.least || newtons > LOAD.most) return failed('no car’s front axle carries that');
  return succeeded(newtons);
}

export const shownLength = (mm: number | undefined, style: LengthStyle) =>
  mm === undefined ? '' : formatLength(mm, style);
export const shownSlope = (degrees: number | undefined) =>
  degrees === undefined ? '' : formatDegrees(degrees, 1);
export const shownWhole = (value: number | undefined) => (value === undefined ? '' : String(value));
