import { type HeldTravel, worstBumpSteerAt } from '../aim/index.ts';
import type { Point } from '../geometry/points.ts';
import { createState } from '../linkage/index.ts';
import { goldenSection } from '../solve/golden-section.ts';

/** mm. A pitman ball is not moved further than this by advice: beyond it the box wants another place. */
const REACH = 160;

/**
 * The height of the pitman ball, all else as drawn, at which the worst |bump steer| over the travel is least: a coarse
 * look every 8 mm (the valley is narrow), then golden section about its best to 0.01 mm. mm and rad.
 */
export function bestHeight(travel: HeldTravel, ball: Point): { readonly to: Point; readonly worst: number } {
  const state = createState();
  const at = (z: number): Point => [ball[0], ball[1], z];
  const worst = (z: number) => worstBumpSteerAt(travel, at(z), state);
  let best = ball[2];
  let least = worst(best);
  for (let step = -REACH; step <= REACH; step += 8) {
    const value = worst(ball[2] + step);
    if (value < least) {
      least = value;
      best = ball[2] + step;
    }
  }
  const { low, high } = goldenSection(worst, best - 8, best + 8, 0.01);
  const z = (low + high) / 2;
  const value = worst(z);
  return value < least ? { to: at(z), worst: value } : { to: at(best), worst: least };
}
