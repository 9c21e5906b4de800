import fc from 'fast-check';
import { expect, test } from 'vitest';
import { forecastStations, gaugeStations } from '../../../../shared-math/adjust/gauge/index.ts';
import { prepareFrontEnd } from '../../../../shared-math/linkage/index.ts';
import { sweepTravel } from '../../../../shared-math/sweep/index.ts';
import { layoutOf } from '../../../support/layouts.ts';

const travel = (bump: number, rebound: number) => ({ bump, rebound, roll: 3 });

test('3 in of bump and 2 in of droop are read every half inch', () => {
  const found = gaugeStations(travel(76.2, 50.8), 'in').map((heave) => heave / 25.4);
  for (const [i, at] of [-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3].entries())
    expect(found[i]).toBeCloseTo(at, 12);
  expect(found).toHaveLength(11);
});

test('75 mm of bump are read every 10 mm and at the end', () => {
  expect(gaugeStations(travel(75, 0), 'mm')).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 75]);
});

test('stations reach from end to end, rise, hold ride height, are few and never crowd', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1000, noNaN: true }),
      fc.double({ min: 0, max: 1000, noNaN: true }),
      fc.constantFrom('in' as const, 'mm' as const),
      (bump, rebound, unit) => {
        const found = gaugeStations(travel(bump, rebound), unit);
        expect(found[0]).toBe(-rebound + 0);
        expect(found.at(-1)).toBe(bump);
        expect(found).toContain(0);
        expect(found.length).toBeLessThanOrEqual(19);
        const gaps = found.slice(1).map((at, i) => at - (found[i] as number));
        for (const gap of gaps) expect(gap).toBeGreaterThan(0);
        // Between two ends of a side no station is nearer to an end than a third of a step.
        if (gaps.length > 4)
          expect(Math.min(...gaps.slice(1, -1))).toBeGreaterThan(Math.max(...gaps) / 3 - 1e-9);
      },
    ),
  );
});

test('what a gauge should read is what the sweep has for toe: in where the wheel’s front comes in', () => {
  const layout = layoutOf();
  const sweep = sweepTravel(prepareFrontEnd(layout), 'heave', -60, 60, 5, 0);
  const found = forecastStations(layout, [...sweep.at]);
  for (const [i, { left, right }] of found.entries()) {
    // A wheel's toe-in is its steer toward the centre plane: negative steer on the left, positive on the right.
    expect(left).toBeCloseTo((sweep.leftSteer[2] as number) - (sweep.leftSteer[i] as number), 12);
    expect(right).toBeCloseTo((sweep.rightSteer[i] as number) - (sweep.rightSteer[2] as number), 12);
  }
  expect(Math.abs(found[0]?.left ?? 0)).toBeGreaterThan(1e-4);
});

test('a station that the linkage does not reach is null, not 0', () => {
  expect(forecastStations(layoutOf(), [0, 3000])[1]).toEqual({ heave: 3000, left: null, right: null });
});
