import type { LayoutDocument } from '../../../shared-math/layout/index.ts';
import { type Sensitivity, sensitivityOf } from '../../../shared-math/tune/index.ts';

export interface SensitivityQuestion {
  readonly document: LayoutDocument;
  readonly id: string;
  /** mm. */
  readonly step: number;
}

/** Undefined if there is no such point, or the layout does not reach over its own travel. */
// biome-ignore lint/correctness/useYield: a job in one step.
export function* sensitivityJob({
  document,
  id,
  step,
}: SensitivityQuestion): Generator<undefined, Sensitivity | undefined> {
  const outcome = sensitivityOf(document, id, step);
  return outcome.ok ? outcome.value : undefined;
}
