import type { LayoutDocument } from '../../../../shared-math/layout/index.ts';
import { type ToleranceBand, toleranceBand } from '../../../../shared-math/tune/index.ts';

export interface BandQuestion {
  readonly document: LayoutDocument;
  /** mm. */
  readonly tolerance: number;
}

/** Undefined if the layout, or too many of the cars that are off by the tolerance, do not reach over the travel. */
// biome-ignore lint/correctness/useYield: a job in one step.
export function* bandJob({
  document,
  tolerance,
}: BandQuestion): Generator<undefined, ToleranceBand | undefined> {
  const outcome = toleranceBand(document, { tolerance });
  return outcome.ok ? outcome.value : undefined;
}
