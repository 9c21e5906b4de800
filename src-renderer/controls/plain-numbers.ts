import { failed, type Outcome, succeeded } from '../../shared-math/outcome.ts';

const NUMBER = /^[+-]?(\d+([.,]\d+)?|[.,]\d+)$/;

function numberIn(text: string): number | undefined {
  return NUMBER.test(text) ? Number(text.replace(',', '.')) : undefined;
}

/** Reads a number without a unit, as a ratio: "16", "16.5", "16:1", "16 to 1". */
export function parsePlain(text: string): Outcome<number, string> {
  const value = numberIn(text.trim().replace(/\s*(:|to)\s*1$/, ''));
  return value === undefined
    ? failed(text.trim() === '' ? 'a number is missing' : `"${text.trim()}" is not a number`)
    : succeeded(value);
}

/** Newtons for one of each unit that a scale may show. Pounds and kilograms mean what such a weight presses with. */
const FORCE: Record<string, number> = {
  n: 1,
  kn: 1000,
  kg: 9.80665,
  lb: 4.4482216152605,
  lbs: 4.4482216152605,
  lbf: 4.4482216152605,
};

/**
 * Reads a load in newtons, or as a weight in pounds or kilograms: "4900 N", "1100 lb", "500 kg"; a bare number is in the
 * unit that the field shows.
 */
export function parseForce(text: string, bare: 'n' | 'lb' | 'kg'): Outcome<number, string> {
  const match = /^(.+?)\s*([a-z]*)$/.exec(text.trim().toLowerCase());
  const value = numberIn(match?.[1]?.trim() ?? '');
  const factor = FORCE[match?.[2] || bare];
  if (value === undefined || factor === undefined)
    return failed(
      text.trim() === ''
        ? 'a load is missing'
        : `"${text.trim()}" is not a load; write for example 1100 lb, 500 kg or 4900 N`,
    );
  return succeeded(value * factor);
}

/** Reads what a scale shows; a bare number is pounds with inches and kilograms with millimetres. N. */
export function parseLoad(text: string, unit: 'in' | 'mm'): Outcome<number, string> {
  return parseForce(text, unit === 'in' ? 'lb' : 'kg');
}

/** N·m in a foot-pound, exactly: a pound-force over a foot of 0.3048 m. */
const FOOT_POUND = 4.4482216152605 * 0.3048;

/** N·m for one of each unit. */
const MOMENT: Record<string, number> = { nm: 1, lbft: FOOT_POUND, ftlb: FOOT_POUND };

/** Reads a moment in N·m: "800 N·m", "600 lb·ft"; a bare number is foot-pounds with inches and newton metres with millimetres. */
export function parseMoment(text: string, unit: 'in' | 'mm'): Outcome<number, string> {
  const match = /^([+-]?[\d.,]+)\s*(.*)$/.exec(text.trim().toLowerCase());
  const value = numberIn(match?.[1] ?? '');
  const word = (match?.[2] ?? '').replaceAll(/[\s·.*-]/g, '').replace(/lb(fft|sft)$/, 'lbft');
  const factor = MOMENT[word || (unit === 'in' ? 'lbft' : 'nm')];
  if (value === undefined || factor === undefined)
    return failed(
      text.trim() === ''
        ? 'a moment is missing'
        : `"${text.trim()}" is not a moment; write for example 600 lb·ft or 800 N·m`,
    );
  return succeeded(value * factor);
}
