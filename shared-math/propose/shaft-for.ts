import { jointLimits } from '../findings/index.ts';
import type { Layout, ShaftDocument } from '../layout/index.ts';
import {
  checkRoute,
  clearanceOf,
  type RouteJoints,
  type RouteProposal,
  type RouteTask,
  type RouteWishes,
  rankedRoutes,
  routeObstacles,
  routeOf,
  SHORT_SLIDES,
  type Suggestion,
  suggestRoute,
  WIDE_SLIDES,
} from '../shaft/index.ts';
import { inputLacks, inputsFor } from './box-input.ts';
import { type Car, limitOf } from './car.ts';
import type { Idea } from './idea.ts';
import { movingObstacles } from './moving-obstacles.ts';
import { isInRoom } from './rooms.ts';
import { boxKindOf, inputFit, onEnd, withEnds } from './shaft-ends.ts';

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

/** A number of joints, and how far ends may be made longer for them: in the order in which a builder would have them. */
const WAYS: readonly { readonly joints: RouteJoints; readonly on: 'ends' | 'short stubs' | 'long stubs' }[] =
  [
    { joints: 1, on: 'long stubs' },
    { joints: 2, on: 'ends' },
    { joints: 2, on: 'short stubs' },
    { joints: 3, on: 'ends' },
    { joints: 3, on: 'short stubs' },
    { joints: 2, on: 'long stubs' },
    { joints: 3, on: 'long stubs' },
  ];

/**
 * How many of so many joints may be double ones: nobody builds a shaft of three with more than one, each with its bearing. An
 * arrangement that is seldom built is not worth any.
 */
const DOUBLES: Readonly<Record<RouteJoints, number>> = { 1: 1, 2: 2, 3: 1 };

const bearings = ({ stubs }: RouteProposal): number => stubs.filter(({ bearing }) => bearing).length;

/**
 * The route from the column to the box of a laid layout with the fewest joints that keeps clear within the joints' limits, to
 * the worm on the side of the sector that has more room. Of one joint, two and three; on the ends as they are before ends made
 * longer, and longer ends that need no bearing before a third joint. Of three joints, which take ten times as long to look
 * for, only the side with more room is tried.
 */
export function shaftFor(
  car: Car,
  layout: Layout,
  idea: Pick<Idea, 'ahead' | 'boxes' | 'joints' | 'uncommon'>,
): ShaftFor {
  const { shaft } = car.document;
  if (!shaft) return { kind: 'no-column' };
  const fit = inputFit(car, boxKindOf(layout, idea.boxes));
  if (car.held.has('shaft')) return heldShaft(car, shaft, fit);
  const wanted = limitOf(car, 'clearanceMoving');
  const obstacles = [
    ...routeObstacles({ ...layout, shaft: null }),
    ...(idea.ahead ? movingObstacles(layout) : []),
  ];
  const clear = clearanceOf(obstacles);
  const wishes: RouteWishes = { clearance: wanted + 0.1, limits: jointLimits(car.limits) };
  const slides = {
    ends: { columnSlide: onEnd(car, shaft.column.fit), boxSlide: onEnd(car, fit) },
    'short stubs': SHORT_SLIDES,
    'long stubs': WIDE_SLIDES,
  };
  const tasks = inputsFor(car, layout)
    .map((box) => ({ box, lacks: inputLacks(box, clear, wanted) }))
    .sort((a, b) => a.lacks - b.lacks)
    .map(
      ({ box }): RouteTask => ({
        column: shaft.column,
        box: { ...box, ...(fit ? { fit } : {}) },
        clearanceOf: clear,
      }),
    );
  const tried: Suggestion[] = [];
  let best: RouteProposal | undefined;
  for (const { joints, on } of WAYS) {
    if (joints > idea.joints || !isInRoom(car.rooms, 'shaft', joints)) continue;
    // A third joint and its bearing in place of a longer end in a bearing; long stubs only where nothing else does.
    if (best && (bearings(best) === 0 || on === 'long stubs')) break;
    const own = joints === 3 ? tasks.slice(0, 1) : tasks;
    const asked: RouteWishes = { ...wishes, ...slides[on], mostDoubles: idea.uncommon ? 0 : DOUBLES[joints] };
    const suggestions = own.map((task) => suggestRoute(task, joints, asked));
    tried.push(...suggestions);
    const [first] = rankedRoutes(suggestions);
    if (first?.outcome.ok && first.outcome.value.withinLimits) {
      const { value } = first.outcome;
      best = best && bearings(best) <= bearings(value) ? best : value;
    }
  }
  if (!best) return { kind: 'none', tried };
  const spanned = withSpansHeld(best.shaft, limitOf(car, 'shaftSpan'));
  return { kind: 'laid', shaft: withEnds(car, spanned) };
}

/** A shaft that stands, with the input of the box that it then leads to. */
function heldShaft(car: Car, shaft: ShaftDocument, fit: ShaftDocument['box']['fit']): ShaftFor {
  if (car.held.has('box-kind')) return { kind: 'held', shaft };
  const { fit: _, ...box } = shaft.box;
  return { kind: 'held', shaft: { ...shaft, box: { ...box, ...(fit ? { fit } : {}) } } };
}
