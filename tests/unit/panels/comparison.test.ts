import { describe, expect, test } from 'vitest';
import { analyse } from '../../../shared-math/findings/index.ts';
import { moveHardpoint, resolveLayout } from '../../../shared-math/layout/index.ts';
import { prepareFrontEnd } from '../../../shared-math/linkage/index.ts';
import { turningCircle, turnsLockToLock } from '../../../shared-math/sweep/index.ts';
import {
  COMPARED_FIGURES,
  type FigureName,
  figureNames,
} from '../../../src-renderer/panels/compare/compared-figures.ts';
import { differenceWords, figureWords } from '../../../src-renderer/panels/compare/comparison-words.ts';
import { variantFigures } from '../../../src-renderer/panels/compare/variant-figures.ts';
import { documentOf, LOCATIONS, rawLayout } from '../../support/layouts.ts';

const INCHES = { unit: 'in', fraction: 16 } as const;
const MM = { unit: 'mm', fraction: 16 } as const;
const document = documentOf(rawLayout());
const figuresOf = (of = document) => {
  const layout = resolveLayout(of);
  return variantFigures(layout, prepareFrontEnd(layout));
};
const named = (what: string) =>
  figureNames().find((name) => COMPARED_FIGURES[name].what === what) as FigureName;

describe('the figures variants are compared by', () => {
  test('are those that the verdict is made of', () => {
    const figures = figuresOf();
    const analysis = analyse(resolveLayout(document));
    expect(figures.worstBumpSteer).toBe(analysis.heaveSummary.worstBumpSteer);
    expect(figures.oneWheel).toBe((analysis.oneWheel as { worst: number }).worst);
    expect(figures.oneWheel).toBeGreaterThan(0);
    expect(figures.slope).toBe(analysis.heaveSummary.slopeAtRide);
    expect(figures.rollSteer).toBe(analysis.rollSummary.slopeAtRide);
    expect(figures.turns).toBe(turnsLockToLock(analysis.turn));
    expect(figures.rimForce).toBe(analysis.effort?.centre.rimForce);
    expect(figures.rimForceMost).toBe(analysis.effort?.worst.rimForce);
    expect(figures.rimForceMost).toBeGreaterThanOrEqual(figures.rimForce as number);
    const circles = [analysis.turn.left, analysis.turn.right].map(
      (lock) => turningCircle(analysis.layout, lock)?.betweenKerbs ?? 0,
    );
    expect(figures.circle).toBe(Math.max(...circles));
    expect(figures.casterBraked).toBe(analysis.braking?.hard.leftCaster);
    expect(figures.brakeSteer).toBe(analysis.braking?.hard.brakeSteer);
    expect(figures.brakeSteer).toBe(0);
    const leaves = figuresOf(documentOf(rawLayout({ location: LOCATIONS['parallel-leaf'] })));
    expect(leaves.casterBraked).toBeLessThan(figures.casterBraked as number);
    expect(Math.abs(leaves.brakeSteer as number)).toBeGreaterThan(0.01);
  });

  test('are told in the reader’s unit, a missing one as none', () => {
    const figures = figuresOf();
    expect(figureWords(named('Worst bump steer'), figures, INCHES)).toMatch(/^\d+\.\d\d°$/);
    expect(figureWords(named('Circle between kerbs'), figures, INCHES)).toMatch(/^\d+ ft \d+ in$/);
    expect(figureWords(named('Circle between kerbs'), figures, MM)).toMatch(/^\d+\.\d\d m$/);
    expect(figureWords(named('Parking at the rim'), figures, MM)).toMatch(/^\d+ N$/);
    expect(figureWords(named('Overall ratio'), { ...figures, ratio: undefined }, INCHES)).toBe('none');
    expect(COMPARED_FIGURES.slope.aside?.(MM)).toBe('per 25 mm');
    expect(figureWords(named('Bump steer slope'), { ...figures, slope: -Math.PI / 180 / 25.4 }, INCHES)).toBe(
      '−1.00°',
    );
  });

  test('differ by what the other has more or less', () => {
    const figures = figuresOf();
    const more = { ...figures, ratio: 18.25, turns: 3.5, rimForce: 200 };
    const less = { ...figures, ratio: 16.05, turns: 3.5, rimForce: 100 };
    expect(differenceWords(named('Overall ratio'), less, more, INCHES)).toBe('+2.2');
    expect(differenceWords(named('Overall ratio'), more, less, INCHES)).toBe('−2.2');
    expect(differenceWords(named('Lock to lock'), more, less, INCHES)).toBe('same');
    expect(differenceWords(named('Parking at the rim'), more, less, MM)).toBe('−100 N');
    expect(differenceWords(named('Parking at the rim'), { ...more, rimForce: undefined }, less, MM)).toBe('');
  });

  test('of links follow the points: a pitman ball an inch further back makes the drag link longer', () => {
    const [x, y, z] = document.steering.box.pitmanBall;
    const longer = figuresOf(moveHardpoint(document, 'steering.box.pitmanBall', [x - 25.4, y, z]));
    const words = differenceWords(named('Drag link'), figuresOf(), longer, INCHES);
    expect(words).toMatch(/^\+(31\/32|1|1 1\/32) in$/);
  });

  test('have no name twice', () => {
    const names = figureNames().map((name) => COMPARED_FIGURES[name].what);
    expect(new Set(names).size).toBe(names.length);
  });
});
