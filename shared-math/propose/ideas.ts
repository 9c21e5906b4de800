import type { Car } from './car.ts';
import { crossIdeas } from './cross-steer.ts';
import type { Idea } from './idea.ts';
import { sideIdeas } from './side-steer.ts';

/**
 * The ways of steering that this car has room for, those first that usually suit it: cross steer where leaves locate the
 * axle or a bar lies there, side steer else; behind the axle before ahead of it.
 */
export function ideasFor(car: Car): Idea[] {
  const { location, lateral } = car.layout;
  const crossFirst = location.kind === 'parallel-leaf' || lateral.kind === 'bar';
  const rank = (idea: Idea) =>
    (idea.ahead ? 2 : 0) +
    ((idea.way === 'cross') === crossFirst ? 0 : 1) +
    (idea.where.startsWith('inside the RAIL, ') ? 4 : 0);
  return [...sideIdeas(car), ...crossIdeas(car)]
    .map((idea, i) => ({ idea, i }))
    .sort((a, b) => rank(a.idea) - rank(b.idea) || a.i - b.i)
    .map(({ idea }) => idea);
}
