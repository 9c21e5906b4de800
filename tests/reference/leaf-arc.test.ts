import { describe, test } from 'vitest';
import { createState, poseAxle } from '../../shared-math/linkage/index.ts';
import { expectClose } from '../support/close.ts';
import { frontEndOf } from '../support/layouts.ts';

/**
 * End of a leaf that bends to one curvature from a level clamp: integrated numerically (midpoint rule along the leaf),
 * no closed form. Returns drop and shortening for a total bend.
 */
function bentLeaf(length: number, bend: number, steps = 20_000) {
  let [x, y] = [0, 0];
  const ds = length / steps;
  for (let i = 0; i < steps; i += 1) {
    const slope = (bend * (i + 0.5)) / steps;
    x += Math.cos(slope) * ds;
    y += Math.sin(slope) * ds;
  }
  return { drop: y, shortening: length - x };
}

describe('the 3/4 rule for a leaf (SAE HS-788, from memory; 3/4 confirmed by integration)', () => {
  test.each([0.2, 0.4, 0.6])('a leaf of 500 mm bent by %d rad is followed within 2 parts in 1000', (bend) => {
    const frontEnd = frontEndOf({
      location: {
        kind: 'parallel-leaf',
        left: { fixedEye: [500, 400, 330], seat: [0, 400, 330], shackleEye: [-500, 400, 330] },
        right: 'mirror',
      },
    });
    const { drop, shortening } = bentLeaf(500, bend);
    const state = createState();
    poseAxle(frontEnd, drop, 0, state);
    expectClose(state.axle.x, shortening, 0.004 * shortening);
  });

  // mm: half-length 500, travel against pull of the axle. The arc of 3/4 of the length: r - √(r² - z²), r 375; beside it the true leaf, summed.
  test.each([
    [25, 0.8343],
    [50, 3.3483],
    [75, 7.5765],
    [100, 13.5792],
  ])(
    'an axle on equal half-leaves of 500 mm rises %d mm and is drawn %d mm to its fixed eye',
    (rise, pull) => {
      const frontEnd = frontEndOf({
        location: {
          kind: 'parallel-leaf',
          left: { fixedEye: [500, 400, 330], seat: [0, 400, 330], shackleEye: [-500, 400, 330] },
          right: 'mirror',
        },
      });
      const state = createState();
      for (const sign of [1, -1]) {
        poseAxle(frontEnd, sign * rise, 0, state);
        expectClose(state.axle.x, pull, 1e-3, `rise ${sign * rise}`);
        expectClose(state.axle.pitch, 0, 1e-9, 'equal halves keep the seat level');
      }
      // And the link stays within a fifth of a percent of the integrated leaf.
      let [low, high] = [0, 1];
      for (let i = 0; i < 60; i += 1) {
        const middle = (low + high) / 2;
        if (bentLeaf(500, middle, 4000).drop < rise) low = middle;
        else high = middle;
      }
      expectClose(bentLeaf(500, low, 4000).shortening, pull, 0.002 * pull);
    },
  );

  test('a shorter front half tips the seat, by the difference of curvature of clamped halves', () => {
    // From the integration: both ends drop z below the seat, so the clamp's slope is what makes the two curvatures one:
    // with slope s at the clamp, end heights of halves a and b are a²κ/2 ± a s; equal heights give s = -(a - b)/(a b) z.
    const [a, b] = [450, 600];
    const frontEnd = frontEndOf({
      location: {
        kind: 'parallel-leaf',
        left: { fixedEye: [a, 400, 330], seat: [0, 400, 330], shackleEye: [-b, 400, 330] },
        right: 'mirror',
      },
    });
    const state = createState();
    poseAxle(frontEnd, 20, 0, state);
    expectClose(state.axle.pitch, ((b - a) / (a * b)) * 20, 1e-6);
  });
});
