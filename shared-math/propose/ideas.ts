import { arrangementOf } from '../linkage/index.ts';
import type { Car } from './car.ts';
import { crossIdeas } from './cross-steer.ts';
import { heldBoxIdeas } from './held-box.ts';
import type { Idea } from './idea.ts';
import { sideIdeas } from './side-steer.ts';
import { withTieRod } from './tie-rod.ts';

/** Which ways of steering what is held leaves open: a steering arm that stands is made for one wheel and one way. */
function waysOpen({ held, layout }: Car): readonly Idea['way'][] {
  return held.has('way') || held.has('steering-arm') ? [arrangementOf(layout)] : ['side', 'cross'];
}

/**
 * The ways of steering that this car has room for, those first that usually suit it: cross steer where leaves locate the
 * axle or a bar lies there, side steer else; behind the axle before ahead of it; beside the rail before through it.
 */
export function ideasFor(car: Car): Idea[] {
  const { location, lateral } = car.layout;
  const crossFirst = location.kind === 'parallel-leaf' || lateral.kind === 'bar';
  const ways = waysOpen(car);
  const rank = (idea: Idea) =>
    (idea.ahead ? 2 : 0) +
    ((idea.way === 'cross') === crossFirst ? 0 : 1) +
    (idea.key.includes('through') ? 4 : 0);
  // A shaft that stands ends at a box that stands.
  const ideas =
    car.held.has('box') || car.held.has('shaft')
      ? heldBoxIdeas(car)
      : [...sideIdeas(car), ...crossIdeas(car)].filter(({ way }) => ways.includes(way));
  return ideas
    .flatMap((idea) => withTieRod(car, idea))
    .map((idea, i) => ({ idea, i }))
    .sort((a, b) => rank(a.idea) - rank(b.idea) || a.i - b.i)
    .map(({ idea }) => idea);
}
