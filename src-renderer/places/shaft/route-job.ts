import { jointLimits, limitInForce, type ShopLimits } from '../../../shared-math/findings/index.ts';
import { type LayoutDocument, resolveLayout, type ShaftDocument } from '../../../shared-math/layout/index.ts';
import {
  ROUTE_JOINTS,
  type RouteTask,
  type RouteWishes,
  routeObstacles,
  type Suggestion,
  suggestRoute,
} from '../../../shared-math/shaft/index.ts';

export interface RouteQuestion {
  readonly document: LayoutDocument;
  readonly limits: ShopLimits;
}

/** Half the thickest stock that is chosen, mm; the usual tube where none is. */
function tubeRadius({ shafts }: ShaftDocument): Pick<RouteWishes, 'tubeRadius'> {
  const thickest = Math.max(0, ...shafts.map(({ stock }) => stock?.diameter ?? 0));
  return thickest > 0 ? { tubeRadius: thickest / 2 } : {};
}

/**
 * Routes with one, two and three joints past the layout's obstacles, by the shop's own limits for joints and for
 * room around what moves. One number of joints is one step. None where the layout has no shaft.
 */
export function* routeJob({ document, limits }: RouteQuestion): Generator<undefined, Suggestion[]> {
  const { shaft } = document;
  if (!shaft) return [];
  const { column, box } = shaft;
  const task: RouteTask = { column, box, obstacles: routeObstacles(resolveLayout(document)) };
  const wishes: RouteWishes = {
    limits: jointLimits(limits),
    clearance: limitInForce('clearanceMoving', limits).value,
    ...tubeRadius(shaft),
  };
  const suggestions: Suggestion[] = [];
  for (const joints of ROUTE_JOINTS) {
    suggestions.push(suggestRoute(task, joints, wishes));
    yield undefined;
  }
  return suggestions;
}
