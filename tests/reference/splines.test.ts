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
  standardSplines,
} from '../../shared-math/splines/index.ts';
import { expectClose } from '../support/close.ts';

const IN = 25.4;
const INCHES = { unit: 'in', fraction: 0 } as const;

function identified(
  inches: number,
  counted: number,
  over: 'circle' | 'half' = 'circle',
  otherHalf?: number,
): SplineIdentity {
  const measure = {
    outsideDiameter: inches * IN,
    counted,
    over,
    otherHalf,
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

  // Another public copy of the standard's equations: space (0.5π + 0.1)/P at 37.5° and 45°, and at 37.5° internal major
  // (N + 1.6)/P, internal minor (N - 0.8)/P; external major (N + 1)/P at every angle. Products computed here, inches.
  test('36 teeth, pitch 48 at 37.5°', () => {
    const { spaceWidth, internalMajor, internalMinor, externalMajor, baseDiameter } = involuteDimensions(
      36,
      48,
      37.5,
      'fillet',
    );
    expectClose(spaceWidth / IN, 0.0348, 5.1e-5);
    expectClose((internalMajor as number) / IN, 0.7833, 5.1e-5);
    expectClose((internalMinor as number) / IN, 0.7333, 5.1e-5);
    expectClose(externalMajor / IN, 0.7708, 5.1e-5);
    expectClose(baseDiameter / IN, 0.595, 5.1e-5);
    expect(involuteDimensions(36, 48, 37.5, 'flat').internalMajor).toBeUndefined();
  });

  test('at 45° only what both angles share is told', () => {
    const { externalMajor, baseDiameter, internalMajor, internalMinor, externalMinor, spaceWidth } =
      involuteDimensions(36, 48, 45, 'fillet');
    expectClose(externalMajor / IN, 37 / 48, 1e-12);
    expectClose(spaceWidth / IN, 0.0348, 5.1e-5);
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
      [23, 32, 'involute-37.5'],
      [23, 32, 'involute-45'],
    ]);
    // Diameter and count are the same at all three pressure angles, and do not interchange (from memory).
    expect(verdict).toBe('choose');
    expect(tradeName).toBe('3/4-23');
  });

  // (36 + 1)/48 in is 0.7708 in: a full count of 36 on a nominal 3/4 in stands 0.0208 in under its own form, while 35
  // teeth would be 36/48 in, 3/4 exactly. The count that was made wins. That ends sold by a nominal size measure under
  // the standard: common practice, no published source.
  test('a full count on a nominal size is not sent to the neighbouring count that happens to fit', () => {
    const halves = identified(0.75, 18, 'half', 18);
    for (const { teeth, verdict, candidates, sentence } of [identified(0.75, 36), halves]) {
      expect({ teeth, verdict }).toEqual({ teeth: 36, verdict: 'trial-fit' });
      expect(candidates[0]).toMatchObject({ teeth: 36, pitch: 48, fit: 'under' });
      expect(candidates[0]!.note).toBe('0.0208 in under: trial-fit');
      expect(sentence).toMatch(/^36 teeth on 0\.7500 in is nearest to 36 teeth, 48\/96 pitch.*trial-fit/);
      const neighbours = candidates.filter((entry) => entry.teeth === 35);
      expect(neighbours.map(({ note }) => note)).toContain('only if the count is 35, not 36');
      expect(candidates.findIndex((entry) => entry.teeth !== 36)).toBe(3);
    }
    // One half alone leaves an odd count open.
    expect(identified(0.75, 18, 'half')).toMatchObject({ teeth: 36, verdict: 'recount' });
    expect(identified(0.75, 18, 'half').candidates[0]).toMatchObject({ teeth: 35, pitch: 48 });
    expect(identified(0.75, 18, 'half', 17)).toMatchObject({ teeth: 35, verdict: 'choose' });
  });

  test('a caliper that reads 0.1 mm over still finds the nearest forms, and is asked again', () => {
    const outsideDiameter = (37 / 48) * IN + 0.1;
    const measure = { outsideDiameter, counted: 36, over: 'circle', missing: 0, uncertainty: 0.05 } as const;
    const outcome = identifySpline(measure, { unit: 'mm', fraction: 0 });
    if (!outcome.ok) throw new Error(outcome.failure);
    const { verdict, candidates, sentence } = outcome.value;
    expect(verdict).toBe('measure-again');
    expect(candidates.slice(0, 3).map(({ pitch, note }) => [pitch, note])).toEqual([
      [48, '0.10 mm over: measure again'],
      [48, '0.10 mm over: measure again'],
      [48, '0.10 mm over: measure again'],
    ]);
    expect(sentence).toContain('0.10 mm over: measure again');
  });

  test('where nothing is near it says so, and where the list ends', () => {
    // 30 teeth of 40/80 are 31/40 in, of 48/96 31/48 in: 0.71 in lies far from both.
    const { verdict, candidates, sentence, warnings } = identified(0.71, 30);
    expect(verdict).toBe('trial-fit');
    expect(candidates).toEqual([]);
    expect(sentence).toMatch(/would be pitch 43\.7, which is not on the list.*Trial-fit the mating part/);
    expect(warnings.join(' ')).toMatch(/The list ends here: .*ISO 4156.*DIN 5480.*SAE J500/);
  });

  // Formulas m (z + 1), m (z + 0.9), m (z + 0.8) found in two public copies of ISO 4156; the products computed here, mm.
  test.each([
    [24, 1, 'metric-30', 25],
    [24, 1, 'metric-37.5', 24.9],
    [24, 1, 'metric-45', 24.8],
    [35, 0.5, 'metric-30', 18],
    [26, 0.75, 'metric-45', 20.1],
  ] as const)(
    'ISO 4156: %d teeth of module %d, %s, are %d mm over the teeth',
    (teeth, module, form, size) => {
      const entry = [...standardSplines(teeth)].find((each) => each.form === form && each.module === module);
      expectClose(entry!.outsideDiameter, size, 1e-9);
      expect(entry!.standard).toBe('ISO 4156');
      const found = identified(size / IN, teeth).candidates;
      expect(found.find((each) => each.form === form && each.module === module)).toMatchObject({
        fit: 'fits',
      });
    },
  );

  // A public calculation sheet of DIN 5480 prints shaft 6 x 0.8 x 6 with crest 5.84 and x m 0.16; 120 x 3 x 38 and
  // 25 x 1 x 24 are printed in public copies, 30 x 1 x 28 in a public generator's example: crest dB - 0.2 m.
  test.each([
    [6, 0.8, 6, 5.84],
    [120, 3, 38, 119.4],
    [25, 1, 24, 24.8],
    [30, 1, 28, 29.8],
  ])('DIN 5480: reference diameter %d, module %d, %d teeth', (reference, module, teeth, crest) => {
    const entry = [...standardSplines(teeth)].find(
      ({ name }) => name === `${teeth} teeth, reference diameter ${reference}, module ${module}`,
    );
    expect(entry).toMatchObject({ form: 'reference-30', standard: 'DIN 5480', module });
    expectClose(entry!.outsideDiameter, crest, 1e-9);
  });

  test('the serrated form of 48 on a nominal 3/4 in is named, with the caution that it is not an involute', () => {
    const { candidates, warnings, verdict } = identified(0.7445, 48);
    expect(verdict).toBe('trial-fit');
    expect(candidates[0]).toMatchObject({ form: 'serrated', standard: 'SAE J500', teeth: 48 });
    expect(warnings.join(' ')).toMatch(/do not go together with an involute of the same count/);
  });

  test('half the circle counted is doubled: 18 are 36', () => {
    // Counting half and doubling: common practice.
    expect(identified(37 / 48, 18, 'half')).toMatchObject({
      teeth: 36,
      tradeName: '3/4-36',
      verdict: 'choose',
    });
  });
});
