import { describe, expect, test } from 'vitest';
import type { Point } from '../../shared-math/geometry/points.ts';
import { createState, poseAxle } from '../../shared-math/linkage/index.ts';
import { POSE_ROCKER } from '../../shared-math/pose/index.ts';
import { expectClose } from '../support/close.ts';
import { frontEndOf } from '../support/layouts.ts';

// Watt's linkage in the plane square to the car: the axle held so that it goes up and sideways without turning.

/** Bars so long, and so far back, that the axle goes straight up by a hair and turns by nothing. */
const LEVEL = {
  kind: 'four-bar',
  left: {
    upper: { axle: [0, 430, 400], frame: [-9900, 430, 400] },
    lower: { axle: [0, 430, 260], frame: [-9900, 430, 260] },
  },
  right: 'mirror',
};

const BARS = 360;
const ARM = 60;
const HIGH = 340;

/** Bars alike and level, the rocker upright between them. */
function upright(rockerOn: 'axle' | 'frame', bars = BARS, arm = ARM) {
  const top: Point = [0, 0, HIGH + arm];
  const foot: Point = [0, 0, HIGH - arm];
  return {
    kind: 'watt',
    rockerOn,
    pivot: [0, 0, HIGH],
    upper: { rocker: top, end: [0, bars, HIGH + arm] },
    lower: { rocker: foot, end: [0, -bars, HIGH - arm] },
  };
}

/**
 * Watt's curve in polar coordinates about the middle of the fixed points, which stand 2 a apart; bars of length b, the rocker
 * 2 c long: r² = b² - (a sin θ ± √(c² - a² cos² θ))² (the sextic as handbooks of curves give it; from memory). What is left
 * of it at a point.
 */
function offCurve(x: number, y: number, a: number, b: number, c: number): number {
  const r2 = x * x + y * y;
  const theta = Math.atan2(y, x);
  const root = Math.sqrt(Math.max(0, c * c - (a * Math.cos(theta)) ** 2));
  return Math.min(
    ...[1, -1].map((sign) => Math.abs(r2 - (b * b - (a * Math.sin(theta) + sign * root) ** 2))),
  );
}

describe('Watt’s linkage', () => {
  test.each(['axle', 'frame'] as const)(
    'with its rocker on the %s its bolt runs along Watt’s curve',
    (on) => {
      const frontEnd = frontEndOf({ location: LEVEL, lateral: upright(on) });
      const state = createState();
      // The fixed points are the bars' far ends: (BARS, ARM) and (-BARS, -ARM) from the middle.
      const a = Math.hypot(BARS, ARM);
      const tilt = Math.atan2(ARM, BARS);
      for (const heave of [-100, -60, -20, 20, 60, 100]) {
        expect(poseAxle(frontEnd, heave, 0, state)).toBe(true);
        expect(state.bind).toBeLessThan(1e-6);
        // The rocker's bolt seen from the bars' far ends: on the frame the linkage stands on its head.
        const [y, z] = on === 'axle' ? [state.axle.y, heave] : [-state.axle.y, -heave];
        const [u, v] = [y * Math.cos(tilt) + z * Math.sin(tilt), z * Math.cos(tilt) - y * Math.sin(tilt)];
        // r² changes by 2 r for each mm aside; the axle's half millimetre back shortens the bars by a few ten-thousandths.
        expectClose(
          offCurve(u, v, a, BARS, ARM) / (2 * Math.abs(heave)),
          0,
          2e-3,
          `off the curve at ${heave}`,
        );
      }
    },
  );

  test('goes straight by more than a lateral bar of the same room, and as little aside as the series says', () => {
    // Symmetry: the bolt's path is odd, y(-z) = -y(z), so it has no curvature at ride height.
    const frontEnd = frontEndOf({ location: LEVEL, lateral: upright('axle') });
    const state = createState();
    const aside = (heave: number) => {
      poseAxle(frontEnd, heave, 0, state);
      return state.axle.y;
    };
    for (const heave of [20, 45, 75]) expectClose(aside(-heave), -aside(heave), 1e-6, `odd at ${heave}`);
    // Level bars of one length drop the rocker's two ends by the same: to third order nothing is left over, so that twice
    // the rise gives far more than eight times the way aside.
    const [near, far] = [Math.abs(aside(40)), Math.abs(aside(80))];
    expect(far / near).toBeGreaterThan(7);
    // A bar from side to side of twice the length swings the axle by its arc, by Pythagoras.
    const bar = 2 * BARS - Math.sqrt((2 * BARS) ** 2 - 75 ** 2);
    expect(Math.abs(aside(75))).toBeLessThan(bar / 3);
  });

  test('keeps both bars at their lengths, ball to ball, and its rocker stiff', () => {
    const lateral = upright('axle');
    const frontEnd = frontEndOf({ location: LEVEL, lateral });
    const state = createState();
    for (const heave of [-90, 50]) {
      poseAxle(frontEnd, heave, 0, state);
      const turn = state.work.pose[POSE_ROCKER]!;
      const tip = (arm: number): [number, number] => [
        state.axle.y - arm * Math.sin(turn),
        HIGH + heave + arm * Math.cos(turn),
      ];
      const [top, foot] = [tip(ARM), tip(-ARM)];
      const x = state.axle.x;
      expectClose(Math.hypot(x, top[0] - BARS, top[1] - HIGH - ARM), BARS, 1e-6, 'upper');
      expectClose(Math.hypot(x, foot[0] + BARS, foot[1] - HIGH + ARM), BARS, 1e-6, 'lower');
    }
  });
});
