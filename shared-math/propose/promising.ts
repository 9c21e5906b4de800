import type { Car } from './car.ts';
import type { Idea } from './idea.ts';
import { firstFrontEnd, IdeaSearch } from './search-idea.ts';

// Which ideas are looked through first, so that something that fits is soon shown: those whose usual places miss least of the
// limits. Some hundredths of a second for all of them: a place is let go as soon as it misses more than the best one.

/** Units of what is missed, beyond which nobody can say which idea is the nearer. */
const HOPELESS = 60;
/** What counts against an idea ahead of the axle: its shaft takes long to find. */
const AHEAD = 20;

/** What an idea's usual places miss at the least; `HOPELESS` where none is a layout. */
function missedAtFirst(car: Car, idea: Idea): number {
  // Seldom built, and many: they are looked through last.
  if (idea.uncommon) return 2 * HOPELESS;
  const first = firstFrontEnd(idea);
  if (!first) return HOPELESS;
  const search = new IdeaSearch(car, idea, first);
  return idea.starts().reduce((least, x) => Math.min(least, search.missing(x, least, 1)), HOPELESS);
}

/** The places of ideas in their list, the most promising first; of two alike the earlier. */
export function promisingFirst(car: Car, ideas: readonly Idea[]): number[] {
  const misses = ideas.map((idea) => missedAtFirst(car, idea) + (idea.ahead ? AHEAD : 0));
  return ideas.map((_, i) => i).sort((a, b) => (misses[a] as number) - (misses[b] as number) || a - b);
}
