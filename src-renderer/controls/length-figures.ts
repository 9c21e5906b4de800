import type { Settings } from '../../src-main/api/contract.ts';

/** How lengths are shown, as one choice: the unit, and of an inch how finely. */
export type LengthFigure = 'in-16' | 'in-32' | 'in-64' | 'in-0' | 'mm';

export const LENGTH_FIGURES: readonly (readonly [LengthFigure, string])[] = [
  ['in-16', 'in, 1/16'],
  ['in-32', 'in, 1/32'],
  ['in-64', 'in, 1/64'],
  ['in-0', 'in, decimal'],
  ['mm', 'mm'],
];

type Lengths = Pick<Settings, 'unit' | 'fraction'>;

export function lengthFigureOf({ unit, fraction }: Lengths): LengthFigure {
  return unit === 'mm' ? 'mm' : `in-${fraction}`;
}

/** What a choice sets; millimetres leave how finely an inch is shown as it is. */
export function lengthsOf(figure: LengthFigure): Partial<Lengths> {
  return figure === 'mm'
    ? { unit: 'mm' }
    : { unit: 'in', fraction: Number(figure.slice('in-'.length)) as Lengths['fraction'] };
}
