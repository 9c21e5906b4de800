import { apart, root, turned, type Vector } from './root.ts';

// Axles that move on arcs which are plain to see, and what a link from the frame then asks of an upright kingpin's arm.

/** How far level equal parallel bars draw the axle toward their frame ends at a rise. */
export const pullBack = (bar: number, rise: number) => bar - Math.sqrt(bar * bar - rise * rise);

/** Turn of an upright kingpin's arm (rad) that lets its ball be as far from `from` as it was drawn. */
function turnFor(drawn: Vector, kingpin: Vector, moved: Vector, from: Vector): number {
  const length = apart(drawn, from);
  const carried: Vector = [drawn[0] + moved[0], drawn[1] + moved[1], drawn[2] + moved[2]];
  const pin: Vector = [kingpin[0] + moved[0], kingpin[1] + moved[1], kingpin[2] + moved[2]];
  const off = (t: number) => apart(turned(carried, pin, [0, 0, 1], t), from) - length;
  if (Math.abs(off(0)) < 1e-12) return 0;
  // The root nearest to straight ahead.
  for (let reach = 0.01; reach < 1; reach += 0.01)
    for (const side of [1, -1])
      if (off(0) > 0 !== off(side * reach) > 0)
        return root(off, Math.min(0, side * reach), Math.max(0, side * reach));
  throw new Error('out of reach');
}

/** Side steer: a level drag link of a length, its frame end raised, behind an arm inboard of the kingpin. rad. */
export function sideSteerTurn(bar: number, link: number, arm: number, raised: number, rise: number): number {
  const ball: Vector = [0, -arm, 0];
  return turnFor(ball, [0, 0, 0], [-pullBack(bar, rise), 0, rise], [-link, -arm, raised]);
}

/** Cross steer: a level bar and drag link from the left, the axle on level bars 30 long; arm behind the kingpin. rad. */
export function crossSteerTurn(bar: number, link: number, arm: number, rods: number, rise: number): number {
  const ball: Vector = [-arm, 0, 0];
  // The bar's axle end stays its length from the frame: the axle is drawn along the car by its rods, across by the bar.
  const back = pullBack(rods, rise);
  const across = bar - Math.sqrt(bar * bar - rise * rise - back * back);
  return turnFor(ball, [0, 0, 0], [-back, across, rise], [-arm, link, 0]);
}
