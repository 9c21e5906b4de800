import { describe, expect, test } from 'vitest';
import type { Side } from '../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
  prepareWoundUp,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { frontEndOf, LATERALS, LOCATIONS, layoutOf, PLAIN_HALF, STEERED } from '../support/layouts.ts';

// A wound-up axle, by what its pose has to keep, seen in points carried alone: the leaf's distances and pitch, links' lengths.

type Vector = readonly [number, number, number];
const SIDES: readonly Side[] = ['left', 'right'];
const THETA = 5 * DEGREE;
const POSES = [
  [0, 0, 0],
  [40, 0, 0],
  [-30, 2 * DEGREE, 1],
  [20, -2 * DEGREE, -2],
] as const;

const off = (a: Vector, b: Vector) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function carried(
  frontEnd: FrontEnd,
  state: FrontEndState,
  carrier: Parameters<typeof carryPoint>[2],
  at: Vector,
): Vector {
  const out = new Float64Array(3);
  carryPoint(frontEnd, state, carrier, at, out);
  return [out[0] as number, out[1] as number, out[2] as number];
}

/** How far a half is pitched, from two points of it that stand above one another. */
function pitchOf(frontEnd: FrontEnd, state: FrontEndState, side: Side): number {
  const [low, high] = [0, 300].map((z) => carried(frontEnd, state, `axle-${side}`, [0, 0, z])) as [
    Vector,
    Vector,
  ];
  const up = [high[0] - low[0], high[1] - low[1], high[2] - low[2]] as const;
  // Level poses: the upward line leans by its pitch alone, out of a plane that has the axle's yaw.
  const { yaw } = state.axle;
  return Math.atan2(up[0] * Math.cos(yaw) + up[1] * Math.sin(yaw), up[2]);
}

function solved(frontEnd: FrontEnd, [heave, roll, handwheel]: readonly [number, number, number]) {
  const state = createState();
  expect(solveFrontEnd(frontEnd, heave, roll, handwheel, state)).toBe('ok');
  return state;
}

describe.each(STEERED.filter(({ label }) => label.includes('leaf')))('$label', ({ over }) => {
  const drawn = frontEndOf(over);
  const wound = prepareWoundUp(drawn, { left: THETA, right: THETA });

  test('each half is pitched by the angle beside what its leaf makes of its rise, and keeps its distance', () => {
    const { location } = drawn.layout;
    if (location.kind !== 'parallel-leaf') throw new Error('leaves');
    // Level poses: in roll an axle on one pitch, or a bar, wraps its leaves a little.
    for (const pose of POSES.slice(0, 2)) {
      const state = solved(wound, pose);
      for (const side of SIDES) {
        const { seat, fixedEye, shackleEye } = location[side];
        const at = carried(wound, state, `axle-${side}`, seat);
        const [a, b] = [Math.abs(fixedEye[0]), Math.abs(shackleEye[0])];
        const asked = THETA - ((a - b) / (a * b)) * (at[2] - seat[2]);
        expectClose(pitchOf(wound, state, side), asked, 1e-4, 'pitch');
        const quarter: Vector = [0, 1, 2].map(
          (axis) => (fixedEye[axis] as number) + ((seat[axis] as number) - (fixedEye[axis] as number)) / 4,
        ) as unknown as Vector;
        expectClose(off(at, quarter), off(seat, quarter), 0.02, 'three quarters of the leaf');
      }
    }
  });

  test('drag link, tie rod and bar are as long as drawn, in every pose', () => {
    const { steering, axle, lateral } = drawn.layout;
    for (const pose of POSES) {
      const state = solved(wound, pose);
      const spindle = (side: Side, at: Vector) => carried(wound, state, `spindle-${side}`, at);
      const ball = spindle(steering.dragLinkTo, steering.dragLinkBall);
      const pitman = carried(wound, state, 'pitman', steering.box.pitmanBall);
      expectClose(off(ball, pitman), off(steering.dragLinkBall, steering.box.pitmanBall), 1e-6, 'drag link');
      const [left, right] = SIDES.map((side) => spindle(side, axle[side].tieRodBall)) as [Vector, Vector];
      expectClose(off(left, right), off(axle.left.tieRodBall, axle.right.tieRodBall), 1e-6, 'tie rod');
      if (lateral.kind === 'bar' && state.bind < 1e-9) {
        const end = carried(wound, state, lateral.axle[1] > 0 ? 'axle-left' : 'axle-right', lateral.axle);
        expectClose(off(end, lateral.frame), off(lateral.axle, lateral.frame), 1e-6, 'bar');
      }
    }
  });
});

test('where links hold the axle and their brackets give, the axle goes round by the angle in them, at every heave', () => {
  for (const location of ['hairpins', 'wishbone'] as const) {
    const drawn = frontEndOf({ location: LOCATIONS[location], lateral: LATERALS.bar });
    const wound = prepareWoundUp(drawn, { left: THETA, right: THETA });
    for (const heave of [-40, 0, 40])
      expectClose(
        solved(drawn, [heave, 0, 0]).left.caster - solved(wound, [heave, 0, 0]).left.caster,
        THETA,
        1e-4,
        `${location} at ${heave}`,
      );
  }
});

test('four bars whose brackets give keep their lengths between ends that were turned back in the axle', () => {
  const drawn = frontEndOf({ location: LOCATIONS['four-bar'], lateral: LATERALS.bar });
  const wound = prepareWoundUp(drawn, { left: THETA, right: THETA });
  const state = solved(wound, [0, 0, 0]);
  const { location } = drawn.layout;
  if (location.kind !== 'four-bar') throw new Error('four bars');
  const centre = 330;
  for (const bar of [location.left.upper, location.left.lower]) {
    const [x, y, z] = bar.axle;
    const [c, s] = [Math.cos(-THETA), Math.sin(-THETA)];
    const end: Vector = [c * x + s * (z - centre), y, centre - s * x + c * (z - centre)];
    expectClose(
      off(carried(wound, state, 'axle-left', end), bar.frame),
      off(bar.axle, bar.frame),
      1e-6,
      'bar',
    );
  }
  expect(state.bind).toBeLessThan(1e-9);
});

test('one side wound up alone twists an I-beam by as much, and a tube by none', () => {
  const twist = (beam: string) => {
    const drawn = prepareFrontEnd(
      layoutOf({
        axle: { beam, left: PLAIN_HALF, right: 'mirror' },
        location: LOCATIONS['parallel-leaf'],
        lateral: LATERALS.spring,
      }),
    );
    return solved(prepareWoundUp(drawn, { left: THETA, right: 0 }), [0, 0, 0]).axle.twist;
  };
  expectClose(twist('i-beam'), THETA, 0.01 * THETA, 'I-beam');
  expect(twist('tube')).toBe(0);
});

test('no angle is the front end itself, and more than anything holds has no pose', () => {
  const drawn = frontEndOf({ location: LOCATIONS['parallel-leaf'] });
  expect(prepareWoundUp(drawn, { left: 0, right: 0 })).toBe(drawn);
  for (const angle of [31 * DEGREE, 1e6, Number.POSITIVE_INFINITY, Number.NaN]) {
    const state = createState();
    const wound = prepareWoundUp(drawn, { left: angle, right: angle });
    expect(solveFrontEnd(wound, 0, 0, 0, state), String(angle)).toBe('no-pose');
    expect(state.failure).toBe('no-convergence');
  }
});
