import type { Body } from './body.ts';
import { BOX, SEGMENT } from './shapes.ts';

/** Which of the shop's limits a pair is held to. */
export type ClearanceLimit = 'moving' | 'tyre';

export interface BodyPair {
  /** The one that moves, or moves more; sentences begin with it. */
  readonly a: Body;
  readonly b: Body;
  readonly limit: ClearanceLimit;
}

const isFixed = ({ role }: Body) => role === 'frame' || role === 'obstacle' || role === 'box';

/** What carries a body's parts, each once. */
function carriersOf({ parts }: Body): Set<string> {
  return new Set(
    parts.flatMap((part) => {
      if (part.kind === SEGMENT) return [part.from.carrier, part.to.carrier];
      return part.kind === BOX ? ['frame'] : [part.centre.carrier];
    }),
  );
}

/** The one carrier of a body that goes as one piece with it, or nothing. */
function soleCarrier(body: Body): string | undefined {
  const carriers = carriersOf(body);
  return carriers.size === 1 ? [...carriers][0] : undefined;
}

function canMeet(a: Body, b: Body): boolean {
  if (isFixed(a) && isFixed(b)) return false;
  const carrier = soleCarrier(a);
  if (carrier !== undefined && carrier === soleCarrier(b)) return false;
  if (a.joins.includes(b.id) || b.joins.includes(a.id)) return false;
  // The links that hold the axle keep their places to one another but for their own small swings.
  if (a.role === 'location' && b.role === 'location') return false;
  if (a.role === 'tyre' && b.role === 'tyre') return false;
  return true;
}

/** Links that turn with a wheel run close beside its rim by design: with it they are held to the lesser limit. */
function limitOf(a: Body, b: Body): ClearanceLimit {
  const [tyre, other] = a.role === 'tyre' ? [a, b] : [b, a];
  if (tyre.role !== 'tyre') return 'moving';
  return carriersOf(other).has(`spindle-${tyre.side}`) ? 'moving' : 'tyre';
}

const WEIGHT: Record<Body['role'], number> = {
  steering: 0,
  tyre: 1,
  axle: 2,
  lateral: 3,
  location: 4,
  box: 5,
  frame: 6,
  obstacle: 7,
};

/**
 * The pairs of bodies that can meet: not two fixed ones, nor two on one carrier, nor two that are joined by design (a
 * link and its arms, an arm and the beam, a bar and the beam and the rail that its frame end is bolted to).
 */
export function pairsOf(bodies: readonly Body[]): BodyPair[] {
  const pairs: BodyPair[] = [];
  for (let i = 0; i < bodies.length; i += 1)
    for (let j = i + 1; j < bodies.length; j += 1) {
      const [first, second] = [bodies[i] as Body, bodies[j] as Body];
      if (!canMeet(first, second)) continue;
      const [a, b] = WEIGHT[first.role] <= WEIGHT[second.role] ? [first, second] : [second, first];
      pairs.push({ a, b, limit: limitOf(first, second) });
    }
  return pairs;
}
