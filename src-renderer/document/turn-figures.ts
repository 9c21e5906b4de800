import type { Layout } from '../../shared-math/layout/index.ts';
import { type Lock, lockAngles, type TurningCircle, turningCircle } from '../../shared-math/sweep/index.ts';

/** One end of the turn, as it is reported. rad, mm. */
export interface LockFigures {
  readonly lock: Lock;
  readonly inner: number;
  readonly outer: number;
  readonly idealOuter: number;
  readonly circle: TurningCircle | undefined;
}

export function lockFigures(layout: Layout, lock: Lock): LockFigures {
  const { inner, outer, idealOuter } = lockAngles(layout, lock);
  return { lock, inner, outer, idealOuter, circle: turningCircle(layout, lock) };
}
