import { parseArgs } from 'node:util';
import { quoted, shownText } from '../../shared-math/outside/index.ts';
import { UsageError } from './usage.ts';

/** The words after a command, taken apart: what stands alone, and `--name value` or `--name=value`. */
export interface Arguments {
  readonly words: readonly string[];
  /** Options that take a value. */
  readonly values: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
}

/**
 * Takes apart a command's arguments. A value may begin with a minus, as ranges do (`--heave -75:75:25`), and after `--`
 * everything stands alone. Unknown options, options given twice and missing values are refused; `parseArgs` itself would
 * let the last of two win and would refuse such ranges, so it only finds the tokens here.
 */
export function takeArguments(
  args: readonly string[],
  known: { readonly values: readonly string[]; readonly flags: readonly string[] },
): Arguments {
  const { tokens, positionals } = parseArgs({
    args: [...args],
    options: Object.fromEntries([
      ...known.values.map((name) => [name, { type: 'string' as const }] as const),
      ...known.flags.map((name) => [name, { type: 'boolean' as const }] as const),
    ]),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values = new Map<string, string>();
  const flags = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token;
    if (values.has(name) || flags.has(name)) throw new UsageError(`--${name} is given twice`);
    if (known.flags.includes(name)) {
      if (value !== undefined) throw new UsageError(`--${name} takes no value`);
      flags.add(name);
    } else if (known.values.includes(name)) {
      if (value === undefined || (!token.inlineValue && value.startsWith('--')))
        throw new UsageError(`--${name} needs a value`);
      values.set(name, value);
    } else throw new UsageError(`unknown option ${shownText(rawName)}`);
  }
  return { words: positionals, values, flags };
}

/** Whether help is asked for among a command's arguments, whatever else they are. */
export function asksForHelp(args: readonly string[]): boolean {
  const { values } = parseArgs({
    args: [...args],
    options: { help: { type: 'boolean', short: 'h' } },
    strict: false,
    allowPositionals: true,
  });
  return values['help'] === true;
}

/** The one layout file that a command is given. */
export function onlyFile(args: Arguments): string {
  const [file, extra] = args.words;
  if (file === undefined) throw new UsageError('a layout file is missing');
  if (extra !== undefined) throw new UsageError(`only one layout file is taken: remove ${quoted(extra)}`);
  return file;
}

/** What lengths are written in, and to which part of an inch; the first where nothing is said. */
export const UNITS = ['in', 'mm'] as const;
export const FRACTIONS = ['16', '32', '64', '0'] as const;

/** A value out of a few; the first where it is not given. */
export function choice<Value extends string>(
  { values }: Arguments,
  name: string,
  list: readonly Value[],
): Value {
  const given = values.get(name);
  if (given === undefined) return list[0] as Value;
  const found = list.find((entry) => entry === given);
  if (!found) throw new UsageError(`--${name} is ${list.join(' or ')}, found ${quoted(given)}`);
  return found;
}

/** Entries. More than any table that a person could use; a slip in a step should not fill the disk. */
const RANGE_MAX = 1_000_000;
const NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/;

/** A number as people write one, or not a number: no words, no hexadecimal, nothing left over. */
export function plainNumber(text: string): number {
  return NUMBER.test(text.trim()) ? Number(text) : Number.NaN;
}

/**
 * Reads FROM:TO:STEP into its values; TO is included where it falls on the step within 1e-9. One number alone is that
 * one value. The values are FROM + i · STEP, cleared of the last digits' rounding.
 */
export function readRange(name: string, text: string): number[] {
  const parts = text.split(':');
  if (parts.length !== 1 && parts.length !== 3)
    throw new UsageError(`--${name} expects FROM:TO:STEP, found ${quoted(text)}`);
  const numbers = parts.map((part) => {
    const value = plainNumber(part);
    if (!Number.isFinite(value)) throw new UsageError(`--${name}: ${quoted(part)} is not a number`);
    return value;
  });
  const [from, to = from, step = 0] = numbers as [number, number?, number?];
  if (from === to) return [from + 0];
  if (step === 0) throw new UsageError(`--${name}: the step must not be 0`);
  const span = (to - from) / step;
  if (span < 0) throw new UsageError(`--${name}: the step goes the wrong way and never reaches ${to}`);
  const last = Math.floor(span + 1e-9 / Math.abs(step));
  if (last >= RANGE_MAX) throw new UsageError(`--${name}: more than ${RANGE_MAX} values`);
  return Array.from({ length: last + 1 }, (_, i) => {
    const value = from + i * step;
    if (Math.abs(value - to) <= 1e-9) return to + 0;
    return Number(value.toPrecision(12)) + 0;
  });
}

/** One value of an option that may be left out, then 0; refused beyond `largest` either way. */
export function single(options: ReadonlyMap<string, string>, name: string, largest: number): number {
  const text = options.get(name);
  if (text === undefined) return 0;
  const [value, more] = readRange(name, text);
  if (value === undefined || more !== undefined) throw new UsageError(`--${name} takes one value`);
  if (Math.abs(value) > largest) throw new UsageError(`--${name} goes beyond ${largest}`);
  return value;
}
