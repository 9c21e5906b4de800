import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, mirrored, type Point } from '../../shared-math/geometry/points.ts';
import { type Carrier, hardpoints } from '../../shared-math/layout/index.ts';
import {
  carryPoint,
  createState,
  type FrontEnd,
  type FrontEndState,
  prepareFrontEnd,
  solveFrontEnd,
} from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import {
  CROSS_STEER,
  documentOf,
  frontEndOf,
  layoutOf,
  PLAIN_HALF,
  rawLayout,
  SIDE_STEER,
  STEERED,
} from '../support/layouts.ts';

function carried(frontEnd: FrontEnd, state: FrontEndState, carrier: Carrier, at: Point): Point {
  const out = new Float64Array(3);
  carryPoint(frontEnd, state, carrier, at, out);
  return [out[0] as number, out[1] as number, out[2] as number];
}

/** A right side drawn by hand, a little unlike the left. */
const UNLIKE_RIGHT = {
  kingpinTop: [-9, -628, 397],
  kingpinBottom: [5, -650, 264],
  wheelCentre: [2, -712, 331],
  camber: 0.5,
  toeIn: 0.2,
  tieRodBall: [-146, -603, 290],
};

const pose = fc.record({
  heave: fc.double({ min: -75, max: 75, noNaN: true }),
  roll: fc.double({ min: -3, max: 3, noNaN: true }),
  handwheel: fc.double({ min: -400, max: 400, noNaN: true }),
});

describe('links keep their lengths at every solved pose', () => {
  const cases = [
    ...STEERED,
    {
      label: 'a right side unlike the left',
      over: { axle: { beam: 'i-beam', left: PLAIN_HALF, right: UNLIKE_RIGHT } },
    },
  ];
  test.each(cases)('$label', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const { layout } = frontEnd;
    const { steering, axle } = layout;
    let solved = 0;
    fc.assert(
      fc.property(pose, ({ heave, roll, handwheel }) => {
        const state = createState();
        if (solveFrontEnd(frontEnd, heave, roll * DEGREE, handwheel * DEGREE, state) !== 'ok') return;
        solved += 1;
        const driven = `spindle-${steering.dragLinkTo}` as const;
        const arm = carried(frontEnd, state, driven, steering.dragLinkBall);
        const pitman = carried(frontEnd, state, 'pitman', steering.box.pitmanBall);
        expectClose(
          distance(arm, pitman),
          distance(steering.dragLinkBall, steering.box.pitmanBall),
          1e-6,
          'drag link',
        );
        const left = carried(frontEnd, state, 'spindle-left', axle.left.tieRodBall);
        const right = carried(frontEnd, state, 'spindle-right', axle.right.tieRodBall);
        expectClose(
          distance(left, right),
          distance(axle.left.tieRodBall, axle.right.tieRodBall),
          1e-6,
          'tie rod',
        );
        // A spindle is rigid: its balls keep their distance from each other and from the kingpin it turns on.
        for (const side of ['left', 'right'] as const) {
          const half = axle[side];
          const centre = carried(frontEnd, state, `spindle-${side}`, half.wheelCentre);
          const top = carried(frontEnd, state, `axle-${side}`, half.kingpinTop);
          expectClose(distance(centre, top), distance(half.wheelCentre, half.kingpinTop), 1e-9, 'spindle');
          const wheel = side === 'left' ? state.left : state.right;
          expectClose(wheel.wheelRise, centre[2] - half.wheelCentre[2], 1e-9, 'wheel rise');
        }
        for (const side of [state.left, state.right])
          for (const [name, value] of Object.entries(side)) expectClose(value, 0, 1e4, name);
      }),
      { seed: 20262, numRuns: 60 },
    );
    // Most of the random poses are within reach, or the property would prove little.
    expect(solved).toBeGreaterThan(40);
  });
});

describe('ride height', () => {
  test.each(STEERED)('is drawn as it is: $label', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const state = createState();
    expect(solveFrontEnd(frontEnd, 0, 0, 0, state)).toBe('ok');
    for (const point of hardpoints(documentOf(rawLayout(over)))) {
      const at = carried(frontEnd, state, point.carrier, point.at);
      expectClose(distance(at, point.at), 0, 1e-9, point.name);
    }
    expectClose(state.left.wheelRise, 0, 1e-9);
  });

  test('static angles are those of the hardpoints, worked out by hand (ISO 8855 signs)', () => {
    const frontEnd = frontEndOf({ axle: { beam: 'i-beam', left: PLAIN_HALF, right: UNLIKE_RIGHT } });
    const state = createState();
    solveFrontEnd(frontEnd, 0, 0, 0, state);
    // Left kingpin from (7, 649, 265) up to (-7, 631, 395): 14 back, 18 inboard, 130 up.
    expectClose(state.left.caster, Math.atan(14 / 130), 1e-12, 'left caster');
    expectClose(state.left.kingpinInclination, Math.atan(18 / 130), 1e-12, 'left inclination');
    expectClose(state.left.camber, 1 * DEGREE, 1e-12, 'left camber');
    expectClose(state.left.toeIn, 0.1 * DEGREE, 1e-12, 'left toe-in');
    expectClose(state.left.steer, -0.1 * DEGREE, 1e-12, 'left steer');
    // Right kingpin from (5, -650, 264) up to (-9, -628, 397): 14 back, 22 inboard, 133 up.
    expectClose(state.right.caster, Math.atan(14 / 133), 1e-12, 'right caster');
    expectClose(state.right.kingpinInclination, Math.atan(22 / 133), 1e-12, 'right inclination');
    expectClose(state.right.camber, 0.5 * DEGREE, 1e-12, 'right camber');
    expectClose(state.right.toeIn, 0.2 * DEGREE, 1e-12, 'right toe-in');
    expectClose(state.right.steer, 0.2 * DEGREE, 1e-12, 'right steer');
    expectClose(state.totalToeIn, 0.3 * DEGREE, 1e-12, 'total toe-in');
  });
});

describe('signs', () => {
  test.each([
    ['side steer', SIDE_STEER],
    ['cross steer', CROSS_STEER],
  ])('%s: the handwheel turned counter-clockwise steers both wheels left', (_, steering) => {
    const state = createState();
    expect(solveFrontEnd(frontEndOf({ steering }), 0, 0, 90 * DEGREE, state)).toBe('ok');
    expect(state.left.steer).toBeGreaterThan(3 * DEGREE);
    expect(state.right.steer).toBeGreaterThan(3 * DEGREE);
  });

  test('roll right-hand about x raises the left wheel', () => {
    const state = createState();
    solveFrontEnd(frontEndOf(), 0, 2 * DEGREE, 0, state);
    expectClose(state.left.wheelRise, 710 * Math.sin(2 * DEGREE), 2, 'left');
    expectClose(state.right.wheelRise, -710 * Math.sin(2 * DEGREE), 2, 'right');
    // The raised side's wheel leans inboard at the top, so its camber falls by the roll.
    expectClose(state.left.camber, (1 - 2) * DEGREE, 0.1 * DEGREE, 'left camber');
    expectClose(state.right.camber, (1 + 2) * DEGREE, 0.1 * DEGREE, 'right camber');
  });
});

test('the whole car in the mirror behaves in the mirror, both arrangements and unlike sides', () => {
  const flip = (p: readonly number[]) => mirrored(p as unknown as Point);
  const flipHalf = (half: typeof UNLIKE_RIGHT) => ({
    ...half,
    kingpinTop: flip(half.kingpinTop),
    kingpinBottom: flip(half.kingpinBottom),
    wheelCentre: flip(half.wheelCentre),
    tieRodBall: flip(half.tieRodBall),
  });
  for (const steering of [SIDE_STEER, CROSS_STEER]) {
    const over = {
      axle: { beam: 'i-beam', left: PLAIN_HALF, right: UNLIKE_RIGHT },
      lateral: { kind: 'bar', axle: [-72, -520, 352], frame: [-72, 316, 370] },
      steering,
    };
    const { box } = steering;
    const mirror = {
      axle: {
        beam: 'i-beam',
        left: flipHalf(UNLIKE_RIGHT),
        right: flipHalf(PLAIN_HALF as typeof UNLIKE_RIGHT),
      },
      lateral: { kind: 'bar', axle: [-72, 520, 352], frame: [-72, -316, 370] },
      steering: {
        dragLinkTo: steering.dragLinkTo === 'left' ? 'right' : 'left',
        dragLinkBall: flip(steering.dragLinkBall),
        box: {
          ...box,
          sectorCentre: flip(box.sectorCentre),
          // A turn in the mirror: with M = diag(1, -1, 1), M R(u, t) M = R(-M u, t). The angle stays.
          sectorAxis: [-(box.sectorAxis[0] as number), box.sectorAxis[1], -(box.sectorAxis[2] as number)],
          pitmanBall: flip(box.pitmanBall),
        },
      },
    };
    const [one, two] = [prepareFrontEnd(layoutOf(over)), prepareFrontEnd(layoutOf(mirror))];
    fc.assert(
      fc.property(pose, ({ heave, roll, handwheel }) => {
        const [a, b] = [createState(), createState()];
        const first = solveFrontEnd(one, heave, roll * DEGREE, handwheel * DEGREE, a);
        const second = solveFrontEnd(two, heave, -roll * DEGREE, handwheel * DEGREE, b);
        expect(second).toBe(first);
        if (first !== 'ok') return;
        expectClose(b.right.steer, -a.left.steer, 1e-9, 'steer');
        expectClose(b.right.toeIn, a.left.toeIn, 1e-9, 'toe');
        expectClose(b.left.camber, a.right.camber, 1e-9, 'camber');
        expectClose(b.left.caster, a.right.caster, 1e-9, 'caster');
        expectClose(b.right.kingpinInclination, a.left.kingpinInclination, 1e-9, 'inclination');
        expectClose(b.meanSteer, -a.meanSteer, 1e-9, 'mean');
        expectClose(b.axle.yaw, -a.axle.yaw, 1e-9, 'yaw');
        expectClose(b.axle.twist, -a.axle.twist, 1e-9, 'twist');
        expectClose(b.left.wheelRise, a.right.wheelRise, 1e-6, 'rise');
      }),
      { seed: 20263, numRuns: 40 },
    );
  }
});

describe('out of reach is said', () => {
  test('by the drag link, where the pitman arm swings too far', () => {
    const longArm = { ...SIDE_STEER.box, sectorCentre: [-800, 500, 600] };
    const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box: longArm } });
    const state = createState();
    expect(solveFrontEnd(frontEnd, 0, 0, 80 * 16 * DEGREE, state)).toBe('out-of-reach');
    expect(state.failure).toBe('drag-link');
    expect(state.dragLinkReach).toBeGreaterThan(1);
    // And the state is good for the next pose.
    expect(solveFrontEnd(frontEnd, 10, 0, 0, state)).toBe('ok');
  });

  test('by the tie rod, where the spindles part', () => {
    const short = { ...PLAIN_HALF, tieRodBall: [-30, 690, 292] };
    const frontEnd = frontEndOf({ axle: { beam: 'i-beam', left: short, right: 'mirror' } });
    const state = createState();
    expect(solveFrontEnd(frontEnd, 0, 0, 500 * DEGREE, state)).toBe('out-of-reach');
    expect(state.failure).toBe('tie-rod');
  });
});

test('a drag link drawn at its dead centre is closed where it is drawn', () => {
  // The link runs along its arm: A cos t + B sin t = C has one root, at the end of its reach.
  const frontEnd = frontEndOf({
    axle: {
      beam: 'i-beam',
      left: { ...PLAIN_HALF, kingpinTop: [0, 640, 395], kingpinBottom: [0, 640, 265] },
      right: 'mirror',
    },
    steering: {
      ...SIDE_STEER,
      dragLinkBall: [-140, 640, 400],
      box: { ...SIDE_STEER.box, pitmanBall: [-800, 640, 400], sectorCentre: [-800, 640, 540] },
    },
  });
  const state = createState();
  expect(solveFrontEnd(frontEnd, 0, 0, 0, state)).toBe('ok');
  expectClose(state.dragLinkReach, 1, 1e-12);
  expectClose(state.left.steer, -0.1 * DEGREE, 1e-6);
});
