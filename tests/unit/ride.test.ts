import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LayoutDocument, parseLayout, resolveLayout } from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import {
  FLAG_BUMP_STOP,
  FLAG_LEFT_OFF_GROUND,
  prepareRide,
  prepareRoad,
  type RideRun,
  ROAD_CLASSES,
  ROAD_KINDS,
  type RoadProfile,
  RUN_DIVERGED,
  RUN_OUT_OF_REACH,
  restRide,
  rideParameters,
  rideSteps,
  roadProblem,
  runRide,
  stepRide,
} from '../../shared-math/ride/index.ts';
import { expectClose } from '../support/close.ts';
import { documentOf, layoutOf, rawLayout, SIDE_STEER } from '../support/layouts.ts';
import { quarterCars, rideOf, TEXTBOOK } from '../support/ride-cars.ts';

const project = (name: string): LayoutDocument => {
  const read = parseLayout(readFileSync(new URL(`../../projects/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(read.failure.reason);
  return read.value;
};

const TOO_LOW = project('hairpins-box-too-low');
const AT_THE_COWL = project('hairpins-side-steer');
const ONE_WHEEL: RoadProfile = { kind: 'one-wheel', side: 'left', height: 40, length: 1000, start: 1000 };

function drive(document: LayoutDocument, road: RoadProfile, speed = 10_000, seconds = 1): RideRun {
  const run = runRide(document, road, { speed, seconds });
  if (!run.ok) throw new Error(run.failure.reason);
  return run.value;
}

const worst = (column: Float64Array) => (180 / Math.PI) * Math.max(...column.map(Math.abs));

describe('a bump under one wheel', () => {
  test('darts the car whose box is too low, and not the one whose box is right', () => {
    const bad = drive(TOO_LOW, ONE_WHEEL);
    const good = drive(AT_THE_COWL, ONE_WHEEL);
    // The same travel: both are one car but for the box.
    expect(good.heave).toEqual(bad.heave);
    expect(good.roll).toEqual(bad.roll);
    expect(worst(bad.bumpSteer)).toBeGreaterThan(1);
    expect(worst(good.bumpSteer)).toBeLessThan(0.1);
    expect(worst(bad.kick)).toBeGreaterThan(20);
    expect(worst(good.kick)).toBeLessThan(2);
    for (const run of [bad, good]) expect(new Set(run.status)).toEqual(new Set([0]));
  });
});

function refusal(document: LayoutDocument, road: RoadProfile, speed: number, seconds: number): string {
  const run = runRide(document, road, { speed, seconds });
  return run.ok ? 'driven' : `${run.failure.path}: ${run.failure.reason}`;
}

describe('a run', () => {
  const plain = documentOf(rawLayout());

  test('on the flat stands still, straight ahead', () => {
    const run = drive(plain, { kind: 'flat' });
    for (const column of [run.heave, run.roll, run.bumpSteer, run.kick])
      expect(Math.max(...column.map(Math.abs))).toBeLessThan(1e-9);
    expect(run.count).toBe(501);
    expectClose(run.time.at(-1)!, 1, 1e-12, 'time');
    expectClose(run.distance.at(-1)!, 10_000, 1e-6, 'distance');
  });

  test('is the same whenever it is driven, and mirrored on the mirrored road', () => {
    const road: RoadProfile = { kind: 'random', roadClass: 'C', seed: 3, start: 1000 };
    expect(drive(plain, road)).toEqual(drive(plain, road));
    expect(drive(plain, { ...road, seed: 4 }).heave).not.toEqual(drive(plain, road).heave);
    const left = drive(plain, ONE_WHEEL);
    const right = drive(plain, { ...ONE_WHEEL, side: 'right' } as RoadProfile);
    for (let i = 0; i < left.count; i += 1) {
      expectClose(left.heave[i]!, right.heave[i]!, 1e-9, 'heave');
      expectClose(left.roll[i]!, -right.roll[i]!, 1e-12, 'roll');
    }
    expect(Math.max(...left.roll)).toBeGreaterThan(0.01);
  });

  test('shows at each moment the steering of the exact kinematics', () => {
    const run = drive(TOO_LOW, ONE_WHEEL);
    const frontEnd = prepareFrontEnd(resolveLayout(TOO_LOW));
    const state = createState();
    expect(solveFrontEnd(frontEnd, 0, 0, 0, state)).toBe('ok');
    const straight = state.meanSteer;
    for (let i = 0; i < run.count; i += 37) {
      expect(solveFrontEnd(frontEnd, run.heave[i]!, run.roll[i]!, 0, state)).toBe('ok');
      expectClose(run.meanSteer[i]!, state.meanSteer, 1e-9, 'mean steer');
      expectClose(run.bumpSteer[i]!, state.meanSteer - straight, 1e-9, 'bump steer');
      expectClose(run.totalToeIn[i]!, state.totalToeIn, 1e-9, 'toe');
      // With the handwheel moved by the kick, the wheels stand straight.
      expect(solveFrontEnd(frontEnd, run.heave[i]!, run.roll[i]!, run.kick[i]!, state)).toBe('ok');
      expectClose(state.meanSteer, straight, 2e-9, 'held straight');
    }
  });

  test('breathes, and comes to the same by breaths', () => {
    const steps = rideSteps(plain, ONE_WHEEL, { speed: 10_000, seconds: 1 });
    let breaths = 0;
    for (;;) {
      const step = steps.next();
      if (step.done) {
        expect(step.value).toEqual(runRide(plain, ONE_WHEEL, { speed: 10_000, seconds: 1 }));
        break;
      }
      breaths += 1;
    }
    expect(breaths).toBeGreaterThanOrEqual(3);
  });

  test('says where stops are met and where a wheel is off the ground, and stays near its travel', () => {
    const run = drive(plain, { kind: 'bump', height: 250, length: 1500, start: 500 }, 12_000);
    const bits = run.flags.reduce((all, flags) => all | flags, 0);
    expect(bits & FLAG_BUMP_STOP).toBe(FLAG_BUMP_STOP);
    expect(bits & FLAG_LEFT_OFF_GROUND).toBe(FLAG_LEFT_OFF_GROUND);
    const heave = Math.max(...run.heave);
    expect(heave).toBeGreaterThan(75);
    expect(heave).toBeLessThan(75 + 80);
    // In the air nothing carries it: it falls as everything falls.
    const aloft = run.loadLeft.findIndex((load, i) => load === 0 && run.loadLeft[i + 20] === 0);
    const middle = (row: number) => (run.frameRise[row]! * 4 + (run.frameRise[row]! + run.heave[row]!)) / 5;
    const [a, b, c] = [middle(aloft), middle(aloft + 10), middle(aloft + 20)];
    expectClose((a - 2 * b + c) / 0.02 ** 2, -9806.65, 60, 'fall, mm/s²');
  });

  test('names the moments that the linkage cannot reach, and holds no figures there', () => {
    // A drag link of 60 mm cannot follow the axle.
    const short = documentOf(
      rawLayout({
        steering: {
          ...SIDE_STEER,
          box: { ...SIDE_STEER.box, sectorCentre: [-55, 500, 535], pitmanBall: [-55, 500, 395] },
        },
      }),
    );
    const run = drive(short, { kind: 'bump', height: 120, length: 1500, start: 500 });
    const lost = run.status.indexOf(RUN_OUT_OF_REACH);
    expect(lost).toBeGreaterThan(0);
    expect(run.meanSteer[lost]).toBe(0);
    expect(run.heave[lost]).not.toBe(0);
    for (const column of Object.values(run))
      if (column instanceof Float64Array) expect(column.every(Number.isFinite)).toBe(true);
  });

  test('that runs away is named from there on', () => {
    // A wall a metre high, met at 288 km/h, throws the car further than small angles are good for.
    const wall: RoadProfile = { kind: 'measured', distance: [1000, 1001], left: [0, 1000], right: [0, 1000] };
    const run = drive(plain, wall, 80_000, 6);
    for (const column of Object.values(run))
      if (column instanceof Float64Array) expect(column.every(Number.isFinite)).toBe(true);
    const end = run.status.indexOf(RUN_DIVERGED);
    expect(end).toBeGreaterThan(5);
    expect(new Set(run.status.slice(end))).toEqual(new Set([RUN_DIVERGED]));
    expect(Math.max(...run.heave.slice(end).map(Math.abs))).toBe(0);
  });

  test.each<[string, RoadProfile, number, number, string]>([
    ['no speed', ONE_WHEEL, 0, 1, 'speed: must be more than 0 and at most 300 km/h, found 0 km/h'],
    [
      'no number for a speed',
      ONE_WHEEL,
      Number.NaN,
      1,
      'speed: must be more than 0 and at most 300 km/h, found NaN km/h',
    ],
    ['no time', ONE_WHEEL, 10_000, 0, 'seconds: must be more than 0 and at most 120, found 0'],
    [
      'a road of no length',
      { kind: 'measured', distance: [], left: [], right: [] },
      10_000,
      1,
      'road: has no length: at least two rows are needed',
    ],
    [
      'a road that turns back',
      { kind: 'measured', distance: [0, 0], left: [0, 1], right: [0, 1] },
      10_000,
      1,
      'road row 2: the distance must grow: 0 comes after 0',
    ],
    [
      'a bump of no number',
      { kind: 'bump', height: Number.NaN, length: 1000, start: 0 },
      10_000,
      1,
      'road.height: goes from -500 to 500 mm, found no number',
    ],
  ])('is refused by name: %s', (_, road, speed, seconds, line) => {
    expect(refusal(plain, road, speed, seconds)).toBe(line);
  });
});

test('whatever car and road, a run holds finite figures or a named refusal', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const rides = fc.record({
    unsprungMass: between(20, 400),
    spring: fc.record({ kind: fc.constant('rate'), rate: between(1, 400) }),
    damper: fc.record({ bump: between(0, 20), rebound: between(0, 20) }),
    springBase: between(100, 1600),
    tyreRate: between(20, 900),
    rollStiffness: between(0, 3000),
    sprungHeight: between(200, 1200),
  });
  const roads = fc.oneof(
    fc.record({
      kind: fc.constant('one-wheel' as const),
      side: fc.constantFrom('left' as const, 'right' as const),
      height: between(-200, 200),
      length: between(50, 3000),
      start: between(0, 500),
    }),
    fc.record({
      kind: fc.constant('random' as const),
      roadClass: fc.constantFrom(...ROAD_CLASSES),
      seed: fc.nat(),
      start: between(0, 500),
    }),
    fc.record({
      kind: fc.constant('kerb' as const),
      side: fc.constantFrom('left' as const, 'right' as const, 'both' as const),
      height: between(1, 320),
      start: between(0, 500),
    }),
  );
  let driven = 0;
  fc.assert(
    fc.property(rides, roads, between(1000, 60_000), (ride, road, speed) => {
      const run = runRide(documentOf(rawLayout({ ride })), road, { speed, seconds: 0.3 });
      if (!run.ok) return run.failure.reason.length > 0;
      driven += 1;
      return Object.values(run.value).every(
        (column) => !(column instanceof Float64Array) || column.every(Number.isFinite),
      );
    }),
    { numRuns: 120, seed: 20 },
  );
  expect(driven).toBeGreaterThan(60);
});

describe('parameters', () => {
  const parametersOf = (ride: unknown) => {
    const found = rideParameters(layoutOf({ ride }));
    if (!found.ok) throw new Error(found.failure.reason);
    return found.value;
  };

  test('not told are usual or follow from the layout, and say so', () => {
    const { parameters: p, origin } = parametersOf(null);
    expectClose((p.sprungMass + p.unsprungMass) * 9.80665, 4900, 1e-9, 'weight');
    expect(p.track).toBe(1420);
    expect(p.rollCentre).toBe(480);
    expect(origin).toMatchObject({ sprungMass: 'worked-out', tyreRate: 'usual' });
    const told = parametersOf({ sprungMass: 380, tyreRate: 210, rollStiffness: 100 });
    expectClose(told.parameters.unsprungMass, 4900 / 9.80665 - 380, 1e-9, 'the rest');
    expect(told.origin).toMatchObject({ sprungMass: 'told', unsprungMass: 'worked-out', tyreRate: 'told' });
    expectClose(told.parameters.rollStiffness, (100_000 * 180) / Math.PI, 1e-6, 'N·mm/rad');
    const leaf = { kind: 'leaf', lie: 'across', length: 1040, width: 45, thickness: 6, leaves: 8 };
    expect(parametersOf({ spring: leaf })).toMatchObject({
      parameters: { springBase: 1040 },
      origin: { springBase: 'worked-out', springRate: 'worked-out' },
    });
  });

  test('of no car are refused by their name', () => {
    const { parameters } = parametersOf(null);
    for (const [over, line] of [
      [{ sprungMass: -1 }, 'ride.sprungMass: must be more than 0, found -1'],
      [{ tyreRate: Number.NaN }, 'ride.tyreRate: not a finite number'],
      [{ bumpDamping: -0.1 }, 'ride.bumpDamping: must be at least 0, found -0.1'],
    ] as const) {
      const made = prepareRide({ ...parameters, ...over });
      expect(made.ok ? 'made' : `${made.failure.path}: ${made.failure.reason}`).toBe(line);
    }
  });
});

describe('the hand', () => {
  test('takes the axle near to where it wants it against the springs; let go, it swings back to rest', () => {
    const found = rideParameters(layoutOf());
    if (!found.ok) throw new Error(found.failure.reason);
    const ride = rideOf(found.value.parameters);
    Object.assign(ride.hand, { on: true, y: 710, z: 330, up: 50, sideways: false });
    stepRide(ride, 8000);
    const { state, hand } = ride;
    const risen = state.heave + 710 * state.roll;
    expect(risen).toBeGreaterThan(35);
    expect(risen).toBeLessThan(50);
    // Springs at their base and the hand in a row, each with what it gives for a newton; the frame leans a little beside.
    const { springRate, springBase } = ride.parameters;
    const gives = 1 / (2 * springRate) + 710 ** 2 / ((springRate * springBase ** 2) / 2) + 1 / hand.stiffness;
    expectClose(hand.pullUp, 50 / gives, 0.06 * hand.pullUp, 'what the hand feels');
    hand.on = false;
    let least = 0;
    for (let i = 0; i < 200; i += 1) {
      stepRide(ride, 20);
      least = Math.min(least, state.heave + 710 * state.roll);
    }
    expect(least).toBeLessThan(-2);
    stepRide(ride, 40_000);
    expectClose(state.heave, 0, 0.01, 'heave');
    expectClose(state.roll, 0, 1e-5, 'roll');
    expect(hand.pullUp).toBe(0);
  });

  test('and the steps come to the same however many are taken at once', () => {
    const drive = (chunks: readonly number[]) => {
      const ride = rideOf(quarterCars(...TEXTBOOK, { bumpDamping: 1, reboundDamping: 2 }), {
        road: prepareRoad(ROAD_KINDS.random.usual, 330),
        speed: 20_000,
      });
      for (const count of chunks) stepRide(ride, count);
      return { ...ride.state };
    };
    expect(drive(Array(400).fill(1))).toEqual(drive([400]));
    expect(drive([33, 34, 33, 300])).toEqual(drive([400]));
  });

  test('a ride that ran away stays so until it is put back', () => {
    const ride = rideOf(quarterCars(...TEXTBOOK));
    Object.assign(ride.hand, { on: true, against: 'ground', up: 1e9, strength: 1e9 });
    expect(stepRide(ride, 2000)).toBe('diverged');
    const { time } = ride.state;
    expect(stepRide(ride, 10)).toBe('diverged');
    expect(ride.state.time).toBe(time);
    ride.hand.on = false;
    restRide(ride);
    expect(stepRide(ride, 10)).toBe('ok');
  });
});

describe('roads', () => {
  test('of each kind can be driven over as they usually are, and none jumps', () => {
    for (const road of Object.values(ROAD_KINDS).map(({ usual }) => usual)) {
      expect(roadProblem(road, 330)).toBeUndefined();
      const made = prepareRoad(road, 330);
      for (let distance = -100; distance < 6000; distance += 0.5)
        for (const at of [made.leftAt, made.rightAt]) {
          const height = at(distance);
          expect(Number.isFinite(height)).toBe(true);
          expect(Math.abs(at(distance + 0.5) - height)).toBeLessThan(0.5);
        }
      expect(made.leftAt(0)).toBe(0);
    }
  });

  test('a kerb is climbed on a circle of the wheel about its edge', () => {
    const kerb = prepareRoad({ kind: 'kerb', side: 'left', height: 80, start: 1000 }, 330);
    const reach = Math.sqrt(330 ** 2 - 250 ** 2);
    for (const share of [0.1, 0.5, 0.9]) {
      const distance = 1000 + share * reach;
      const centre = 330 + kerb.leftAt(distance);
      expectClose(Math.hypot(1000 + reach - distance, centre - 80), 330, 1e-9, 'from the edge');
    }
    expect(kerb.leftAt(1000)).toBe(0);
    expect(kerb.leftAt(1000 + reach)).toBe(80);
    expect(kerb.rightAt(2000)).toBe(0);
  });

  test('that are rough are the same for the same seed, wherever they are asked first, and twice as high by class', () => {
    const made = (seed: number, roadClass = 'A') =>
      prepareRoad({ kind: 'random', roadClass: roadClass as 'A', seed, start: 0 }, 330);
    const places = [7, 12_345, 3, 99_999, -4000, 12_346, 51_200, 51_199.99];
    const once = places.map(made(11).leftAt);
    const again = made(11);
    expect(places.toReversed().map(again.leftAt).toReversed()).toEqual(once);
    expect(places.map(made(12).leftAt)).not.toEqual(once);
    for (const [i, roadClass] of ROAD_CLASSES.entries())
      expectClose(made(11, roadClass).leftAt(777), 2 ** i * made(11).leftAt(777), 1e-9 * 2 ** i, roadClass);
  });
});
