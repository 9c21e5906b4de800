import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import {
  GRAVITY,
  placeRide,
  type Ride,
  type RideParameters,
  rideFigures,
  stepRide,
  twoMasses,
} from '../../shared-math/ride/index.ts';
import { expectClose } from '../support/close.ts';
import { frequencyOf, peaksOf, quarterCars, rideOf, TEXTBOOK } from '../support/ride-cars.ts';

/** One reading of the state after each step of the engine. */
function record(ride: Ride, seconds: number, read: (ride: Ride) => number): number[] {
  const values = [read(ride)];
  const steps = Math.round(seconds / ride.subStep);
  for (let i = 0; i < steps; i += 1) {
    expect(stepRide(ride, 1)).toBe('ok');
    values.push(read(ride));
  }
  return values;
}

describe('two masses in closed form', () => {
  test('come to the worked example of a textbook', () => {
    // Barton & Fieldhouse, Automotive Chassis Engineering, p. 209: 7.87 and 68.73 rad/s, 1.25 and 10.9 Hz, wheel over
    // body 0.104 in the body's mode, as printed; more places computed from the same figures.
    const modes = twoMasses(317.5, 45.4, 22e3, 192e3);
    expectClose(2 * Math.PI * modes.low, 7.8786, 1e-4, 'body, rad/s');
    expectClose(2 * Math.PI * modes.high, 68.7086, 1e-3, 'hop, rad/s');
    expectClose(modes.low, 1.2539, 1e-4, 'body, Hz');
    expectClose(modes.high, 10.9353, 1e-4, 'hop, Hz');
    expectClose(modes.lowShape, 0.10418, 1e-5, 'wheel over body');
    expectClose(modes.highShape, -0.0149, 1e-5, 'body over wheel');
    // The estimates of one mass alone, same book: springs in series under the body; both springs on the wheel.
    expectClose(modes.low, 1.2549, 0.002, 'body alone');
    expectClose(modes.high, 10.927, 0.01, 'wheel alone');
  });

  test('come to a second set of figures, and to the eigenvalues of a registry library', () => {
    // No published source: the roots of the library's eigenvalues below, to four places.
    const modes = twoMasses(250, 50, 25e3, 180e3);
    expectClose(2 * Math.PI * modes.low, 9.3562, 1e-3, 'body');
    expectClose(2 * Math.PI * modes.high, 64.1285, 1e-3, 'hop');
    for (const [m, u, k, t, n] of [
      [250, 50, 25e3, 180e3, 0],
      [400, 100, 35e3, 380e3, 0],
      [129, 32, 6.9e3, 191e3, 317],
    ] as const) {
      const found = twoMasses(m, u, k, t, n);
      const matrix = new Matrix([
        [(k - n) / m, -k / m],
        [-k / u, (k + t) / u],
      ]);
      const squares = new EigenvalueDecomposition(matrix).realEigenvalues.toSorted((a, b) => a - b);
      expectClose((2 * Math.PI * found.low) ** 2, squares[0]!, 1e-9 * squares[0]!, 'low');
      expectClose((2 * Math.PI * found.high) ** 2, squares[1]!, 1e-9 * squares[1]!, 'high');
    }
  });

  test('fall over where the leaning weight is more than the springs hold', () => {
    expect(twoMasses(129, 32, 1000, 191e3, 1200).low).toBe(0);
  });
});

describe('the car in the engine', () => {
  const modes = twoMasses(...([TEXTBOOK[0], TEXTBOOK[1], 22e3, 192e3] as const));

  test('swings up and down in the two frequencies and shapes of the closed form', () => {
    const ride = rideOf(quarterCars(...TEXTBOOK));
    placeRide(ride, { frameRise: 10, axleRise: 10 * modes.lowShape });
    const body = record(ride, 20, ({ state }) => state.frameRise);
    expectClose(frequencyOf(body, ride.subStep), modes.low, 0.0001 * modes.low, 'body');
    placeRide(ride, { frameRise: 4 * modes.highShape, axleRise: 4 });
    const hop = record(ride, 5, ({ state }) => state.axleRise);
    expectClose(frequencyOf(hop, ride.subStep), modes.high, 0.001 * modes.high, 'hop');

    // In one shape nothing of the other comes up, and no height is lost to the engine.
    placeRide(ride, { frameRise: 4 * modes.highShape, axleRise: 4 });
    const shapes = record(ride, 5, ({ state }) => state.frameRise - modes.highShape * state.axleRise);
    expect(Math.max(...shapes.map(Math.abs))).toBeLessThan(0.005);
    const late = hop.slice(-1000);
    expectClose(Math.max(...late), 4, 0.004, 'height of the hop after 5 s');
    expectClose(Math.max(...body.slice(-4000)), 10, 0.001, 'height of the body after 20 s');
  });

  /** Mass and stiffness of heave and roll of frame and axle, put together from each spring's own place. kg, m, N, rad. */
  function matrices(p: RideParameters) {
    const mass = [
      p.sprungMass,
      (p.sprungInertia + p.sprungMass * (p.sprungHeight - p.rollCentre) ** 2) / 1e6,
      p.unsprungMass,
      p.axleInertia / 1e6,
    ];
    const stiffness = Matrix.zeros(4, 4);
    const damping = Matrix.zeros(4, 4);
    const between = (matrix: Matrix, row: readonly number[], rate: number) => {
      for (let i = 0; i < 4; i += 1)
        for (let j = 0; j < 4; j += 1) matrix.set(i, j, matrix.get(i, j) + rate * row[i]! * row[j]!);
    };
    for (const side of [1, -1]) {
      const spring = (side * p.springBase) / 2000;
      const damper = (side * p.damperBase) / 2000;
      const tyre = (side * p.track) / 2000;
      between(stiffness, [1, spring, -1, -spring], 1000 * p.springRate);
      between(stiffness, [0, 0, 1, tyre], 1000 * p.tyreRate);
      between(damping, [1, damper, -1, -damper], 1000 * p.bumpDamping);
      between(damping, [0, 0, 1, tyre], 1000 * p.tyreDamping);
    }
    between(stiffness, [0, 1, 0, -1], p.rollStiffness / 1000);
    const leaning = (p.sprungMass * GRAVITY * (p.sprungHeight - p.rollCentre)) / 1000;
    stiffness.set(1, 1, stiffness.get(1, 1) - leaning);
    return { mass, stiffness, damping };
  }

  const LEANING = quarterCars(200, 50, 18, 190, { sprungHeight: 600, rollStiffness: 5e6 });

  test('rolls in the two frequencies that a registry library finds, bar and leaning weight included', () => {
    const { mass, stiffness } = matrices(LEANING);
    const matrix = new Matrix(
      [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => stiffness.get(i, j) / mass[i]!)),
    );
    const found = new EigenvalueDecomposition(matrix);
    const hertz = found.realEigenvalues.map((square) => Math.sqrt(square) / (2 * Math.PI));
    const figures = rideFigures(LEANING);
    const told = [figures.rideFrequency, figures.rollFrequency, figures.hopFrequency, figures.tramp];
    for (const [i, value] of told.toSorted((a, b) => a - b).entries())
      expectClose(value, hertz.toSorted((a, b) => a - b)[i]!, 1e-6, `frequency ${i}`);

    for (const [name, frequency] of [
      ['roll', figures.rollFrequency],
      ['tramp', figures.tramp],
    ] as const) {
      const column = hertz.findIndex((value) => Math.abs(value - frequency) < 1e-6);
      const shape = found.eigenvectorMatrix.getColumn(column);
      const size = 0.01 / Math.max(Math.abs(shape[1]!), Math.abs(shape[3]!));
      const ride = rideOf(LEANING);
      placeRide(ride, { frameRoll: size * shape[1]!, axleRoll: size * shape[3]! });
      const rolls = record(ride, 10, ({ state }) => (name === 'roll' ? state.frameRoll : state.axleRoll));
      expectClose(frequencyOf(rolls, ride.subStep), frequency, 0.001 * frequency, name);
    }
  });

  test('swings, damped, as fast and dies away as fast as the eigenvalues of a registry library say', () => {
    const p = { ...LEANING, bumpDamping: 1.5, reboundDamping: 1.5, tyreDamping: 0.05 };
    const { mass, stiffness, damping } = matrices(p);
    // ẋ = A x of the places and speeds.
    const system = Matrix.zeros(8, 8);
    for (let i = 0; i < 4; i += 1) {
      system.set(i, i + 4, 1);
      for (let j = 0; j < 4; j += 1) {
        system.set(i + 4, j, -stiffness.get(i, j) / mass[i]!);
        system.set(i + 4, j + 4, -damping.get(i, j) / mass[i]!);
      }
    }
    const { realEigenvalues: decay, imaginaryEigenvalues: turn } = new EigenvalueDecomposition(system);
    const slowest = decay
      .map((value, i) => ({ decay: -value, turn: Math.abs(turn[i]!) }))
      .filter((value) => value.turn > 0);
    const ride = rideOf(p);
    placeRide(ride, { frameRise: 5 });
    const peaks = peaksOf(
      record(ride, 4, ({ state }) => state.frameRise),
      ride.subStep,
    ).filter(({ value }) => value > 1e-3);
    // The hop has died away after the first swing.
    const [first, second] = [peaks[1]!, peaks[2]!];
    const period = second.at - first.at;
    const rate = Math.log(first.value / second.value) / period;
    const nearest = slowest.toSorted(
      (a, b) => Math.abs(a.turn - (2 * Math.PI) / period) - Math.abs(b.turn - (2 * Math.PI) / period),
    )[0]!;
    expectClose((2 * Math.PI) / period, nearest.turn, 0.002 * nearest.turn, 'turn');
    expectClose(rate, nearest.decay, 0.005 * nearest.decay, 'decay');
  });

  // Logarithmic decrement δ = 2πζ/√(1 - ζ²) (vibration textbooks): peak after peak 3.606, 7.214 and 15.521 times smaller.
  test.each([
    [0.2, 3.606],
    [0.3, 7.214],
    [0.4, 15.521],
  ])(
    'of damping ratio %f loses height peak by peak as the logarithmic decrement says',
    (ratio, peakRatio) => {
      // Tyres so stiff that the body is the one mass of the textbook.
      const [mass, spring] = [317.5, 22];
      const damping = (2 * ratio * Math.sqrt(spring * 1000 * mass)) / 1000;
      const p = quarterCars(mass, 60, spring, 12_000, { bumpDamping: damping, reboundDamping: damping });
      expectClose(rideFigures(p).dampingRatio, ratio, 1e-12, 'told');
      const ride = rideOf(p, { subStep: 1 / 8000 });
      placeRide(ride, { frameRise: 10 });
      const peaks = peaksOf(
        record(ride, 3, ({ state }) => state.frameRise),
        ride.subStep,
      );
      expectClose(peaks[0]!.value / peaks[1]!.value, peakRatio, 0.01 * peakRatio, 'peaks');
      const delta = Math.log(peaks[0]!.value / peaks[1]!.value);
      expectClose(
        delta / Math.sqrt(4 * Math.PI ** 2 + delta ** 2),
        ratio,
        0.005 * ratio,
        'ratio from the decay',
      );
    },
  );

  test('sinks under its weight as the textbook says for its frequency', () => {
    // f = 3.127/√(static deflection in inches), any text: 4 in of deflection swing at 1.5636 Hz.
    const spring = (200 * GRAVITY) / 101.6;
    const figures = rideFigures(quarterCars(200, 40, spring, 190));
    expectClose(figures.springDeflection, 101.6, 1e-9, 'spring');
    expectClose(figures.tyreDeflection, (240 * GRAVITY) / 190, 1e-9, 'tyre');
    const alone = rideOf(quarterCars(200, 60, spring, 10_000), { subStep: 1 / 8000 });
    placeRide(alone, { frameRise: 10 });
    const swing = record(alone, 10, ({ state }) => state.frameRise);
    expectClose(frequencyOf(swing, alone.subStep), 1.5636, 0.002, 'Hz');
  });

  test('under a steady pull settles where springs and tyres balance it', () => {
    const p = quarterCars(200, 50, 18, 190, { bumpDamping: 2, reboundDamping: 2 });
    const ride = rideOf(p);
    const { hand } = ride;
    // A hand that wants more than it can: it pulls with its whole strength.
    Object.assign(hand, { on: true, y: 0, z: 330, up: 500, strength: 900, sideways: false });
    stepRide(ride, 20_000);
    expectClose(ride.state.heave, 900 / 36, 0.01, 'against the frame');
    expectClose(ride.state.axleRise, 0, 1e-3, 'the tyres feel nothing');
    hand.against = 'ground';
    stepRide(ride, 20_000);
    expectClose(ride.state.axleRise, 900 / 380, 0.01, 'against the ground');
    expectClose(ride.state.heave, 0, 0.01, 'the frame goes along');
    // At one wheel against the frame: that spring takes the share that its lever gives it.
    Object.assign(hand, { against: 'frame', y: 710, strength: 300 });
    stepRide(ride, 20_000);
    expectClose(ride.state.heave, 300 / 36, 0.01, 'heave');
    expectClose(ride.state.roll, (300 * 710) / ((18 * 900 ** 2) / 2), 1e-5, 'roll');
    // Pulled to the left below the place where the frame holds the axle (480 mm up): it tips, left side up.
    Object.assign(hand, { y: 0, z: 330, up: ride.state.heave, over: 500, sideways: true });
    stepRide(ride, 20_000);
    expectClose(ride.state.roll, (300 * 150) / ((18 * 900 ** 2) / 2), 1e-5, 'roll by a pull to the left');
  });
});

describe('energy', () => {
  /** J, from the state alone: motion, springs about ride height, tyres that press, weight. */
  function energy({ state: s, parameters: p }: Ride): number {
    const inertia = (p.sprungInertia + p.sprungMass * (p.sprungHeight - p.rollCentre) ** 2) / 1e6;
    let sum =
      (p.sprungMass * (s.frameSpeed / 1000) ** 2) / 2 +
      (p.unsprungMass * (s.axleSpeed / 1000) ** 2) / 2 +
      (inertia * s.frameRollSpeed ** 2) / 2 +
      ((p.axleInertia / 1e6) * s.axleRollSpeed ** 2) / 2;
    sum += (p.sprungMass * GRAVITY * s.frameRise + p.unsprungMass * GRAVITY * s.axleRise) / 1000;
    for (const side of [1, -1]) {
      const spring =
        (p.sprungMass * GRAVITY) / 2 / p.springRate + s.heave + (side * p.springBase * s.roll) / 2;
      const tyre =
        ((p.sprungMass + p.unsprungMass) * GRAVITY) / 2 / p.tyreRate -
        s.axleRise -
        (side * p.track * s.axleRoll) / 2;
      sum += (p.springRate * spring ** 2) / 2000 + (p.tyreRate * Math.max(0, tyre) ** 2) / 2000;
    }
    return sum;
  }

  test('is kept without dampers, off the ground too', () => {
    const ride = rideOf(quarterCars(...TEXTBOOK));
    placeRide(ride, { frameRise: 60, axleRise: 50, frameRoll: 0.03, axleRoll: -0.02 });
    const values = record(ride, 5, energy);
    const rest = (() => {
      placeRide(ride, {});
      return energy(ride);
    })();
    const brought = values[0]! - rest;
    expect(Math.min(...values) - rest).toBeGreaterThan(0.995 * brought);
    expect(Math.max(...values) - rest).toBeLessThan(1.005 * brought);
  });

  test('only falls with dampers, without a road that drives, to rest', () => {
    const ride = rideOf(quarterCars(...TEXTBOOK, { bumpDamping: 1, reboundDamping: 2, tyreDamping: 0.1 }));
    placeRide(ride, { frameRise: 40, axleRise: 30, frameRoll: 0.03, axleRoll: -0.02 });
    const values = record(ride, 5, energy);
    placeRide(ride, {});
    const rest = energy(ride);
    const brought = values[0]! - rest;
    for (let i = 1; i < values.length; i += 1)
      expect(values[i]! - values[i - 1]!).toBeLessThan(1e-4 * brought);
    expectClose(values.at(-1)!, rest, 1e-6 * brought, 'rest');
  });
});
