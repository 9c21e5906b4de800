import { describe, expect, test } from 'vitest';
import {
  DAMPING,
  formatQuantity,
  MASS,
  parseQuantity,
  RATE,
  ROLL_STIFFNESS,
  SPEED,
} from '../../../../src-renderer/controls/quantities.ts';

const read = (...of: Parameters<typeof parseQuantity>) => {
  const outcome = parseQuantity(...of);
  return outcome.ok ? outcome.value : outcome.failure;
};

describe('quantities of a car on its springs', () => {
  // Conversion factors: NIST Special Publication 811, appendix B.8 (lbf/in 175.1268 N/m, lb 0.45359237 kg, mph 0.44704 m/s,
  // lbf·ft 1.355818 N·m).
  test('are read in the units that people write', () => {
    expect(read(RATE, '100 lb/in', 'mm')).toBeCloseTo(17.51268, 4);
    expect(read(MASS, '100 lb', 'mm')).toBeCloseTo(45.359237, 6);
    expect(read(SPEED, '25 mph', 'mm')).toBeCloseTo(11_176, 6);
    expect(read(SPEED, '36 km/h', 'in')).toBeCloseTo(10_000, 6);
    expect(read(ROLL_STIFFNESS, '10 lb·ft/°', 'mm')).toBeCloseTo(13.55818, 4);
    expect(read(DAMPING, '10 lb s/in', 'in')).toBeCloseTo(1.751268, 5);
  });

  test('without a unit are in the reader’s own, and come back as they are shown', () => {
    expect(read(RATE, '100', 'in')).toBeCloseTo(17.51268, 4);
    expect(read(RATE, '20,5', 'mm')).toBe(20.5);
    for (const quantity of [RATE, MASS, SPEED, DAMPING, ROLL_STIFFNESS])
      for (const unit of ['in', 'mm'] as const) {
        const shown = formatQuantity(quantity, 12.3, unit);
        const value = read(quantity, shown, unit);
        expect(formatQuantity(quantity, value as number, unit), shown).toBe(shown);
      }
  });

  test('that are none are told with an example', () => {
    expect(read(RATE, '12 apples', 'in')).toBe(
      '"12 apples" is not a spring rate; write for example 120 lb/in or 21 N/mm',
    );
    expect(read(SPEED, ' ', 'in')).toBe('a speed is missing');
  });
});
