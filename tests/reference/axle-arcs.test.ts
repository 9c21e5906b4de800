import { describe, expect, test } from 'vitest';
import { createState, poseAxle, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { frontEndOf } from '../support/layouts.ts';
import { crossSteerTurn, pullBack, sideSteerTurn } from './scripts/axle-arcs.ts';

// Axle arcs against link arcs. Values by scripts/axle-arcs.ts where it is
// named, which knows arcs and one arm on an upright kingpin; else as said beside them. Inches unless said.
const IN = 25.4;

/** An upright kingpin with the wheel beside it, so that plan angles are steer angles. */
const UPRIGHT = {
  kingpinTop: [0, 640, 395],
  kingpinBottom: [0, 640, 265],
  wheelCentre: [0, 710, 330],
  camber: 0,
  toeIn: 0,
  tieRodBall: [-150, 640, 330],
};
const axle = (beam: 'i-beam' | 'tube' = 'i-beam') => ({ beam, left: UPRIGHT, right: 'mirror' });

/** Level parallel equal bars of a length: the axle swings on an arc of it and stays upright. */
const parallelBars = (length: number, slope = 0, y = 430) => {
  const [back, down] = [length * Math.cos(slope), length * Math.sin(slope)];
  const bar = (z: number) => ({ axle: [0, y, z], frame: [-back, y, z + down] });
  return { kind: 'four-bar', left: { upper: bar(400), lower: bar(260) }, right: 'mirror' };
};

/** Side steer with a level drag link, its frame end raised by `raised` mm. */
const sideSteer = (link: number, arm: number, raised: number) => ({
  dragLinkTo: 'left',
  dragLinkBall: [0, 640 - arm, 330],
  box: {
    sectorCentre: [-link, 640 - arm, 330 + raised + 150],
    sectorAxis: [0, -1, 0],
    pitmanBall: [-link, 640 - arm, 330 + raised],
    ratio: 16,
    sectorTravel: 35,
    assist: 'manual',
  },
});

const state = createState();

describe('pull-back of a level arm', () => {
  test.each([
    [30, 1, 0.01667],
    [30, 2, 0.06674],
    [30, 3, 0.15038],
    [36, 3, 0.12522],
    [24, 3, 0.18824],
  ])('%d in long, %d in of travel: %d in', (length, travel, back) => {
    const frontEnd = frontEndOf({ axle: axle(), location: parallelBars(length * IN) });
    expectClose(pullBack(length, travel), back, 1e-5);
    poseAxle(frontEnd, travel * IN, 0, state);
    expectClose(-state.axle.x / IN, pullBack(length, travel), 1e-10);
    expectClose(state.axle.pitch, 0, 1e-10, 'parallel bars hold the caster');
    poseAxle(frontEnd, -travel * IN, 0, state);
    expectClose(-state.axle.x / IN, back, 1e-5);
  });
});

describe('side steer: drag link against the axle', () => {
  test.each([
    [2, 0.1598],
    [3, 0.3616],
  ])('axle arc 30 in, drag link 24 in, arm 6 in, %d in of bump: %d°', (travel, steer) => {
    const frontEnd = frontEndOf({
      axle: axle(),
      location: parallelBars(30 * IN),
      steering: sideSteer(24 * IN, 6 * IN, 0),
    });
    expect(solveFrontEnd(frontEnd, travel * IN, 0, 0, state)).toBe('ok');
    // The table divides the mismatch by the arm; the exact turn differs in the fourth figure.
    expectClose(Math.abs(state.left.steer) / DEGREE, steer, 3e-3);
    expectClose(state.left.steer, sideSteerTurn(30, 24, 6, 0, travel), 1e-9, 'script');
  });

  test('equal lengths, level: none', () => {
    const frontEnd = frontEndOf({
      axle: axle(),
      location: parallelBars(27 * IN),
      steering: sideSteer(27 * IN, 6 * IN, 0),
    });
    for (const travel of [-3, -1, 2, 3]) {
      solveFrontEnd(frontEnd, travel * IN, 0, 0, state);
      expectClose(state.left.steer / DEGREE, 0, 1e-6);
    }
  });

  test.each([
    [1, 2, 0.708],
    [1, -2, -0.71],
    [2, 2, 1.415],
    [2, -2, -1.423],
  ])('frame end %d in too high, both 27 in, arm 6 in, travel %d in: %d°', (raised, travel, steer) => {
    const frontEnd = frontEndOf({
      axle: axle(),
      location: parallelBars(27 * IN),
      steering: sideSteer(27 * IN, 6 * IN, raised * IN),
    });
    solveFrontEnd(frontEnd, travel * IN, 0, 0, state);
    const size = Math.abs(state.left.steer) / DEGREE;
    expectClose(state.left.steer, sideSteerTurn(27, 27, 6, raised, travel), 1e-9, 'script');
    // Rule of thumb: radians are about travel · error / (radius · arm), whose table is first order in the arm.
    expectClose(size, Math.abs(steer), 0.035 * Math.abs(steer));
    const rule = (Math.abs(travel) * raised) / (27 * 6) / DEGREE;
    expectClose(size, rule, 0.04 * rule, 'rule of thumb');
    // Raised too high it steers one way in bump and the other in droop: the error is a slope.
    const there = Math.sign(state.left.steer);
    solveFrontEnd(frontEnd, -travel * IN, 0, 0, state);
    expect(Math.sign(state.left.steer)).toBe(-there);
  });
});

describe('cross steer: drag link against the lateral bar', () => {
  const cross = (barLength: number, linkLength: number) =>
    frontEndOf({
      axle: axle(),
      location: parallelBars(30 * IN),
      lateral: { kind: 'bar', axle: [-60, -500, 330], frame: [-60, -500 + barLength * IN, 330] },
      steering: {
        dragLinkTo: 'right',
        dragLinkBall: [-6 * IN, -640, 330],
        box: {
          sectorCentre: [-6 * IN, -640 + linkLength * IN, 480],
          sectorAxis: [-1, 0, 0],
          pitmanBall: [-6 * IN, -640 + linkLength * IN, 330],
          ratio: 16,
          sectorTravel: 35,
          assist: 'manual',
        },
      },
    });

  test.each([
    [30, 40, 3, 0.3602],
    [24, 40, 2, 0.3194],
  ])(
    'bar %d in, drag link %d in, level and parallel, arm 6 in, travel %d in: %d°',
    (bar, link, travel, steer) => {
      const frontEnd = cross(bar, link);
      expect(solveFrontEnd(frontEnd, travel * IN, 0, 0, state)).toBe('ok');
      expectClose(Math.abs(state.right.steer) / DEGREE, steer, 5e-3);
      expectClose(state.right.steer, crossSteerTurn(bar, link, 6, 30, travel), 1e-7, 'script');
    },
  );

  test('equal and parallel: none', () => {
    const frontEnd = cross(30, 30);
    for (const travel of [-3, 1, 3]) {
      solveFrontEnd(frontEnd, travel * IN, 0, 0, state);
      expectClose(state.right.steer / DEGREE, 0, 2e-3);
    }
  });
});

describe('hairpins', () => {
  test.each([
    [18, 36, 4, 3.9976],
    [18, 36, 3, 2.999],
    [16, 30, 4, 4.2642],
    [24, 42, 3, 3.4275],
  ])('half-spread %d in, rods %d in, roll %d°: the beam twists %d°', (spread, rod, roll, twist) => {
    const frontEnd = frontEndOf({
      axle: axle(),
      location: { kind: 'hairpins', left: { framePivot: [-rod * IN, spread * IN, 330] }, right: 'mirror' },
      lateral: { kind: 'spring' },
    });
    poseAxle(frontEnd, 0, roll * DEGREE, state);
    // Twice asin(s sin roll / R) holds where the ball moves straight down the rod's arc; the rolled beam tilts that
    // arc by cos(roll), hence 1 %.
    expectClose(Math.abs(state.axle.twist) / DEGREE, twist, 0.01 * twist);
    const exact = 2 * Math.asin(Math.tan(roll * DEGREE) * (spread / rod));
    expectClose(Math.abs(state.axle.twist), exact, 1e-5 * exact + 2e-4, 'z of both balls held exactly');
  });

  test.each([
    [2, 36, 3.1847],
    [3, 36, 4.7802],
    [2, 30, 3.8226],
  ])('pure bump of %d in on rods of %d in changes caster by %d°', (travel, rod, caster) => {
    const frontEnd = frontEndOf({
      axle: axle(),
      location: { kind: 'hairpins', left: { framePivot: [-rod * IN, 415, 330] }, right: 'mirror' },
    });
    poseAxle(frontEnd, travel * IN, 0, state);
    expectClose(state.left.caster / DEGREE, caster, 1e-3, 'bump tips the axle back: caster rises');
  });
});

describe('roll steer of sloped parallel bars', () => {
  test.each([
    [5, 4, 0.3508],
    [0, 4, 0],
    [10, 2, 0.3529],
  ])('bars 30 in sloping %d°, spread 18 in, roll %d°: yaw %d°', (slope, roll, yaw) => {
    const frontEnd = frontEndOf({
      axle: axle('i-beam'),
      location: parallelBars(30 * IN, slope * DEGREE, 18 * IN),
      lateral: { kind: 'spring' },
    });
    poseAxle(frontEnd, 0, roll * DEGREE, state);
    // The published first order is roll · tan(slope); the value above is of exact arcs without the beam's own tilt.
    expectClose(Math.abs(state.axle.yaw) / DEGREE, yaw, 0.01 * yaw + 1e-3);
  });
});
