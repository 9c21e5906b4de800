import { fitCircle } from '../geometry/circle-fit.ts';
import type { Point } from '../geometry/points.ts';
import { arrangementOf, type FrontEnd } from '../linkage/index.ts';
import { failed, type Outcome, succeeded } from '../outcome.ts';
import { nelderMead } from '../solve/nelder-mead.ts';
import { type HeldTravel, holdTravel } from './held-travel.ts';
import { prepareMapKernel, worstAt } from './map-kernel.ts';

/** Where the frame end of the drag link is best put. mm, vehicle axes. */
export interface Aim {
  /** Centre of the circle that fits the path of the steering-arm ball. */
  readonly point: Point;
  /** Square to the path's plane, through the point; length 1. */
  readonly axis: Point;
  readonly radius: number;
  /** The steering-arm ball at ride height. */
  readonly ball: Point;
  /** How far the path leaves its circle at most. */
  readonly flatness: number;
}

export type AimFailure = 'straight-path' | 'no-pose';
export type AimOutcome = Outcome<Aim, AimFailure>;

/**
 * The aim point: the centre of the circle that fits the path which the axle gives the steering-arm ball over the
 * travel, with the wheels held straight on the axle. A drag link whose frame end is there keeps its length along
 * the path and does not turn the wheels on the axle; the same holds anywhere on the aim axis.
 * Frame:    vehicle. Units: mm. Outcomes: a point; straight-path (no centre within a kilometre); no-pose.
 * Source:   own derivation: design section 7, and the fit in `fitCircle`.
 * Checked:  tests/unit/aim.test.ts (a circular path, a frame end on its axis).
 */
export function findAim(frontEnd: FrontEnd, travel: HeldTravel = holdTravel(frontEnd)): AimOutcome {
  if (travel.status !== 'ok') return failed('no-pose');
  const fit = fitCircle(travel.ballPath);
  if (fit.kind === 'straight') return failed('straight-path');
  return succeeded({
    point: fit.centre,
    axis: fit.axis,
    radius: fit.radius,
    ball: travel.ball,
    flatness: fit.worst,
  });
}

/** Where the aim axis crosses the plane x, y or z = value; undefined if it runs along that plane. */
export function aimAtPlane(aim: Aim, axisIndex: 0 | 1 | 2, value: number): Point | undefined {
  const slope = aim.axis[axisIndex];
  if (Math.abs(slope) < 1e-6) return undefined;
  const t = (value - aim.point[axisIndex]) / slope;
  return [aim.point[0] + t * aim.axis[0], aim.point[1] + t * aim.axis[1], aim.point[2] + t * aim.axis[2]];
}

/** The two coordinates of the view in which the frame end is judged, and the one that it keeps. */
export function judgedPlane(frontEnd: FrontEnd): {
  readonly free: readonly [0 | 1, 2];
  readonly kept: 0 | 1;
} {
  return arrangementOf(frontEnd.layout) === 'side' ? { free: [0, 2], kept: 1 } : { free: [1, 2], kept: 0 };
}

export interface BestSpot {
  readonly point: Point;
  /** rad. */
  readonly worstBumpSteer: number;
}

/** mm. The best spot is looked for this far from where the search starts: further off is another layout. */
const SPOT_WINDOW = 300;

/**
 * The best spot: the aim point, brought into the pitman ball's plane of the view, then moved in that plane to the
 * least worst |bump steer| over the poses held: the heave, or each wheel on its own (`holdWheels`). The aim leaves only the axle's own yaw, which a frame end can trade away.
 * Looked for from the drawn ball too, as the valley is long, and where the aim axis does not cross the plane (cross
 * steer on an axle that rises straight); the better of the two is kept, within SPOT_WINDOW of its start.
 * Frame:    vehicle. Units: mm, rad. Outcomes: a spot; undefined if no place tried is within reach over the travel.
 * Source:   own derivation; the search is `nelderMead`.
 * Checked:  tests/unit/aim.test.ts (against the ordinary sweep of the moved layout).
 */
export function findBestSpot(frontEnd: FrontEnd, aim: Aim, travel: HeldTravel): BestSpot | undefined {
  const { free, kept } = judgedPlane(frontEnd);
  const drawn = frontEnd.layout.steering.box.pitmanBall;
  const at = (x: readonly number[]): Point => {
    const point: [number, number, number] = [drawn[0], drawn[1], drawn[2]];
    point[free[0]] = x[0] as number;
    point[free[1]] = x[1] as number;
    return point;
  };
  const kernel = prepareMapKernel(travel);
  let best: BestSpot | undefined;
  for (const start of [aimAtPlane(aim, kept, drawn[kept]), drawn]) {
    if (!start) continue;
    const from = [start[free[0]], start[free[1]]] as const;
    const value = (x: readonly number[]) =>
      Math.max(Math.abs((x[0] as number) - from[0]), Math.abs((x[1] as number) - from[1])) > SPOT_WINDOW
        ? Number.POSITIVE_INFINITY
        : worstAt(kernel, at(x));
    const found = nelderMead(value, from, { scale: [25, 10], tolerance: 1e-6, evaluations: 600 });
    if (Number.isFinite(found.value) && !(best && best.worstBumpSteer <= found.value))
      best = { point: at(found.at), worstBumpSteer: found.value };
  }
  return best;
}
