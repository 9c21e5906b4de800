import type { ShaftDocument } from '../layout/index.ts';
import type { Outcome } from '../outcome.ts';
import { succeeded } from '../outcome.ts';
import { toRadians } from '../units/index.ts';
import { type Chain, type Locked, prepareChain } from './chain.ts';
import { bestClocks } from './clocking.ts';
import { motionOf, type ShaftMotion } from './motion.ts';
import type { Route } from './route.ts';

/** How a steering shaft turns as it is drawn and as it could be clocked. rad. */
export interface Turning {
  readonly chain: Chain;
  /** As drawn, one for each intermediate shaft. */
  readonly clocks: Float64Array;
  readonly motion: ShaftMotion;
  readonly bestClocks: Float64Array;
  readonly best: ShaftMotion;
}

/**
 * The motion of a steering shaft as drawn, and with the clocking that leaves the least. Units: rad.
 * Outcomes: ok; locked, with the joint that cannot turn.
 */
export function turningOf(shaft: ShaftDocument, route: Route): Outcome<Turning, Locked> {
  const chain = prepareChain(route);
  if (!chain.ok) return chain;
  const clocks = Float64Array.from(shaft.shafts, ({ clock }) => toRadians(clock));
  const least = bestClocks(chain.value);
  return succeeded({
    chain: chain.value,
    clocks,
    motion: motionOf(chain.value, clocks),
    bestClocks: least,
    best: motionOf(chain.value, least),
  });
}
