import { MM_PER_INCH } from '../units/index.ts';
import type { Route } from './route.ts';
import { ON_ITS_END } from './usual-ends.ts';

// A joint that stands farther out than the column's or the box's end reaches needs that end made longer: by a stub that is
// coupled on, or by a longer shaft in the column. How far a box's own bearings hold a joint is common practice, no
// published source.

/** mm that an end may be made longer by without a bearing of its own: the box's or the column's carries the joint so far. */
export const UNHELD = 2 * MM_PER_INCH;

/** An end that a route needs longer than it is. */
export interface Stub {
  readonly part: 'column' | 'box';
  /** mm past the end, with the joint pushed home on it. */
  readonly longer: number;
  /** Whether it has to run in a bearing close to the joint. */
  readonly bearing: boolean;
}

/** The ends that have to be made longer for a route's first and last joint; none where both sit on the ends as they are. */
export function stubsOf(route: Route): Stub[] {
  return (['column', 'box'] as const).flatMap((part): Stub[] => {
    const { along } = route[part];
    if (along <= ON_ITS_END[1] + 0.05) return [];
    const longer = along - ON_ITS_END[0];
    return [{ part, longer, bearing: longer > UNHELD }];
  });
}

/** "The box’s input has to be 5 3/8 in longer: a stub coupled onto it, in a support bearing close to the joint." */
export function stubSentence({ part, longer, bearing }: Stub, length: (mm: number) => string): string {
  const by = length(longer);
  if (part === 'column')
    return `The column’s shaft has to be ${by} longer${bearing ? ', with a bearing close to the joint' : ''}.`;
  return `The box’s input has to be ${by} longer: a stub coupled onto it${bearing ? ', in a support bearing close to the joint' : ''}.`;
}
