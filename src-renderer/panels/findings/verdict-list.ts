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

/** Sorts findings into a list. A rule that tells several things of one part numbers them. */
export function listed(findings: readonly Finding[]): VerdictList {
  const seen = new Map<string, number>();
  const counts: Record<Severity, number> = { stop: 0, attention: 0, info: 0 };
  const all = findings.map((finding): ListedFinding => {
    const name = [finding.rule, finding.part, ...(finding.between?.parts ?? [])].join(' ');
    const nth = seen.get(name) ?? 0;
    seen.set(name, nth + 1);
    counts[finding.severity] += 1;
    return { key: nth === 0 ? name : `${name} ${nth + 1}`, finding };
  });
  return {
    toMend: all.filter(({ finding }) => finding.severity !== 'info'),
    inOrder: all.filter(({ finding }) => finding.severity === 'info'),
    counts,
  };
}
