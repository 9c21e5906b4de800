import { describe, expect, test } from 'vitest';
import { gridLines, gridSteps, scaleBar, snapStep } from '../../../src-renderer/board/grid.ts';

const SCALES = [0.02, 0.05, 0.1, 0.16, 0.25, 0.5, 1, 2, 4, 8, 16];

describe('the grid', () => {
  test.each(['in', 'mm'] as const)(
    'in %s keeps its lines apart and its strong lines among the fine ones',
    (unit) => {
      for (const scale of SCALES) {
        const { fine, strong } = gridSteps(unit, scale);
        expect(strong / fine).toBeCloseTo(Math.round(strong / fine), 9);
        expect(strong).toBeGreaterThan(fine);
        // The coarsest step is the last resort of thumbnails.
        if (scale > 0.07) expect(fine * scale).toBeGreaterThanOrEqual(13);
        if (scale < 8) expect(fine * scale).toBeLessThan(45);
      }
    },
  );

  test('gets finer as one comes closer', () => {
    for (const unit of ['in', 'mm'] as const) {
      const steps = SCALES.map((scale) => gridSteps(unit, scale).fine);
      expect(steps).toEqual([...steps].sort((a, b) => b - a));
    }
  });

  test('goes down to a sixteenth of an inch and a millimetre', () => {
    expect(gridSteps('in', 16).fine).toBeCloseTo(25.4 / 16, 12);
    expect(gridSteps('mm', 16).fine).toBe(1);
  });

  test('draws its lines at whole steps from the car’s own zero', () => {
    const lines = gridLines({ fine: 50, strong: 250 }, 0.5, 113, 0, 300);
    expect(lines[0]?.at).toBeGreaterThanOrEqual(0);
    expect(lines.at(-1)?.at).toBeLessThanOrEqual(300);
    for (const { at, strong } of lines) {
      const step = (at - 113) / 25;
      expect(step).toBeCloseTo(Math.round(step), 9);
      expect(strong).toBe(Math.round(step) % 5 === 0);
    }
    expect(lines).toHaveLength(12);
  });
});

describe('snapping', () => {
  test('rounds to the finest step close by, and to about two pixels from afar', () => {
    expect(snapStep('in', 8)).toBeCloseTo(25.4 / 16, 12);
    expect(snapStep('mm', 8)).toBe(1);
    expect(snapStep('in', 0.25)).toBeCloseTo(25.4 / 4, 12);
    for (const unit of ['in', 'mm'] as const)
      for (const scale of SCALES.filter((candidate) => candidate < 1.5))
        expect(snapStep(unit, scale) * scale).toBeLessThanOrEqual(2.5);
  });
});

describe('the scale bar', () => {
  test.each(['in', 'mm'] as const)('in %s is a round length that fits the corner', (unit) => {
    for (const scale of SCALES.filter((candidate) => candidate >= 0.05 && candidate <= 8)) {
      const { length, parts } = scaleBar(unit, scale);
      expect(length * scale).toBeGreaterThanOrEqual(90);
      expect(length * scale).toBeLessThan(260);
      expect(parts).toBeGreaterThan(1);
    }
  });
});
