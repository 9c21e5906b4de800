import { describe, test } from 'vitest';
import { parkingEffort } from '../../shared-math/sweep/index.ts';
import { expectClose } from '../support/close.ts';

const LBF = 4.4482216152605;
const IN = 25.4;
const LBF_IN = (LBF * IN) / 1000;

describe('parking effort by the published sizing formula T = μ W √(B²/8 + E²)', () => {
  test('handbook example: 700 lbf a wheel, 6.5 in tyre, 2 in offset, μ 0.7: 2985.6 lbf·in an axle', () => {
    const effort = parkingEffort({
      frontAxleLoad: 1400 * LBF,
      tyreWidth: 6.5 * IN,
      eccentricity: 2 * IN,
      overallRatio: 16,
      handwheelRadius: 7.5 * IN,
      friction: 0.7,
      efficiency: 0.7,
    });
    expectClose(effort.kingpinTorque / LBF_IN, 2985.6, 3);
    expectClose(effort.handwheelTorque / LBF_IN, 266.6, 0.3);
    expectClose(effort.rimForce / LBF, 35.5, 0.1);
  });

  test('350 kg a wheel, 165 mm tyre, 60 mm offset: 201.1 N·m a wheel', () => {
    const effort = parkingEffort({
      frontAxleLoad: 2 * 350 * 9.80665,
      tyreWidth: 165,
      eccentricity: 60,
      overallRatio: 16,
      handwheelRadius: 190,
      friction: 0.7,
    });
    expectClose(effort.kingpinTorque / 2, 201.1, 0.3);
  });

  test('150 N on a rim of 0.19 m is 28.5 N·m', () => {
    const effort = parkingEffort({
      frontAxleLoad: 4900,
      tyreWidth: 150,
      eccentricity: 20,
      overallRatio: 16,
      handwheelRadius: 190,
    });
    expectClose(effort.handwheelTorque / effort.rimForce, 0.19, 1e-12);
  });

  // Mean friction radius of a disc of diameter B about a point E away, over B: by double integration here, and the
  // formula's own value, which errs high by 3 to 10 per cent.
  test.each([
    [0, 0.33333, 0.35355],
    [0.25, 0.39484, 0.43301],
    [0.5, 0.56588, 0.61237],
    [1, 1.03159, 1.06066],
  ])('offset %d of the width: true radius %d, formula %d', (offset, exact, formula) => {
    let [sum, area] = [0, 0];
    const n = 600;
    for (let i = 0; i < n; i += 1)
      for (let j = 0; j < n; j += 1) {
        const [x, y] = [(i + 0.5) / n - 0.5, (j + 0.5) / n - 0.5];
        if (x * x + y * y > 0.25) continue;
        sum += Math.hypot(x + offset, y);
        area += 1;
      }
    expectClose(sum / area, exact, 2e-4, 'integrated');
    const { kingpinTorque } = parkingEffort({
      frontAxleLoad: 1000,
      tyreWidth: 1000,
      eccentricity: offset * 1000,
      overallRatio: 1,
      handwheelRadius: 1000,
      friction: 1,
    });
    expectClose(kingpinTorque / 1000, formula, 1e-5, 'formula');
  });
});
