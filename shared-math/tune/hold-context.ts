import { bodiesOf, type ClearanceNeed, type Locks, leastClearances, pairsOf } from '../clearance/index.ts';
import { type LimitName, limitInForce, type ShopLimits } from '../findings/index.ts';
import { gridExtremes } from '../joints/index.ts';
import { type LayoutDocument, readLayout, resolveLayout } from '../layout/index.ts';
import { createState, type FrontEnd, solveFrontEnd, steerRates } from '../linkage/index.ts';
import { lockAngles, sweepTurn } from '../sweep/index.ts';
import { toDegrees } from '../units/index.ts';
import { COARSE, FULL, type HoldContext, type Holds, locksOf, type Range } from './holds.ts';

/**
 * The ids of the bodies that change with what is free: those that are not shaped or placed as drawn in one of the
 * documents given. The axle's own path counts as changing everything that goes with it.
 */
function changing(drawn: FrontEnd, moved: readonly LayoutDocument[]): Set<string> {
  const ids = new Set<string>();
  const shapes = new Map(bodiesOf(drawn.layout).map((body) => [body.id, JSON.stringify(body.parts)]));
  for (const document of moved) {
    const read = readLayout(document);
    if (!read.ok) continue;
    const bodies = bodiesOf(resolveLayout(read.value));
    for (const body of bodies) {
      const changed = JSON.stringify(body.parts) !== shapes.get(body.id);
      if (changed) ids.add(body.id);
      if (changed && body.id === 'lateral-bar')
        for (const other of bodies)
          if (other.role !== 'frame' && other.role !== 'obstacle') ids.add(other.id);
    }
  }
  return ids;
}

/** mm. How much nearer a pair may get that is under its limit as drawn: the coarse grid of a search sees no less. */
const GIVE = 0.5;

/** mm each pair has to keep that can change. What hits as drawn has nothing to keep, unless it is strict. */
function needsOf(
  drawn: FrontEnd,
  clearance: NonNullable<Holds['clearance']>,
  locks: Locks,
  moved: readonly LayoutDocument[],
): ClearanceNeed[] {
  const ids = changing(drawn, moved);
  const within = Math.max(clearance.moving, clearance.tyre);
  const nearest = new Map(
    leastClearances(drawn, locks, { within }).pairs.map(({ a, b, distance }) => [`${a} ${b}`, distance]),
  );
  return pairsOf(bodiesOf(drawn.layout)).flatMap(({ a, b, limit }) => {
    if (!ids.has(a.id) && !ids.has(b.id)) return [];
    const asDrawn = nearest.get(`${a.id} ${b.id}`) ?? Number.POSITIVE_INFINITY;
    const wanted = clearance[limit];
    if (clearance.strict) return [{ a: a.id, b: b.id, least: wanted }];
    return asDrawn > 0 ? [{ a: a.id, b: b.id, least: Math.min(wanted, asDrawn - GIVE) }] : [];
  });
}

/** What holds are measured against; undefined if the layout as drawn does not steer. */
export function contextOf(
  drawn: FrontEnd,
  holds: Holds,
  moved: readonly LayoutDocument[],
): HoldContext | undefined {
  const state = createState();
  if (solveFrontEnd(drawn, 0, 0, 0, state) !== 'ok') return undefined;
  const direction = Math.sign(steerRates(drawn, state).mean);
  const turn = sweepTurn(drawn, 0, 0, 2);
  if (turn.status !== 'ok' || turn.count < 2) return undefined;
  const locks = locksOf(turn);
  return {
    holds,
    direction,
    needs: holds.clearance ? needsOf(drawn, holds.clearance, locks, moved) : [],
    outOfReach: new Map(
      [COARSE, FULL].map((fineness) => [
        fineness,
        gridExtremes(drawn, locks, fineness.heaves, fineness.turns).outOfReach,
      ]),
    ),
  };
}

/** The shop's limits as holds. */
export function holdsOf(shop: ShopLimits): Required<Omit<Holds, 'circle'>> {
  const limit = (name: LimitName) => limitInForce(name, shop).value;
  return {
    ratio: { least: limit('ratioLeast'), most: limit('ratioMost') },
    lock: { least: limit('lockLeast'), most: limit('lockMost') },
    tilt: { most: limit('ballTilt') },
    clearance: { moving: limit('clearanceMoving'), tyre: limit('clearanceTyre'), strict: false },
  };
}

const keeps = (value: number, { least = -Infinity, most = Infinity }: Range) =>
  value >= least && value <= most;

/** What is within the shop's limits as drawn, to be kept so; clearances are kept, or get no nearer. */
export function usualHolds(drawn: FrontEnd, shop: ShopLimits): Holds {
  const all = holdsOf(shop);
  const state = createState();
  const turn = sweepTurn(drawn, 0, 0, 2);
  if (solveFrontEnd(drawn, 0, 0, 0, state) !== 'ok' || turn.status !== 'ok' || turn.count < 2) return {};
  const ratio = Math.abs(1 / steerRates(drawn, state).mean);
  const inner = Math.min(...[turn.left, turn.right].map((lock) => lockAngles(drawn.layout, lock).inner));
  const { tilts } = gridExtremes(drawn, locksOf(turn));
  const tilt = Math.max(0, ...tilts.map((joint) => joint.tilt));
  return {
    ...(keeps(ratio, all.ratio) ? { ratio: all.ratio } : {}),
    ...(keeps(toDegrees(inner), all.lock) ? { lock: all.lock } : {}),
    ...(keeps(toDegrees(tilt), all.tilt) ? { tilt: all.tilt } : {}),
    clearance: all.clearance,
  };
}
