import type { Point } from '../geometry/points.ts';
import { add, cross, dot, norm, scaled, subtract, unit } from '../geometry/vectors.ts';
import { type Layout, ownInputAngle } from '../layout/index.ts';
import type { ClearanceOf } from '../shaft/index.ts';
import { toRadians } from '../units/index.ts';
import type { Car } from './car.ts';

/** mm along the input from the sector shaft's line to the input's end, and from the sector shaft to the worm's line. */
const INPUT = { back: 126, aside: 34 } as const;
/** mm that the middle of a box's body lies from its centre along the sector shaft, away from the arm. */
const MID_BODY = 15;
/** mm: half a usual shaft, half a usual joint, and how far from the input's end the joint on it may stand. */
const SHAFT = { tube: 9.525, joint: 22.225, slides: [14, 50, 100] } as const;

/** Where the box's input may be, and which way it points, from the handwheel toward the box. mm. */
export interface BoxInput {
  readonly end: Point;
  readonly axis: Point;
}

/** What is known of the column: where it ends and which way it points. mm. */
export interface ColumnEnd {
  readonly end: Point;
  readonly axis: Point;
}

/**
 * The two inputs that a box may have, the worm on either side of its sector, each square to the sector shaft (or at the
 * box's own angle) and as near to the way from column to box as that allows. First the usual one: on the far side of the
 * sector from an arm that hangs, or beside a flat arm toward the rail.
 */
function inputsOf(layout: Layout, column: ColumnEnd): readonly [BoxInput, BoxInput] {
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
  const upright = Math.abs(axis[2]) > 0.7;
  const toward = upright ? aside[1] : -dot(aside, arm);
  const middle = add(centre, scaled(axis, along >= 0 ? -MID_BODY : MID_BODY));
  const at = (by: number): BoxInput => ({
    end: add(add(middle, scaled(input, -INPUT.back)), scaled(aside, by)),
    axis: input,
  });
  const usual = toward >= 0 ? INPUT.aside : -INPUT.aside;
  return [at(usual), at(-usual)];
}

/** The inputs that a laid box may have; of a box that stands still with a shaft drawn to it, the drawn one. */
export function inputsFor(car: Car, layout: Layout): readonly BoxInput[] {
  const { shaft } = car.document;
  if (!shaft) return [];
  if (car.held.has('box')) return [{ end: shaft.box.end, axis: unit(shaft.box.axis) }];
  return inputsOf(layout, shaft.column);
}

/** mm of the room wanted around a stretch of line that are not there. */
function lacksOf(room: number, from: Point, to: Point, clearanceOf: ClearanceOf): number {
  return Math.max(0, room - clearanceOf(from, to, room).distance);
}

/** mm that the joint on a box's input and the way to it lack of the room wanted, where that joint stands best; 0 if it is clear. */
export function inputLacks({ end, axis }: BoxInput, clearanceOf: ClearanceOf, wanted: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const slide of SHAFT.slides) {
    const joint = subtract(end, scaled(axis, slide));
    const lacks = Math.max(
      lacksOf(wanted + SHAFT.joint, joint, joint, clearanceOf),
      lacksOf(wanted + SHAFT.tube, end, joint, clearanceOf),
    );
    if (lacks === 0) return 0;
    least = Math.min(least, lacks);
  }
  return least;
}

/**
 * rad by which the joints of a shaft with two of them, straight between the column's end and a box's input, pass a limit together;
 * 0 where two do. In closed form: a route may do better by a little, as its joints may stand elsewhere on both ends.
 */
export function bentPast({ end, axis }: BoxInput, column: ColumnEnd, limit: number): number {
  const [, slide] = SHAFT.slides;
  const out = unit(column.axis);
  const way = subtract(subtract(end, scaled(axis, slide)), add(column.end, scaled(out, slide)));
  const size = norm(way);
  if (size < 1) return 0;
  const past = (direction: Point) =>
    Math.max(0, Math.acos(Math.max(-1, Math.min(1, dot(direction, way) / size))) - limit);
  return past(out) + past(axis);
}
