import type { Point } from '../geometry/points.ts';
import { cross, dot, scaled, subtract, unit } from '../geometry/vectors.ts';
import type { ArmMaking } from './making.ts';
import { MATERIALS } from './materials.ts';

/** What a force at an arm's ball does where the arm leaves its boss. N·mm and N/mm². */
export interface ArmBending {
  /** In the plane that the arm swings in: what turns the shaft or the wheel. */
  readonly swing: number;
  /** Out of that plane: by the link's slant, and by the arm's drop or rise. */
  readonly side: number;
  /** Twist about the arm's own length, by its drop or rise. */
  readonly twist: number;
  /** mm: how far the ball stands from the boss along the axis. */
  readonly drop: number;
  /** Of all of it together, by von Mises. */
  readonly stress: number;
  /** Share of the yield that this is. */
  readonly share: number;
  readonly assumed: boolean;
}

/**
 * Bending of an arm at its boss under a force at its ball.
 * With the axis a, the way r from the axis to the ball (square to a, R long) and t = a × r, the ball stands R r + d a from
 * the boss, so that a force F makes M = (R r + d a) × F there: along a R F_t, which turns what the arm turns; along t
 * d F_r - R F_a, which bends it over its thickness; along r -d F_t, which twists it. A bar w wide along the swing and h thick
 * along the axis bears them by w² h/6, w h²/6 and, twisted, β w h² with 1/β = 3 + 1.8 (shorter/longer) on the shorter side;
 * the stresses together by von Mises, σ² + 3 τ², as if they met in one corner, which errs high.
 * Units:   mm, N, N·mm, N/mm². `boss` is where the arm is held on its axis.
 * Source:  textbook bending; the twist of a bar of right angles by the approximation of handbooks (from memory).
 * Checked: tests/reference/columns.test.ts (moments by hand; the series solution of a twisted bar).
 */
export function armBending(
  making: ArmMaking,
  boss: Point,
  axis: Point,
  ball: Point,
  force: Point,
): ArmBending {
  const a = unit(axis);
  const reach = subtract(ball, boss);
  const drop = dot(reach, a);
  const across = subtract(reach, scaled(a, drop));
  const radius = Math.sqrt(dot(across, across));
  const r = scaled(across, 1 / radius);
  const t = cross(a, r);
  const [along, out, round] = [dot(force, a), dot(force, r), dot(force, t)];
  const swing = radius * round;
  const side = drop * out - radius * along;
  const twist = -drop * round;
  const w = making.width.value;
  const h = making.thickness.value;
  const [short, long] = w < h ? [w, h] : [h, w];
  const bending = Math.abs(swing) / ((w * w * h) / 6) + Math.abs(side) / ((w * h * h) / 6);
  const normal = bending + Math.abs(out) / (w * h);
  const shear = (Math.abs(twist) * (3 + (1.8 * short) / long)) / (long * short * short);
  const stress = Math.sqrt(normal * normal + 3 * shear * shear);
  return {
    swing,
    side,
    twist,
    drop,
    stress,
    share: stress / MATERIALS[making.material.value].yield,
    assumed: [making.width, making.thickness, making.material].some(({ assumed }) => assumed),
  };
}
