import { jointLimits, type ShopLimits } from '../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout } from '../../shared-math/layout/index.ts';
import {
  type RouteTask,
  routeObstacles,
  type Suggestion,
  suggestRoutes,
} from '../../shared-math/shaft/index.ts';

export interface RouteQuestion {
  readonly document: LayoutDocument;
  readonly limits: ShopLimits;
}

/** Routes with one, two and three joints past what the layout has in the way; none where it has no shaft. */
// biome-ignore lint/correctness/useYield: a job in one step.
export function* routeJob({ document, limits }: RouteQuestion): Generator<undefined, Suggestion[]> {
  const { shaft } = document;
  if (!shaft) return [];
  const { column, box } = shaft;
  const task: RouteTask = { column, box, obstacles: routeObstacles(resolveLayout(document)) };
  return suggestRoutes(task, { limits: jointLimits(limits) });
}
