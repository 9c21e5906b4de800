import { describe, expect, test } from 'vitest';
import {
  BOLT_GRADES,
  boltTension,
  doubleDSection,
  flatWidth,
  NEWTON_METRES_PER_POUND_FOOT,
  NEWTON_METRES_PER_POUND_INCH,
  pinchFriction,
  preloadTension,
  roundSection,
  SET_SCREWS,
  setScrewOf,
  setScrewTorque,
  shearStress,
  type TorsionSection,
  threadStressArea,
  tighteningTorque,
  twistOf,
} from '../../shared-math/shaft/index.ts';
import { NEWTONS_PER_POUND } from '../../shared-math/units/index.ts';
import { DEGREE, expectClose } from '../support/close.ts';

const IN = 25.4;
const PSI = NEWTONS_PER_POUND / IN ** 2;

function doubleD(diameter: number, acrossFlats: number): TorsionSection {
  const outcome = doubleDSection(diameter * IN, acrossFlats * IN);
  if (!outcome.ok) throw new Error(outcome.failure);
  return outcome.value;
}

describe('torsion of a solid round shaft (any strength text; computed)', () => {
  test.each([
    [0.625, 25033],
    [0.75, 14487],
    [1, 6112],
  ])('1200 lbf·in in %d in round: %d psi', (diameter, stress) => {
    const found = shearStress(1200 * NEWTON_METRES_PER_POUND_INCH, roundSection(diameter * IN)) / PSI;
    expectClose(found, stress, 1e-3 * stress);
  });

  test('50 N·m in 20 mm round: 31.83 MPa', () => {
    expectClose(shearStress(50, roundSection(20)), 31.83, 0.03);
  });

  test('5/8 in round is 42.1 % weaker than 3/4 in (found: a public article, "42 percent")', () => {
    expectClose(roundSection(0.625).modulus / roundSection(0.75).modulus, 0.5787, 1e-4);
  });

  test('36 in of 3/4 in round under 30 lbf·ft twists 2.079°, at 11.5 million psi; J 0.031063 in⁴', () => {
    const section = roundSection(0.75 * IN);
    expectClose(section.stiffness / IN ** 4, 0.031063, 3e-5);
    const twist = twistOf(30 * NEWTON_METRES_PER_POUND_FOOT, 36 * IN, section, 11.5e6 * PSI);
    expectClose(twist / DEGREE, 2.079, 2e-3);
    // The modulus that is used unless another is given is the same figure.
    expectClose(twistOf(30 * NEWTON_METRES_PER_POUND_FOOT, 36 * IN, section) / twist, 1, 1e-3);
  });
});

describe('double-D shafts', () => {
  // Columns: diameter, across flats, flat width, area, K, τ/T (in); stress and stiffness against the full round.
  // Chord and area: geometry. K and stress: Roark, 7th ed., Table 10.1 (found, a public copy); a finite-difference
  // torsion solution agrees within 0.1 % on stress and 0.7 % on K.
  test.each([
    [1, 0.8, 0.6, 0.7036, 0.07499, 7.823, 1.536, 0.764],
    [1, 0.75, 0.6614, 0.6721, 0.06681, 8.633, 1.695, 0.681],
    [0.75, 0.56, 0.4989, 0.3768, 0.02096, 20.605, 1.707, 0.675],
    [0.75, 0.55, 0.5099, 0.3718, 0.02026, 21.197, 1.756, 0.652],
  ])('%d in with %d in across the flats', (diameter, flats, width, area, K, stress, worse, softer) => {
    const section = doubleD(diameter, flats);
    const round = roundSection(diameter * IN);
    expectClose(flatWidth(diameter * IN, flats * IN) / IN, width, 1e-4, 'flat');
    expectClose(section.area / IN ** 2, area, 1e-4, 'area');
    expectClose(section.stiffness / IN ** 4, K, 1e-3 * K, 'K');
    expectClose(IN ** 3 / section.modulus, stress, 1e-3 * stress, 'stress');
    expectClose(round.modulus / section.modulus, worse, 5e-3 * worse, 'stress against the round');
    expectClose(section.stiffness / round.stiffness, softer, 5e-3 * softer, 'stiffness against the round');
  });

  test('flats too deep for the fitted formula are said, not extrapolated', () => {
    expect(doubleDSection(25, 9)).toEqual({ ok: false, failure: 'too-flat' });
    expect(doubleDSection(25, 26)).toEqual({ ok: false, failure: 'too-flat' });
    expect(doubleDSection(25, 10.1).ok).toBe(true);
  });
});

describe('bolts', () => {
  // ASME B1.1: 0.7854 (D - 0.9743/n)²; table values found in reference tables, recomputed.
  test.each([
    [0.25, 28, 0.0364],
    [0.3125, 24, 0.0581],
    [0.375, 24, 0.0878],
    [0.4375, 20, 0.1187],
    [0.5, 20, 0.16],
    [0.625, 18, 0.256],
    [0.375, 16, 0.0775],
    [0.5, 13, 0.1419],
  ])('stress area of %d in, %d threads an inch: %d in²', (diameter, threads, area) => {
    expectClose(threadStressArea(diameter * IN, threads) / IN ** 2, area, 2e-4);
  });

  // F = 0.75 proof × area, T = 0.20 D F dry. SAE J429; Shigley & Mischke, 5th ed., p. 341 (grades found, computed).
  test.each([
    [0.3125, 24, 5, 3702, 19.3],
    [0.3125, 24, 8, 5226, 27.2],
    [0.375, 24, 5, 5599, 35.0],
    [0.375, 24, 8, 7905, 49.4],
    [0.4375, 20, 5, 7568, 55.2],
    [0.4375, 20, 8, 10684, 77.9],
    [0.5, 20, 5, 10197, 85.0],
    [0.5, 20, 8, 14396, 120.0],
  ] as const)('%d-%d grade %d: %d lbf, %d lbf·ft dry', (diameter, threads, grade, force, torque) => {
    const tension = preloadTension(diameter * IN, threads, grade);
    expectClose(tension / NEWTONS_PER_POUND, force, 5e-3 * force, 'tension');
    const found = tighteningTorque(tension, diameter * IN);
    expectClose(found / NEWTON_METRES_PER_POUND_FOOT, torque, 5e-3 * torque, 'torque');
    expectClose(boltTension(found, diameter * IN), tension, 1e-9 * tension, 'and back');
  });

  test('SAE J429 yield and tensile: 57/74, 92/120, 130/150 ksi (found)', () => {
    expect([2, 5, 8].map((grade) => BOLT_GRADES[grade as 2 | 5 | 8])).toMatchObject([
      { yield: 57, tensile: 74 },
      { yield: 92, tensile: 120 },
      { yield: 130, tensile: 150 },
    ]);
  });

  test('M10 8.8 at 50 N·m, K 0.2: 25 kN, 431 MPa on 58 mm² (worked example, found)', () => {
    expectClose(boltTension(50, 10), 25_000, 25);
    expectClose(boltTension(50, 10) / 58, 431, 0.5);
  });

  test('M12 8.8, 0.7 × 580 × 84.3: 34.2 kN, 82.1 N·m (worked example, found)', () => {
    const tension = 0.7 * 580 * 84.3;
    expectClose(tension, 34_200, 70);
    expectClose(tighteningTorque(tension, 12), 82.1, 0.17);
  });

  test('a pinch bolt of 7905 lbf on plain 3/4 in round, μ 0.15: 889 to 1397 lbf·in (split-hub theory; computed)', () => {
    const { least, most } = pinchFriction(7905 * NEWTONS_PER_POUND, 0.75 * IN);
    expectClose(least / NEWTON_METRES_PER_POUND_INCH, 889, 9);
    expectClose(most / NEWTON_METRES_PER_POUND_INCH, 1397, 14);
  });
});

describe('set screws', () => {
  // Shigley, Table 7-4: torques found in several charts, holding from memory. FLAG: another published chart gives
  // 400/700/1000/1500 lbf for the same torques.
  test.each([
    ['1/4', 87, 1000, 400],
    ['5/16', 165, 1500, 700],
    ['3/8', 290, 2000, 1000],
    ['1/2', 620, 3000, 1500],
  ])('%s in: %d lbf·in seats it, holds %d lbf, by another chart %d', (name, torque, hold, cautious) => {
    const screw = SET_SCREWS.find((entry) => entry.name === name)!;
    expectClose(screw.seatingTorque / NEWTON_METRES_PER_POUND_INCH, torque, 1e-6);
    expectClose(screw.axialHold / NEWTONS_PER_POUND, hold, 1e-6);
    expectClose(screw.cautiousHold / NEWTONS_PER_POUND, cautious, 1e-6);
    expect(setScrewOf(screw.diameter)).toBe(screw);
  });

  test('3/8 in on a 3/4 in shaft holds 750 lbf·in by the one chart, half of that by the other', () => {
    const screw = setScrewOf(0.375 * IN)!;
    const found = setScrewTorque(screw.axialHold, 0.75 * IN) / NEWTON_METRES_PER_POUND_INCH;
    expectClose(found, 750, 7.5);
    expectClose(setScrewTorque(screw.cautiousHold, 0.75 * IN) / NEWTON_METRES_PER_POUND_INCH, 375, 4);
  });

  test('a size that is not listed has no figure', () => {
    expect(setScrewOf(20)).toBeUndefined();
  });
});

test('150 N at 0.19 m is 28.5 N·m, 252 lbf·in: what the strongest permitted effort puts through the shaft', () => {
  // 150 N: UN Regulation 79 sec. 6.2, category M1, intact steering (from memory). The rest is arithmetic.
  const torque = 150 * 0.19;
  expectClose(torque, 28.5, 1e-12);
  expectClose(torque / NEWTON_METRES_PER_POUND_INCH, 252, 0.5);
  expectClose(shearStress(torque, roundSection(0.75 * IN)), (16 * 28_500) / (Math.PI * 19.05 ** 3), 1e-9);
});
