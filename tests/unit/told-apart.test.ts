import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analyse, findings, LIMITS } from '../../shared-math/findings/index.ts';
import { resolveLayout } from '../../shared-math/layout/index.ts';
import { createState, prepareFrontEnd, solveFrontEnd } from '../../shared-math/linkage/index.ts';
import {
  degreesBeside,
  formatToe,
  formatToeLength,
  lengthBeside,
  setLength,
} from '../../shared-math/units/index.ts';
import { linkWords } from '../../shared-math/words/index.ts';
import { COMPARED_FIGURES, figureNames } from '../../src-renderer/panels/compare/compared-figures.ts';
import { differenceWords } from '../../src-renderer/panels/compare/comparison-words.ts';
import { variantFigures } from '../../src-renderer/panels/compare/variant-figures.ts';
import { CROSS_STEER, documentOf, rawLayout } from './../support/layouts.ts';

// Rounding never makes a figure read as the limit, or as the nought, that it is not.

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 0 } as const;

test('an angle past its limit does not read as the limit', () => {
  expect(degreesBeside(28.4, [28], 0)).toBe('28.4°');
  expect(degreesBeside(28, [28], 0)).toBe('28°');
  expect(degreesBeside(0.5004, [0.5])).toBe('0.5004°');
  expect(degreesBeside(31, [28], 0)).toBe('31°');
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 60, noNaN: true }),
      fc.double({ min: 0.01, max: 60, noNaN: true }),
      (value, limit) => {
        fc.pre(Math.abs(value - limit) > 1e-3);
        expect(degreesBeside(value, [limit])).not.toBe(degreesBeside(limit, [value]));
      },
    ),
  );
});

test('a length that is not nothing does not read as nothing, in either unit', () => {
  // 0.76 mm is 0.030 in (1 in = 25.4 mm): less than half of a sixteenth.
  expect(lengthBeside(0.76, [1.5875, 0], INCHES)).toBe('0.030 in');
  expect(lengthBeside(0, [0], INCHES)).toBe('0 in');
  expect(lengthBeside(0.04, [0], MM)).toBe('0.04 mm');
  expect(lengthBeside(82.55, [0], INCHES)).toBe('3 1/4 in');
});

test('toe has one form, and two toes that a tape tells apart read apart', () => {
  // Readings of 2.30 and 2.41 mm: 0.0906 and 0.0949 in.
  expect(formatToe(2.3, 0.2, 'in')).toBe('0.091 in (2.3 mm, 0.20°)');
  expect(formatToe(2.41, 0.21, 'in')).toBe('0.095 in (2.4 mm, 0.21°)');
  expect(formatToe(2.3, 0.2, 'mm')).toBe('2.3 mm (0.091 in, 0.20°)');
});

/** The findings of one rule on a layout, in inches. */
function told(
  rule: string,
  over: Parameters<typeof rawLayout>[0],
  style: typeof INCHES | typeof MM = INCHES,
) {
  const layout = resolveLayout(documentOf(rawLayout(over)));
  return findings(analyse(layout, prepareFrontEnd(layout)), style).filter((one) => one.rule === rule);
}

test('toe beyond its band does not read as a toe within it', () => {
  // 0.29° of total toe over a tyre of 330 mm radius: 2 · 330 · sin(0.29°) = 3.341 mm, 0.132 in; the band ends at 0.125 in.
  const raw = rawLayout() as unknown as { axle: { left: { toeIn: number } } };
  const [toe] = told('toe-static', {
    axle: { ...raw.axle, left: { ...raw.axle.left, toeIn: 0.145 } },
  } as Parameters<typeof rawLayout>[0]);
  expect(toe?.advice).toMatch(/Take toe-in off/);
  const [, figure] =
    /^Toe-in ([\d.]+) in \([\d.]+ mm, 0\.29°\), front to rear of the tyres$/.exec(toe?.sentence ?? '') ?? [];
  const [, most] = /to ([\d.]+) in$/.exec(toe?.limit ?? '') ?? [];
  expect(Number(figure)).toBeGreaterThan(Number(most));
  expect(formatToeLength(LIMITS.toeMost.usual, 'in')).toBe(`${most} in`);
});

test('caster’s change says which way and from where to where, and its figures add up', () => {
  const [caster] = told('caster-change', {}, MM);
  const match = /^Caster (rises|falls) by ([\d.]+)°, from (-?[\d.]+)° at ride height to (-?[\d.]+)° at /.exec(
    caster?.sentence ?? '',
  );
  if (!match) expect(caster?.sentence).toMatch(/^Caster stays at /);
  else expect(Math.abs(Math.abs(Number(match[4]) - Number(match[3])) - Number(match[2]))).toBeLessThan(0.11);
});

test('bump steer says which way the fronts of the wheels go at the worst', () => {
  const ways = new Set<string>();
  const raw = rawLayout() as { steering: { box: object } };
  // The box behind the axle, ahead of it, and across the car.
  for (const steering of [
    raw.steering,
    {
      ...raw.steering,
      box: { ...raw.steering.box, sectorCentre: [800, 500, 490], pitmanBall: [800, 500, 350] },
    },
    CROSS_STEER,
  ]) {
    const over = { steering };
    const layout = resolveLayout(documentOf(rawLayout(over)));
    const frontEnd = prepareFrontEnd(layout);
    for (const rule of ['bump-steer-worst', 'one-wheel']) {
      const [finding] = told(rule, over);
      if (!finding?.at) throw new Error(rule);
      const { heave, roll } = finding.at;
      // Above 0 a wheel's front points left (ISO 8855).
      const [ride, there] = [createState(), createState()];
      expect(solveFrontEnd(frontEnd, 0, 0, 0, ride)).toBe('ok');
      expect(solveFrontEnd(frontEnd, heave, roll, 0, there)).toBe('ok');
      const way = there.meanSteer > ride.meanSteer ? 'left' : 'right';
      expect(finding.sentence).toMatch(new RegExp(`^Bump steer [\\d.]+° to the ${way} `));
      ways.add(way);
    }
  }
  expect(ways.size).toBe(2);
});

test('a limit reads as it was set', () => {
  expect(setLength(12.7, INCHES)).toBe('1/2 in');
  // 1 mm is 0.039 in, and no sixteenth.
  expect(setLength(1, INCHES)).toBe('0.039 in');
  expect(setLength(1.25, MM)).toBe('1.25 mm');
});

test('a link is told in mm too where a sixteenth of it turns the wheel by a quarter of a degree', () => {
  // 1/16 in over an arm of 6 in: 1/96 rad, 0.6°; of 1/64 in a quarter of that.
  expect(linkWords(885.8, 152.4, INCHES)).toBe('34 7/8 in (885.8 mm)');
  expect(linkWords(885.8, 152.4, { unit: 'in', fraction: 64 })).toBe('34 7/8 in');
  // A quarter of a degree is 1/229.2 rad: an arm of 229.2 / 16 = 14.3 in is as long as that.
  expect(linkWords(885.8, 14.2 * 25.4, INCHES)).toMatch(/ mm\)$/);
  expect(linkWords(885.8, 14.4 * 25.4, INCHES)).toBe('34 7/8 in');
  expect(linkWords(885.8, 152.4, MM)).toBe('885.8 mm');
});

test('variants that differ are never held to be the same', () => {
  const figuresOf = (over: Parameters<typeof rawLayout>[0]) => {
    const layout = resolveLayout(documentOf(rawLayout(over)));
    return variantFigures(layout, prepareFrontEnd(layout));
  };
  const raw = rawLayout() as unknown as { axle: { left: { toeIn: number; tieRodBall: number[] } } };
  const drawn = figuresOf({});
  const left = { ...raw.axle.left, toeIn: 0.104, tieRodBall: [-150, 606.1, 292] };
  const other = figuresOf({ axle: { ...raw.axle, left } });
  for (const what of ['Total toe-in', 'Tie rod', 'Inner wheel, left lock']) {
    const figure = figureNames().find((name) => COMPARED_FIGURES[name].what === what);
    if (!figure) throw new Error(what);
    expect(differenceWords(figure, drawn, other, INCHES), what).toMatch(/^[+−]\d/);
    expect(differenceWords(figure, drawn, drawn, INCHES), what).toBe('same');
  }
});
