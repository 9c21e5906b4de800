import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createState, poseAxle, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { visitGrid } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import {
  ALL_COMBINATIONS,
  COMBINATIONS,
  frontEndOf,
  LATERALS,
  LOCATIONS,
  PLAIN_HALF,
  rawLayout,
} from '../support/layouts.ts';
import { expectRegistryPose } from '../support/registry-pose.ts';

describe('the pose is the least-squares pose of the raw equations', () => {
  // The other combinations: tests/thorough/pose-combinations.test.ts.
  test.each(COMBINATIONS)('$label', expectRegistryPose);
});

describe('what the pose must do whatever the layout', () => {
  test.each(COMBINATIONS)('ride height is the identity: $label', ({ over }) => {
    const state = createState();
    expect(poseAxle(frontEndOf(over), 0, 0, state)).toBe(true);
    for (const [name, value] of Object.entries(state.axle)) expectClose(value, 0, 1e-12, name);
    expectClose(state.bind, 0, 1e-9, 'bind');
  });

  test.each(COMBINATIONS.filter(({ label }) => label.includes(', spring,')))(
    'a symmetric car in the mirror rolls the other way: $label',
    ({ over }) => {
      const frontEnd = frontEndOf(over);
      fc.assert(
        fc.property(
          fc.double({ min: -75, max: 75, noNaN: true }),
          fc.double({ min: 0, max: 3, noNaN: true }),
          (heave, roll) => {
            const one = createState();
            const two = createState();
            poseAxle(frontEnd, heave, roll * DEGREE, one);
            poseAxle(frontEnd, heave, -roll * DEGREE, two);
            expectClose(two.axle.x, one.axle.x, 1e-7);
            expectClose(two.axle.y, -one.axle.y, 1e-7);
            expectClose(two.axle.yaw, -one.axle.yaw, 1e-10);
            expectClose(two.axle.pitch, one.axle.pitch, 1e-10);
            expectClose(two.axle.twist, -one.axle.twist, 1e-10);
            expectClose(two.bind, one.bind, 1e-7);
          },
        ),
        { seed: 20261, numRuns: 25 },
      );
    },
  );

  test.each(COMBINATIONS)('the way there does not matter: $label', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const walked = createState();
    for (let heave = 0; heave <= 70; heave += 2) poseAxle(frontEnd, heave, (heave / 70) * 3 * DEGREE, walked);
    const jumped = createState();
    poseAxle(frontEnd, 70, 3 * DEGREE, jumped);
    for (const name of ['x', 'y', 'pitch', 'yaw', 'twist'] as const)
      expectClose(walked.axle[name], jumped.axle[name], 1e-8, name);
  });

  test('the raised half of an I-beam on hairpins pitches front-up', () => {
    const state = createState();
    poseAxle(frontEndOf(), 0, 3 * DEGREE, state);
    // Left wheel up: the left half's front rises, which is a negative pitch about +y; the right half's falls.
    const left = state.axle.pitch + state.axle.twist / 2;
    const right = state.axle.pitch - state.axle.twist / 2;
    expect(left).toBeLessThan(-1 * DEGREE);
    expect(right).toBeGreaterThan(1 * DEGREE);
  });

  test('links that ask for no give have no bind; a tube on hairpins in roll does, about y sin(roll)', () => {
    const state = createState();
    poseAxle(frontEndOf(), 60, 0, state);
    expectClose(state.bind, 0, 1e-7);
    poseAxle(frontEndOf({ axle: { beam: 'tube', left: PLAIN_HALF, right: 'mirror' } }), 0, 3 * DEGREE, state);
    expectClose(state.bind, 415 * Math.sin(3 * DEGREE), 1);
  });

  test('a leaf off its centre tips as it deflects, and wraps where the halves of a tube disagree', () => {
    const state = createState();
    poseAxle(frontEndOf({ location: LOCATIONS['parallel-leaf'] }), 50, 0, state);
    const [a, b] = [510, 580];
    expectClose(state.axle.pitch, -((a - b) / (a * b)) * 50, 2e-4, 'pitch');
    expectClose(state.wrap, 0, 1e-6, 'wrap');
  });
});

describe('links that leave the axle free are named, not guessed at', () => {
  const cases: Record<string, Record<string, unknown>> = {
    'a wishbone whose bar sits at the ball': {
      location: { kind: 'wishbone', framePivot: [-900, 0, 340] },
      lateral: { kind: 'bar', axle: [-900, -300, 340], frame: [-900, 320, 340] },
    },
    'two bars on one line': {
      location: {
        kind: 'four-bar',
        left: {
          upper: { axle: [-40, 430, 330], frame: [-640, 430, 330] },
          lower: { axle: [-100, 430, 330], frame: [-700, 430, 330] },
        },
        right: 'mirror',
      },
    },
    'a hairpin ball on the axle line': {
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    },
    'a lateral bar that stands upright': {
      lateral: { kind: 'bar', axle: [-70, -400, 350], frame: [-70, -400, 700] },
    },
  };
  test.each(Object.entries(cases))('%s', (_, over) => {
    const frontEnd = frontEndOf(over);
    const state = createState();
    expect(solveFrontEnd(frontEnd, 0, 0, 0, state)).toBe('no-pose');
    expect(state.failure).toBe('axle-free');
    // A layout that is free where it is drawn has no branch to follow from there: no row of its sweep is answered.
    const statuses: string[] = [];
    visitGrid(frontEnd, [-60, 0, 10, 60], [0, 0.02], [0, 1], (_, status) => statuses.push(status));
    expect(statuses).toEqual(new Array(16).fill('no-pose'));
  });

  test('all combinations are held over the travel and roll', () => {
    for (const { label, over } of ALL_COMBINATIONS) {
      const frontEnd = frontEndOf(over);
      for (const heave of [-75, 0, 75])
        for (const roll of [-3, 0, 3])
          expect(
            poseAxle(frontEnd, heave, roll * DEGREE, createState()),
            `${label} at ${heave}, ${roll}`,
          ).toBe(true);
    }
  });

  test('an axle end at y 0 and an absent spring height are read as the document says', () => {
    const withBar = frontEndOf({ lateral: { ...LATERALS.bar, axle: [-72, 0, 352] } });
    expect(poseAxle(withBar, 30, 0.02, createState())).toBe(true);
    const state = createState();
    poseAxle(frontEndOf({ lateral: { kind: 'spring' } }), 0, 3 * DEGREE, state);
    // The spring at the wheel centres' height turns about the axle's own centre: no shift.
    expectClose(state.axle.y, 0, 0.6);
    expect(rawLayout()).toHaveProperty('lateral');
  });
});
