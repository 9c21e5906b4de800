// Findings: sentences of judgement, each with its measured value, its limit and the limit's source.
import type { Layout } from '../layout/index.ts';
import type { LengthStyle } from '../units/index.ts';
import type { Analysis } from './analysis.ts';
import { type Finding, type Severity, speech } from './finding.ts';
import type { ShopLimits } from './limits.ts';
import { RULES } from './rules/index.ts';
import { tyresOffGround } from './rules/tyre-and-ground.ts';

export { type Analysis, analyse, withClearances } from './analysis.ts';
export { type Finding, type Remedy, type Rule, type Severity, type Speech, speech } from './finding.ts';
export { bestHeight } from './height-search.ts';
export {
  jointLimits,
  LIMIT_GROUPS,
  LIMIT_NAMES,
  LIMITS,
  type LimitName,
  type LimitProblem,
  type LimitUnit,
  limitInForce,
  limitProblem,
  OWN_LIMIT,
  readShopLimits,
  type ShopLimits,
} from './limits.ts';
export { RULES } from './rules/index.ts';
export { steerWay } from './steer-way.ts';
export { wheelWords } from './wheel-words.ts';

const WEIGHT: Record<Severity, number> = { stop: 0, attention: 1, info: 2 };

/** What in a layout contradicts itself, whatever it does when it moves: nothing is solved for it. */
export function contradictionsIn(layout: Layout, style: LengthStyle): Finding[] {
  return tyresOffGround(layout, speech(style, {}));
}

/** All findings on a layout, stops first, then in the order of the rules. Sentences in the reader's unit. */
export function findings(analysis: Analysis, style: LengthStyle, shop: ShopLimits = {}): Finding[] {
  const speak = speech(style, shop);
  return RULES.flatMap((rule) => rule.judge(analysis, speak)).sort(
    (a, b) => WEIGHT[a.severity] - WEIGHT[b.severity],
  );
}
