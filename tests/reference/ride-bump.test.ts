import { describe, expect, test } from 'vitest';
import { prepareRoad, type Ride, type RoadProfile, stepRide } from '../../shared-math/ride/index.ts';
import { expectClose } from '../support/close.ts';
import { quarterCars, rideOf, TEXTBOOK } from '../support/ride-cars.ts';
import { prepareRidePeer } from '../support/ride-peer.ts';

const BUMP: RoadProfile = { kind: 'bump', height: 25, length: 1000, start: 0 };
/** The textbook's quarter car (Barton & Fieldhouse, p. 209) with dampers of 1500 N·s/m. */
const DAMPED = quarterCars(...TEXTBOOK, { bumpDamping: 1.5, reboundDamping: 1.5 });

interface Extremes {
  readonly most: number;
  readonly mostAt: number;
  readonly least: number;
}

/** Largest and least of some readings of the state over a drive, every step of the engine. */
function drive(
  ride: Ride,
  seconds: number,
  reads: readonly ((state: Ride['state']) => number)[],
): Extremes[] {
  const found = reads.map(() => ({ most: -Infinity, mostAt: 0, least: Infinity }));
  for (let i = Math.round(seconds / ride.subStep); i > 0; i -= 1) {
    stepRide(ride, 1);
    for (const [j, read] of reads.entries()) {
      const value = read(ride.state);
      const extremes = found[j]!;
      if (value > extremes.most) Object.assign(extremes, { most: value, mostAt: ride.state.time });
      extremes.least = Math.min(extremes.least, value);
    }
  }
  return found;
}

describe('a half-sine bump of 25 mm over 1 m at 10 m/s', () => {
  // Computed for these figures from the same equations, no published source; the script is tests/support/ride-peer.ts,
  // a classical Runge-Kutta method, run beside.
  test('moves body, wheel and suspension as independent solutions of the same equations', () => {
    const ride = rideOf(DAMPED, { road: prepareRoad(BUMP, 330), speed: 10_000 });
    const [body, wheel, suspension, tyre, acceleration] = drive(ride, 1.5, [
      (s) => s.frameRise,
      (s) => s.axleRise,
      (s) => s.heave,
      (s) => s.axleRise - (s.roadLeft + s.roadRight) / 2,
      (s) => s.frameAcceleration / 1000,
    ]) as [Extremes, Extremes, Extremes, Extremes, Extremes];
    expectClose(body.most, 10.847, 0.001 * 10.847, 'body');
    expectClose(body.mostAt, 0.1198, 0.0005, 'when');
    expectClose(body.least, -4.83, 0.001 * 4.83, 'body after');
    expectClose(wheel.most, 30.595, 0.001 * 30.595, 'wheel');
    expectClose(suspension.most, 26.023, 0.001 * 26.023, 'suspension, bump');
    expectClose(suspension.least, -18.831, 0.001 * 18.831, 'suspension, rebound');
    expectClose(tyre.most, 12.35, 0.01, 'tyre let out');
    expectClose(acceleration.most, 4.494, 0.002 * 4.494, 'body up, m/s²');
    expectClose(acceleration.least, -5.348, 0.002 * 5.348, 'body down, m/s²');
    const road = prepareRoad(BUMP, 330);
    const peer = prepareRidePeer(DAMPED, road, 10_000, 1e-4);
    const scripted = { body: 0, wheel: 0, most: 0, least: 0 };
    for (let i = 0; i < 15_000; i += 1) {
      peer.step(1);
      const [zf, , za] = peer.state as unknown as [number, number, number];
      scripted.body = Math.max(scripted.body, 1000 * zf);
      scripted.wheel = Math.max(scripted.wheel, 1000 * za);
      scripted.most = Math.max(scripted.most, 1000 * (za - zf));
      scripted.least = Math.min(scripted.least, 1000 * (za - zf));
    }
    expectClose(body.most, scripted.body, 0.001 * 10.847, 'script, body');
    expectClose(wheel.most, scripted.wheel, 0.001 * 30.595, 'script, wheel');
    expectClose(suspension.most, scripted.most, 0.001 * 26.023, 'script, bump');
    expectClose(suspension.least, scripted.least, 0.001 * 18.831, 'script, rebound');
    // Both wheels on it alike: nothing rolls.
    expect(Math.abs(ride.state.frameRoll) + Math.abs(ride.state.axleRoll)).toBeLessThan(1e-9);
  });

  test('lifts the tyre off the ground only where the bump is high enough for it', () => {
    // The tyre is let out by 12.35 mm at most, and carries 18.54 mm at rest: a bump half as high again is as linear, twice
    // as high it lets go. Computed from the row above.
    const lowest = (height: number) => {
      const ride = rideOf(DAMPED, {
        road: prepareRoad({ ...BUMP, height } as RoadProfile, 330),
        speed: 10_000,
      });
      const [load, body] = drive(ride, 0.5, [(s) => s.loadLeft, (s) => s.frameRise]) as [Extremes, Extremes];
      return { load: load.least, body: body.most };
    };
    const even = lowest(37);
    expect(even.load).toBeGreaterThan(0);
    expectClose(even.body, (37 / 25) * 10.847, 0.002 * 16, 'body');
    const high = lowest(50);
    expect(high.load).toBe(0);
    expect(Math.abs(high.body - 2 * 10.847)).toBeGreaterThan(0.05);
  });
});

test('whole steps and half steps of the engine come to the same drive', () => {
  const road: RoadProfile = { kind: 'random', roadClass: 'C', seed: 7, start: 2000 };
  const car = quarterCars(200, 50, 18, 190, {
    bumpDamping: 0.8,
    reboundDamping: 1.6,
    tyreDamping: 0.05,
    bump: 20,
    rebound: 30,
    stopRate: 100,
  });
  const heaves = [1 / 2000, 1 / 4000].map((subStep) => {
    const ride = rideOf(car, { road: prepareRoad(road, 330), speed: 20_000, subStep });
    return Array.from({ length: 1500 }, () => {
      stepRide(ride, Math.round(1 / 500 / subStep));
      return ride.state.heave + 500 * ride.state.roll;
    });
  });
  const most = Math.max(...heaves[0]!.map(Math.abs));
  expect(most).toBeGreaterThan(20);
  for (const [i, value] of heaves[0]!.entries()) expectClose(value, heaves[1]![i]!, 0.005 * most, `row ${i}`);
});

describe('against the classical Runge-Kutta method on the same equations, at a quarter of the step', () => {
  const car = quarterCars(200, 50, 18, 190, {
    bumpDamping: 0.8,
    reboundDamping: 1.6,
    tyreDamping: 0.05,
    sprungHeight: 560,
    rollStiffness: 2e6,
    bump: 35,
    rebound: 40,
    stopRate: 108,
  });
  test.each<[string, RoadProfile, number]>([
    ['a rough road', { kind: 'random', roadClass: 'C', seed: 2, start: 2000 }, 20_000],
    ['a kerb under one wheel, onto the stops', { kind: 'kerb', side: 'left', height: 90, start: 500 }, 8000],
    ['a bump that throws it into the air', { kind: 'bump', height: 150, length: 1500, start: 500 }, 12_000],
    [
      'waves under each wheel in turn',
      { kind: 'washboard', height: 30, length: 1200, shift: 600, start: 500 },
      9000,
    ],
  ])('%s', (_, profile, speed) => {
    const road = prepareRoad(profile, 330);
    const ride = rideOf(car, { road, speed });
    const peer = prepareRidePeer(car, road, speed, ride.subStep / 4);
    let [heave, roll] = [0, 0];
    for (let i = 0; i < 300; i += 1) {
      stepRide(ride, 10);
      peer.step(40);
      const [zf, rf, za, ra] = peer.state as unknown as [number, number, number, number];
      // Dampers and stops that set in between two steps are met a part of a step late: a few tenths of a millimetre.
      expectClose(ride.state.heave, 1000 * (za - zf), 0.4, 'heave');
      expectClose(ride.state.roll, ra - rf, 0.0006, 'roll');
      expectClose(ride.state.frameRise, 1000 * zf, 0.4, 'frame');
      heave = Math.max(heave, Math.abs(ride.state.heave));
      roll = Math.max(roll, Math.abs(ride.state.roll));
    }
    expect(Math.max(heave, 500 * roll)).toBeGreaterThan(15);
  });
});
