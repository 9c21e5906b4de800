import { describe, expect, test } from 'vitest';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { boxHandwheel, evenColumnYoke, routeOf, turningOf } from '../../shared-math/shaft/index.ts';
import { sweepTurn, turnThroughShaft } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { documentOf, rawLayout } from '../support/layouts.ts';
import { shaftOf } from '../support/shafts.ts';

const frontEnd = prepareFrontEnd(resolveLayout(documentOf(rawLayout())));
const sweep = sweepTurn(frontEnd, 0, 0);
const motionFor = (over: Record<string, unknown> = {}) => {
  const shaft = shaftOf(over);
  const turning = turningOf(shaft, routeOf(shaft));
  if (!turning.ok) throw new Error('locked');
  return turning.value.motion;
};

describe('the turn through the steering shaft', () => {
  test('a shaft that runs evenly changes nothing', () => {
    // Two joints of one angle in one plane, in phase.
    const even = motionFor({
      column: { end: [-1396, 330, 768], axis: [2, 0, -1] },
      box: { end: [-960, 452, 560], axis: [2, 0, -1] },
      joints: [
        { kind: 'single', centre: [-1380, 330, 760] },
        { kind: 'single', centre: [-976, 452, 568] },
      ],
    });
    expect(even.swing).toBeLessThan(1e-9);
    const turn = turnThroughShaft(frontEnd, sweep, 0, 0, even);
    for (let row = 0; row < sweep.count; row += 1) {
      expectClose(turn.off[row]!, 0, 1e-9);
      expectClose(turn.ratio[row]! / sweep.ratio[row]!, 1, 1e-9);
    }
  });

  test('wheels stand where the linkage puts them at what the box sees, and the ratio is their difference quotient', () => {
    const motion = motionFor({ shafts: [{ clock: 40 }] });
    expect(motion.swing).toBeGreaterThan(3 * DEGREE);
    const state = createState();
    for (const yoke of [undefined, 0.7]) {
      const turn = turnThroughShaft(frontEnd, sweep, 0, 0, motion, yoke);
      const at = yoke ?? evenColumnYoke(motion, 'slowest');
      const mean = (rim: number) => {
        expect(solveFrontEnd(frontEnd, 0, 0, boxHandwheel(motion, at, rim), state)).toBe('ok');
        return state.meanSteer;
      };
      // The rows at the very ends are held by the locks.
      for (let row = 2; row < sweep.count - 2; row += 1) {
        const rim = turn.handwheel[row]!;
        expectClose(turn.meanSteer[row]!, mean(rim), 1e-9);
        const step = 1e-4;
        const ratio = (2 * step) / (mean(rim + step) - mean(rim - step));
        expectClose(turn.ratio[row]! / ratio, 1, 1e-5);
      }
    }
  });

  test('with the yoke set evenly left and right are alike at the box, and no wheel goes past its lock', () => {
    const motion = motionFor({ shafts: [{ clock: 40 }] });
    const { boxHandwheel: box, handwheel } = turnThroughShaft(frontEnd, sweep, 0, 0, motion);
    const yoke = evenColumnYoke(motion, 'slowest');
    for (const rim of [0.4, 1.9, 5])
      expectClose(boxHandwheel(motion, yoke, rim), -boxHandwheel(motion, yoke, -rim), 1e-9);
    expect(Math.max(...box)).toBeLessThanOrEqual(sweep.left.handwheel);
    expect(Math.min(...box)).toBeGreaterThanOrEqual(sweep.right.handwheel);
    expect(box.length).toBe(handwheel.length);
  });
});
