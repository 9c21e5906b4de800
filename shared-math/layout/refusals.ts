import type { z } from 'zod';
import { listed, quoted, shownText } from '../outside/index.ts';

/** Why a document was not taken: the place in it, as `axle.left.kingpinTop[2]`, and the reason in plain words. */
export interface Refusal {
  readonly path: string;
  readonly reason: string;
}

/** One line, the same wherever it is shown: on the command line, by a host, in a panel. */
export function refusalLine(refusal: Refusal): string {
  return refusal.path === '' ? refusal.reason : `${refusal.path}: ${refusal.reason}`;
}

function pathOf(keys: readonly PropertyKey[]): string {
  let path = '';
  for (const key of keys) {
    if (typeof key === 'number') path += `[${key}]`;
    else path += `${path === '' ? '' : '.'}${shownText(String(key))}`;
  }
  return path;
}

const EXPECTED: Record<string, string> = {
  array: 'a list',
  tuple: 'a list of numbers',
  boolean: 'true or false',
  never: 'nothing',
  null: 'null',
  int: 'a whole number',
  number: 'a number',
  object: 'an object { }',
  string: 'text',
};

function describe(input: unknown): string {
  if (input === undefined) return 'nothing';
  if (input === null) return 'null';
  if (Array.isArray(input)) return `a list of ${input.length}`;
  if (typeof input === 'number') return Number.isFinite(input) ? String(input) : 'not a finite number';
  if (typeof input === 'string') return `the text ${quoted(input)}`;
  if (typeof input === 'object') return 'an object { }';
  return String(input);
}

function at(input: unknown, keys: readonly PropertyKey[]): unknown {
  let value = input;
  for (const key of keys) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

function alternatives(values: readonly unknown[]): string {
  return values.map((value) => JSON.stringify(value)).join(' or ');
}

function reasonOf(issue: z.core.$ZodIssue, input: unknown): string {
  switch (issue.code) {
    case 'unrecognized_keys':
      return `unknown key${issue.keys.length > 1 ? 's' : ''} ${listed(issue.keys)}`;
    case 'invalid_type':
      if (input === undefined) return `missing; expected ${EXPECTED[issue.expected] ?? issue.expected}`;
      return `expected ${EXPECTED[issue.expected] ?? issue.expected}, found ${describe(input)}`;
    case 'invalid_value':
      return input === undefined
        ? `missing; expected ${alternatives(issue.values)}`
        : `expected ${alternatives(issue.values)}, found ${describe(input)}`;
    case 'too_small':
      if (issue.origin === 'array') return `expected ${issue.minimum} entries, found ${describe(input)}`;
      if (issue.origin === 'string') return 'must not be empty';
      return issue.inclusive
        ? `must be at least ${issue.minimum}, found ${describe(input)}`
        : `must be more than ${issue.minimum}, found ${describe(input)}`;
    case 'too_big':
      if (issue.origin === 'array')
        return issue.maximum === 0
          ? 'must be empty in this version of the document'
          : `expected at most ${issue.maximum} entries, found ${describe(input)}`;
      if (issue.origin === 'string') return `longer than ${issue.maximum} characters`;
      return `must be at most ${issue.maximum}, found ${describe(input)}`;
    default:
      return issue.message;
  }
}

/** The first thing wrong with a document, as a refusal. */
export function refusalOf(error: z.ZodError, input: unknown): Refusal {
  let issue = error.issues[0];
  let keys: PropertyKey[] = issue ? [...issue.path] : [];
  // A side is "mirror" or an object: tell what is wrong inside the object if that is what was written.
  while (issue?.code === 'invalid_union') {
    const found = at(input, keys);
    if (issue.errors.length === 0) {
      const options = 'options' in issue && Array.isArray(issue.options) ? issue.options : [];
      return {
        path: pathOf(keys),
        reason:
          options.length > 0 ? `expected ${alternatives(options)}` : `not a known kind: ${describe(found)}`,
      };
    }
    if (typeof found !== 'object' || found === null) {
      return {
        path: pathOf(keys),
        reason: `expected "mirror" or an object { }, ${found === undefined ? 'found nothing' : `found ${describe(found)}`}`,
      };
    }
    issue = issue.errors.at(-1)?.[0];
    if (issue) keys = [...keys, ...issue.path];
  }
  if (!issue) return { path: '', reason: 'not a layout document' };
  return { path: pathOf(keys), reason: reasonOf(issue, at(input, keys)) };
}
