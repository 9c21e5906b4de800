import { type LinkForces, linkForces } from '../../../../shared-math/forces/index.ts';
import { type LayoutDocument, type Refusal, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import type { Outcome } from '../../../../shared-math/outcome.ts';
import type { Radians } from '../../../../shared-math/units/index.ts';

export interface ForcesQuestion {
  readonly document: LayoutDocument;
  /** Where the car stands: mm, rad. */
  readonly heave: number;
  readonly roll: Radians;
}

// biome-ignore lint/correctness/useYield: a job in one step.
export function* forcesJob({
  document,
  heave,
  roll,
}: ForcesQuestion): Generator<undefined, Outcome<LinkForces, Refusal>> {
  return linkForces(prepareFrontEnd(resolveLayout(document)), heave, roll);
}
