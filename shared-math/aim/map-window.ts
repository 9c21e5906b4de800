import type { Point } from '../geometry/points.ts';
import type { FrontEnd } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { COORDINATE_MAX } from '../tolerances.ts';
import { type Aim, aimAtPlane, judgedPlane } from './aim.ts';

/** A window of the plane in which the frame end is judged: x and z from the side, y and z from the front. mm. */
export interface MapWindow {
  /** The vehicle axes across and up the window. */
  readonly axes: readonly [0 | 1, 2];
  /** The third coordinate, which every place of the window has: the drawn pitman ball's. */
  readonly kept: number;
  readonly from: readonly [across: number, up: number];
  readonly to: readonly [across: number, up: number];
}

/** mm. A window narrower than this shows one spot. */
const LEAST_SIZE = 1;
/** mm. How far the usual window goes beyond pitman ball and aim, and how far off an aim it still takes in. */
const BESIDE = { across: 160, up: 110 } as const;
const FURTHEST = { across: 500, up: 250 } as const;
/** mm. Its edges keep to these steps, so that it does not creep with a dragged point. */
const EDGE = 50;

/** The point of a window's plane at two coordinates. */
export function placeOf(window: MapWindow, across: number, up: number): Point {
  return window.axes[0] === 0 ? [across, window.kept, up] : [window.kept, across, up];
}

/** A window of the judged plane from two ranges in mm, or one plain reason why it is none. */
export function mapWindow(
  frontEnd: FrontEnd,
  across: readonly [number, number],
  up: readonly [number, number],
): Outcome<MapWindow, string> {
  const { free, kept } = judgedPlane(frontEnd);
  const name = free[0] === 0 ? 'x' : 'y';
  for (const [axis, [from, to]] of [
    [name, across],
    ['z', up],
  ] as const) {
    if (!(Number.isFinite(from) && Number.isFinite(to)))
      return failed(`the window's ${axis} is not two numbers`);
    if (Math.abs(from) > COORDINATE_MAX || Math.abs(to) > COORDINATE_MAX)
      return failed(`the window's ${axis} goes beyond ${COORDINATE_MAX / 1000} metres`);
    if (!(Math.abs(to - from) >= LEAST_SIZE))
      return failed(`the window has no size in ${axis}: it runs from ${from} to ${to} mm`);
  }
  return succeeded({
    axes: free,
    kept: frontEnd.layout.steering.box.pitmanBall[kept],
    from: [Math.min(...across), Math.min(...up)],
    to: [Math.max(...across), Math.max(...up)],
  });
}

/**
 * The window that is shown where none is asked for: around the pitman ball and the place where the aim axis crosses
 * its plane, as far as that is a place where anyone would build. Frame: vehicle. Units: mm.
 */
export function usualWindow(frontEnd: FrontEnd, aim: Aim | undefined): MapWindow {
  const { free, kept } = judgedPlane(frontEnd);
  const ball = frontEnd.layout.steering.box.pitmanBall;
  const crossing = aim ? (aimAtPlane(aim, kept, ball[kept]) ?? aim.point) : ball;
  const range = (axis: 0 | 1 | 2, beside: number, furthest: number): [number, number] => {
    const drawn = ball[axis];
    const wanted = Math.min(drawn + furthest, Math.max(drawn - furthest, crossing[axis]));
    return [
      Math.floor((Math.min(drawn, wanted) - beside) / EDGE) * EDGE,
      Math.ceil((Math.max(drawn, wanted) + beside) / EDGE) * EDGE,
    ];
  };
  const across = range(free[0], BESIDE.across, FURTHEST.across);
  const up = range(2, BESIDE.up, FURTHEST.up);
  return { axes: free, kept: ball[kept], from: [across[0], up[0]], to: [across[1], up[1]] };
}
