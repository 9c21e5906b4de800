import { cross, dot, root, turned, type Vector } from './root.ts';

/**
 * A Cardan joint by its cross: the input's pin turns with the input shaft, the output's pin with the output shaft, and the
 * two stay square to one another. The output's angle (rad) for the input's, both from the pins' place in the plane of the
 * two shafts (input) and square to it (output).
 */
export function cardanOutput(bend: number, input: number): number {
  const [shaftIn, shaftOut]: [Vector, Vector] = [
    [1, 0, 0],
    [Math.cos(bend), Math.sin(bend), 0],
  ];
  const origin: Vector = [0, 0, 0];
  const pinIn = turned([0, 1, 0], origin, shaftIn, input);
  const normal = cross(shaftIn, shaftOut);
  const off = (t: number) => dot(turned(normal, origin, shaftOut, t), pinIn);
  return root(off, input - 0.5, input + 0.5);
}

/** rad between two directions. */
export const bend = (a: Vector, b: Vector) => Math.atan2(Math.hypot(...cross(a, b)), dot(a, b));

/** rad between the planes of a with b and of b with c, about b from the first to the second. */
export function planesApart(a: Vector, b: Vector, c: Vector): number {
  const [first, second] = [cross(a, b), cross(b, c)];
  return Math.atan2(dot(cross(first, second), b) / Math.hypot(...b), dot(first, second));
}
