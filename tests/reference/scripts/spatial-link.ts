import { apart, root, turned, type Vector } from './root.ts';

/**
 * Turns (rad) of the second arm at which its ball is one rod length from the first arm's: the whole turn is walked in half
 * degrees and every change of sign is closed in on.
 */
export function rockerTurns(link: {
  readonly p1: Vector;
  readonly u1: Vector;
  readonly a0: Vector;
  readonly p2: Vector;
  readonly u2: Vector;
  readonly b0: Vector;
  readonly length: number;
  readonly turn: number;
}): number[] {
  const ball = turned(link.a0, link.p1, link.u1, link.turn);
  const off = (t: number) => apart(turned(link.b0, link.p2, link.u2, t), ball) - link.length;
  const step = Math.PI / 360;
  const found: number[] = [];
  for (let i = -360; i < 360; i += 1) {
    const [a, b] = [(i + 0.123) * step, (i + 1.123) * step];
    if (off(a) > 0 !== off(b) > 0) found.push(root(off, a, b));
  }
  return found;
}
