import { describe, expect, test } from 'vitest';
import { resolveLayout, withValue } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import {
  heaveReach,
  poseLimits,
  RIDE_HEIGHT,
  reachToward,
  solvePose,
  withinLimits,
} from '../../../src-renderer/document/reach.ts';
import { DEGREE } from '../../support/close.ts';
import { documentOf, frontEndOf, LOCATIONS, layoutOf, rawLayout, SIDE_STEER } from '../../support/layouts.ts';

const limits = poseLimits(layoutOf());

test('the limits are the travel of the layout and the turns of its box', () => {
  expect(limits).toEqual({ heave: [-75, 75], roll: [-3, 3], handwheel: [-560, 560], braking: [0, 0.9] });
  expect(withinLimits({ heave: 90, roll: -4, handwheel: 700, braking: 2 }, limits)).toEqual({
    heave: 75,
    roll: -3,
    handwheel: 560,
    braking: 0.9,
  });
  expect(withinLimits(RIDE_HEIGHT, limits).braking).toBe(0);
});

test('a pose within reach is reached exactly', () => {
  const goal = { heave: 60, roll: 2, handwheel: -90 };
  expect(reachToward(frontEndOf(), RIDE_HEIGHT, goal)).toEqual({ pose: goal, stoppedBy: '' });
});

test('a braked car stands wound up on its leaves by what moment and stiffness make, and not at all on rods', () => {
  const leaves = frontEndOf({ location: LOCATIONS['parallel-leaf'], braking: { windUpStiffness: 400 } });
  const at = (braking: number) => solvePose(leaves, { ...RIDE_HEIGHT, braking });
  // Arithmetic: 4900 N and half as much behind; 0.6 · (4900 + 9800 · 0.6 · 495/2640) N at the seat's 320 mm, over 400 N·m/°.
  const moment = 0.6 * (4900 + (9800 * 0.6 * 495) / 2640) * 0.32;
  const fallen = at(0).left.caster - at(0.6).left.caster;
  expect(fallen / DEGREE).toBeCloseTo(moment / 400, 3);
  const rods = frontEndOf();
  expect(solvePose(rods, { ...RIDE_HEIGHT, braking: 0.6 }).left.caster).toBe(
    solvePose(rods, RIDE_HEIGHT).left.caster,
  );
});

describe('beyond the reach of the drag link', () => {
  // An arm so long that the link cannot follow it to the end of the box's turn.
  const frontEnd = frontEndOf({
    steering: {
      ...SIDE_STEER,
      box: { ...SIDE_STEER.box, pitmanBall: [-800, 500, 190], sectorTravel: 90 },
    },
  });
  const goal = { heave: 0, roll: 0, handwheel: 1440 };

  test('the move ends at the last pose that solves, and says what stopped it', () => {
    expect(solvePose(frontEnd, goal).status).toBe('out-of-reach');
    const { pose, stoppedBy } = reachToward(frontEnd, RIDE_HEIGHT, goal);
    expect(stoppedBy).toBe('drag-link');
    expect(pose.handwheel).toBeGreaterThan(0);
    expect(pose.handwheel).toBeLessThan(1440);
    expect(solvePose(frontEnd, pose).status).toBe('ok');
    // A hundredth of a degree further it no longer does: this is the end, not somewhere before it.
    expect(solvePose(frontEnd, { ...pose, handwheel: pose.handwheel + 0.05 }).status).toBe('out-of-reach');
  });

  test('from the stop the way back is open', () => {
    const { pose } = reachToward(frontEnd, RIDE_HEIGHT, goal);
    expect(reachToward(frontEnd, pose, RIDE_HEIGHT)).toEqual({ pose: RIDE_HEIGHT, stoppedBy: '' });
  });
});

test('links that leave the axle free stop everything at ride height, with that name', () => {
  // A lateral bar in the same plane as the ball of the wishbone holds nothing in yaw.
  const document = withValue(documentOf(rawLayout({ location: LOCATIONS.wishbone })), 'lateral', {
    kind: 'bar',
    axle: [-1010, -300, 340],
    frame: [-1010, 300, 345],
  });
  const frontEnd = prepareFrontEnd(resolveLayout(document));
  expect(solvePose(frontEnd, RIDE_HEIGHT).failure).toBe('axle-free');
  const { pose, stoppedBy } = reachToward(frontEnd, RIDE_HEIGHT, { heave: 50, roll: 0, handwheel: 0 });
  expect(pose.heave).toBe(0);
  expect(stoppedBy).toBe('axle-free');
});

test('the whole travel is within reach of a plain layout', () => {
  expect(heaveReach(frontEndOf(), limits, RIDE_HEIGHT)).toEqual([-75, 75]);
});
