import { jointLimits } from '../findings/index.ts';
import type { Point } from '../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import { type Layout, ownInputAngle, type ShaftDocument } from '../layout/index.ts';
import {
  type RouteJoints,
  type RouteProposal,
  type RouteWishes,
  rankedRoutes,
  routeObstacles,
  type Suggestion,
  suggestRoute,
} from '../shaft/index.ts';
import { toRadians } from '../units/index.ts';
import { type Car, limitOf } from './car.ts';

/** mm along the input from the sector shaft's line to the input's end, and from the sector shaft to the worm's line. */
const INPUT = { back: 126, aside: 34 } as const;
/** mm that the middle of a box's body lies from its centre along the sector shaft, away from the arm. */
const MID_BODY = 15;

/** Where the box's input may be, and which way it points, from the handwheel toward the box. mm. */
export interface BoxInput {
  readonly end: Point;
  readonly axis: Point;
}

/**
 * The input of a box that a column reaches with the least bend: square to the sector shaft (or at the box's own angle),
 * as near to the way from column to box as that allows. The worm lies on the far side of the sector from the arm's ball,
 * or beside a flat arm on the rail's side.
 */
export function inputOf(layout: Layout, column: { readonly end: Point; readonly axis: Point }): BoxInput {
  const { sectorCentre: centre, sectorAxis, pitmanBall } = layout.steering.box;
  const axis = unit(sectorAxis);
  const way = subtract(centre, column.end);
  const between = add(unit(way), unit(column.axis));
  const aim = norm(between) > 0.1 ? between : way;
  const angle = toRadians(ownInputAngle(layout));
  const across = subtract(aim, scaled(axis, dot(aim, axis)));
  const square = norm(across) > 1e-6 ? unit(across) : unit(cross(axis, [0.6, 0.8, 0]));
  const share = dot(aim, axis) < 0 ? -1 : 1;
  const input = unit(add(scaled(square, Math.sin(angle)), scaled(axis, share * Math.cos(angle))));
  const along = dot(subtract(pitmanBall, centre), axis);
  const arm = subtract(subtract(pitmanBall, centre), scaled(axis, along));
  const aside = unit(cross(axis, input));
  // Away from the arm where it hangs beside; of a box that stands upright, toward the rail on the left.
  const upright = Math.abs(axis[2]) > 0.7;
  const toward = upright ? aside[1] : -dot(aside, arm);
  const body = scaled(axis, along >= 0 ? -MID_BODY : MID_BODY);
  return {
    end: add(
      add(add(centre, body), scaled(input, -INPUT.back)),
      scaled(aside, toward >= 0 ? INPUT.aside : -INPUT.aside),
    ),
    axis: input,
  };
}

/** The shaft of a proposal, or why none reaches the box. */
export type ShaftFor =
  | { readonly kind: 'laid'; readonly route: RouteProposal }
  | { readonly kind: 'held'; readonly shaft: ShaftDocument }
  | { readonly kind: 'no-column' }
  | { readonly kind: 'none'; readonly tried: readonly Suggestion[] };

/** Routes from the column to the box of a laid layout: two joints first, three where two do not do, and one where the axes meet. */
export function shaftFor(car: Car, layout: Layout): ShaftFor {
  const { shaft } = car.document;
  if (!shaft) return { kind: 'no-column' };
  if (car.held.has('shaft')) return { kind: 'held', shaft };
  const box = inputOf(layout, shaft.column);
  const wishes: RouteWishes = {
    clearance: limitOf(car, 'clearanceMoving'),
    limits: jointLimits(car.limits),
  };
  const task = {
    column: shaft.column,
    box,
    obstacles: routeObstacles({ ...layout, shaft: null }),
  };
  const tried: Suggestion[] = [];
  for (const joints of [1, 2, 3] as RouteJoints[]) {
    tried.push(suggestRoute(task, joints, wishes));
    const [best] = rankedRoutes(tried);
    if (best?.outcome.ok && best.outcome.value.withinLimits)
      return { kind: 'laid', route: best.outcome.value };
  }
  return { kind: 'none', tried };
}
