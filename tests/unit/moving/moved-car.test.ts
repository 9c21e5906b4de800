import { describe, expect, test } from 'vitest';
import { resolveLayout } from '../../../shared-math/layout/index.ts';
import {
  bothWheels,
  curvePlot,
  doingLines,
  MovedCar,
  oneWheel,
  RIDE_HEIGHT,
  rollWords,
  roundBump,
  shownCars,
  steeringWords,
  steerRange,
  steerWords,
} from '../../../shared-math/moving/index.ts';
import { toRadians } from '../../../shared-math/units/index.ts';
import { toeboard } from '../../support/command-line.ts';
import { DEMONSTRATIONS, demonstration } from '../../support/demonstration-files.ts';
import { documentOf, rawLayout } from '../../support/layouts.ts';

const carOf = (name: string) => new MovedCar(resolveLayout(demonstration(name)));

/** What the command `sweep` prints for one pose, mm and degrees: the program's published answer. */
async function swept(file: string, heave: number, roll: number, handwheel: number) {
  const { out } = await toeboard(
    'sweep',
    `projects/${file}`,
    `--heave=${heave}`,
    `--roll=${roll}`,
    `--handwheel=${handwheel}`,
  );
  return JSON.parse(out).rows[0] as { bumpSteer: number; left: { steer: number }; right: { steer: number } };
}

describe('a car moved about by hand', () => {
  test.each(DEMONSTRATIONS)('%s does in any pose what the sweep says', async (file, document) => {
    const car = new MovedCar(resolveLayout(document));
    for (const [heave, roll, handwheel] of [
      [50.8, 0, 0],
      [-61.3, 1.7, 140],
      [20.5, -2.2, -230],
    ] as const) {
      expect(car.put({ heave, roll: toRadians(roll), handwheel: toRadians(handwheel) })).toBeUndefined();
      const row = await swept(file, heave, roll, handwheel);
      const degrees = (radians: number) => (radians / Math.PI) * 180;
      expect(degrees(car.wheels.bumpSteer)).toBeCloseTo(row.bumpSteer, 9);
      expect(degrees(car.wheels.asked.left + car.wheels.byItself.left)).toBeCloseTo(row.left.steer, 9);
      expect(degrees(car.wheels.asked.right + car.wheels.byItself.right)).toBeCloseTo(row.right.steer, 9);
    }
  });

  test('stays where it was where a link does not reach, and says which', () => {
    const car = carOf('four-bar-cross-steer');
    const pose = { ...RIDE_HEIGHT, heave: 30 };
    expect(car.put(pose)).toBeUndefined();
    const placed = car.placed.slice();
    // Some three turns of the handwheel: far past what the links reach.
    expect(car.put({ ...pose, handwheel: 20 })).toBe('tie-rod');
    expect(car.pose).toEqual(pose);
    for (let i = 0; i < placed.length; i += 1) expect(car.placed[i]).toBeCloseTo(placed[i] as number, 8);
    expect(car.standing).toBe(true);
  });

  test('its mark lies on its own curve, and to the side to which the wheels go', () => {
    const car = carOf('hairpins-box-too-low');
    car.put({ ...RIDE_HEIGHT, heave: car.layout.travel.bump });
    const plot = curvePlot([car], { unit: 'in', fraction: 16 }, steerRange([car]));
    const last = plot.lines[0]?.path.split(/[ML]/).at(-1)?.split(' ').map(Number);
    expect(plot.lines[0]?.mark).toEqual(last);
    const middle = (plot.area.left + plot.area.right) / 2;
    // Below 0 is to the right, which is the right of the plot.
    expect(car.wheels.bumpSteer).toBeLessThan(0);
    expect(plot.lines[0]?.mark?.[0]).toBeGreaterThan(middle);
  });

  test('over a bump of two inches the figures are those of the poses that they name', async () => {
    const car = carOf('hairpins-box-too-low');
    const bump = roundBump(car, 'in');
    expect(bump).toBe(50.8);
    const both = bothWheels(car, bump);
    const row = await swept('hairpins-box-too-low.json', 50.8, 0, 0);
    expect(((both.steer as number) / Math.PI) * 180).toBeCloseTo(row.bumpSteer, 9);
    const one = oneWheel(car, bump);
    // One wheel centre a bump up and the other where it was: half the bump, and the slope between them.
    const across = car.layout.axle.left.wheelCentre[1] - car.layout.axle.right.wheelCentre[1];
    expect(one.pose.heave).toBeCloseTo(25.4, 9);
    expect(Math.abs(Math.sin(one.pose.roll)) * across).toBeCloseTo(50.8, 9);
    const other = car.put({ ...one.pose, roll: -one.pose.roll });
    expect(other).toBeUndefined();
    expect(Math.abs(car.wheels.bumpSteer)).toBeLessThanOrEqual(Math.abs(one.steer as number));
  });
});

// A rod's ball on the line through the wheel centres lets the axle turn about that line (contract, section 5: known cases).
const FREE = documentOf(
  rawLayout({ location: { kind: 'hairpins', left: { framePivot: [0, 415, 330] }, right: 'mirror' } }),
);

test('a car that cannot be posed even at ride height lies as it was drawn, and that is said in place of a figure', () => {
  const car = new MovedCar(resolveLayout(FREE));
  expect(car.standing).toBe(false);
  expect(car.put({ ...RIDE_HEIGHT, heave: 20 })).toBe('axle-free');
  expect(doingLines([{ at: 0, name: 'Free', car }], { unit: 'in', fraction: 16 })).toEqual([
    'The links leave the axle free to move, so no pose is drawn.',
  ]);
  expect(car.curve).toEqual({ heave: [], bumpSteer: [] });
  expect(bothWheels(car, 50).steer).toBeUndefined();
  expect(Math.max(...car.placed)).toBeGreaterThan(300);
});

describe('what is said of it', () => {
  test('names the way, says nothing rounded to nothing, and keeps to plain places', () => {
    expect(steerWords(toRadians(-1.314))).toBe('1.31° to the right');
    expect(steerWords(toRadians(0.02))).toBe('0.02° to the left');
    expect(steerWords(toRadians(0.0049))).toBeUndefined();
    expect(rollWords(toRadians(1.5))).toBe('1.5°, left wheel up');
    expect(rollWords(0)).toBe('level');
    expect(steeringWords(toRadians(-90))).toBe('90° to the right');
  });

  test('with the handwheel turned it says where both wheels point, as the sweep has it', async () => {
    const style = { unit: 'in', fraction: 16 } as const;
    const cars = ['hairpins-side-steer', 'hairpins-box-too-low'].map((name, at) => ({
      at: at as 0 | 1,
      name: ['After', 'Before'][at] as string,
      car: carOf(name),
    }));
    const angles: string[] = [];
    for (const [i, file] of ['hairpins-side-steer.json', 'hairpins-box-too-low.json'].entries()) {
      const { left, right } = await swept(file, 0, 0, 180);
      // Positive is to the left (ISO 8855), the inner wheel turned further.
      expect(left.steer).toBeGreaterThan(right.steer);
      expect(right.steer).toBeGreaterThan(1);
      angles.push(`${left.steer.toFixed(1)}° and ${right.steer.toFixed(1)}° to the left`);
      cars[i]?.car.put({ ...RIDE_HEIGHT, handwheel: toRadians(180) });
    }
    const held = 'At ride height, at 180° of handwheel to the left';
    expect(doingLines(cars.slice(0, 1), style)).toEqual([
      `${held}: left and right wheel point ${angles[0]}.`,
    ]);
    expect(doingLines(cars, style)).toEqual([
      `${held}, left and right wheel:`,
      `After: ${angles[0]}.`,
      `Before: ${angles[1]}.`,
    ]);
    const [moved] = cars;
    moved?.car.put({ heave: 50.8, roll: 0, handwheel: toRadians(-180) });
    const { bumpSteer, left, right } = await swept('hairpins-side-steer.json', 50.8, 0, -180);
    const way = bumpSteer > 0 ? 'left' : 'right';
    expect(doingLines(cars.slice(0, 1), style)).toEqual([
      `Both wheels 2 in up, at 180° of handwheel to the right: left and right wheel point ${Math.abs(left.steer).toFixed(1)}° and ${Math.abs(right.steer).toFixed(1)}° to the right; the wheels steer themselves ${Math.abs(bumpSteer).toFixed(2)}° to the ${way}.`,
    ]);
  });

  test('one car is a sentence; two are a line each under where both stand', () => {
    const cars = ['hairpins-side-steer', 'hairpins-box-too-low'].map((name, at) => ({
      at: at as 0 | 1,
      name: ['After', 'Before'][at] as string,
      car: carOf(name),
    }));
    for (const { car } of cars) car.put({ ...RIDE_HEIGHT, heave: 50.8 });
    const style = { unit: 'in', fraction: 16 } as const;
    expect(doingLines(shownCars(cars, 'second'), style)).toEqual([
      'Both wheels 2 in up: the wheels steer themselves 2.44° to the right.',
    ]);
    expect(doingLines(shownCars(cars, 'both'), style)).toEqual([
      'Both wheels 2 in up:',
      'After: 0.18° to the left.',
      'Before: 2.44° to the right.',
    ]);
  });
});
