import { distance, type Point } from '../geometry/points.ts';
import { carryPoint, createState, type FrontEnd, type PoseStatus, poseAxle } from '../linkage/index.ts';
import { type HeldTravel, holdTravel } from './held-travel.ts';

/** A path over the travel: 3 numbers for each heave, mm. Only at status ok are there points. */
export interface TravelPath {
  readonly status: PoseStatus;
  readonly heave: Float64Array;
  readonly points: Float64Array;
}

/** The path that the axle asks of the steering-arm ball, with the wheels held straight on the axle. */
export function ballPath(
  frontEnd: FrontEnd,
  count = 31,
  travel: HeldTravel = holdTravel(frontEnd, count),
): TravelPath {
  return { status: travel.status, heave: travel.heave, points: travel.ballPath };
}

/**
 * What the drag link allows: for each heave, the point at the link's length from the drawn pitman ball that is nearest
 * to where the axle asks the steering-arm ball to be.
 */
export function linkArc(
  frontEnd: FrontEnd,
  count = 31,
  travel: HeldTravel = holdTravel(frontEnd, count),
): TravelPath {
  const { pitmanBall } = frontEnd.layout.steering.box;
  const points = new Float64Array(travel.ballPath.length);
  for (let i = 0; i < points.length; i += 3) {
    const asked: Point = [
      travel.ballPath[i] as number,
      travel.ballPath[i + 1] as number,
      travel.ballPath[i + 2] as number,
    ];
    const share = frontEnd.dragLinkLength / distance(asked, pitmanBall);
    for (let axis = 0; axis < 3; axis += 1)
      points[i + axis] =
        (pitmanBall[axis] as number) + share * ((asked[axis] as number) - (pitmanBall[axis] as number));
  }
  return { status: travel.status, heave: travel.heave, points };
}

/** Path and arc at one heave. mm, vehicle axes. */
export interface ArcsAt {
  readonly heave: number;
  /** Where the axle asks the steering-arm ball to be, the wheels held straight on it. */
  readonly asked: Point;
  /** The point at the drag link's length from the drawn pitman ball that is nearest to it. */
  readonly allowed: Point;
  /** How much longer the drag link would have to be to leave the wheels straight: positive where it is too short. */
  readonly gap: number;
}

/**
 * Path and arc at one heave, roll 0, the handwheel straight ahead. The arc's nearest point lies on the line from the pitman
 * ball p to the ball's place q at the link's length L, so that the gap is |q - p| - L in closed form.
 * Returns undefined if the axle has no pose there.
 */
export function arcsAt(frontEnd: FrontEnd, heave: number, state = createState()): ArcsAt | undefined {
  if (!poseAxle(frontEnd, heave, 0, state)) return undefined;
  const { dragLinkBall, box } = frontEnd.layout.steering;
  const { pitmanBall } = box;
  const q = new Float64Array(3);
  // As the axle would carry it with the wheels held straight.
  carryPoint(frontEnd, state, `axle-${frontEnd.driven}`, dragLinkBall as Point, q);
  const asked: Point = [q[0] as number, q[1] as number, q[2] as number];
  const reach = distance(asked, pitmanBall);
  const share = frontEnd.dragLinkLength / reach;
  const along = (axis: 0 | 1 | 2) => pitmanBall[axis] + share * (asked[axis] - pitmanBall[axis]);
  return {
    heave,
    asked,
    allowed: [along(0), along(1), along(2)],
    gap: reach - frontEnd.dragLinkLength,
  };
}

/**
 * The gap between the two at one heave, mm: how much longer the drag link would have to be to leave the wheels
 * straight. Positive where it is too short; undefined if there is no pose.
 */
export function pathGap(frontEnd: FrontEnd, heave: number): number | undefined {
  return arcsAt(frontEnd, heave)?.gap;
}
