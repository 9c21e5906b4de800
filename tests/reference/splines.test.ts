import { describe, expect, test } from 'vitest';
import {
  CALIPER_UNCERTAINTY,
  identifySpline,
  involuteDimensions,
  SERRATED_SIZES,
  type SplineIdentity,
  STANDARD_PITCHES,
  serrationAngle,
  sharpPoints,
} from '../../shared-math/splines/index.ts';
import { expectClose } from '../support/close.ts';

const IN = 25.4;
const INCHES = { unit: 'in', fraction: 0 } as const;

function identified(inches: number, counted: number, over: 'circle' | 'half' = 'circle'): SplineIdentity {
  const measure = {
    outsideDiameter: inches * IN,
    counted,
    over,
    missing: 0,
    uncertainty: CALIPER_UNCERTAINTY,
  };
  const outcome = identifySpline(measure, INCHES);
  if (!outcome.ok) throw new Error(outcome.failure);
  return outcome.value;
}

describe('involute splines by the formulas of ANSI B92.1-1970 (R1993) / SAE J498, 30°', () => {
  // Formulas found in a public copy; figures computed from them, no handbook's worked example was found. Inches.
  // N, P, D, base, circular pitch, space, internal major flat and fillet, external major, internal minor, external
  // minor flat. FLAG: the external minor's row for 16/32 and finer is garbled in that copy: read the standard.
  test.each([
    [16, 12, 1.3333, 1.1547, 0.2618, 0.1309, 1.4458, 1.4833, 1.4167, 1.25, 1.2208],
    [24, 16, 1.5, 1.299, 0.1963, 0.0982, 1.5844, 1.6125, 1.5625, 1.4375, 1.4156],
    [23, 32, 0.7188, 0.6225, 0.0982, 0.0491, 0.7609, 0.775, 0.75, 0.6875, 0.6766],
  ])('%d teeth, pitch %d', (N, P, D, base, p, s, majorFlat, majorFillet, external, minor, externalMinor) => {
    const flat = involuteDimensions(N, P, 30, 'flat');
    const fillet = involuteDimensions(N, P, 30, 'fillet');
    const close = (mm: number | undefined, inches: number, what: string) =>
      expectClose((mm as number) / IN, inches, 5.1e-5, what);
    close(flat.pitchDiameter, D, 'pitch diameter');
    close(flat.baseDiameter, base, 'base diameter');
    close(flat.circularPitch, p, 'circular pitch');
    close(flat.spaceWidth, s, 'space');
    close(flat.internalMajor, majorFlat, 'internal major, flat root');
    close(fillet.internalMajor, majorFillet, 'internal major, fillet root');
    close(flat.externalMajor, external, 'external major');
    close(flat.internalMinor, minor, 'internal minor');
    close(flat.externalMinor, externalMinor, 'external minor, flat root');
    expect(flat.externalMinorCertain).toBe(P <= 12);
  });

  test('36 teeth, pitch 48: fillet root only', () => {
    const flat = involuteDimensions(36, 48, 30, 'flat');
    const fillet = involuteDimensions(36, 48, 30, 'fillet');
    expect([flat.internalMajor, flat.externalMinor]).toEqual([undefined, undefined]);
    for (const [mm, inches] of [
      [fillet.pitchDiameter, 0.75],
      [fillet.baseDiameter, 0.6495],
      [fillet.circularPitch, 0.0654],
      [fillet.spaceWidth, 0.0327],
      [fillet.internalMajor, 0.7875],
      [fillet.externalMajor, 0.7708],
      [fillet.internalMinor, 0.7292],
    ] as const)
      expectClose((mm as number) / IN, inches, 5.1e-5);
    expect(fillet.externalMinorCertain).toBe(false);
  });

  test('form clearance is 0.001 D, no less than 0.002 in and no more than 0.010 in', () => {
    expectClose(involuteDimensions(16, 2.5, 30, 'flat').formClearance / IN, 0.0064, 1e-12);
    expectClose(involuteDimensions(23, 32, 30, 'flat').formClearance / IN, 0.002, 1e-12);
    expectClose(involuteDimensions(60, 2.5, 30, 'flat').formClearance / IN, 0.01, 1e-12);
  });

  test('at 45° only what both angles share is told', () => {
    const { externalMajor, baseDiameter, internalMajor, internalMinor, externalMinor } = involuteDimensions(
      36,
      48,
      45,
      'fillet',
    );
    expectClose(externalMajor / IN, 37 / 48, 1e-12);
    expectClose(baseDiameter / IN, 0.75 * Math.SQRT1_2, 1e-12);
    expect([internalMajor, internalMinor, externalMinor]).toEqual([undefined, undefined, undefined]);
  });
});

describe('serrated shaft ends, SAE J500-1995 (service use; constants and rows found in public copies)', () => {
  test.each([
    [36, 80, 1.0476479, 0.9523521],
    [48, 82.5, 1.0349592, 0.9650408],
  ])(
    '%d serrations: %d° included, sharp points at %d and %d of the pitch diameter',
    (N, angle, over, under) => {
      expectClose(serrationAngle(N), angle, 1e-12);
      // The derived 1.0476476 and 1.0349525 agree with what is printed.
      expectClose(sharpPoints(N).over, over, 1e-5);
      expectClose(sharpPoints(N).under, under, 1e-5);
      expectClose(sharpPoints(N).over + sharpPoints(N).under, 2, 1e-12);
    },
  );

  // Nominal, N, pitch diameter, across wires on the shaft and in the hole, over sharp points (computed). Inches.
  test.each([
    ['1/4', 36, 0.243, 0.2701, 0.2216, 0.2546],
    ['1/2', 36, 0.485, 0.539, 0.4423, 0.5081],
    ['3/4', 48, 0.733, 0.7934, 0.6824, 0.7586],
    ['1', 48, 0.977, 1.0575, 0.9095, 1.0112],
    ['1-1/2', 48, 1.464, 1.5846, 1.3629, 1.5152],
  ])('%s in, %d serrations', (name, N, pitch, shaft, hole, sharp) => {
    const size = SERRATED_SIZES.find((entry) => entry.name === name)!;
    expect(size.teeth).toBe(N);
    expectClose(size.pitchDiameter / IN, pitch, 1e-9);
    expectClose((size.pitchDiameter * sharpPoints(N).over) / IN, sharp, 1e-4, 'over sharp points');
    // The table against its own printed constants: 1.1113285 and 0.9119441 (36), 1.0823601 and 0.9309375 (48), of the
    // pitch diameter. The rows are rounded, so they reproduce to a ten-thousandth or so.
    const [onShaft, inHole] = N === 36 ? [1.1113285, 0.9119441] : [1.0823601, 0.9309375];
    expectClose(size.shaftAcrossWires / IN, shaft, 1e-9);
    expectClose(size.holeAcrossWires / IN, hole, 1e-9);
    expectClose((size.pitchDiameter * onShaft) / IN, shaft, 1.1e-4, 'across wires, shaft');
    expectClose((size.pitchDiameter * inHole) / IN, hole, 1.1e-4, 'across wires, hole');
  });
});

describe('what a measured spline may be', () => {
  test('23 teeth on 0.750 in is pitch 32 (formula found; list from memory)', () => {
    const { pitchByFormula, candidates, verdict, tradeName } = identified(0.75, 23);
    expectClose(pitchByFormula, 32, 1e-9);
    expect(STANDARD_PITCHES).toContain(32);
    expect(candidates.map(({ teeth, pitch, form }) => [teeth, pitch, form])).toEqual([
      [23, 32, 'involute-30'],
      [23, 32, 'involute-45'],
    ]);
    // Diameter and count are the same at both pressure angles, and do not interchange (from memory).
    expect(verdict).toBe('choose');
    expect(tradeName).toBe('3/4-23');
  });

  // Trade facts, measured by others: nominal is not measured, and a name proves no form. The pitch by the formula is
  // on no list, so the answer is a trial fit and never a conversion.
  test.each([
    ['13/16-36', 0.8, 0.805, 36, 46.1],
    ['3/4-30', 0.72, 0.725, 30, 42.9],
    ['3/4-48', 0.742, 0.747, 48, 65.8],
  ])('"%s", %d to %d in over the teeth: unidentified, trial fit', (name, least, most, teeth, pitch) => {
    for (const inches of [least, (least + most) / 2, most]) {
      const { verdict, tradeName, sentence, candidates } = identified(inches, teeth);
      expect(verdict).toBe('trial-fit');
      expect(tradeName).toBe(name);
      expect(sentence).toMatch(/Trial-fit the mating part before ordering/);
      expect(candidates.filter((entry) => entry.countDifference === 0 && entry.pitch)).toEqual([]);
    }
    expectClose(identified((least + most) / 2, teeth).pitchByFormula, pitch, 0.05);
  });

  test('the serrated form of 3/4-48 is named, with the caution that it is not an involute', () => {
    const { candidates, warnings } = identified(0.7445, 48);
    expect(candidates[0]).toMatchObject({ form: 'serrated', standard: 'SAE J500', teeth: 48 });
    expect(warnings.join(' ')).toMatch(/do not go together with an involute of the same count/);
  });

  test('half the circle of 13/16-36: 18 counted are 36', () => {
    // Counting half and doubling: common practice.
    expect(identified(0.8025, 18, 'half')).toMatchObject({ teeth: 36, tradeName: '13/16-36' });
  });
});
