import type { Finding, Severity } from '../../../shared-math/findings/index.ts';

/** A finding in the list, with a name that it keeps while the layout changes. */
export interface ListedFinding {
  readonly key: string;
  readonly finding: Finding;
}

/** The findings by what they ask for: those to act on, stops first, and those in order. */
export interface VerdictList {
  readonly toMend: readonly ListedFinding[];
  readonly inOrder: readonly ListedFinding[];
  readonly counts: Readonly<Record<Severity, number>>;
}

/** What of a finding its name is made of. */
export type NamedFinding = Pick<Finding, 'rule' | 'part' | 'between' | 'severity'>;

/** The names of findings that stand together, in their order. A rule that tells several things of one part numbers them. */
export function keysOf(findings: readonly NamedFinding[]): string[] {
  const seen = new Map<string, number>();
  return findings.map(({ rule, part, between }) => {
    const name = [rule, part, ...(between?.parts ?? [])].join(' ');
    const nth = seen.get(name) ?? 0;
    seen.set(name, nth + 1);
    return nth === 0 ? name : `${name} ${nth + 1}`;
  });
}

/** How often each finding, by its name, was of each severity. */
export type SeverityCounts = Readonly<Record<string, Readonly<Record<Severity, number>>>>;

/** Counts the findings of several cars. */
export function severityCounts(cars: readonly (readonly NamedFinding[])[]): SeverityCounts {
  const counts: Record<string, Record<Severity, number>> = {};
  for (const findings of cars) {
    const keys = keysOf(findings);
    for (const [i, { severity }] of findings.entries()) {
      const key = keys[i] as string;
      counts[key] ??= { stop: 0, attention: 0, info: 0 };
      counts[key][severity] += 1;
    }
  }
  return counts;
}

/** Sorts findings into a list. */
export function listed(findings: readonly Finding[]): VerdictList {
  const keys = keysOf(findings);
  const counts: Record<Severity, number> = { stop: 0, attention: 0, info: 0 };
  const all = findings.map((finding, i): ListedFinding => {
    counts[finding.severity] += 1;
    return { key: keys[i] as string, finding };
  });
  return {
    toMend: all.filter(({ finding }) => finding.severity !== 'info'),
    inOrder: all.filter(({ finding }) => finding.severity === 'info'),
    counts,
  };
}
