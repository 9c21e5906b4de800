import { describe, expect, test } from 'vitest';
import { carOf, newQuestion, type Question } from '../../../shared-math/counter/index.ts';
import { type LayoutDocument, PLAIN_LAYOUT, readLayout } from '../../../shared-math/layout/index.ts';
import { routeOf } from '../../../shared-math/shaft/index.ts';
import { DEGREE, expectClose } from '../../support/close.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;

function made(question: Question): LayoutDocument {
  const car = carOf(question, 'From a call', 'Rings back', INCHES, {});
  if (!car.ok) throw new Error(car.failure);
  expect(readLayout(car.value).ok).toBe(true);
  return car.value;
}

const SHAFT = { ...newQuestion('shaft'), apart: 762, lower: 250, out: 100, columnFalls: 25 } as const;
const PLACES = {
  ...newQuestion('shaft'),
  by: 'places',
  columnBack: 1100,
  columnOut: 340,
  columnUp: 850,
  boxBack: 500,
  boxOut: 400,
  boxUp: 560,
} as const;

describe('a question becomes a car', () => {
  test('a shaft measured from end to end: the distance stands, the joints are planned, all else is a guess', () => {
    const { shaft, origins, notes } = made(SHAFT);
    const [from, to] = [shaft?.column.end, shaft?.box.end];
    expectClose(Math.hypot(...(to ?? []).map((value, i) => value - (from?.[i] ?? 0))), 762, 1e-6);
    expect(origins).toEqual({ 'shaft.joints.0.centre': 'plan', 'shaft.joints.1.centre': 'plan' });
    for (const words of [
      'From the counter: 2 single joints',
      'Rings back',
      'The box’s input lies level.',
      'a guess',
    ])
      expect(notes).toContain(words);
  });

  test('a shaft measured in the car: both ends are taped where they are, and the box stands at its input', () => {
    const { shaft, origins, steering } = made(PLACES);
    expect(shaft?.column.end).toEqual([-1100, 340, 850]);
    expect(shaft?.box.end).toEqual([-500, 400, 560]);
    expect(origins).toMatchObject({ 'shaft.column.end': 'tape', 'shaft.box.end': 'tape' });
    expect(origins).not.toHaveProperty('steering.box.sectorCentre');
    // The worm lies square to the sector shaft.
    const [a, b] = [steering.box.sectorAxis, shaft?.box.axis ?? [0, 0, 0]];
    expectClose(a[0] * b[0] + a[1] * b[1] + a[2] * b[2], 0, 1e-9);
    expectClose(
      Math.hypot(...steering.box.sectorCentre.map((value, i) => value - (shaft?.box.end[i] ?? 0))),
      Math.hypot(112, 66),
      1e-6,
    );
  });

  test('the driver on the right: the steering stands there', () => {
    const { car, shaft, steering } = made({ ...SHAFT, driverSide: 'right' });
    expect(car.driverSide).toBe('right');
    for (const y of [shaft?.column.end[1], shaft?.box.end[1], steering.box.sectorCentre[1]])
      expect(y).toBeLessThan(0);
  });

  test('the ends and the route that were answered are those that are drawn', () => {
    const boxFit = { kind: 'spline', form: 'involute-45', teeth: 36, pitch: 48, diameter: 19.58 } as const;
    const { shaft } = made({ ...SHAFT, boxFit, joints: 3 });
    expect(shaft?.joints).toHaveLength(3);
    expect(shaft?.box.fit).toEqual(boxFit);
    expect(shaft?.column).not.toHaveProperty('fit');
    expect(shaft?.joints[0]).not.toHaveProperty('columnSide');
    expect(shaft && routeOf(shaft).joints.every(({ angle, limit }) => angle <= limit + 0.01 * DEGREE)).toBe(
      true,
    );
  });

  test('a spline or an end goes to the column or the box that it is on, and to neither where nobody said', () => {
    const spline = { ...newQuestion('spline'), over: 'circle', counted: 36, outsideDiameter: 19.58 } as const;
    expect(made({ ...spline, whose: 'column' }).shaft?.column.fit).toMatchObject({
      teeth: 36,
      form: 'unidentified',
    });
    const neither = made(spline).shaft;
    expect([neither?.column, neither?.box].some((part) => part && 'fit' in part)).toBe(false);
    const end = { kind: 'round', diameter: 19.05 } as const;
    expect(made({ ...newQuestion('fit'), end, whose: 'box' }).shaft?.box.fit).toEqual(end);
  });

  test('an arrangement brings load, sizes and the one that was chosen; what it laid is planned', () => {
    const { car, steering, origins } = made({
      ...newQuestion('arrangement'),
      frontAxleLoad: 6000,
      tyreWidth: 170,
      chosen: 'cross-assisted',
    });
    expect(car).toMatchObject({ frontAxleLoad: 6000, tyreWidth: 170, wheelbase: PLAIN_LAYOUT.car.wheelbase });
    expect(steering).toMatchObject({ dragLinkTo: 'right', box: { assist: 'power' } });
    expect(origins?.['steering.box.pitmanBall']).toBe('plan');
    expect(Object.keys(origins ?? {}).some((id) => id.startsWith('axle.'))).toBe(false);
  });

  test.each<[string, Question]>([
    ['shaft', newQuestion('shaft')],
    ['spline', newQuestion('spline')],
    ['fit', newQuestion('fit')],
    ['arrangement', newQuestion('arrangement')],
  ])('of a bare question of %s nothing is made, and it says why', (_, question) => {
    const car = carOf(question, 'Bare', '', INCHES, {});
    expect(car.ok ? 'made' : car.failure.length).not.toBe('made');
  });
});
