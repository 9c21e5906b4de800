import {
  LIMITS,
  type LimitName,
  limitInForce,
  limitProblem,
  type ShopLimits,
} from '../../../shared-math/findings/index.ts';
import { failed, type Outcome, succeeded } from '../../../shared-math/outcome.ts';
import {
  formatDecimal,
  formatLength,
  type LengthStyle,
  MM_PER_INCH,
  NEWTONS_PER_POUND,
  parseAngle,
  parseLength,
} from '../../../shared-math/units/index.ts';
import { parseForce, parsePlain } from '../../controls/plain-numbers.ts';

// A limit as a figure that a person reads and types: in the reader's unit on the screen, in the limit's own inside.

/** mm. What stands for an inch where slopes are reported to readers of millimetres. */
const METRIC_INCH = 25;

/** No more decimals than the figure has. */
function short(value: number, decimals: number): string {
  return String(Number(formatDecimal(value, decimals)));
}

/** Limits are small: sixteenths would round some of them away. */
function fine(style: LengthStyle): LengthStyle {
  return style.fraction === 0 ? style : { ...style, fraction: 64 };
}

/** A limit's figure in the reader's unit, with it: "0.5°", "1/2 in", "12 to 1", "10 per cent". */
export function limitWords(name: LimitName, value: number, style: LengthStyle): string {
  switch (LIMITS[name].unit) {
    case 'degrees':
      return `${short(value, 2)}°`;
    case 'degrees-per-inch':
      return style.unit === 'in'
        ? `${short(value, 3)}° per inch`
        : `${short((value * METRIC_INCH) / MM_PER_INCH, 3)}° per ${METRIC_INCH} mm`;
    case 'length':
      return formatLength(value, fine(style));
    case 'force':
      return style.unit === 'in' ? `${short(value / NEWTONS_PER_POUND, 0)} lb` : `${short(value, 0)} N`;
    case 'ratio':
      return `${short(value, 2)} to 1`;
    case 'turns':
      return `${short(value, 2)} turns`;
    case 'share':
      return `${short(100 * value, 1)} per cent`;
  }
}

/** Reads a figure as typed, in the limit's own unit. */
function parsed(name: LimitName, text: string, style: LengthStyle): Outcome<number, string> {
  const plain = text.trim();
  const scaled = (outcome: Outcome<number, string>, factor: number): Outcome<number, string> =>
    outcome.ok ? succeeded(outcome.value * factor) : outcome;
  switch (LIMITS[name].unit) {
    case 'degrees':
      return parseAngle(plain);
    case 'degrees-per-inch': {
      const metric = style.unit === 'mm' ? !/\bin(ch)?\b/.test(plain) : /\bmm\b/.test(plain);
      const angle = parseAngle(plain.replace(/\s*(per|\/)\s*(25\s*mm|inch|in)\s*$/, ''));
      return scaled(angle, metric ? MM_PER_INCH / METRIC_INCH : 1);
    }
    case 'length':
      return parseLength(plain, style.unit);
    case 'force':
      return parseForce(plain, style.unit === 'in' ? 'lb' : 'n');
    case 'ratio':
      return parsePlain(plain);
    case 'turns':
      return parsePlain(plain.replace(/\s*turns?$/, ''));
    case 'share':
      return scaled(parsePlain(plain.replace(/\s*(%|per ?cent)$/, '')), 0.01);
  }
}

/**
 * The shop's limits with one of them as typed; emptied, or typed as the usual figure, it is the usual one again.
 * Answers one plain reason where the figure cannot be that limit.
 */
export function withTypedLimit(
  own: ShopLimits,
  name: LimitName,
  typed: string,
  style: LengthStyle,
): Outcome<ShopLimits, string> {
  const { [name]: _, ...others } = own;
  if (typed.trim() === '') return succeeded(others);
  const value = parsed(name, typed, style);
  if (!value.ok) return value;
  const problem = limitProblem(name, value.value, own);
  if (problem?.kind === 'range') {
    const [least, most] = [problem.least, problem.most].map((end) => limitWords(name, end, style));
    return failed(`it must be from ${least} to ${most}`);
  }
  if (problem) {
    const way = name.endsWith('Least') ? 'more' : 'less';
    return failed(
      `it cannot be ${way} than “${LIMITS[problem.other].words}”, ${limitWords(problem.other, problem.value, style)}`,
    );
  }
  if (value.value === LIMITS[name].usual) return succeeded(others);
  return succeeded({ ...others, [name]: value.value });
}

/** How many limits the shop has set for itself. */
export function ownCount(own: ShopLimits): number {
  return (Object.keys(own) as LimitName[]).filter(
    (name) => limitInForce(name, own).value !== LIMITS[name].usual,
  ).length;
}
