import { describe, test } from 'vitest';
import { ballCircle, closeLink, drawnBranch } from '../../shared-math/linkage/index.ts';
import { idealInner, idealOuter } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { outerOfAimedArms } from './scripts/four-bar.ts';

describe('the Ackermann condition', () => {
  test('track/wheelbase 0.44, inner 18°: outer 15.869° (Rattan, Theory of Machines, printed 15.9; from memory)', () => {
    expectClose(idealOuter(18 * DEGREE, 0.44, 1) / DEGREE, 15.869, 1e-3);
  });

  test.each([
    [10, 9.2043],
    [20, 17.1152],
    [30, 24.1333],
    [35, 27.4127],
    [40, 30.5874],
  ])('track/wheelbase 0.5, inner %d°: outer %d° (computed from the relation)', (inner, outer) => {
    expectClose(idealOuter(inner * DEGREE, 1, 2) / DEGREE, outer, 1e-3);
    expectClose(idealInner(idealOuter(inner * DEGREE, 1, 2), 1, 2) / DEGREE, inner, 1e-9);
  });

  test('wheelbase 3.2 m, track 1.6 m, outer wheel at 29.492°: inner 38.260° (public worked example)', () => {
    expectClose(idealInner(29.492 * DEGREE, 1.6, 3.2) / DEGREE, 38.26, 1e-2);
    expectClose(idealOuter(38.26 * DEGREE, 1.6, 3.2) / DEGREE, 29.492, 1e-2);
  });

  test('both wheels square to one line through one point on the rear axle’s line', () => {
    // Plan geometry by coordinates: the point is so far out that neither wheel is turned past it.
    for (const out of [0.9, 1.4, 3, 20])
      for (const track of [1.2, 1.6]) {
        const [inner, outer] = [Math.atan2(2.7, out - track / 2), Math.atan2(2.7, out + track / 2)];
        expectClose(idealOuter(inner, track, 2.7), outer, 1e-12);
        expectClose(idealInner(outer, track, 2.7), inner, 1e-12);
      }
    // A point inside the track has the inner wheel past a right angle; straight ahead stays straight ahead.
    expectClose(idealInner(Math.atan2(2.7, 1), 1.6, 2.7), Math.atan2(2.7, -0.6), 1e-12);
    expectClose(idealOuter(0, 1.6, 2.7), 0, 0);
    expectClose(idealInner(0, 1.6, 2.7), 0, 0);
  });

  // Exact four-bar, arms 6 in behind the axle aimed at the rear axle's centre, t 50, L 102 in: scripts/four-bar.ts.
  test.each([
    [10, 9.5599, 0.341],
    [20, 18.2471, 1.083],
    [30, 25.9838, 1.756],
    [40, 32.5866, 1.853],
  ])(
    'tie rod on arms aimed at the rear axle, inner %d°: outer %d°, %d° over the ideal',
    (inner, outer, error) => {
      const arm = Math.atan(25 / 102);
      const ball = (side: 1 | -1): [number, number, number] => [
        -6 * Math.cos(arm),
        side * (25 - 6 * Math.sin(arm)),
        0,
      ];
      const up = [0, 0, 1] as const;
      const left = ballCircle([0, 25, 0], up, ball(1));
      const right = ballCircle([0, -25, 0], up, ball(-1));
      const turn = inner * DEGREE;
      const at = [0, 1, 2].map(
        (i) => left.base[i]! + left.across[i]! * Math.cos(turn) + left.onward[i]! * Math.sin(turn),
      );
      const rod = ball(1)[1] - ball(-1)[1];
      const out = new Float64Array(3);
      closeLink(
        right,
        at[0]! - right.base[0],
        at[1]! - right.base[1],
        at[2]! - right.base[2],
        rod,
        drawnBranch(right, ball(1)),
        out,
        0,
      );
      const found = Math.atan2(out[1]!, out[0]!) / DEGREE;
      expectClose(found, outerOfAimedArms(50, 102, 6, turn) / DEGREE, 1e-9, 'script');
      expectClose(found, outer, 1e-3, 'outer');
      expectClose(found - idealOuter(turn, 50, 102) / DEGREE, error, 1e-3, 'error');
    },
  );
});
