import { analyse, type Finding, findings, type ShopLimits } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import type { LengthStyle } from '../../../shared-math/units/index.ts';
import { remedied } from './remedies.ts';

/** What a finding is the same by in two layouts: its figures differ. */
const keyOf = ({ rule, part }: Finding): string => `${rule} ${part}`;

/** The rules that measure room between parts, which a moved layout is not searched for here. */
const UNSEARCHED = new Set(['clearance', 'shaft-clearance']);

/**
 * What else a finding's move puts right: those past their limit that are not any more once it is made, solved anew.
 * Empty where the finding has no move or the moved layout is not one. Room between parts is left out.
 */
export function alsoMended(
  document: LayoutDocument,
  finding: Finding,
  list: readonly Finding[],
  { style, limits }: { readonly style: LengthStyle; readonly limits: ShopLimits },
): Finding[] {
  if (finding.remedy?.kind !== 'move') return [];
  const moved = resolveLayout(remedied(document, finding.remedy));
  const after = new Map(findings(analyse(moved), style, limits).map((each) => [keyOf(each), each.severity]));
  return list.filter(
    (other) =>
      keyOf(other) !== keyOf(finding) &&
      other.severity !== 'info' &&
      !UNSEARCHED.has(other.rule) &&
      after.get(keyOf(other)) === 'info',
  );
}
