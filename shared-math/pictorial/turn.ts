import type { Point } from '../geometry/points.ts';
import type { Radians } from '../units/index.ts';

/** From where the car is looked at, from far off. */
export interface Turn {
  /** In plan, from straight ahead of the car toward its left. */
  readonly azimuth: Radians;
  /** Above level. */
  readonly elevation: Radians;
}

/** How a turned car lies on paper: each direction of length 1 in the car's axes, square to one another. */
export interface TurnAxes {
  readonly right: Point;
  readonly down: Point;
  /** Toward the one who looks. */
  readonly toward: Point;
}

/** 35.26°: seen so, and at 45° in plan, all three axes of the car are shortened alike, to √(2/3) of their length. */
const ALIKE = Math.atan(Math.SQRT1_2);

/**
 * The isometric axonometry of ISO 5456-3, from ahead and the car's left: its three axes lie 120° apart on paper and all
 * have the scale √(2/3) = 0.816. (Drawn by hand they are given full length; here a millimetre of paper is one of the
 * picture's plane, so that lengths in that plane are true.)
 */
export const ISOMETRIC: Turn = { azimuth: Math.PI / 4, elevation: ALIKE };

/**
 * The dimetric axonometry of ISO 5456-3, mostly from the car's left side: lengths along the car and upward have the scale
 * (2/3)√2 = 0.943, those across half of it. An axis that makes the angle t with the line of sight is shortened to sin t, so
 * the squares of what each axis has of the line of sight are 1 - 8/9, 1 - 8/9 and 1 - 2/9: sin(elevation) = 1/3,
 * tan(azimuth) = √7. On paper the one axis lies 7.2° off level, the other 41.4°.
 */
export const DIMETRIC: Turn = { azimuth: Math.atan(Math.sqrt(7)), elevation: Math.asin(1 / 3) };

/** The same turn from the car's other side. */
export function fromOtherSide(turn: Turn): Turn {
  return { azimuth: -turn.azimuth, elevation: turn.elevation };
}

/**
 * The axes of a turn. With azimuth a and elevation e the line of sight comes from (cos e cos a, cos e sin a, sin e); what is
 * level and square to it goes right, (-sin a, cos a, 0); down is right × toward.
 * Frame: the car's axes. Checked: tests/reference/axonometry.test.ts (rotation matrices multiplied by ml-matrix).
 */
export function axesOf({ azimuth, elevation }: Turn): TurnAxes {
  const [ca, sa] = [Math.cos(azimuth), Math.sin(azimuth)];
  const [ce, se] = [Math.cos(elevation), Math.sin(elevation)];
  return {
    right: [-sa, ca, 0],
    down: [se * ca, se * sa, -ce],
    toward: [ce * ca, ce * sa, se],
  };
}

/** How steeply the car can be looked at: from level to straight above. Lower one would look through the ground. */
export const STEEPEST: Radians = Math.PI / 2;

/** A turn kept to what can be looked at: a whole turn around, never from below the ground. */
export function keptTurn({ azimuth, elevation }: Turn): Turn {
  const round = azimuth - 2 * Math.PI * Math.round(azimuth / (2 * Math.PI));
  return { azimuth: round, elevation: Math.min(STEEPEST, Math.max(0, elevation)) };
}

/**
 * Where a point of the car lies on paper. Units: mm of the car, mm of paper at full size. Frame: right and down from where
 * the car's origin, on the ground below the front axle, is seen.
 */
export function onPaper(axes: TurnAxes, point: Point): [right: number, down: number] {
  const { right, down } = axes;
  return [
    right[0] * point[0] + right[1] * point[1] + right[2] * point[2],
    down[0] * point[0] + down[1] * point[1] + down[2] * point[2],
  ];
}

/** How near a point of the car is to the one who looks, mm from the car's origin toward him. */
export function nearnessOf({ toward }: TurnAxes, point: Point): number {
  return toward[0] * point[0] + toward[1] * point[1] + toward[2] * point[2];
}

/**
 * Writes points as the front view of the drawing would have them if the car stood turned: toward the eye, right, up. What
 * outlines in the front view then outlines in the turn. Shapes: 3 numbers for each point, both of one length; mm.
 */
export function turnPoints(axes: TurnAxes, placed: Float64Array, turned: Float64Array): void {
  const { right, down, toward } = axes;
  for (let at = 0; at + 2 < placed.length; at += 3) {
    const x = placed[at] as number;
    const y = placed[at + 1] as number;
    const z = placed[at + 2] as number;
    turned[at] = toward[0] * x + toward[1] * y + toward[2] * z;
    turned[at + 1] = right[0] * x + right[1] * y + right[2] * z;
    turned[at + 2] = -(down[0] * x + down[1] * y + down[2] * z);
  }
}
