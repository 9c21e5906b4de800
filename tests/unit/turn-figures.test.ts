import { describe, expect, test } from 'vitest';
import { createState, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import { evenly, rideSteer, visitGrid } from '../../shared-math/sweep/grid.ts';
import {
  effortOfTurn,
  lockAngles,
  sweepTurn,
  turningCircle,
  turnsLockToLock,
} from '../../shared-math/sweep/index.ts';
import { heaveEnds, wheelPlaces, wheelPoses, worstOneWheel } from '../../shared-math/sweep/one-wheel.ts';
import { toeLength } from '../../shared-math/sweep/travel.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { frontEndOf, layoutOf, PLAIN_HALF, SIDE_STEER } from '../support/layouts.ts';

describe('even steps', () => {
  test('both ends exactly, and the same step between', () => {
    expect([...evenly(-2, 6, 5)]).toEqual([-2, 0, 2, 4, 6]);
    expect([...evenly(6, -2, 3)]).toEqual([6, 2, -2]);
    const thirds = evenly(0.1, 0.7, 7);
    expect([thirds[0], thirds[6]]).toEqual([0.1, 0.7]);
    for (let i = 0; i < 7; i += 1) expectClose(thirds[i]!, 0.1 + 0.1 * i, 1e-15);
  });
  test('one value where there is one', () => {
    expect([...evenly(3, 3, 5)]).toEqual([3]);
    expect([...evenly(3, 9, 1)]).toEqual([3]);
    expect([...evenly(3, 9, 2)]).toEqual([3, 9]);
  });
});

test('toe over the tyre’s diameter: 0.5° on a 660 mm tyre is 5.76 mm (2 r sin)', () => {
  expectClose(toeLength(0.5 * DEGREE, 330), 5.7595, 1e-4);
  expectClose(toeLength(-0.5 * DEGREE, 330), -5.7595, 1e-4);
});

describe('a grid of poses', () => {
  const frontEnd = frontEndOf();
  test('every heave, roll and handwheel in that order, each as solved by itself', () => {
    const [heaves, rolls, handwheels] = [
      [-40, 30],
      [-0.03, 0.02],
      [-2, 0, 3],
    ];
    const state = createState();
    const seen: number[][] = [];
    visitGrid(frontEnd, heaves!, rolls!, handwheels!, (at, status, bumpSteer) => {
      seen.push([at.heave, at.roll, at.handwheel]);
      expect(status).toBe('ok');
      const { meanSteer } = at;
      const { meanSteer: ride } = rideSteer(frontEnd, at.handwheel);
      solveFrontEnd(frontEnd, at.heave, at.roll, at.handwheel, state);
      expectClose(meanSteer, state.meanSteer, 1e-9);
      expectClose(bumpSteer, state.meanSteer - ride, 1e-9);
    });
    expect(seen).toEqual(
      heaves!.flatMap((heave) => rolls!.flatMap((roll) => handwheels!.map((each) => [heave, roll, each]))),
    );
  });
  test('out of reach, of the pose or at ride height, has no bump steer', () => {
    const told: [string, number, number][] = [];
    visitGrid(frontEnd, [0], [0], [0, 60], (at, status, bump) => told.push([status, at.handwheel, bump]));
    expect(told).toEqual([
      ['ok', 0, 0],
      ['out-of-reach', 60, 0],
    ]);
    expect(rideSteer(frontEnd, 60)).toEqual({ status: 'out-of-reach', meanSteer: 0 });
    const free = frontEndOf({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    visitGrid(free, [0], [0], [0], (_, status, bump) => expect([status, bump]).toEqual(['no-pose', 0]));
  });
});

describe('the two wheels at a lock', () => {
  // Track 1280, wheelbase 2640 of the plain layout. cot outer = cot inner + 1280/2640: inner 30°, outer 24.286°.
  const ideal = Math.atan(1 / (Math.sqrt(3) + 1280 / 2640));
  const layout = layoutOf({ axle: { beam: 'i-beam', left: { ...PLAIN_HALF, toeIn: 0 }, right: 'mirror' } });
  const lock = (left: number, right: number) => ({
    handwheel: 9,
    cause: 'stop' as const,
    leftSteer: left * DEGREE,
    rightSteer: right * DEGREE,
  });
  test.each([
    [30, 26, 1],
    [-26, -30, -1],
  ])('left %s° and right %s°: sizes, and the ideal of each for the other', (left, right) => {
    const told = lockAngles(layout, lock(left, right));
    expectClose(told.inner / DEGREE, 30, 1e-12);
    expectClose(told.outer / DEGREE, 26, 1e-12);
    expectClose(told.idealOuter, ideal, 1e-9);
    // cot inner = cot 26° - 1280/2640.
    expectClose(told.idealInner, Math.atan(1 / (1 / Math.tan(26 * DEGREE) - 1280 / 2640)), 1e-9);
  });
  test('a wheel that does not turn takes the car nowhere: no circle', () => {
    // 0.01 rad is 0.573°.
    for (const [left, right] of [
      [30, 0.5],
      [0.5, 30],
      [-0.5, -30],
      [-30, -0.5],
      [0.56, 0.56],
    ] as const)
      expect(turningCircle(layout, lock(left, right)), `${left}, ${right}`).toBeUndefined();
    for (const [left, right] of [
      [0.58, 0.58],
      [-0.58, -0.58],
    ] as const)
      expect(turningCircle(layout, lock(left, right))).toBeDefined();
  });
  test('static toe of the wheel that is inside is put back', () => {
    const uneven = layoutOf({
      axle: {
        beam: 'i-beam',
        left: { ...PLAIN_HALF, toeIn: 0.4 },
        right: {
          ...Object.fromEntries(
            Object.entries(PLAIN_HALF).map(([key, value]) => [
              key,
              Array.isArray(value) ? [value[0], -value[1]!, value[2]] : value,
            ]),
          ),
          toeIn: 0.1,
        },
      },
    });
    const track = 1280 / 2640;
    const inner = (outer: number) => Math.atan(1 / (1 / Math.tan(outer * DEGREE) - track)) / DEGREE;
    // To the left: the right wheel is outside, 26° less its toe of 0.1; the left, toed in by 0.4, comes 0.4 short.
    expectClose(lockAngles(uneven, lock(30, 26)).idealInner / DEGREE, inner(26 - 0.1) - 0.4, 1e-6);
    expectClose(lockAngles(uneven, lock(-26, -30)).idealInner / DEGREE, inner(26 - 0.4) - 0.1, 1e-6);
  });
});

describe('parking through a turn', () => {
  const frontEnd = frontEndOf();
  const turn = sweepTurn(frontEnd, 0, 0);
  test('nothing where there is no turn', () => {
    expect(effortOfTurn(frontEnd.layout, { ...turn, status: 'out-of-reach' })).toBeUndefined();
    expect(effortOfTurn(frontEnd.layout, { ...turn, count: 1 })).toBeUndefined();
    expect(
      effortOfTurn(frontEnd.layout, { ...turn, straightRatio: Number.POSITIVE_INFINITY }),
    ).toBeUndefined();
    expect(effortOfTurn(frontEnd.layout, { ...turn, count: 2 })).toBeDefined();
  });
  test('worst in the row of least ratio, whichever way the box turns the wheels', () => {
    const ratio = turn.ratio.slice();
    ratio[7] = -5;
    ratio[30] = 6;
    const told = effortOfTurn(frontEnd.layout, { ...turn, ratio })!;
    expect(told.worst.handwheel).toBe(turn.handwheel[7]);
    expectClose(told.worst.handwheelTorque, told.worst.kingpinTorque / (5 * 0.7), 1e-9);
    expectClose(told.worst.rimForce, told.worst.handwheelTorque / 0.19, 1e-9);
    expectClose(told.centre.rimForce, told.centre.handwheelTorque / 0.19, 1e-9);
    // Where no row is lower than straight ahead it is there.
    const even = effortOfTurn(frontEnd.layout, { ...turn, ratio: ratio.map(() => 900) })!;
    expect(even.worst).toEqual({ ...even.centre, handwheel: 0 });
  });
});

describe('the end of a turn', () => {
  test('is closed in on: at the lock the linkage still goes, a millionth of a radian on it does not', () => {
    const box = { ...SIDE_STEER.box, sectorCentre: [-800, 500, 600], sectorTravel: 85 };
    const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box } });
    const { left, right } = sweepTurn(frontEnd, 0, 0);
    const state = createState();
    for (const lock of [left, right]) {
      expect(solveFrontEnd(frontEnd, 0, 0, lock.handwheel, state)).toBe('ok');
      expectClose(lock.leftSteer, state.left.steer, 1e-9);
      expectClose(lock.rightSteer, state.right.steer, 1e-9);
      if (lock.cause === 'drag-link' || lock.cause === 'tie-rod') {
        expect(solveFrontEnd(frontEnd, 0, 0, lock.handwheel * (1 + 1e-6), state)).toBe('out-of-reach');
        expect(state.failure).toBe(lock.cause);
      }
    }
  });
  test('turns are counted whichever lock is which', () => {
    const turn = sweepTurn(frontEndOf(), 0, 0);
    expectClose(turnsLockToLock({ ...turn, left: turn.right, right: turn.left }), turnsLockToLock(turn), 0);
  });
  test('one that does not begin has no figures, and says why', () => {
    // A drag link of 100 mm does not reach an axle that has risen by 250.
    const box = { ...SIDE_STEER.box, sectorCentre: [-100, 484, 535], pitmanBall: [-100, 484, 395] };
    const none = sweepTurn(frontEndOf({ steering: { ...SIDE_STEER, box } }), 250, 0);
    expect(none.status).toBe('out-of-reach');
    expect(none).toMatchObject({
      count: 0,
      straightRatio: 0,
      ackermannPercent: [],
      left: { handwheel: 0, cause: 'no-pose', leftSteer: 0, rightSteer: 0 },
      right: { handwheel: 0, cause: 'no-pose', leftSteer: 0, rightSteer: 0 },
    });
    for (const column of [none.handwheel, none.leftSteer, none.rightSteer, none.meanSteer, none.ratio])
      expect(column).toHaveLength(0);
  });
});

describe('the poses with each wheel in its own travel', () => {
  const travel = { bump: 60, droop: 40, halfTrack: 700, sine: 0.05 };
  test('every roll and the heave that is left at it, to and fro, edges and corners included', () => {
    const poses = wheelPoses(travel, 5, 2);
    expect(poses).toHaveLength(25);
    for (const [row, sine] of [-0.05, -0.025, 0, 0.025, 0.05].entries()) {
      const apart = 700 * Math.abs(sine);
      // 35 mm apart at the most: the heave runs from -40 + 35 to 60 - 35.
      const heaves = [0, 1, 2, 3, 4].map((i) => -40 + apart + ((100 - 2 * apart) * i) / 4);
      const own = poses.slice(5 * row, 5 * row + 5);
      for (const [i, { heave, roll }] of own.entries()) {
        expectClose(Math.sin(roll), sine, 1e-15, 'roll');
        expectClose(heave, heaves[row % 2 === 0 ? i : 4 - i]!, 1e-9, 'heave');
      }
    }
    expect(wheelPoses(travel)).toHaveLength(17 * 13);
  });
  test('without roll the heave alone; a travel that comes to a tip is one heave there', () => {
    const level = wheelPoses({ ...travel, sine: 0 }, 5, 2);
    expect(level.map(({ heave }) => heave)).toEqual([-40, -15, 10, 35, 60]);
    for (const { roll } of level) expect(roll).toBe(0);
    expect(heaveEnds(travel, 0.05)).toEqual({ from: -5, to: 25 });
    expect(heaveEnds(travel, -0.05)).toEqual({ from: -5, to: 25 });
    const tip = heaveEnds(travel, 100 / 1400 + 1e-12);
    expect(tip.from).toBe(tip.to);
    expectClose(tip.from, 10, 1e-9);
  });
  test('the places of both wheels: heave, and half the track by the sine of roll', () => {
    // Wheel centres 1420 mm apart: 2 degrees of roll lift the left by 24.78 mm.
    const places = wheelPlaces(layoutOf(), { heave: 10, roll: 2 * DEGREE });
    expectClose(places.left, 34.778, 1e-3);
    expectClose(places.right, -14.778, 1e-3);
  });
  test('the largest is told with its sign: where its pose turns the wheels', () => {
    for (const up of [20, -20]) {
      const box = {
        ...SIDE_STEER.box,
        pitmanBall: [-800, 500, 350 + up],
        sectorCentre: [-800, 500, 490 + up],
      };
      const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box } });
      const told = worstOneWheel(frontEnd);
      if (told.status !== 'ok') throw new Error(told.status);
      const state = createState();
      solveFrontEnd(frontEnd, told.heave, told.roll, 0, state);
      expectClose(told.steer, state.meanSteer - rideSteer(frontEnd, 0).meanSteer, 1e-9);
      expectClose(Math.abs(told.steer), told.worst, 1e-12);
    }
  });
  test('where the axle has no pose, or ride height is out of reach, there is none, and where', () => {
    const free = frontEndOf({
      location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' },
    });
    expect(worstOneWheel(free)).toEqual({ status: 'no-pose', heave: 0, roll: 0 });
    expect(worstOneWheel(frontEndOf(), 60)).toEqual({ status: 'out-of-reach', heave: 0, roll: 0 });
  });
});
