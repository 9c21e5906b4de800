import type { Layout } from '../layout/index.ts';
import { groundOffsets } from '../linkage/index.ts';
import { kingpinTrack } from './ackermann.ts';
import type { Lock } from './turn.ts';

/** Diameters of the turning circle at a lock, mm. */
export interface TurningCircle {
  /** Of the outer front tyre's outer edge, by the mean of both wheels' cotangents. */
  readonly betweenKerbs: number;
  /** The same if the inner wheel alone set the turn, and if the outer wheel alone did. */
  readonly byInner: number;
  readonly byOuter: number;
  /** Of the foremost outer corner, of tyre or nose; undefined if the layout does not give how far and wide the nose is. */
  readonly betweenWalls: number | undefined;
}

/** rad. Wheels that turn less do not take the car around. */
const TURNS_FROM = 0.01;

/**
 * The turning circle at a lock. At walking pace the car rolls about a point on the rear axle's line. A wheel alone puts
 * that point at the distance wheelbase · cot(its angle) from its kingpin; where Ackermann is not met the two wheels put
 * it at two places, and the tyres settle between them by scrubbing: here midway, at wheelbase times the mean of the
 * cotangents from the car's middle. Seen from the point, the outer kingpin stands half a track further out and a
 * wheelbase ahead, the tyre's middle the scrub radius beyond it, its edge half a tyre more. Undefined if the lock does
 * not steer.
 * Units:    mm, rad.
 * Source:   own derivation; that the tyres settle midway is an assumption, hence the range by each wheel alone.
 * Checked:  tests/unit/turn.test.ts (a published example; the three agree where Ackermann is met).
 */
export function turningCircle(layout: Layout, lock: Lock): TurningCircle | undefined {
  const { wheelbase, tyreWidth, tyreRadius, noseAhead, noseWidth } = layout.car;
  const toLeft = lock.leftSteer + lock.rightSteer > 0;
  const [inner, outer] = toLeft ? [lock.leftSteer, lock.rightSteer] : [-lock.rightSteer, -lock.leftSteer];
  if (!(inner > TURNS_FROM && outer > TURNS_FROM)) return undefined;
  const { scrubRadius } = groundOffsets(layout, toLeft ? 'right' : 'left');
  const half = kingpinTrack(layout) / 2;
  /** Of the tyre's outer edge, from the turning point this far inboard of the car's middle. */
  const edgeFrom = (middle: number) => Math.hypot(middle + half, wheelbase) + scrubRadius + tyreWidth / 2;
  const byInner = wheelbase / Math.tan(inner) + half;
  const byOuter = wheelbase / Math.tan(outer) - half;
  const middle = (byInner + byOuter) / 2;
  const edge = edgeFrom(middle);
  return {
    betweenKerbs: 2 * edge,
    byInner: 2 * edgeFrom(byInner),
    byOuter: 2 * edgeFrom(byOuter),
    betweenWalls:
      noseAhead === undefined || noseWidth === undefined
        ? undefined
        : 2 *
          Math.max(Math.hypot(edge, tyreRadius), Math.hypot(wheelbase + noseAhead, middle + noseWidth / 2)),
  };
}
