import type { ShopLimits } from '../../../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import type { Outcome } from '../../../../shared-math/outcome.ts';
import {
  type FreedomName,
  freedomNamed,
  type Holds,
  type SearchProgress,
  type TuneRefusal,
  type TuneResult,
  tune,
  usualHolds,
} from '../../../../shared-math/tune/index.ts';

export interface TuneQuestion {
  readonly document: LayoutDocument;
  /** mm from where it is drawn. */
  readonly free: readonly { readonly name: FreedomName; readonly from: number; readonly to: number }[];
  readonly holds: Holds;
  readonly seed: number;
  readonly limits: ShopLimits;
}

export function* tuneJob({
  document,
  free,
  holds,
  seed,
  limits,
}: TuneQuestion): Generator<SearchProgress, Outcome<TuneResult, TuneRefusal>> {
  const moves = free.flatMap(({ name, from, to }) => {
    const freedom = freedomNamed(name);
    return freedom ? [{ freedom, from, to }] : [];
  });
  return yield* tune(document, moves, { holds, seed, shop: limits });
}

export interface HoldsQuestion {
  readonly document: LayoutDocument;
  readonly limits: ShopLimits;
}

/** What of the shop's limits the layout keeps as drawn. */
// biome-ignore lint/correctness/useYield: a job in one step.
export function* holdsJob({ document, limits }: HoldsQuestion): Generator<undefined, Holds> {
  return usualHolds(prepareFrontEnd(resolveLayout(document)), limits);
}
