import type { LayoutDocument, RideDocument, SpringDocument } from '../../../shared-math/layout/index.ts';

/** The document with other facts of what the car rides on. What is given as undefined is left to what is usual. */
export function withRide(
  document: LayoutDocument,
  change: { readonly [Key in keyof RideDocument]?: RideDocument[Key] | undefined },
): LayoutDocument {
  const given = Object.entries({ ...document.ride, ...change }).filter(([, value]) => value !== undefined);
  return { ...document, ride: given.length === 0 ? null : (Object.fromEntries(given) as RideDocument) };
}

/** How the stiffness of the front springs is known; `usual` where nobody has specified it. */
export type SpringKnown = 'usual' | SpringDocument['kind'];

/** mm that a load is said to settle the car by: an inch, or 25 mm. */
const SETTLES = 25.4;

/** A spring known in another way: at first as stiff as it was, or as leaves that such cars have. */
export function springKnown(
  known: SpringKnown,
  before: SpringDocument | undefined,
  rate: number,
  across: boolean,
): SpringDocument | undefined {
  if (known === 'usual') return undefined;
  if (before?.kind === known) return before;
  if (known === 'rate') return { kind: 'rate', rate: Math.round(rate * 10) / 10 };
  if (known === 'measured')
    return { kind: 'measured', load: Math.round(2 * rate * SETTLES), settles: SETTLES };
  // Common practice, no published source: a pack as such cars carry it, to be measured on the car.
  return across
    ? { kind: 'leaf', lie: 'across', length: 1020, width: 44.45, thickness: 6.35, leaves: 9 }
    : { kind: 'leaf', lie: 'along', length: 940, width: 44.45, thickness: 6.35, leaves: 6 };
}
