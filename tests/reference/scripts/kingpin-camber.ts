import { root, turned, type Vector } from './root.ts';

/**
 * A left wheel, upright and straight as drawn, turned about a kingpin of a caster and an inclination (rad): its camber at
 * a heading, and the turn about the kingpin that it takes. The spin axis is turned as a vector; heading is seen from above.
 */
export function camberAtHeading(
  caster: number,
  inclination: number,
  heading: number,
): { readonly camber: number; readonly turn: number } {
  // x forward, y left, z up: the top leans back and inboard.
  const kingpin: Vector = [-Math.tan(caster), -Math.tan(inclination), 1];
  const spin = (turn: number) => turned([0, 1, 0], [0, 0, 0], kingpin, turn);
  const headed = (turn: number) => {
    const [x, y] = spin(turn);
    return Math.atan2(-x, y);
  };
  const turn = root((t) => headed(t) - heading, -1.2, 1.2);
  return { camber: Math.asin(-spin(turn)[2]), turn };
}
