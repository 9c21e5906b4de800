import type { Clearances } from '../../../shared-math/clearance/index.ts';
import {
  type Analysis,
  analyse,
  type Finding,
  findings,
  type ShopLimits,
} from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../shared-math/layout/index.ts';
import { type FrontEnd, prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import type { LengthStyle } from '../../../shared-math/units/index.ts';

export interface VerdictQuestion {
  readonly document: LayoutDocument;
  /** As far as they are measured; the rules that need them are silent without. */
  readonly clearances: Clearances | undefined;
  /** The reader's unit, in which the sentences are written. */
  readonly style: LengthStyle;
  readonly limits: ShopLimits;
}

/** What a layout is found to be: the findings, and how far each stud is tilted at most. */
export interface Judged {
  readonly findings: readonly Finding[];
  readonly tilts: NonNullable<Analysis['extremes']>['tilts'];
}

/** Judges a layout; `frontEnd` saves preparing it again. */
export function judged(
  { document, clearances, style, limits }: VerdictQuestion,
  frontEnd: FrontEnd = prepareFrontEnd(resolveLayout(document)),
): Judged {
  const analysis = analyse(frontEnd.layout, frontEnd);
  return {
    findings: findings({ ...analysis, clearances }, style, limits),
    tilts: analysis.extremes?.tilts ?? [],
  };
}

// biome-ignore lint/correctness/useYield: a job in one step.
export function* verdictJob(question: VerdictQuestion): Generator<undefined, Judged> {
  return judged(question);
}
