import { describe, expect, test } from 'vitest';
import {
  ballJoints,
  gridExtremes,
  tiltOf,
  transmissionAngles,
  turnTransmission,
} from '../../shared-math/joints/index.ts';
import { hardpoints } from '../../shared-math/layout/index.ts';
import { createState, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { sweepTurn } from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import {
  COMBINATIONS,
  documentOf,
  frontEndOf,
  LATERALS,
  layoutOf,
  PLAIN_HALF,
  rawLayout,
  SIDE_STEER,
} from '../support/layouts.ts';

const state = createState();

describe('ball tilt', () => {
  test('a link square to its stud has none; a stud leaned by hand has its lean', () => {
    // An upright kingpin, a level link square to it, a sector shaft across: both studs are square to the link.
    const half = { ...PLAIN_HALF, kingpinTop: [0, 640, 395], kingpinBottom: [0, 640, 265] };
    const steering = {
      ...SIDE_STEER,
      dragLinkBall: [0, 490, 350],
      box: { ...SIDE_STEER.box, pitmanBall: [-800, 490, 350], sectorCentre: [-800, 490, 490] },
    };
    const over = { axle: { beam: 'i-beam', left: half, right: 'mirror' }, steering };
    const tilt = (id: string, extra = {}) => {
      const frontEnd = frontEndOf({ ...over, ...extra });
      solveFrontEnd(frontEnd, 0, 0, 0, state);
      return tiltOf(frontEnd, state, ballJoints(frontEnd.layout).find((joint) => joint.id === id)!) / DEGREE;
    };
    expectClose(tilt('steering.dragLinkBall'), 0, 1e-9);
    expectClose(tilt('steering.box.pitmanBall'), 0, 1e-9);
    const lean = [Math.sin(12 * DEGREE), 0, Math.cos(12 * DEGREE)];
    expectClose(tilt('steering.dragLinkBall', { studs: { 'steering.dragLinkBall': lean } }), 12, 1e-9);
  });

  test('a bar that swings about fore-and-aft studs tilts them only by what the axle moves along the car', () => {
    const frontEnd = frontEndOf({ lateral: LATERALS.bar });
    solveFrontEnd(frontEnd, 60, 0, 0, state);
    const bar = ballJoints(frontEnd.layout).find((joint) => joint.id === 'lateral.frame')!;
    const length = Math.hypot(-520 - 316, 352 - 370);
    // By hand: the axle end has moved back with the rods' arc and the axle's tipping about them.
    const tilt = tiltOf(frontEnd, state, bar);
    expect(tilt).toBeGreaterThan(0);
    expect(tilt).toBeLessThan(Math.asin(8 / length));
  });

  test('every ball is a hardpoint with its name, in every layout', () => {
    for (const { over } of COMBINATIONS) {
      const names = new Map(hardpoints(documentOf(rawLayout(over))).map((point) => [point.id, point.name]));
      for (const joint of ballJoints(layoutOf(over))) expect(names.get(joint.id)).toBe(joint.name);
    }
  });
});

describe('transmission angle', () => {
  test('of the textbook four-bar drawn as a front end: 37.027° (Norton, Example 4-1)', () => {
    // Crank 40 and rocker 80 on upright axes 100 apart along the car, coupler 120, crank at 40 degrees. The box is the
    // crank at the origin of the plane, the spindle is the rocker, 100 ahead of it. At the crank the angle is that
    // between crank and coupler.
    const [rocker, crank] = [57.3249 * DEGREE, 40 * DEGREE];
    const [kx, ky] = [0, 640];
    const half = { ...PLAIN_HALF, kingpinTop: [kx, ky, 395], kingpinBottom: [kx, ky, 265] };
    const steering = {
      dragLinkTo: 'left',
      dragLinkBall: [kx + 80 * Math.cos(rocker), ky + 80 * Math.sin(rocker), 330],
      box: {
        sectorCentre: [kx - 100, ky, 330],
        sectorAxis: [0, 0, 1],
        pitmanBall: [kx - 100 + 40 * Math.cos(crank), ky + 40 * Math.sin(crank), 330],
        ratio: 16,
        sectorTravel: 35,
        assist: 'manual',
      },
    };
    const frontEnd = frontEndOf({ axle: { beam: 'i-beam', left: half, right: 'mirror' }, steering });
    expectClose(frontEnd.dragLinkLength, 120, 1e-3);
    solveFrontEnd(frontEnd, 0, 0, 0, state);
    const angles = transmissionAngles(frontEnd, state);
    expectClose(angles.steeringArm / DEGREE, 37.027, 1e-3);
    // Coupler at 20.2979 degrees against the crank at 40.
    expectClose(angles.pitman / DEGREE, 40 - 20.2979, 1e-3);
  });
});

describe('the worst over travel and turn', () => {
  test('is found by looking at every pose one by one', () => {
    const frontEnd = frontEndOf({ lateral: LATERALS.bar });
    const locks = { right: -8, left: 8 };
    const found = gridExtremes(frontEnd, locks, 7, 9);
    const joints = ballJoints(frontEnd.layout);
    const worst = joints.map(() => 0);
    let angle = Math.PI;
    for (const [heaves, roll] of [
      [[-75, -50, -25, 0, 25, 50, 75], 0],
      [[-75, 0, 75], 3],
      [[-75, 0, 75], -3],
    ] as const)
      for (const heave of heaves)
        for (let k = 0; k < 9; k += 1) {
          expect(solveFrontEnd(frontEnd, heave, roll * DEGREE, -8 + 2 * k, state)).toBe('ok');
          joints.forEach((joint, j) => {
            worst[j] = Math.max(worst[j]!, tiltOf(frontEnd, state, joint));
          });
          angle = Math.min(angle, transmissionAngles(frontEnd, state).pitman);
        }
    found.tilts.forEach((entry, j) => {
      expectClose(entry.tilt, worst[j]!, 1e-9, entry.joint.name);
      // And where it says it is, it is.
      solveFrontEnd(frontEnd, entry.at.heave, entry.at.roll, entry.at.handwheel, state);
      expectClose(tiltOf(frontEnd, state, entry.joint), entry.tilt, 1e-9, `${entry.joint.name} in place`);
    });
    expectClose(found.pitmanTransmission.angle, angle, 1e-9);
    expect(found.outOfReach).toBe(0);
    expect(found.poses).toBe(13 * 9);
  });
});

describe('the least transmission angles of a turn', () => {
  test.each(COMBINATIONS)('are those of its poses, none of which has less: $label', ({ over }) => {
    const frontEnd = frontEndOf(over);
    for (const heave of [0, 40]) {
      const turn = sweepTurn(frontEnd, heave, 0);
      const least = turnTransmission(frontEnd, heave, 0, turn)!;
      for (const end of ['pitman', 'steeringArm'] as const) {
        expect(solveFrontEnd(frontEnd, heave, 0, least[end].handwheel, state)).toBe('ok');
        expectClose(transmissionAngles(frontEnd, state)[end], least[end].angle, 1e-9);
        for (const handwheel of turn.handwheel) {
          solveFrontEnd(frontEnd, heave, 0, handwheel, state);
          expect(transmissionAngles(frontEnd, state)[end]).toBeGreaterThan(least[end].angle - 1e-9);
        }
      }
    }
  });

  test('are not told where there is no turn', () => {
    const frontEnd = frontEndOf();
    expect(turnTransmission(frontEnd, 0, 0, { ...sweepTurn(frontEnd, 0, 0), count: 0 })).toBeUndefined();
  });
});
