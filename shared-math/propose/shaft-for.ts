import { jointLimits } from '../findings/index.ts';
import type { Layout, ShaftDocument } from '../layout/index.ts';
import {
  checkRoute,
  clearanceOf,
  type RouteJoints,
  type RouteTask,
  type RouteWishes,
  rankedRoutes,
  routeObstacles,
  routeOf,
  type Suggestion,
  suggestRoute,
} from '../shaft/index.ts';
import { inputLacks, inputsFor } from './box-input.ts';
import { type Car, limitOf } from './car.ts';
import { movingObstacles } from './moving-obstacles.ts';

/** The shaft of a proposal, or why none reaches the box. */
export type ShaftFor =
  | { readonly kind: 'laid'; readonly shaft: ShaftDocument }
  | { readonly kind: 'held'; readonly shaft: ShaftDocument }
  | { readonly kind: 'no-column' }
  | { readonly kind: 'none'; readonly tried: readonly Suggestion[] };

/** The shaft with a bearing more in the middle of every stretch that runs too long without one. */
function withSpansHeld(shaft: ShaftDocument, most: number): ShaftDocument {
  const { longSpans } = checkRoute(shaft, routeOf(shaft), most);
  const supports = longSpans.flatMap(({ shaft: index, length }) => {
    const at = shaft.supports.filter((support) => support.shaft === index).map((support) => support.at);
    const stops = [0, ...at.sort((a, b) => a - b), 1];
    const gaps = stops.slice(1).map((stop, i) => stop - (stops[i] as number));
    const widest = gaps.indexOf(Math.max(...gaps));
    const parts = Math.ceil(length / most);
    return Array.from({ length: parts - 1 }, (_, i) => ({
      shaft: index,
      at: (stops[widest] as number) + ((i + 1) / parts) * (gaps[widest] as number),
    }));
  });
  return supports.length > 0 ? { ...shaft, supports: [...shaft.supports, ...supports] } : shaft;
}

/**
 * The route from the column to the box of a laid layout with the fewest joints: of one, two and three joints the first that
 * keeps clear within the joints' limits, to the worm on the side of the sector that has more room. Of three joints, which
 * take ten times as long to look for, only that side is tried.
 */
export function shaftFor(car: Car, layout: Layout, ahead: boolean): ShaftFor {
  const { shaft } = car.document;
  if (!shaft) return { kind: 'no-column' };
  if (car.held.has('shaft')) return { kind: 'held', shaft };
  const wanted = limitOf(car, 'clearanceMoving');
  const obstacles = [
    ...routeObstacles({ ...layout, shaft: null }),
    ...(ahead ? movingObstacles(layout) : []),
  ];
  const clear = clearanceOf(obstacles);
  const wishes: RouteWishes = { clearance: wanted + 0.1, limits: jointLimits(car.limits) };
  const tasks = inputsFor(car, layout)
    .map((box) => ({ box, lacks: inputLacks(box, clear, wanted) }))
    .sort((a, b) => a.lacks - b.lacks)
    .map(({ box }): RouteTask => ({ column: shaft.column, box, clearanceOf: clear }));
  const tried: Suggestion[] = [];
  for (const joints of [1, 2, 3] as RouteJoints[]) {
    const own = joints === 3 ? tasks.slice(0, 1) : tasks;
    const suggestions = own.map((task) => suggestRoute(task, joints, wishes));
    tried.push(...suggestions);
    const [best] = rankedRoutes(suggestions);
    if (best?.outcome.ok && best.outcome.value.withinLimits)
      return { kind: 'laid', shaft: withSpansHeld(best.outcome.value.shaft, limitOf(car, 'shaftSpan')) };
  }
  return { kind: 'none', tried };
}
