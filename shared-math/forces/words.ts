import { formatDecimal, formatForce, formatMoment, type LengthUnit } from '../units/index.ts';
import type { FigureKind, ForceFigure } from './figures.ts';
import type { LoadCase, LoadCaseId, Reach } from './load-cases.ts';
import type { Margin } from './margins.ts';
import type { StaticsFailure } from './statics.ts';

/** What a case is, in the words of the shop. */
export const CASE_WORDS: Readonly<Record<LoadCaseId, string>> = {
  parking: 'Turned at a standstill',
  box: 'Box at its most, a wheel held',
  braking: 'Braked hard, straight ahead',
};

/** What a figure below and above 0 does. */
export const WAY_WORDS: Readonly<Record<FigureKind, readonly [below: string, above: string]>> = {
  link: ['push', 'pull'],
  along: ['push', 'pull'],
  upright: ['down', 'up'],
  across: ['to the right', 'to the left'],
  moment: ['one way', 'other way'],
};

/** Why a pose has no forces: one sentence, without its full stop. */
export const NO_FORCES: Readonly<Record<StaticsFailure, string>> = {
  'no-pose': 'the linkage does not reach this pose',
  'drag-link-dead-centre':
    'the drag link stands in line with its steering arm, at a dead centre: no force in it turns the wheel',
  'tie-rod-dead-centre':
    'the tie rod stands in line with its arm, at a dead centre: no force in it turns the wheel',
  'box-dead-centre':
    'the drag link stands in line with the pitman arm, at a dead centre: the box could push it with any force',
  'axle-free': 'the links leave the axle free to move, so nothing holds these loads',
};

/** Beside every figure of forces and of what parts bear. */
export const FORCES_CAUTION =
  'Rough bounds for a qualified person: they prove no part, and no strength is certified.';

/** A force or moment without its sign, in the reader's unit. */
const size = (kind: ForceFigure['kind'], value: number, unit: LengthUnit) =>
  kind === 'moment' ? formatMoment(Math.abs(value) / 1000, unit) : formatForce(Math.abs(value), unit);

/** A range: "120 to 420 lb", its unit once; one figure where both read alike. */
function span(light: string, heavy: string): string {
  if (light === heavy) return heavy;
  const unit = heavy.replace(/^[\d.,]+/, '');
  return light.endsWith(unit) ? `${light.slice(0, -unit.length)} to ${heavy}` : `${light} to ${heavy}`;
}

/** A figure each way from a case's lighter load to its heavier: "push 120 to 420 lb"; a way that it does not go is left out. */
export function reachWords(figure: ForceFigure, light: Reach, heavy: Reach, unit: LengthUnit): string {
  const [below, above] = WAY_WORDS[figure.kind];
  const ways = [
    [below, light.least.value, heavy.least.value],
    [above, light.most.value, heavy.most.value],
  ] as const;
  const words = ways.flatMap(([way, from, to]) => {
    const [least, most] = [size(figure.kind, from, unit), size(figure.kind, to, unit)];
    return Number.parseFloat(most) === 0 && Number.parseFloat(least) === 0
      ? []
      : [`${way} ${Math.abs(from) <= Math.abs(to) ? span(least, most) : span(most, least)}`];
  });
  return words.length === 0 ? 'next to nothing' : words.join(', ');
}

/** "5.2 times", to two figures and never rounded up to what it does not reach. */
export function timesWords(times: number): string {
  if (times >= 100) return 'over 100 times';
  const digits = times >= 10 ? 0 : 1;
  const floored = Math.floor(times * 10 ** digits + 1e-9) / 10 ** digits;
  return `${formatDecimal(floored, digits)} times`;
}

/** How often a link bears what a case asks: "3.1 to 7.4 times". */
export function marginWords(light: Margin, heavy: Margin): string {
  if (heavy.times === undefined) return '';
  if (light.times === undefined) return timesWords(heavy.times);
  const [least, most] = [timesWords(heavy.times), timesWords(light.times)];
  return least === most ? least : `${least.replace(' times', '')} to ${most}`;
}

/** What the two ends of a case's ranges are: "grip 0.4 to 0.9, assumed". */
export function loadWords({ id, loads: [light, heavy], assumed }: LoadCase, unit: LengthUnit): string {
  const words =
    id === 'box'
      ? `${span(formatMoment(light, unit), formatMoment(heavy, unit))} at the sector shaft`
      : `grip ${formatDecimal(light, 1)} to ${formatDecimal(heavy, 1)}`;
  return assumed ? `${words}, assumed` : words;
}
