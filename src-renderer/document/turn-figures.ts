import type { Layout } from '../../shared-math/layout/index.ts';
import { groundOffsets } from '../../shared-math/linkage/index.ts';
import {
  type Lock,
  lockAngles,
  type ParkingEffort,
  parkingEffort,
  type TurningCircle,
  type TurnSweep,
  turningCircle,
} from '../../shared-math/sweep/index.ts';

/** One end of the turn, as it is told. rad, mm. */
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

/** Overall ratio straight ahead, or as near to it as the turn comes; signed. Nothing where there is no turn. */
export function ratioAtCentre(turn: TurnSweep): number | undefined {
  let row = 0;
  for (let i = 1; i < turn.count; i += 1)
    if (Math.abs(turn.handwheel[i] as number) < Math.abs(turn.handwheel[row] as number)) row = i;
  const ratio = turn.ratio[row];
  return ratio !== undefined && Number.isFinite(ratio) ? ratio : undefined;
}

/** What it takes to park, straight ahead and without assistance; nothing where the wheels do not turn. */
export function effortOf(layout: Layout, turn: TurnSweep): ParkingEffort | undefined {
  const overallRatio = ratioAtCentre(turn);
  if (overallRatio === undefined) return undefined;
  const { frontAxleLoad, tyreWidth, handwheelRadius } = layout.car;
  const { scrubRadius } = groundOffsets(layout, 'left');
  return parkingEffort({ frontAxleLoad, tyreWidth, scrubRadius, overallRatio, handwheelRadius });
}
