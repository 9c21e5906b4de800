import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createState, groundOffsets, solveFrontEnd, steerRates } from '../../shared-math/linkage/index.ts';
import {
  ackermannOf,
  assistedRimForce,
  effortOfTurn,
  groundEccentricity,
  kingpinTrack,
  lockAngles,
  sweepTurn,
  turningCircle,
  turnsLockToLock,
} from '../../shared-math/sweep/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';
import { CROSS_STEER, frontEndOf, layoutOf, PLAIN_HALF, SIDE_STEER, STEERED } from '../support/layouts.ts';

/** The wheels this much further out, mm, on the same kingpins. */
const widened = (out: number) => {
  const [x, y, z] = PLAIN_HALF.wheelCentre as [number, number, number];
  return {
    axle: { beam: 'i-beam', left: { ...PLAIN_HALF, wheelCentre: [x, y + out, z] }, right: 'mirror' },
  };
};

describe('rates of steer', () => {
  test.each(STEERED)('are the differences of the solved angles: $label', ({ over }) => {
    const frontEnd = frontEndOf(over);
    const state = createState();
    const at = (heave: number, roll: number, handwheel: number) => {
      expect(solveFrontEnd(frontEnd, heave, roll, handwheel, state)).toBe('ok');
      return { left: state.left.steer, right: state.right.steer };
    };
    for (const [heave, roll, handwheel] of [
      [0, 0, 0],
      [50, 0, 3],
      [-60, 0.04, -4],
    ] as const) {
      const step = 1e-4;
      const [more, less] = [at(heave, roll, handwheel + step), at(heave, roll, handwheel - step)];
      at(heave, roll, handwheel);
      const rates = steerRates(frontEnd, state);
      expectClose(rates.left, (more.left - less.left) / (2 * step), 1e-8, 'left');
      expectClose(rates.right, (more.right - less.right) / (2 * step), 1e-8, 'right');
    }
  });

  test.each(STEERED.filter(({ label }) => label.includes('i-beam')))(
    'the overall ratio integrates back to the wheel angles: $label',
    ({ over }) => {
      const sweep = sweepTurn(frontEndOf(over), 0, 0, 401);
      expect(sweep.status).toBe('ok');
      // Simpson's rule over the reciprocal of the ratio.
      let sum = 0;
      const step = (sweep.handwheel[400]! - sweep.handwheel[0]!) / 400;
      for (let i = 0; i <= 400; i += 1)
        sum += (i === 0 || i === 400 ? 1 : i % 2 === 1 ? 4 : 2) / sweep.ratio[i]!;
      const through = sweep.meanSteer[400]! - sweep.meanSteer[0]!;
      expectClose((sum * step) / 3, through, 2e-4 * Math.abs(through));
    },
  );
});

describe('left and right turn', () => {
  test('are equal where the layout is its own mirror image: a pitman arm that swings in the car’s middle plane', () => {
    // The drag link's ball on the middle of a straight tie rod would be ideal; here both arms stand square to the link
    // and the turn of either lock is compared by the mirror property of the whole car instead.
    for (const steering of [SIDE_STEER, CROSS_STEER]) {
      const one = sweepTurn(frontEndOf({ steering }), 0, 0);
      const { box } = steering;
      const mirrored = {
        dragLinkTo: steering.dragLinkTo === 'left' ? 'right' : 'left',
        dragLinkBall: [steering.dragLinkBall[0]!, -steering.dragLinkBall[1]!, steering.dragLinkBall[2]!],
        box: {
          ...box,
          sectorCentre: [box.sectorCentre[0]!, -box.sectorCentre[1]!, box.sectorCentre[2]!],
          sectorAxis: [box.sectorAxis[0]!, -box.sectorAxis[1]!, box.sectorAxis[2]!],
          pitmanBall: [box.pitmanBall[0]!, -box.pitmanBall[1]!, box.pitmanBall[2]!],
        },
      };
      // With the axis mirrored as a plain vector the sector turns the other way: left lock becomes right lock.
      const other = sweepTurn(frontEndOf({ steering: mirrored }), 0, 0);
      const flips = Math.sign(other.left.leftSteer) === Math.sign(one.left.leftSteer) ? 1 : -1;
      const [otherLeft, otherRight] = flips > 0 ? [other.left, other.right] : [other.right, other.left];
      expectClose(Math.abs(otherLeft.leftSteer), Math.abs(one.right.rightSteer), 1e-7, 'lock');
      expectClose(Math.abs(otherRight.rightSteer), Math.abs(one.left.leftSteer), 1e-7, 'lock');
    }
  });
});

describe('what sets the lock', () => {
  test('the sector travel of the box', () => {
    const sweep = sweepTurn(frontEndOf(), 0, 0);
    expect(sweep.left.cause).toBe('sector-travel');
    expectClose(sweep.left.handwheel, 35 * 16 * DEGREE, 1e-9);
    expectClose(turnsLockToLock(sweep), (2 * 35 * 16) / 360, 1e-9);
    expectClose(sweep.handwheel[0]!, sweep.right.handwheel, 0);
  });

  test('the stops at the axle: whichever wheel comes to them first', () => {
    const sweep = sweepTurn(frontEndOf({ steering: { ...SIDE_STEER, stopAngle: 25 } }), 0, 0);
    for (const lock of [sweep.left, sweep.right]) {
      expect(lock.cause).toBe('stop');
      expectClose(Math.max(Math.abs(lock.leftSteer), Math.abs(lock.rightSteer)), 25 * DEGREE, 1e-8);
    }
  });

  test('the reach of the drag link, or its dead centre at an arm', () => {
    const long = { ...SIDE_STEER.box, sectorCentre: [-800, 500, 600], sectorTravel: 85 };
    const sweep = sweepTurn(frontEndOf({ steering: { ...SIDE_STEER, box: long } }), 0, 0);
    for (const lock of [sweep.left, sweep.right]) {
      expect(['drag-link', 'tie-rod', 'dead-centre']).toContain(lock.cause);
      expect(Math.abs(lock.handwheel)).toBeLessThan(85 * 16 * DEGREE);
      expect(Math.abs(lock.handwheel)).toBeGreaterThan(20 * 16 * DEGREE);
    }
    // A pitman arm that swings through 130 degrees passes its own dead centre: the wheels would come back.
    const wide = { ...SIDE_STEER.box, sectorTravel: 150 };
    const far = sweepTurn(frontEndOf({ steering: { ...SIDE_STEER, box: wide } }), 0, 0);
    expect(far.left.cause).toBe('dead-centre');
    const state = createState();
    const frontEnd = frontEndOf({ steering: { ...SIDE_STEER, box: wide } });
    solveFrontEnd(frontEnd, 0, 0, far.left.handwheel, state);
    expectClose(steerRates(frontEnd, state).mean, 0, 1e-4, 'rate at the dead centre');
  });

  test('an axle left free has no turn', () => {
    const free = { location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } };
    expect(sweepTurn(frontEndOf(free), 0, 0)).toMatchObject({ status: 'no-pose', count: 0 });
  });
});

describe('turning circle and Ackermann along the turn', () => {
  test('kingpin track is between the kingpin lines at the wheel centres, which are level with the kingpins’ middles', () => {
    expectClose(kingpinTrack(layoutOf()), 1280, 1e-9);
  });

  test('a worked example: wheelbase 3.2 m, kingpin track 1.6 m on the tyres, tyre 225 mm: 13.225 m between kerbs', () => {
    // Public worked example (outer wheel on a radius of 6.5 m); inputs read, value computed.
    const half = {
      ...PLAIN_HALF,
      kingpinTop: [0, 800, 395],
      kingpinBottom: [0, 800, 265],
      wheelCentre: [0, 800, 330],
      camber: 0,
      toeIn: 0,
      tieRodBall: [-150, 760, 292],
    };
    const layout = layoutOf({
      axle: { beam: 'i-beam', left: half, right: 'mirror' },
      car: { wheelbase: 3200, frontAxleLoad: 4900, tyreRadius: 330, tyreWidth: 225, handwheelRadius: 190 },
      steering: { ...SIDE_STEER, dragLinkBall: [0, 650, 395] },
    });
    const outer = Math.asin(3.2 / 6.5);
    const lock = { handwheel: 9, cause: 'stop', leftSteer: 38.26 * DEGREE, rightSteer: outer } as const;
    const circle = turningCircle(layout, lock)!;
    expectClose(circle.byOuter / 1000, 13.225, 1e-9);
    expectClose(lockAngles(layout, lock).idealInner / DEGREE, 38.26, 1e-2);
    // The example's pair meets Ackermann: each wheel alone, and both together, roll about one point.
    expectClose(circle.byInner / 1000, 13.225, 1e-3);
    expectClose(circle.betweenKerbs / 1000, 13.225, 1e-3);
  });

  test('with the wheels off Ackermann the circle lies between what each alone would give, at the mean of cotangents', () => {
    const layout = layoutOf();
    const { wheelbase, tyreWidth } = layout.car;
    const lock = { handwheel: 9, cause: 'stop', leftSteer: 34 * DEGREE, rightSteer: 32 * DEGREE } as const;
    const circle = turningCircle(layout, lock)!;
    expect(circle.byOuter).toBeLessThan(circle.betweenKerbs);
    expect(circle.byInner).toBeGreaterThan(circle.betweenKerbs);
    // The car's middle of the rear axle runs on wheelbase times the mean cotangent; kingpins 1280 mm apart.
    const middle = (wheelbase * (1 / Math.tan(34 * DEGREE) + 1 / Math.tan(32 * DEGREE))) / 2;
    const { scrubRadius } = groundOffsets(layout, 'right');
    expectClose(
      circle.betweenKerbs / 2,
      Math.hypot(middle + 640, wheelbase) + scrubRadius + tyreWidth / 2,
      1e-6,
    );
    // A tyre further out needs more room: the scrub radius counts outward.
    const wider = layoutOf(widened(20));
    expect(turningCircle(wider, lock)!.betweenKerbs).toBeGreaterThan(circle.betweenKerbs + 35);
    // Mirrored, to the right.
    const right = { ...lock, leftSteer: -32 * DEGREE, rightSteer: -34 * DEGREE };
    expectClose(turningCircle(layout, right)!.betweenKerbs, circle.betweenKerbs, 1e-9);
  });

  test('a nose ahead of the axle makes the circle between walls larger than between kerbs', () => {
    const sweep = sweepTurn(frontEndOf(), 0, 0);
    const car = {
      wheelbase: 2640,
      frontAxleLoad: 4900,
      tyreRadius: 330,
      tyreWidth: 150,
      handwheelRadius: 190,
    };
    const circle = (over: Record<string, number>) =>
      turningCircle(layoutOf({ car: { ...car, ...over } }), sweep.left)!;
    const nosed = circle({ noseAhead: 700, noseWidth: 1500 });
    expect(nosed.betweenKerbs).toBe(circle({}).betweenKerbs);
    expect(nosed.betweenWalls).toBeGreaterThan(nosed.betweenKerbs);
    // Half of what the nose is wider on each side counts, by the share of its direction from the turning point.
    const wider = circle({ noseAhead: 700, noseWidth: 1700 }).betweenWalls! - nosed.betweenWalls!;
    expect(wider).toBeGreaterThan(2 * 100 * 0.7);
    expect(wider).toBeLessThan(2 * 100);
    // Where the nose is not given whole there is no such figure: nobody measured it.
    for (const over of [{}, { noseAhead: 700 }, { noseWidth: 1500 }])
      expect(circle(over).betweenWalls).toBeUndefined();
  });

  test('the error is zero for an ideal pair and its sign follows the outer wheel', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 0.6, noNaN: true }), (inner) => {
        const layout = layoutOf();
        const { idealOuter, idealInner } = lockAngles(layout, {
          handwheel: 1,
          cause: 'stop',
          leftSteer: inner,
          rightSteer: inner * 0.9,
        });
        expect(idealOuter).toBeLessThan(inner);
        expect(idealInner).toBeGreaterThan(inner * 0.9);
      }),
      { seed: 20266, numRuns: 20 },
    );
    const sweep = sweepTurn(frontEndOf(), 0, 0);
    // Arms aimed at the rear axle: the outer wheel turns somewhat too far, 55 to 85 per cent of Ackermann.
    expect(sweep.ackermannError[0]).toBeGreaterThan(0);
    expect(sweep.ackermannError[40]).toBeGreaterThan(0);
    for (const row of [0, 40]) {
      expect(sweep.ackermannPercent[row]).toBeGreaterThan(50);
      expect(sweep.ackermannPercent[row]).toBeLessThan(95);
    }
  });
});

describe('two wheel angles against Ackermann', () => {
  test('inner 30° and outer 25.9838° on 50 by 102 in: 1.756° too far, 69.6 per cent (computed four-bar example)', () => {
    for (const side of [1, -1]) {
      const [left, right] = [30 * DEGREE, 25.9838 * DEGREE];
      const car = { track: 50, wheelbase: 102, toeLeft: 0, toeRight: 0 };
      const found = side > 0 ? ackermannOf(left, right, car) : ackermannOf(-right, -left, car);
      expectClose(found.error / DEGREE, 1.756, 1e-3);
      expectClose(found.idealOuter / DEGREE, side * 24.2275, 1e-3);
      expectClose(found.percent ?? 0, 69.6, 0.05);
    }
  });

  test('are not told in per cent where the wheels are nearly straight', () => {
    const car = { track: 50, wheelbase: 102, toeLeft: 0, toeRight: 0 };
    expect(ackermannOf(4.9 * DEGREE, 4.8 * DEGREE, car).percent).toBeUndefined();
    expect(ackermannOf(0, 0, car).percent).toBeUndefined();
    expectClose(ackermannOf(0, 0, car).error, 0, 1e-15);
    const sweep = sweepTurn(frontEndOf(), 0, 0);
    expect(sweep.ackermannPercent[20]).toBeUndefined();
    expect(sweep.ackermannPercent[40]).toBeGreaterThan(50);
  });

  test('have static toe taken out: straight ahead there is no error, and toe-in of both wheels alters none', () => {
    for (const toeIn of [-0.3, 0.1, 0.5]) {
      const half = { ...PLAIN_HALF, toeIn };
      const sweep = sweepTurn(
        frontEndOf({ axle: { beam: 'i-beam', left: half, right: 'mirror' } }),
        0,
        0,
        41,
      );
      const plain = sweepTurn(
        frontEndOf({ axle: { beam: 'i-beam', left: { ...PLAIN_HALF, toeIn: 0 }, right: 'mirror' } }),
        0,
        0,
        41,
      );
      const at = sweep.handwheel.findIndex((handwheel) => Math.abs(handwheel) < 1e-9);
      if (at >= 0) expectClose(sweep.ackermannError[at]! / DEGREE, 0, 1e-9, `toe ${toeIn}`);
      for (const row of [0, 10, 30, 40])
        expectClose(
          sweep.ackermannError[row]! / DEGREE,
          plain.ackermannError[row]! / DEGREE,
          0.02,
          `${toeIn}`,
        );
    }
    // The pair of the example above with a quarter of a degree of toe-in on each wheel: the same error and percentage.
    const toe = 0.25 * DEGREE;
    const car = { track: 50, wheelbase: 102, toeLeft: toe, toeRight: toe };
    const found = ackermannOf(30 * DEGREE - toe, 25.9838 * DEGREE + toe, car);
    expectClose(found.error / DEGREE, 1.756, 1e-3);
    expectClose(found.percent ?? 0, 69.6, 0.05);
    // Where the outer wheel would stand, its toe-in put back.
    expectClose(found.idealOuter / DEGREE, 24.2275 + 0.25, 1e-3);
  });
});

describe('parking effort through the turn', () => {
  test('counts the contact point’s distance from the kingpin both sideways and fore and aft', () => {
    const layout = layoutOf();
    const { scrubRadius, mechanicalTrail } = groundOffsets(layout, 'left');
    expect(mechanicalTrail).toBeGreaterThan(20);
    expectClose(groundEccentricity(layout, 'left') ** 2, scrubRadius ** 2 + mechanicalTrail ** 2, 1e-9);
    const frontEnd = frontEndOf();
    const { centre } = effortOfTurn(layout, sweepTurn(frontEnd, 0, 0))!;
    const E = groundEccentricity(layout, 'left');
    // The handbook's formula by hand: 0.7 of 4900 N, a tyre of 150 mm, in N m.
    expectClose(centre.kingpinTorque, (0.7 * 4900 * Math.sqrt(150 ** 2 / 8 + E ** 2)) / 1000, 1e-9);
  });

  test.each(STEERED.filter(({ label }) => label.includes('i-beam')))(
    'straight ahead by the rate there, and most where the handwheel turns the wheels fastest: $label',
    ({ over }) => {
      const frontEnd = frontEndOf(over);
      const sweep = sweepTurn(frontEnd, 0, 0);
      const { centre, worst } = effortOfTurn(frontEnd.layout, sweep)!;
      const state = createState();
      const mean = (handwheel: number) => {
        expect(solveFrontEnd(frontEnd, 0, 0, handwheel, state)).toBe('ok');
        return state.meanSteer;
      };
      const step = 1e-4;
      const rate = (at: number) => (mean(at + step) - mean(at - step)) / (2 * step);
      // Work in is work out, but for the box's loss of 0.7: torque at the rim times its turn.
      expectClose(centre.handwheelTorque, (centre.kingpinTorque * Math.abs(rate(0))) / 0.7, 1e-5);
      const { handwheel } = worst;
      const inside = handwheel - Math.sign(handwheel) * step;
      expectClose(worst.handwheelTorque, (worst.kingpinTorque * Math.abs(rate(inside))) / 0.7, 0.02);
      expect(worst.rimForce).toBeGreaterThanOrEqual(centre.rimForce);
      // A grid of its own over the whole turn finds nothing heavier, to half a per cent.
      const [from, to] = [sweep.right.handwheel + step, sweep.left.handwheel - step];
      for (let i = 0; i <= 300; i += 1) {
        const torque = (worst.kingpinTorque * Math.abs(rate(from + ((to - from) * i) / 300))) / 0.7;
        expect(torque).toBeLessThan(1.005 * worst.handwheelTorque);
      }
    },
  );

  test('is one figure, however finely the turn is swept', () => {
    const frontEnd = frontEndOf();
    const [coarse, fine] = [21, 401].map(
      (count) => effortOfTurn(frontEnd.layout, sweepTurn(frontEnd, 0, 0, count))!,
    );
    expect(coarse!.centre).toEqual(fine!.centre);
    expectClose(coarse!.worst.rimForce / fine!.worst.rimForce, 1, 5e-3);
    expect(effortOfTurn(frontEnd.layout, { ...sweepTurn(frontEnd, 0, 0), count: 0 })).toBeUndefined();
  });
});

test('with assistance a rim of 190 mm is left with 2 to 6 N·m over 0.19 m (common practice, no published source)', () => {
  const { least, most } = assistedRimForce(190);
  expectClose(least, 10.526, 1e-3);
  expectClose(most, 31.579, 1e-3);
});
