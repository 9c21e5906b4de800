import { arrangementOf } from '../linkage/index.ts';
import type { Car } from './car.ts';
import { crossIdeas } from './cross-steer.ts';
import { heldBoxIdeas } from './held-box.ts';
import type { Idea } from './idea.ts';
import { armOf, isAhead, mountOf } from './mounts.ts';
import { sideIdeas } from './side-steer.ts';
import { withTieRod } from './tie-rod.ts';
import { withRooms } from './with-rooms.ts';

/** Which ways of steering what is held leaves open: a steering arm that stands is made for one wheel and one way. */
function waysOpen({ held, layout }: Car): readonly Idea['way'][] {
  return held.has('way') || held.has('steering-arm') ? [arrangementOf(layout)] : ['side', 'cross'];
}

/** What a way costs in rank: those seldom built are looked at last. */
const MOUNT_RANK: Readonly<Record<Idea['mount'], number>> = {
  held: 0,
  outside: 0,
  inside: 0,
  through: 4,
  top: 8,
  crossmember: 8,
};

/** Whether what is held of where the box is, and how its arm points, is as an idea has it. */
function isAsHeld({ held, layout }: Car, { mount, arm, ahead }: Idea): boolean {
  return (
    (!held.has('mount') || mount === mountOf(layout)) &&
    (!held.has('axle-side') || ahead === isAhead(layout)) &&
    (!held.has('arm-way') || arm === armOf(layout))
  );
}

/**
 * The ways of steering that this car has room for, those first that usually suit it: cross steer where leaves locate the
 * axle or a bar lies there, side steer else; behind the axle before ahead of it; beside the rail before through it, and last what is seldom built.
 */
export function ideasFor(car: Car): Idea[] {
  const { location, lateral } = car.layout;
  const crossFirst = location.kind === 'parallel-leaf' || lateral.kind === 'bar';
  const ways = waysOpen(car);
  const rank = (idea: Idea) =>
    (idea.ahead ? 2 : 0) +
    ((idea.way === 'cross') === crossFirst ? 0 : 1) +
    MOUNT_RANK[idea.mount] +
    (idea.uncommon ? 16 : 0);
  // A shaft that stands ends at a box that stands.
  const ideas =
    car.held.has('box') || car.held.has('shaft')
      ? heldBoxIdeas(car)
      : [...sideIdeas(car), ...crossIdeas(car)].filter(
          (idea) => ways.includes(idea.way) && isAsHeld(car, idea),
        );
  return ideas
    .flatMap((idea) => withTieRod(car, idea))
    .flatMap((idea) => withRooms(car, idea))
    .map((idea, i) => ({ idea, i }))
    .sort((a, b) => rank(a.idea) - rank(b.idea) || a.i - b.i)
    .map(({ idea }) => idea);
}
