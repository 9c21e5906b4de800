import type { MapWindow } from '../../../../shared-math/aim/index.ts';

/** mm from the window's edge, at which what should be in its middle calls for another. */
const MARGIN = 60;

/**
 * The window to map now: the one before as long as the pitman ball stands well inside it, so that the map does not
 * creep or jump under a hand that drags; else the one wanted. The plane always is that of the ball.
 */
export function chosenWindow(
  before: MapWindow | undefined,
  wanted: MapWindow,
  ball: readonly [across: number, up: number],
): MapWindow {
  if (!before || before.axes[0] !== wanted.axes[0]) return wanted;
  const inside = ball.every(
    (at, i) => at >= (before.from[i] as number) + MARGIN && at <= (before.to[i] as number) - MARGIN,
  );
  return inside ? { ...before, kept: wanted.kept } : wanted;
}
