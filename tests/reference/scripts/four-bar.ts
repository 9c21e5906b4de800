import type { Vector } from './root.ts';
import { rockerTurns } from './spatial-link.ts';

/**
 * A solid axle seen from above on upright kingpins: tie rod arms of a length, aimed at the middle of the rear axle, the
 * left wheel turned `inner` to the left (rad): the right wheel's turn, nearest to it. Lengths in one unit.
 */
export function outerOfAimedArms(track: number, wheelbase: number, arm: number, inner: number): number {
  const aim = Math.atan(track / 2 / wheelbase);
  const ball = (side: 1 | -1): Vector => [-arm * Math.cos(aim), side * (track / 2 - arm * Math.sin(aim)), 0];
  const up: Vector = [0, 0, 1];
  const turns = rockerTurns({
    p1: [0, track / 2, 0],
    u1: up,
    a0: ball(1),
    p2: [0, -track / 2, 0],
    u2: up,
    b0: ball(-1),
    length: ball(1)[1] - ball(-1)[1],
    turn: inner,
  });
  return turns.sort((a, b) => Math.abs(a - inner) - Math.abs(b - inner))[0] as number;
}

/** Rocker and coupler angles (rad) of a planar four-bar: crank a at the origin, coupler b, rocker c on (d, 0). */
export function fourBar(a: number, b: number, c: number, d: number, crank: number): [number, number][] {
  const pin: Vector = [a * Math.cos(crank), a * Math.sin(crank), 0];
  return rockerTurns({
    p1: [0, 0, 0],
    u1: [0, 0, 1],
    a0: pin,
    p2: [d, 0, 0],
    u2: [0, 0, 1],
    b0: [d + c, 0, 0],
    length: b,
    turn: 0,
  }).map((rocker) => [rocker, Math.atan2(c * Math.sin(rocker) - pin[1], d + c * Math.cos(rocker) - pin[0])]);
}
