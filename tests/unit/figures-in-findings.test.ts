import { describe, expect, test } from 'vitest';
import { type Speech, speech } from '../../shared-math/findings/finding.ts';
import {
  analyse,
  type Finding,
  LIMITS,
  type LimitUnit,
  RULES,
  withClearances,
} from '../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import { type LengthStyle, MM_PER_INCH, parseLength, toDegrees } from '../../shared-math/units/index.ts';
import { DEMONSTRATIONS } from '../support/demonstration-files.ts';
import { randomLayout } from '../support/random-layouts.ts';

// Every figure of every finding, as it was asked for and as it reads: two that differ do not read the same, the larger of
// two reads as the larger, and none reads as 0 that is not 0. The rules are heard while they speak.

const INCHES: LengthStyle = { unit: 'in', fraction: 16 };
const MM: LengthStyle = { unit: 'mm', fraction: 16 };

/** A figure that a rule reported: what it was (degrees, mm, N, degrees per inch), and its words. */
interface Told {
  readonly kind: 'length' | 'degrees' | 'slope' | 'force' | 'number';
  readonly value: number;
  readonly words: string;
}

/** Below these two figures are one: 0.00005° and half of 0.0001 in, as fine as the words go. */
const ONE: Record<Told['kind'], number> = {
  length: 0.0013,
  degrees: 5e-5,
  slope: 5e-5,
  force: 5e-4,
  number: 5e-5,
};

/** Speech that writes down what it says. */
function heard(style: LengthStyle): { readonly speak: Speech; readonly said: Told[] } {
  const plain = speech(style, {});
  const said: Told[] = [];
  const tell = (kind: Told['kind'], value: number, words: string): string => {
    said.push({ kind, value, words });
    return words;
  };
  const speak: Speech = {
    ...plain,
    length: (mm, others) => tell('length', mm, plain.length(mm, others)),
    setLength: (mm) => tell('length', mm, plain.setLength(mm)),
    angle: (rad, decimals, others) => tell('degrees', toDegrees(rad), plain.angle(rad, decimals, others)),
    perInch: (slope, others) => tell('slope', toDegrees(slope) * MM_PER_INCH, plain.perInch(slope, others)),
    setPerInch: (slope) => tell('slope', toDegrees(slope) * MM_PER_INCH, plain.setPerInch(slope)),
    force: (newtons, others) => tell('force', newtons, plain.force(newtons, others)),
    setForce: (newtons) => tell('force', newtons, plain.setForce(newtons)),
    number: (value, decimals, others) => tell('number', value, plain.number(value, decimals, others)),
    figure: (value) => {
      const words = plain.figure(value);
      said.push({ kind: 'degrees', value, words: `${words}°` });
      return tell('number', value, words);
    },
  };
  return { speak, said };
}

/** What words say to somebody who has only them. */
function read({ kind, words }: Told): number {
  if (kind !== 'length') return Number.parseFloat(words);
  const length = parseLength(words, 'mm');
  if (!length.ok) throw new Error(words);
  return length.value;
}

/** Where some words stand in a text as whole figures. */
function placesOf(words: string, text: string): number {
  const whole = new RegExp(
    `(?<![\\d./])(?<!\\d )${words.replaceAll(/[.+*?^$()[\]{}|\\]/g, '\\$&')}(?![\\d/])(?!\\.\\d)`,
    'g',
  );
  return text.match(whole)?.length ?? 0;
}

/** Where it was measured, and what it stands at: no figures to be held to the limit. */
const BESIDE_THE_POINT =
  / at (?:[\d ./]+ (?:in|mm) of (?:bump|droop)|ride height).*$|, from .*$| stays at .*$/;

/** What is wrong with the figures of a finding: each fault as one line. */
function faultsOf(finding: Finding, said: readonly Told[]): string[] {
  const text = `${finding.sentence.replace(BESIDE_THE_POINT, '')} (${finding.limit})`;
  const told = said.filter(({ words }) => placesOf(words, text) > 0);
  const faults = new Set<string>();
  for (const one of told) {
    if (read(one) === 0 && Math.abs(one.value) > ONE[one.kind])
      faults.add(`${text}: ${one.words} is ${one.value}`);
    for (const other of told) {
      if (other.kind !== one.kind || one.value - other.value <= ONE[one.kind]) continue;
      const [larger, smaller] = [read(one), read(other)];
      // Two in one place are the same words of two findings.
      if (larger < smaller || (larger === smaller && placesOf(one.words, text) > 1))
        faults.add(`${text}: ${one.words} is ${one.value}, ${other.words} is ${other.value}`);
      if (larger === smaller && one.words !== other.words)
        faults.add(`${text}: ${one.words} is ${one.value}, ${other.words} is ${other.value}`);
    }
  }
  return [...faults];
}

/** What a limit's figure is reported as, and how much of that is one of its unit. */
const KIND_OF_LIMIT: Record<LimitUnit, readonly [kind: Told['kind'], per: number]> = {
  degrees: ['degrees', 1],
  'degrees-per-inch': ['slope', 1],
  length: ['length', 1],
  force: ['force', 1],
  ratio: ['number', 1],
  turns: ['number', 1],
  share: ['number', 100],
};

/** A figure close to a measured one, as a person types it: to 0.001 in, 0.01 mm, 0.001°, a pound, a newton. */
function typed({ kind, value }: Told, share: number, style: LengthStyle): number {
  const inches = style.unit === 'in';
  const steps = { length: inches ? 0.0254 : 0.01, force: inches ? 4.4482216152605 : 1 };
  const step = kind === 'length' || kind === 'force' ? steps[kind] : 0.001;
  return Math.round((Math.abs(value) * share) / step) * step;
}

/** A shop that holds each limit so close to what a rule has measured that rounding would make them one. */
function closeShop(said: readonly Told[], share: number, style: LengthStyle): Speech['limit'] {
  return (name) => {
    const [kind, per] = KIND_OF_LIMIT[LIMITS[name].unit];
    const usual = LIMITS[name].usual * per;
    const near = said
      .filter((one) => one.kind === kind && one.value !== 0 && Math.abs(one.value - usual) > ONE[kind])
      .sort((a, b) => Math.abs(a.value - usual) - Math.abs(b.value - usual))[0];
    const value = near ? typed(near, share, style) / per : LIMITS[name].usual;
    return { value, source: 'this shop’s own limit' };
  };
}

function faultsIn(
  document: LayoutDocument,
  style: LengthStyle,
): { readonly faults: string[]; readonly figures: number } {
  const analysis = withClearances(analyse(resolveLayout(document)));
  const faults: string[] = [];
  let figures = 0;
  for (const rule of RULES) {
    const usual = heard(style);
    for (const finding of rule.judge(analysis, usual.speak)) faults.push(...faultsOf(finding, usual.said));
    figures += usual.said.length;
    for (const share of [0.998, 1.002]) {
      const { speak, said } = heard(style);
      const close = { ...speak, limit: closeShop(usual.said, share, style) };
      for (const finding of rule.judge(analysis, close)) faults.push(...faultsOf(finding, said));
    }
  }
  return { faults, figures };
}

describe.each([
  ['inches', INCHES],
  ['millimetres', MM],
] as const)('figures of findings in %s', (_, style) => {
  test('of every demonstration read as what they are', () => {
    for (const [name, document] of DEMONSTRATIONS) {
      const { faults, figures } = faultsIn(document, style);
      expect(figures, name).toBeGreaterThan(20);
      expect(faults, name).toEqual([]);
    }
  });

  test('of scattered layouts read as what they are', () => {
    let looked = 0;
    for (let seed = 1; seed <= 24; seed += 1) {
      const document = randomLayout(seed, seed % 2 === 0 ? 5 : 40);
      if (!document) continue;
      looked += 1;
      expect(faultsIn(document, style).faults, `seed ${seed}`).toEqual([]);
    }
    expect(looked).toBeGreaterThan(15);
  });
});
