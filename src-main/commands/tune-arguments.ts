import { quoted } from '../../shared-math/outside/index.ts';
import {
  FREEDOMS,
  type FreeMove,
  freedomNamed,
  type Holds,
  type Range,
  USUAL_WITHIN,
} from '../../shared-math/tune/index.ts';
import { plainNumber } from './arguments.ts';
import { UsageError } from './usage.ts';

function numberOf(option: string, text: string): number {
  const value = plainNumber(text);
  if (!Number.isFinite(value)) throw new UsageError(`--${option}: ${quoted(text)} is not a number`);
  return value;
}

/** Reads how far something may be moved: 60 is 60 mm either way, -80:40 from 80 back to 40 on. */
function readReach(option: string, text: string): [number, number] {
  const parts = text.split(':');
  if (parts.length > 2) throw new UsageError(`--${option} expects N or FROM:TO, found ${quoted(text)}`);
  const [from, to] = parts.map((part) => numberOf(option, part)) as [number, number?];
  if (to !== undefined) {
    if (from > to) throw new UsageError(`--${option}: the range runs backwards: ${from} is more than ${to}`);
    return [from, to];
  }
  if (from < 0)
    throw new UsageError(`--${option}: ${from} mm either way leaves nothing free; give more than 0`);
  return [-from, from];
}

/** Splits NAME or NAME=REST. */
function named(entry: string): [string, string | undefined] {
  const equals = entry.indexOf('=');
  return equals < 0 ? [entry.trim(), undefined] : [entry.slice(0, equals).trim(), entry.slice(equals + 1)];
}

/** Reads what is free, NAME or NAME=REACH with commas between; `within` for those without a reach of their own. */
export function readFree(text: string | undefined, within: string | undefined): FreeMove[] {
  const names = (text ?? '').split(',').filter((entry) => entry.trim() !== '');
  if (names.length === 0)
    throw new UsageError(
      `nothing is free: --free takes one or more of ${FREEDOMS.map(({ name }) => name).join(', ')}`,
    );
  const usual: [number, number] =
    within === undefined ? [-USUAL_WITHIN, USUAL_WITHIN] : readReach('within', within);
  const free: FreeMove[] = [];
  for (const entry of names) {
    const [name, own] = named(entry);
    const freedom = freedomNamed(name);
    if (!freedom)
      throw new UsageError(
        `--free: ${quoted(name)} cannot be moved; what can is ${FREEDOMS.map((known) => known.name).join(', ')}`,
      );
    if (free.some((known) => known.freedom === freedom))
      throw new UsageError(`--free: ${name} is given twice`);
    const [from, to] = own === undefined ? usual : readReach(`free ${name}`, own);
    free.push({ freedom, from, to });
  }
  if (free.every(({ from, to }) => from === to))
    throw new UsageError('nothing is free to move: every range in --free begins where it ends');
  return free;
}

const HOLD_NAMES = ['ratio', 'lock', 'circle', 'tilt', 'clearance'] as const;

/** Reads LEAST:MOST; either may be left out, and one number alone is the end that `single` says. */
function readRangeOf(name: string, text: string, single: 'least' | 'most'): Range {
  const parts = text.split(':');
  if (parts.length > 2) throw new UsageError(`--hold ${name} expects LEAST:MOST, found ${quoted(text)}`);
  const ends = parts.map((part) => (part.trim() === '' ? undefined : numberOf(`hold ${name}`, part)));
  const [least, most] = parts.length === 1 ? (single === 'least' ? [ends[0]] : [undefined, ends[0]]) : ends;
  if (least === undefined && most === undefined) throw new UsageError(`--hold ${name} needs a figure`);
  if (least !== undefined && most !== undefined && least > most)
    throw new UsageError(`--hold ${name}: the range runs backwards: ${least} is more than ${most}`);
  return { ...(least === undefined ? {} : { least }), ...(most === undefined ? {} : { most }) };
}

/**
 * Reads what must hold: names with commas between, each with its own figures or the usual ones; `none` for nothing.
 * Undefined if the option is not given.
 */
export function readHolds(
  text: string | undefined,
  usual: Required<Omit<Holds, 'circle'>>,
): Holds | undefined {
  if (text === undefined) return undefined;
  let holds: Holds = {};
  for (const entry of text.split(',')) {
    const [name, own] = named(entry);
    if (name === 'none' && own === undefined) continue;
    if (name in holds) throw new UsageError(`--hold: ${name} is given twice`);
    switch (name) {
      case 'ratio':
      case 'lock':
        holds = { ...holds, [name]: own === undefined ? usual[name] : readRangeOf(name, own, 'least') };
        break;
      case 'tilt':
        holds = { ...holds, tilt: own === undefined ? usual.tilt : readRangeOf(name, own, 'most') };
        break;
      case 'circle':
        if (own === undefined)
          throw new UsageError('--hold circle needs a figure: the most between kerbs, mm');
        holds = { ...holds, circle: readRangeOf(name, own, 'most') };
        break;
      case 'clearance': {
        const least = own === undefined ? undefined : numberOf('hold clearance', own);
        holds = {
          ...holds,
          clearance:
            least === undefined
              ? usual.clearance
              : { moving: least, tyre: Math.max(least, usual.clearance.tyre), strict: true },
        };
        break;
      }
      default:
        throw new UsageError(
          `--hold: ${quoted(name)} is not known; there are ${HOLD_NAMES.join(', ')}, none`,
        );
    }
  }
  return holds;
}

/** Reads a whole number, 0 or more, as a seed. */
export function readSeed(text: string | undefined): number {
  if (text === undefined) return 1;
  if (!/^\d{1,10}$/.test(text.trim()) || Number(text) > 0xffff_ffff)
    throw new UsageError(`--seed expects a whole number from 0 to 4294967295, found ${quoted(text)}`);
  return Number(text);
}
