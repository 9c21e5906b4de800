import { relative } from 'node:path';
import type { MutantResult } from '@stryker-mutator/api/core';
import type { Equivalent } from './equivalent.ts';

export interface Mutant {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** FROM_LINE:COLUMN-TO_LINE:COLUMN, as Stryker's `mutate` takes it. */
  readonly stretch: string;
  readonly is: string;
  readonly becomes: string;
  readonly status: 'killed' | 'survived';
}

const plain = (text: string) => text.replaceAll(/\s+/g, ' ').trim();

function textBetween(source: string, { start, end }: MutantResult['location']): string {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  lines[lines.length - 1] = (lines.at(-1) as string).slice(0, end.column - 1);
  lines[0] = (lines[0] as string).slice(start.column - 1);
  return lines.join('\n');
}

/** A mutant as Stryker reports it, or none where it was not tried. One that no test reaches has survived. */
export function mutantOf(result: MutantResult, source: string, root: string): Mutant[] {
  const killed = result.status === 'Killed' || result.status === 'Timeout';
  if (!killed && result.status !== 'Survived' && result.status !== 'NoCoverage') return [];
  const { start, end } = result.location;
  return [
    {
      file: relative(root, result.fileName).replaceAll('\\', '/'),
      line: start.line,
      stretch: `${start.line}:${start.column}-${end.line}:${end.column}`,
      is: plain(textBetween(source, result.location)),
      becomes: plain(result.replacement ?? ''),
      status: killed ? 'killed' : 'survived',
    },
  ];
}

export interface Tally {
  readonly all: readonly Mutant[];
  /** Survived, and not in the list of equivalent ones. */
  readonly alive: readonly Mutant[];
  readonly equivalent: readonly Mutant[];
  /** Entries of the list, as often as no survivor answers to them. */
  readonly stale: readonly Equivalent[];
  /** Killed or equivalent, of 100. */
  readonly percent: number;
}

export function tallyOf(all: readonly Mutant[], list: readonly Equivalent[]): Tally {
  const open = list.flatMap((entry) => Array.from({ length: entry.times ?? 1 }, () => entry));
  const alive: Mutant[] = [];
  const equivalent: Mutant[] = [];
  for (const mutant of all.filter(({ status }) => status === 'survived')) {
    const at = open.findIndex(
      ({ file, is, becomes }) =>
        file === mutant.file && plain(is) === mutant.is && plain(becomes) === mutant.becomes,
    );
    if (at < 0) alive.push(mutant);
    else {
      open.splice(at, 1);
      equivalent.push(mutant);
    }
  }
  const percent = all.length === 0 ? 100 : (100 * (all.length - alive.length)) / all.length;
  return { all, alive, equivalent, stale: open, percent };
}

/** One line for each file: how many mutants, how many of them killed, equivalent, alive. */
export function shares({ all, alive, equivalent }: Tally): string[] {
  const files = [...new Set(all.map(({ file }) => file))].sort();
  const of = (mutants: readonly Mutant[], file: string) => mutants.filter((one) => one.file === file).length;
  return files.map((file) => {
    const [total, left, same] = [of(all, file), of(alive, file), of(equivalent, file)];
    return `${file}: ${total} mutants, ${total - left - same} killed, ${same} equivalent, ${left} alive`;
  });
}
