import { describe, test } from 'vitest';
import { ballCircle, closeLink, drawnBranch } from '../../shared-math/linkage/index.ts';
import { idealInner, idealOuter } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';

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

  test('wheelbase 3.2 m, track 1.6 m, outer wheel on 6.5 m: 29.492° and 38.260° (public worked example)', () => {
    const outer = Math.asin(3.2 / 6.5);
    expectClose(outer / DEGREE, 29.492, 1e-2);
    expectClose(idealInner(outer, 1.6, 3.2) / DEGREE, 38.26, 1e-2);
  });

  test('Davis gear, tan a = t/2L, t 1.2, L 2.7: 12.529° (Khurmi, Theory of Machines; from memory)', () => {
    // The straight line through the kingpins at that angle meets the rear axle's middle.
    expectClose(Math.atan(1.2 / 2 / 2.7) / DEGREE, 12.529, 1e-3);
  });

  // Exact four-bar, arms 6 in behind the axle aimed at the rear axle's centre, t 50, L 102 in: computed independently.
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
      expectClose(found, outer, 1e-3, 'outer');
      expectClose(found - idealOuter(turn, 50, 102) / DEGREE, error, 1e-3, 'error');
    },
  );
});
